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

// The same with an eye halfway along the lower shaft, which holds it.
ShaftPlan held_joints() {
  ShaftPlan plan = three_joints();
  plan.supports = {test::eye_at(0.5 * (plan.joints[1].centre + plan.joints[2].centre), 1)};
  plan.supports[0].name = "Rail eye";
  return plan;
}

// `side` mm square to the lower shaft.
void move_eye_aside(ShaftPlan& plan, double side) {
  const Vec3 along = (plan.joints[2].centre - plan.joints[1].centre).normalized();
  plan.supports[0].eye += side * square_to(along, Vec3::UnitZ());
}

std::vector<Finding> shaft_findings(const ShaftPlan& plan) {
  const Mechanism mechanism = mechanism_of(plan);
  const WanderingShaft wandering = wandering_shaft(*mechanism.shaft_line);
  std::vector<Finding> findings;
  add_wander_findings(mechanism, wandering, findings);
  add_shaft_findings(mechanism, shaft_check(*mechanism.shaft_line), wandering, findings);
  add_push_back_finding(mechanism, push_back(*mechanism.shaft_line), wandering, findings);
  return findings;
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
  EXPECT_THAT(wander.sentence, HasSubstr("Either shaft may move: Upper shaft or Lower shaft."));
  EXPECT_THAT(wander.sentence, HasSubstr("One rod end halfway along Upper shaft or halfway along "
                                         "Lower shaft holds it: any one of them will do."));
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
  const auto findings = shaft_findings(held_joints());
  EXPECT_EQ(named(findings, "shaft.wander").verdict, Verdict::within);
  EXPECT_EQ(named(findings, "shaft.support.rail_eye.play").verdict, Verdict::not_judged);
  EXPECT_EQ(named(findings, "shaft.support.rail_eye.off_line").verdict, Verdict::within);
}

// An eye far beside its shaft holds nothing that is drawn.
TEST(ShaftFindings, AnEyeBesideItsShaftLeavesTheWanderingOpen) {
  ShaftPlan plan = held_joints();
  move_eye_aside(plan, 2.0);
  EXPECT_EQ(named(shaft_findings(plan), "shaft.support.rail_eye.off_line").verdict, Verdict::close);
  EXPECT_EQ(named(shaft_findings(plan), "shaft.wander").verdict, Verdict::within);
  move_eye_aside(plan, 98.0);
  const auto findings = shaft_findings(plan);
  const Finding& beside = named(findings, "shaft.support.rail_eye.off_line");
  EXPECT_EQ(beside.verdict, Verdict::past);
  EXPECT_NEAR(beside.numbers.front().value, 100.0, 1e-9);
  const Finding& wander = named(findings, "shaft.wander");
  EXPECT_EQ(wander.verdict, Verdict::not_judged);
  EXPECT_THAT(wander.why_not_judged,
              HasSubstr("the eye of Rail eye stands 100.0 mm beside Lower shaft"));
  EXPECT_EQ(named(findings, "shaft.joint.middle_joint.angle").verdict, Verdict::not_judged);
  EXPECT_EQ(named(findings, "shaft.shake_fit").verdict, Verdict::not_judged);
  // What wanders with the eye's help wanders without it.
  plan.shafts[1].slip = SlipKind::spline;
  EXPECT_EQ(named(shaft_findings(plan), "shaft.wander").verdict, Verdict::past);
}

// Two joints with a slip are held; drawn 10 mm beside the box's axis they are not built so.
TEST(ShaftFindings, AJointBesideTheBoxInputsAxisIsPast) {
  ShaftPlan plan = bent_chain({20.0, 20.0}, {0.0, 180.0});
  plan.shafts[0].slip = SlipKind::spline;
  Project project = test::project_of(plan);
  const auto verdict = [&](const char* name) {
    const Mechanism mechanism = compile(project).value();
    const auto findings = all_findings(mechanism, run_checks(mechanism));
    return named(findings, name).verdict;
  };
  EXPECT_EQ(verdict("shaft.box_end.off_axis"), Verdict::within);
  EXPECT_EQ(verdict("shaft.wander"), Verdict::within);
  auto box = std::make_shared<SteeringBoxStation>(*project.steering_box);
  box->input_end.mm += 10.0 * Vec3::UnitY();  // the chain lies in the X-Z plane
  project.steering_box = box;
  EXPECT_EQ(verdict("shaft.box_end.off_axis"), Verdict::past);
  EXPECT_EQ(verdict("shaft.column_end.off_axis"), Verdict::within);
  EXPECT_EQ(verdict("shaft.wander"), Verdict::not_judged);
}

