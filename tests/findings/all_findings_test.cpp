// What must hold for the findings of any truck.
#include "core/findings/all_findings.h"
#include "core/basics/member_name.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <cmath>
#include <nlohmann/json.hpp>
#include <regex>
#include <set>

#include "core/basics/wording.h"
#include "core/findings/cautions.h"
#include "core/findings/findings_json.h"
#include "core/findings/limits.h"
#include "tests/support/random_truck.h"

namespace tackbench {
namespace {

using testing::HasSubstr;
using testing::Not;

struct Judged {
  Mechanism mechanism;
  CheckResults results;
  std::vector<Finding> findings;
};

// A random truck with everything that findings look at.
Judged judged_truck(std::uint64_t seed) {
  Project project = random_truck(seed);
  auto axle = std::make_shared<FrontAxleStation>(*project.front_axle);
  axle->wanted_steer_left = radians_from_degrees(30.0);
  axle->suspension.wind_up = radians_from_degrees(2.0);
  project.front_axle = axle;
  auto shapes = std::make_shared<ShapesStation>();
  StretchPair damper;
  damper.name = "Steering damper";
  damper.from.at = Vec3(-300.0, 400.0, -100.0);
  damper.to.at = Vec3(100.0, 500.0, -150.0);
  damper.to.rides_on = RidesOn::axle;
  damper.least = 300.0;
  shapes->stretch_pairs.push_back(damper);
  project.shapes = shapes;
  if (project.shaft_line) {
    auto line = std::make_shared<ShaftLineStation>(*project.shaft_line);
    line->push_back = 60.0;
    project.shaft_line = line;
  }
  Result<Mechanism> compiled = compile(project);
  EXPECT_TRUE(compiled.ok()) << "seed " << seed << ": "
                             << (compiled.ok() ? "" : one_line(compiled.problems().front()));
  Judged judged;
  if (!compiled.ok()) return judged;
  judged.mechanism = std::move(compiled).value();
  judged.results = run_checks(judged.mechanism);
  judged.findings = all_findings(judged.mechanism, judged.results);
  return judged;
}

std::string all_text(const Finding& finding) {
  std::string text = finding.sentence + "\n" + finding.why_not_judged + "\n" +
                     finding.caution.value_or("") + "\n" + finding.trace.formula + "\n" +
                     finding.trace.source;
  if (finding.limit) text += "\n" + finding.limit->words + "\n" + finding.limit->source;
  const auto add = [&](const std::vector<Quantity>& numbers) {
    for (const Quantity& each : numbers) text += "\n" + each.words;
  };
  add(finding.numbers);
  add(finding.trace.inputs);
  for (const TraceStep& step : finding.trace.steps) {
    text += "\n" + step.words + "\n" + step.formula;
    add(step.results);
  }
  return text;
}

class AnyTruck : public testing::TestWithParam<std::uint64_t> {};

TEST_P(AnyTruck, SaysEverythingInWordsOfTheCatalogue) {
  const Judged truck = judged_truck(GetParam());
  ASSERT_GT(truck.findings.size(), 20U);
  for (const Finding& finding : truck.findings) {
    SCOPED_TRACE(finding.name);
    EXPECT_FALSE(finding.sentence.empty());
    const std::string text = all_text(finding);
    EXPECT_THAT(text, Not(HasSubstr("[[wording")));
    EXPECT_THAT(text, Not(HasSubstr("nan")));
    EXPECT_THAT(text, Not(HasSubstr("-0.0 ")));
    for (const char* never : {"safe", "approved", "certified"})
      EXPECT_THAT(finding.sentence, Not(HasSubstr(never)));
  }
}

TEST_P(AnyTruck, NamesAreStableAndUnique) {
  const Judged truck = judged_truck(GetParam());
  const std::regex shape(R"([a-z0-9_]+(\.[a-z0-9_\[\]]+)+)");
  std::set<std::string> names;
  for (const Finding& finding : truck.findings) {
    EXPECT_TRUE(std::regex_match(finding.name, shape)) << finding.name;
    EXPECT_TRUE(names.insert(finding.name).second) << finding.name << " twice";
    std::set<std::string> numbers;
    for (const Quantity& number : finding.numbers)
      EXPECT_TRUE(numbers.insert(number.name).second) << finding.name << ": " << number.name;
  }
  for (const char* name : {"steering.direction", "link.centring", "link.length", "lock.left.end",
                           "lock.right.end", "lock.turns_difference", "bump.rate", "bump.travel",
                           "link.effective_angle", "pedal.brake.full_stroke"})
    EXPECT_TRUE(names.contains(name)) << name;
}

TEST_P(AnyTruck, VerdictsFollowFromTheFirstNumberAndTheLimit) {
  const Judged truck = judged_truck(GetParam());
  std::set<std::string> shipped;
  for (const ShippedLimit& each : shipped_limits()) shipped.insert(each.limit.name);
  for (const Finding& finding : truck.findings) {
    SCOPED_TRACE(finding.name);
    if (finding.verdict == Verdict::not_judged) {
      EXPECT_FALSE(finding.why_not_judged.empty());
    } else {
      EXPECT_TRUE(finding.why_not_judged.empty());
      ASSERT_TRUE(finding.limit);
      EXPECT_FALSE(finding.limit->source.empty());
    }
    if (!finding.limit) continue;
    EXPECT_TRUE(shipped.contains(finding.limit->name)) << finding.limit->name;
    EXPECT_FALSE(finding.trace.formula.empty());
    EXPECT_FALSE(finding.trace.source.empty());
    EXPECT_FALSE(finding.trace.steps.empty());
  }
}

TEST_P(AnyTruck, WorstVerdictsComeFirst) {
  const Judged truck = judged_truck(GetParam());
  const auto rank = [](Verdict verdict) {
    return verdict == Verdict::past         ? 0
           : verdict == Verdict::close      ? 1
           : verdict == Verdict::not_judged ? 2
                                            : 3;
  };
  for (std::size_t i = 1; i < truck.findings.size(); ++i)
    EXPECT_LE(rank(truck.findings[i - 1].verdict), rank(truck.findings[i].verdict));
}

TEST_P(AnyTruck, JsonHoldsTheSameNumbersInShownUnits) {
  const Judged truck = judged_truck(GetParam());
  const auto tree = nlohmann::json::parse(findings_json(truck.findings));
  ASSERT_EQ(tree["findings"].size(), truck.findings.size());
  std::size_t counted = 0;
  for (const char* verdict : {"past", "close", "not_judged", "within"})
    counted += tree[verdict].get<std::size_t>();
  EXPECT_EQ(counted, truck.findings.size());
  for (std::size_t i = 0; i < truck.findings.size(); ++i) {
    const Finding& finding = truck.findings[i];
    const auto& json = tree["findings"][i];
    EXPECT_EQ(json["name"], finding.name);
    for (const Quantity& each : finding.numbers) {
      const std::string member = member_name(each.name, each.unit);
      ASSERT_TRUE(json["numbers"].contains(member)) << finding.name << " " << member;
      if (std::isfinite(each.value)) {
        EXPECT_DOUBLE_EQ(json["numbers"][member].get<double>(),
                         shown_from_inside(each.unit, each.value));
      }
    }
  }
}

INSTANTIATE_TEST_SUITE_P(Seeds, AnyTruck, testing::Range<std::uint64_t>(1, 13));

// The same project twice gives the same findings to the last bit.
TEST(AllFindings, AreDeterministic) {
  EXPECT_EQ(findings_json(judged_truck(3).findings), findings_json(judged_truck(3).findings));
}

TEST(AllFindings, ABareStartOnlyAsks) {
  const Result<Mechanism> compiled = compile(Project{});
  ASSERT_TRUE(compiled.ok());
  const auto findings = all_findings(compiled.value(), run_checks(compiled.value()));
  ASSERT_FALSE(findings.empty());
  EXPECT_EQ(findings.front().name, "steering.direction");
  for (const Finding& finding : findings) {
    EXPECT_EQ(finding.verdict, Verdict::not_judged) << finding.name;
    EXPECT_FALSE(finding.name.starts_with("pedal."));
    EXPECT_FALSE(finding.name.starts_with("shaft."));
  }
  EXPECT_NE(finding_named(findings, "missing.steering_box"), nullptr);
}

TEST(AllFindings, WithoutAShaftLineOrPedalsThereAreNoneOfThose) {
  Project project = random_truck(5);
  project.shaft_line = nullptr;
  project.pedals = nullptr;
  const Result<Mechanism> compiled = compile(project);
  ASSERT_TRUE(compiled.ok());
  for (const Finding& finding : all_findings(compiled.value(), run_checks(compiled.value()))) {
    EXPECT_FALSE(finding.name.starts_with("shaft.")) << finding.name;
    EXPECT_FALSE(finding.name.starts_with("pedal.")) << finding.name;
  }
}

TEST(AllFindings, ABoxTheWrongWayRoundIsPastAndComesFirst) {
  Project project = random_truck(2);
  auto box = std::make_shared<SteeringBoxStation>(*project.steering_box);
  box->left_turns_arm = *box->left_turns_arm == TurnSense::clockwise ? TurnSense::anticlockwise
                                                                     : TurnSense::clockwise;
  project.steering_box = box;
  const Result<Mechanism> compiled = compile(project);
  ASSERT_TRUE(compiled.ok());
  const auto findings = all_findings(compiled.value(), run_checks(compiled.value()));
  EXPECT_EQ(findings.front().name, "steering.direction");
  EXPECT_EQ(findings.front().verdict, Verdict::past);
  EXPECT_THAT(findings.front().sentence, HasSubstr("steers RIGHT"));
}

TEST(AllFindings, ARodEndInTheDragLinkAlwaysDrawsACaution) {
  Project project = random_truck(4);
  auto link = std::make_shared<DragLinkStation>(*project.drag_link);
  link->arm_end.kind = LinkEndKind::ball_stud;
  link->knuckle_end.kind = LinkEndKind::rod_end;
  project.drag_link = link;
  const Result<Mechanism> compiled = compile(project);
  ASSERT_TRUE(compiled.ok());
  const auto findings = all_findings(compiled.value(), run_checks(compiled.value()));
  const Finding* rod_end = finding_named(findings, "link.swing.knuckle_end");
  const Finding* stud = finding_named(findings, "link.swing.arm_end");
  ASSERT_TRUE(rod_end && stud);
  EXPECT_TRUE(rod_end->caution);
  EXPECT_FALSE(stud->caution);
}

TEST(Cautions, AreSaidInFull) {
  EXPECT_EQ(caution_sentences().front(), "Steering and brakes can kill.");
  for (const std::string& line : caution_sentences())
    EXPECT_THAT(line, Not(HasSubstr("[[wording")));
  EXPECT_THAT(not_checked(), testing::Contains("welds"));
  EXPECT_THAT(not_checked(), testing::Contains("heat"));
}

}  // namespace
}  // namespace tackbench
