// Findings of pedals from results made up by hand.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "core/findings/all_findings.h"
#include "core/findings/builders.h"
#include "tests/support/random_truck.h"

namespace tackbench {
namespace {

using testing::HasSubstr;
using testing::Not;

class PedalFindings : public testing::Test {
 protected:
  PedalFindings() {
    Project project = random_truck(7);
    project.driver = std::make_shared<const DriverStation>();
    mechanism_ = compile(project).value();
    brake_.name = "brake";
    brake_.use = PedalUse::brake;
    brake_.stroke_wanted = 36.0;
    brake_.ratio_rest = 5.6;
    brake_.ratio_middle = 5.2;
    brake_.ratio_full = 4.9;
    brake_.ends = {{PedalEndKind::own_stop, 0.4, 110.0, 38.0}};
    brake_.stroke_reached = 38.0;
    brake_.ratio_worst = 5.6;
    brake_.floor_known = true;
    brake_.pad_over_floor = 60.0;
  }
  const Finding& judged(const std::string& name) {
    findings_.clear();
    add_pedal_findings(mechanism_, {brake_}, findings_);
    const Finding* finding = finding_named(findings_, name);
    EXPECT_NE(finding, nullptr) << name;
    static const Finding kNone;
    return finding ? *finding : kNone;
  }
  template <class Change>
  void change_brake(Change&& change) {
    Project project = mechanism_.project;
    auto pedals = std::make_shared<PedalsStation>(*project.pedals);
    change(pedals->pedals[0]);
    project.pedals = pedals;
    mechanism_ = compile(project).value();
  }
  void with_booster(bool booster) {
    change_brake([booster](Pedal& brake) {
      brake.rod->booster_gain.reset();
      if (booster) brake.rod->booster_gain = 4.0;
    });
  }
  void choose(const LimitChoice& choice) {
    Project project = mechanism_.project;
    LimitsStation limits;
    limits.choices = {choice};
    project.limits = std::make_shared<const LimitsStation>(limits);
    mechanism_ = compile(project).value();
  }

