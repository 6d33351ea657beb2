// Findings of pedals from results made up by hand.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "core/findings/all_findings.h"
#include "core/findings/builders.h"
#include "tests/support/random_truck.h"

namespace tackbench {
namespace {

class PedalFindings : public testing::Test {
 protected:
  PedalFindings() : mechanism_(compile(random_truck(7)).value()) {
    brake_.name = "brake";
    brake_.use = PedalUse::brake;
    brake_.stroke_wanted = 36.0;
    brake_.ratio_rest = 5.6;
    brake_.ratio_middle = 5.2;
    brake_.ratio_full = 4.9;
    brake_.ends = {{PedalEndKind::own_stop, 0.4, 110.0, 38.0}};
    brake_.stroke_reached = 38.0;
    brake_.floor_known = false;
  }
  const Finding& judged(const std::string& name) {
    findings_.clear();
    add_pedal_findings(mechanism_, {brake_}, findings_);
    const Finding* finding = finding_named(findings_, name);
    EXPECT_NE(finding, nullptr) << name;
    static const Finding kNone;
    return finding ? *finding : kNone;
  }
  void with_booster(bool booster) {
    Project project = mechanism_.project;
    auto pedals = std::make_shared<PedalsStation>(*project.pedals);
    pedals->pedals[0].rod->booster_gain.reset();
    if (booster) pedals->pedals[0].rod->booster_gain = 4.0;
    project.pedals = pedals;
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
  EXPECT_EQ(stroke.why_not_judged, "take the limit from the maker's sheet");
}

// A brake supplier's general rule: at most 6 to 1 by hand, 4 to 1 with a booster.
TEST_F(PedalFindings, RatioRuleDependsOnTheBooster) {
  with_booster(false);
  EXPECT_EQ(judged("pedal.brake.ratio").verdict, Verdict::within);
  with_booster(true);
  EXPECT_EQ(judged("pedal.brake.ratio").verdict, Verdict::past);
}

}  // namespace
}  // namespace tackbench
