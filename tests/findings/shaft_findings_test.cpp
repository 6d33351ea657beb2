// Findings of shaft lines, most from results made up by hand.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "core/findings/all_findings.h"
#include "core/findings/builders.h"
#include "tests/support/shaft_line_plan.h"

namespace tackbench {
namespace {

using test::bent_chain;
using test::ShaftPlan;
using testing::HasSubstr;

Mechanism mechanism_of(const ShaftPlan& plan) {
  return compile(test::project_of(plan)).value();
}

// Three joints with bends of 30, 20 and 22 degrees, one slip, named as people name them.
ShaftPlan three_joints() {
  ShaftPlan plan = bent_chain({30.0, 20.0, 22.0}, {0.0, 40.0, 30.0});
  plan.joints[0].name = "Top joint";
  plan.joints[1].name = "Middle joint";
  plan.joints[2].name = "Box joint";
  plan.shafts[0].name = "Upper shaft";
  plan.shafts[1].name = "Lower shaft";
  plan.shafts[0].slip = SlipKind::double_d;
  return plan;
}

const Finding& named(const std::vector<Finding>& findings, const std::string& name) {
  const Finding* finding = finding_named(findings, name);
  EXPECT_NE(finding, nullptr) << name;
  static const Finding kNone;
  return finding ? *finding : kNone;
}

// Required table of the wandering-shaft check: 3 joints, 1 slip, no support: 2 free ways; one rod
// end on either shaft holds it, one at the first or last joint's centre does not.
TEST(ShaftFindings, ThreeJointsOneSlipNoSupportWanders) {
  const Mechanism mechanism = mechanism_of(three_joints());
  std::vector<Finding> findings;
  add_wander_findings(mechanism, wandering_shaft(*mechanism.shaft_line), findings);
  const Finding& wander = named(findings, "shaft.wander");
  EXPECT_EQ(wander.verdict, Verdict::past);
  EXPECT_EQ(wander.numbers.front().value, 2.0);
  EXPECT_THAT(wander.sentence, HasSubstr("free to wander 2 ways, most at Middle joint"));
  EXPECT_THAT(wander.sentence,
              HasSubstr("One rod end halfway along Upper shaft or Lower shaft holds it."));
  EXPECT_THAT(wander.sentence, HasSubstr("Top joint"));
  // The count by hand stands in the trace: 5 x 2 + 1 - 3 x 3 = 2.
  for (const TraceStep& step : wander.trace.steps) {
    for (const Quantity& each : step.results) {
      if (each.name == "count") {
        EXPECT_EQ(each.value, 2.0);
      }
    }
  }
}

TEST(ShaftFindings, AHeldLineIsWithin) {
  ShaftPlan plan = three_joints();
  plan.supports = {test::eye_at(0.5 * (plan.joints[1].centre + plan.joints[2].centre), 1)};
  plan.supports[0].name = "Rail eye";
  const Mechanism mechanism = mechanism_of(plan);
  std::vector<Finding> findings;
  add_wander_findings(mechanism, wandering_shaft(*mechanism.shaft_line), findings);
  EXPECT_EQ(named(findings, "shaft.wander").verdict, Verdict::within);
  EXPECT_EQ(named(findings, "shaft.support.rail_eye.play").verdict, Verdict::not_judged);
}

TEST(ShaftFindings, InLineIsLookedAtByHand) {
  const Mechanism mechanism = mechanism_of(three_joints());
  WanderingShaft result;
  result.free_ways = 2;
  result.in_line = true;
  std::vector<Finding> findings;
  add_wander_findings(mechanism, result, findings);
  EXPECT_EQ(named(findings, "shaft.wander").verdict, Verdict::not_judged);
  EXPECT_EQ(named(findings, "shaft.wander").why_not_judged, "in line: look by hand");
}

// One joint at 15 degrees has 6.9 % of ripple, at 20 degrees 12.4 %, at 21 degrees 13.8 %
// (1/cos b - cos b; trade rule: caution above 7 %, past above 12.5 %).
TEST(ShaftFindings, RippleOfOneJoint) {
  const auto verdict_at = [](double bend) {
    const Mechanism mechanism = mechanism_of(bent_chain({bend}, {0.0}));
    std::vector<Finding> findings;
    add_shaft_findings(mechanism, shaft_check(*mechanism.shaft_line), findings);
    return named(findings, "shaft.ripple").verdict;
  };
  EXPECT_EQ(verdict_at(15.0), Verdict::within);
  EXPECT_EQ(verdict_at(16.0), Verdict::close);
  EXPECT_EQ(verdict_at(20.0), Verdict::close);
  EXPECT_EQ(verdict_at(21.0), Verdict::past);
}

TEST(ShaftFindings, AJointsAngleIsJudgedByItsMakerOnly) {
  ShaftPlan plan = three_joints();
  plan.joints[0].angle_limit = radians_from_degrees(25.0);
  plan.joints[1].angle_limit = radians_from_degrees(25.0);
  const Mechanism mechanism = mechanism_of(plan);
  std::vector<Finding> findings;
  add_shaft_findings(mechanism, shaft_check(*mechanism.shaft_line), findings);
  EXPECT_EQ(named(findings, "shaft.joint.top_joint.angle").verdict, Verdict::past);
  EXPECT_EQ(named(findings, "shaft.joint.middle_joint.angle").verdict, Verdict::within);
  const Finding& unknown = named(findings, "shaft.joint.box_joint.angle");
  EXPECT_EQ(unknown.verdict, Verdict::not_judged);
  EXPECT_EQ(unknown.why_not_judged, "take the limit from the maker's sheet");
}

TEST(ShaftFindings, ASlipBelowOneAndAHalfDiametersIsPast) {
  const Mechanism mechanism = mechanism_of(three_joints());
  ShaftCheck result;
  SlipResult slip;
  slip.kind = SlipKind::double_d;
  slip.diameter = 20.0;
  slip.engagement = 32.0;
  slip.longest_change = 4.0;
  slip.least_engagement = 28.0;
  slip.wanted_engagement = 30.0;
  slip.wanted_is_common_practice = true;
  slip.least_slide_in = -1.0;
  result.slips = {slip};
  std::vector<Finding> findings;
  add_shaft_findings(mechanism, result, findings);
  const Finding& engagement = named(findings, "shaft.upper_shaft.engagement");
  EXPECT_EQ(engagement.verdict, Verdict::past);
  EXPECT_NEAR(engagement.numbers.front().value, 1.4, 1e-12);
  EXPECT_EQ(engagement.limit->standing, Standing::common_practice);
  EXPECT_EQ(named(findings, "shaft.upper_shaft.slip_left").verdict, Verdict::past);
}

TEST(ShaftFindings, PushBackWantsTheBuildersDistance) {
  const Mechanism mechanism = mechanism_of(three_joints());
  std::vector<Finding> findings;
  add_push_back_finding(mechanism, std::nullopt, findings);
  EXPECT_EQ(named(findings, "shaft.push_back").verdict, Verdict::not_judged);
  findings.clear();
  PushBack result;
  result.pushed = 150.0;
  result.whole_way = true;
  result.hand_wheel_rearward = 130.0;
  add_push_back_finding(mechanism, result, findings);
  const Finding& pushed = named(findings, "shaft.push_back");
  EXPECT_EQ(pushed.verdict, Verdict::past);  // 127 mm, from memory of the older rules
  EXPECT_EQ(pushed.limit->standing, Standing::memory);
  EXPECT_THAT(*pushed.caution, HasSubstr("no crash test"));
}

}  // namespace
}  // namespace tackbench
