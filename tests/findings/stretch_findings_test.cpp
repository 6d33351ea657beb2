// Findings of stretch pairs, most from results made up by hand.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "core/findings/all_findings.h"
#include "core/findings/builders.h"
#include "tests/support/random_truck.h"

namespace tackbench {
namespace {

using testing::HasSubstr;

StretchPair pair_named(const std::string& name, RidesOn from, RidesOn to) {
  StretchPair pair;
  pair.name = name;
  pair.from.rides_on = from;
  pair.to.rides_on = to;
  pair.to.at = Vec3(300.0, 0.0, 0.0);
  pair.least = 10.0;
  return pair;
}

Project with_pairs(Project project, const std::vector<StretchPair>& pairs) {
  auto shapes = std::make_shared<ShapesStation>();
  shapes->stretch_pairs = pairs;
  project.shapes = shapes;
  return project;
}

TEST(StretchFindings, TheWorseEndIsJudged) {
  const Mechanism mechanism =
      compile(with_pairs(random_truck(7),
                         {pair_named("Steering damper", RidesOn::chassis, RidesOn::axle)}))
          .value();
  StretchResult damper;
  damper.name = "Steering damper";
  damper.as_drawn = 400.0;
  damper.least = 330.0;
  damper.greatest = 480.0;
  damper.least_allowed = 340.0;
  damper.greatest_allowed = 500.0;
  std::vector<Finding> findings;
  add_stretch_findings(mechanism, {damper}, findings);
  ASSERT_EQ(findings.size(), 1U);
  EXPECT_EQ(findings[0].name, "stretch.steering_damper");
  EXPECT_EQ(findings[0].verdict, Verdict::past);
  EXPECT_EQ(findings[0].numbers.front().value, 330.0);
  damper.least = 350.0;
  damper.greatest = 505.0;
  findings.clear();
  add_stretch_findings(mechanism, {damper}, findings);
  EXPECT_EQ(findings[0].verdict, Verdict::past);
  EXPECT_EQ(findings[0].numbers.front().value, 505.0);
  damper.least_allowed.reset();
  damper.greatest_allowed.reset();
  findings.clear();
  add_stretch_findings(mechanism, {damper}, findings);
  EXPECT_EQ(findings[0].verdict, Verdict::not_judged);
}

// No pair is lost: what its bodies wait for is said.
TEST(StretchFindings, APairWhoseBodiesAreNotMeasuredWaits) {
  Project project =
      with_pairs(Project{}, {pair_named("damper", RidesOn::chassis, RidesOn::axle),
                             pair_named("hose", RidesOn::chassis, RidesOn::left_knuckle),
                             pair_named("strap", RidesOn::cab, RidesOn::chassis),
                             pair_named("rod", RidesOn::chassis, RidesOn::chassis)});
  const Mechanism mechanism = compile(project).value();
  const auto findings = all_findings(mechanism, run_checks(mechanism));
  const auto why = [&](const char* name) {
    const Finding* finding = finding_named(findings, name);
    return finding && finding->verdict == Verdict::not_judged ? finding->why_not_judged
                                                              : std::string("-");
  };
  EXPECT_EQ(why("stretch.damper"), "damper waits for front_axle");
  EXPECT_EQ(why("stretch.hose"), "hose waits for front_axle, steering_box and drag_link");
  EXPECT_EQ(why("stretch.strap"), "strap waits for cab");
  ASSERT_NE(finding_named(findings, "stretch.rod"), nullptr);
  EXPECT_EQ(finding_named(findings, "stretch.rod")->verdict, Verdict::within);
  EXPECT_EQ(finding_named(findings, "stretch.rod")->numbers.front().value, 300.0);
}

// A hose on a knuckle is not judged from straight ahead alone.
TEST(StretchFindings, WithoutLocksAHoseOnAKnuckleIsNotJudged) {
  const Mechanism mechanism =
      compile(with_pairs(random_truck(7),
                         {pair_named("hose", RidesOn::chassis, RidesOn::left_knuckle)}))
          .value();
  std::vector<Finding> findings;
  add_stretch_findings(mechanism, check_stretch(mechanism, std::nullopt), findings);
  ASSERT_EQ(findings.size(), 1U);
  EXPECT_EQ(findings[0].verdict, Verdict::not_judged);
  EXPECT_THAT(findings[0].why_not_judged, HasSubstr("only straight ahead was looked at"));
  findings.clear();
  add_stretch_findings(mechanism, check_stretch(mechanism, check_locks(mechanism, {})), findings);
  EXPECT_EQ(findings[0].verdict, Verdict::within);
}

}  // namespace
}  // namespace tackbench