  Mechanism mechanism_;
  PedalResult brake_;
  std::vector<Finding> findings_;
};

// After one circuit of a tandem cylinder fails its full stroke is needed.
TEST_F(PedalFindings, ABrakeThatMeetsTheFloorFirstIsPast) {
  EXPECT_EQ(judged("pedal.brake.full_stroke").verdict, Verdict::within);
  brake_.ends.insert(brake_.ends.begin(), {PedalEndKind::floor, 0.3, 80.0, 28.0});
  brake_.stroke_reached = 28.0;
  const Finding& stroke = judged("pedal.brake.full_stroke");
  EXPECT_EQ(stroke.verdict, Verdict::past);
  EXPECT_EQ(stroke.sentence,
            "Brake stops short: the floor ends it at 28.0 mm of the cylinder's 36.0 mm. With one "
            "circuit lost there would be too little.");
  ASSERT_TRUE(stroke.worst_at);
  EXPECT_NEAR(stroke.worst_at->pedals[0], 0.3 / mechanism_.pedals[0].pedal.full_travel, 1e-12);
}

TEST_F(PedalFindings, ExactlyTheFullStrokeIsEnough) {
  brake_.stroke_reached = 36.0;
  EXPECT_EQ(judged("pedal.brake.full_stroke").verdict, Verdict::within);
}

TEST_F(PedalFindings, WithoutTheMakersStrokeNothingIsJudged) {
  brake_.stroke_wanted.reset();
  const Finding& stroke = judged("pedal.brake.full_stroke");
  EXPECT_EQ(stroke.verdict, Verdict::not_judged);
  EXPECT_EQ(stroke.why_not_judged,
            "take the limit from the maker's sheet: fill in full_stroke_mm of the pedal's rod");
}

// A brake supplier's general rule: at most 6 to 1 by hand, 4 to 1 with a booster.
TEST_F(PedalFindings, RatioRuleDependsOnTheBooster) {
  with_booster(false);
  EXPECT_EQ(judged("pedal.brake.ratio").verdict, Verdict::within);
  with_booster(true);
  EXPECT_EQ(judged("pedal.brake.ratio").verdict, Verdict::past);
}

// The floor may end the stroke before the pedal's own stop does.
TEST_F(PedalFindings, WithoutAFloorTheStrokeIsNotCalledWithin) {
  brake_.floor_known = false;
  const Finding& stroke = judged("pedal.brake.full_stroke");
  EXPECT_EQ(stroke.verdict, Verdict::not_judged);
  EXPECT_THAT(stroke.why_not_judged, HasSubstr("driver.floor_height_mm"));
  EXPECT_THAT(stroke.sentence, HasSubstr("driver.floor_height_mm"));
  const Finding& gap = judged("pedal.brake.floor_gap");
  EXPECT_EQ(gap.verdict, Verdict::not_judged);
  EXPECT_THAT(gap.why_not_judged, HasSubstr("driver.floor_height_mm"));
  // Short is short, wherever the floor.
  brake_.stroke_reached = 30.0;
  EXPECT_EQ(judged("pedal.brake.full_stroke").verdict, Verdict::past);
}

TEST_F(PedalFindings, ABrakeWithoutARodAsksForIt) {
  change_brake([](Pedal& brake) { brake.rod.reset(); });
  brake_.stroke_wanted.reset();
  for (const char* what : {"full_stroke", "ratio", "free_play", "rod_swing"}) {
    const Finding& finding = judged(std::string("pedal.brake.") + what);
    EXPECT_EQ(finding.verdict, Verdict::not_judged) << what;
    EXPECT_THAT(finding.why_not_judged, HasSubstr("pedals.pedals[0].rod")) << what;
  }
}

TEST_F(PedalFindings, FreePlayIsJudgedOnceMeasured) {
  EXPECT_EQ(judged("pedal.brake.free_play").verdict, Verdict::within);
  change_brake([](Pedal& brake) { brake.rod->free_play = 0.0; });
  EXPECT_EQ(judged("pedal.brake.free_play").verdict, Verdict::past);
  change_brake([](Pedal& brake) { brake.rod->free_play.reset(); });
  for (const char* name : {"pedal.brake.free_play", "pedal.brake.full_stroke"}) {
    const Finding& finding = judged(name);
    EXPECT_EQ(finding.verdict, Verdict::not_judged) << name;
    EXPECT_THAT(finding.why_not_judged, HasSubstr("pedals.pedals[0].rod.free_play_mm")) << name;
  }
  // What is short even without any free play is past.
  brake_.stroke_reached = 30.0;
  EXPECT_EQ(judged("pedal.brake.full_stroke").verdict, Verdict::past);
}

TEST_F(PedalFindings, ANegativeRatioIsPast) {
  with_booster(false);
  brake_.ratio_worst = -5.0;
  const Finding& ratio = judged("pedal.brake.ratio");
  EXPECT_EQ(ratio.verdict, Verdict::past);
  EXPECT_THAT(ratio.sentence, HasSubstr("wrong way round"));
  // Whatever the project allows.
  choose({"pedal.brake.ratio_manual", -10.0, 10.0, {}, {}, "", Standing::builder, {}});
  EXPECT_EQ(judged("pedal.brake.ratio").verdict, Verdict::past);
}

// The worst ratio that the foot meets is judged, not one of the three that are told.
TEST_F(PedalFindings, TheWorstRatioIsJudged) {
  with_booster(false);
  brake_.ratio_worst = 6.5;
  EXPECT_EQ(judged("pedal.brake.ratio").verdict, Verdict::past);
}

TEST_F(PedalFindings, SentenceAndVerdictAgreeWhateverLimitIsChosen) {
  brake_.use = PedalUse::clutch;
  choose({"pedal.release_stroke", 25.0, {}, {}, {}, "trial", Standing::builder, {}});
  brake_.stroke_reached = 28.0;
  const Finding& enough = judged("pedal.brake.release_stroke");
  EXPECT_EQ(enough.verdict, Verdict::within);
  EXPECT_EQ(enough.sentence,
            "Brake reaches 28.0 mm of the 36.0 mm that release wants before its own stop ends it; "
            "this project wants at least 25.0 mm.");
  choose({"pedal.release_stroke", 40.0, {}, {}, {}, "trial", Standing::builder, {}});
  brake_.stroke_reached = 38.0;
  const Finding& short_of_it = judged("pedal.brake.release_stroke");
  EXPECT_EQ(short_of_it.verdict, Verdict::past);
  EXPECT_EQ(short_of_it.sentence,
            "Brake reaches 38.0 mm of the 36.0 mm that release wants before its own stop ends it; "
            "this project wants at least 40.0 mm.");
}

// With one circuit lost a brake needs its cylinder's full stroke, whatever the project wants.
TEST_F(PedalFindings, ABrakesFullStrokeIsNoMatterOfChoice) {
  choose({"pedal.full_stroke", 25.0, {}, {}, {}, "trial", Standing::builder, {}});
  brake_.stroke_reached = 28.0;
  const Finding& stroke = judged("pedal.brake.full_stroke");
  EXPECT_EQ(stroke.verdict, Verdict::past);
  EXPECT_DOUBLE_EQ(*stroke.limit->least, 36.0);
}

TEST_F(PedalFindings, AFloorThatEndsTheStrokeIsOneFault) {
  brake_.pad_over_floor = -5.0;
  EXPECT_THAT(judged("pedal.brake.floor_gap").sentence, Not(HasSubstr("See ")));
  brake_.ends.insert(brake_.ends.begin(), {PedalEndKind::floor, 0.3, 80.0, 28.0});
  brake_.stroke_reached = 28.0;
  const Finding& gap = judged("pedal.brake.floor_gap");
  EXPECT_EQ(gap.verdict, Verdict::past);
  EXPECT_THAT(gap.sentence, HasSubstr("See \"full stroke of the brake\"."));
}

}  // namespace
}  // namespace tackbench