// The plan's column ends 40 before the first joint: a yoke 25 deep with 30 of bore grips 15 of it.
TEST(ShaftFindings, AShaftsEndBeforeTheClampsBoltIsPast) {
  ShaftPlan plan = bent_chain({20.0, 20.0}, {0.0, 180.0});
  plan.shafts[0].slip = SlipKind::spline;
  const Finding half = named(shaft_findings(plan), "shaft.column_end.grip");
  EXPECT_NEAR(half.numbers.front().value, 0.5, 1e-12);
  EXPECT_EQ(half.verdict, Verdict::close);
  plan.joints[0].yoke_depth = 24.0;  // 14 of 30
  EXPECT_EQ(named(shaft_findings(plan), "shaft.column_end.grip").verdict, Verdict::past);
  plan.joints[0].yoke_depth = 33.0;  // 23 of 30
  EXPECT_EQ(named(shaft_findings(plan), "shaft.column_end.grip").verdict, Verdict::within);
  plan.joints[0].yoke_depth = 5.0;
  const auto findings = shaft_findings(plan);
  EXPECT_EQ(named(findings, "shaft.column_end.grip").numbers.front().value, 0.0);
  EXPECT_THAT(named(findings, "shaft.column_end.grip").sentence, HasSubstr("grips nothing"));
  EXPECT_EQ(named(findings, "shaft.column_end.insertion").verdict, Verdict::within);
  plan.joints[0].grip_length = 0.0;
  EXPECT_THAT(named(shaft_findings(plan), "shaft.column_end.grip").why_not_judged,
              HasSubstr("shaft_line.joints[0].grip_length_mm"));
}

// A line that wanders stands at one of many places: only what is past already is said of it.
TEST(ShaftFindings, WhatIsReadOffAWanderingLineIsNotJudged) {
  ShaftPlan plan = three_joints();
  plan.joints[1].angle_limit = radians_from_degrees(25.0);
  plan.joints[0].angle_limit = radians_from_degrees(25.0);
  plan.shafts[0].engagement = 60.0;
  plan.shafts[0].slide_in_left = 40.0;
  plan.push_back = 40.0;
  const auto findings = shaft_findings(plan);
  for (const char* name : {"shaft.joint.middle_joint.angle", "shaft.upper_shaft.engagement",
                           "shaft.upper_shaft.slip_left", "shaft.shake_fit", "shaft.push_back"}) {
    EXPECT_EQ(named(findings, name).verdict, Verdict::not_judged) << name;
    EXPECT_THAT(named(findings, name).why_not_judged,
                HasSubstr("Middle joint may wander: what is drawn is one of many places"))
        << name;
  }
  EXPECT_EQ(named(findings, "shaft.joint.top_joint.angle").verdict, Verdict::past);
  EXPECT_EQ(named(findings, "shaft.upper_shaft.length").verdict, Verdict::within);
  // Held, the same numbers are judged.
  ShaftPlan held = held_joints();
  held.joints[1].angle_limit = radians_from_degrees(25.0);
  held.cab.shake.left = 1.0;
  EXPECT_EQ(named(shaft_findings(held), "shaft.joint.middle_joint.angle").verdict, Verdict::within);
  EXPECT_EQ(named(shaft_findings(held), "shaft.shake_fit").verdict, Verdict::within);
}

// One way of setting them all, not two that each would need the other.
TEST(ShaftFindings, ClockingTellsHowToSetTheForksTogether) {
  ShaftPlan plan = held_joints();
  plan.shafts[0].fork_offset = radians_from_degrees(50.0);
  for (Shaft& shaft : plan.shafts) shaft.section.kind = SectionKind::round;
  const auto findings = shaft_findings(plan);
  const ClockingResult best = clocking(*mechanism_of(plan).shaft_line);
  const std::string wanted = "Set Upper shaft to " + shown(best.shafts[0].nearest, Unit::degree) +
                             " and Lower shaft to " + shown(best.shafts[1].nearest, Unit::degree) +
                             " together: " + shown(best.ripple_nearest, Unit::percent) +
                             " of ripple is left.";
  EXPECT_THAT(named(findings, "shaft.upper_shaft.clocking").sentence, HasSubstr(wanted));
  EXPECT_THAT(named(findings, "shaft.lower_shaft.clocking").sentence, HasSubstr(wanted));
  // A double-D stays as its maker cut it, and what other ends would leave is said.
  ShaftPlan cut = plan;
  for (Shaft& shaft : cut.shafts) shaft.section.kind = SectionKind::double_d;
  EXPECT_THAT(named(shaft_findings(cut), "shaft.upper_shaft.clocking").sentence,
              HasSubstr("Ends that go on at any angle would leave " +
                        shown(best.ripple_ideal, Unit::percent)));
  // Set so, there is nothing left to set.
  plan.shafts[0].fork_offset = best.shafts[0].nearest;
  plan.shafts[1].fork_offset = best.shafts[1].nearest;
  EXPECT_THAT(named(shaft_findings(plan), "shaft.upper_shaft.clocking").sentence,
              HasSubstr("the best that its ends allow"));
}

// A shake that nobody gave is no shake of nothing.
TEST(ShaftFindings, ACabThatNeverShakesSaysNothingOfItsShake) {
  const auto findings = shaft_findings(held_joints());
  const Finding& fit = named(findings, "shaft.shake_fit");
  EXPECT_EQ(fit.verdict, Verdict::not_judged);
  EXPECT_THAT(fit.why_not_judged, HasSubstr("cab.shake"));
}

// Any place that binds is past, however little is missing and where only a joint folds.
TEST(ShaftFindings, AnyPlaceThatBindsIsPast) {
  ShaftPlan plan = held_joints();
  plan.cab.shake.left = 1.0;
  const Mechanism mechanism = mechanism_of(plan);
  const auto verdict = [&](const ShakeMisfit& misfit) {
    ShaftCheck result;
    result.misfit = misfit;
    std::vector<Finding> findings;
    add_shaft_findings(mechanism, result, WanderingShaft{}, findings);
    return named(findings, "shaft.shake_fit").verdict;
  };
  EXPECT_EQ(verdict({}), Verdict::within);
  EXPECT_EQ(verdict({1, 0, 0.002, Vec3::UnitX()}), Verdict::past);
  EXPECT_EQ(verdict({1, 1, 0.0, Vec3::UnitX()}), Verdict::past);
}

// Couple over span: 50 N m bent by 30 degrees push an eye 120 from the joint by 25 000 / 120 N
// (T sin b; SAE AE-7, from memory). The rim force makes the torque: 2 x 50 000 / 450 N at 450.
TEST(ShaftFindings, CouplesLoadTheSupport) {
  ShaftPlan plan = bent_chain({30, 0, 0}, {0, 0, 0});
  plan.shafts[1].slip = SlipKind::spline;
  plan.supports = {test::eye_at(120.0 * test::sloping(30), 0)};
  plan.supports[0].name = "Rail eye";
  const Mechanism mechanism = mechanism_of(plan);
  const auto load = [&](std::optional<double> torque) {
    std::vector<Finding> findings;
    add_shaft_findings(mechanism, shaft_check(*mechanism.shaft_line, torque),
                       wandering_shaft(*mechanism.shaft_line), findings);
    return named(findings, "shaft.support.rail_eye.load");
  };
  const Finding given = load(50'000.0);
  EXPECT_NEAR(given.numbers.front().value, 25'000.0 / 120.0, 0.05);
  EXPECT_THAT(given.why_not_judged, HasSubstr("take the limit from the maker's sheet"));
  EXPECT_THAT(load(std::nullopt).why_not_judged, HasSubstr("drag_link.forces.two_handed_rim_n"));
}

TEST(ShaftFindings, WhatASlipStillNeedsIsAskedFor) {
  const auto findings = shaft_findings(held_joints());
  EXPECT_THAT(named(findings, "shaft.upper_shaft.engagement").why_not_judged,
              HasSubstr("shaft_line.shafts[0].engagement_mm"));
  EXPECT_THAT(named(findings, "shaft.upper_shaft.slip_left").why_not_judged,
              HasSubstr("shaft_line.shafts[0].slide_in_left_mm"));
}

TEST(ShaftFindings, AShaftLineWithoutColumnOrBoxWaits) {
  Project project = test::project_of(three_joints());
  project.column = nullptr;
  const Mechanism mechanism = compile(project).value();
  const auto findings = all_findings(mechanism, run_checks(mechanism));
  for (const char* name : {"shaft.wander", "shaft.push_back", "shaft.box_end.insertion"}) {
    EXPECT_EQ(named(findings, name).verdict, Verdict::not_judged) << name;
    EXPECT_EQ(named(findings, name).why_not_judged, "the shaft line waits for column") << name;
  }
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
    return named(shaft_findings(bent_chain({bend}, {0.0})), "shaft.ripple").verdict;
  };
  EXPECT_EQ(verdict_at(15.0), Verdict::within);
  EXPECT_EQ(verdict_at(16.0), Verdict::close);
  EXPECT_EQ(verdict_at(20.0), Verdict::close);
  EXPECT_EQ(verdict_at(21.0), Verdict::past);
}

TEST(ShaftFindings, AJointsAngleIsJudgedByItsMakerOnly) {
  ShaftPlan plan = held_joints();
  plan.joints[0].angle_limit = radians_from_degrees(25.0);
  plan.joints[1].angle_limit = radians_from_degrees(25.0);
  const auto findings = shaft_findings(plan);
  EXPECT_EQ(named(findings, "shaft.joint.top_joint.angle").verdict, Verdict::past);
  EXPECT_EQ(named(findings, "shaft.joint.middle_joint.angle").verdict, Verdict::within);
  const Finding& unknown = named(findings, "shaft.joint.box_joint.angle");
  EXPECT_EQ(unknown.verdict, Verdict::not_judged);
  EXPECT_EQ(unknown.why_not_judged,
            "take the limit from the maker's sheet: fill in angle_limit_deg of the joint");
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
  add_shaft_findings(mechanism, result, WanderingShaft{}, findings);
  const Finding& engagement = named(findings, "shaft.upper_shaft.engagement");
  EXPECT_EQ(engagement.verdict, Verdict::past);
  EXPECT_NEAR(engagement.numbers.front().value, 1.4, 1e-12);
  EXPECT_EQ(engagement.limit->standing, Standing::common_practice);
  EXPECT_EQ(named(findings, "shaft.upper_shaft.slip_left").verdict, Verdict::past);
}

}  // namespace
}  // namespace tackbench
