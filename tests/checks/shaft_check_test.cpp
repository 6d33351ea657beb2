#include "core/checks/shaft_check.h"

#include <gtest/gtest.h>

#include <cmath>

#include "core/basics/units.h"
#include "tests/support/shaft_line_plan.h"

namespace tackbench::test {
namespace {

constexpr double kDegree = kRadiansPerDegree;

// Two joints 400 apart along X, all in line, a spline between.
ShaftPlan straight_plan() {
  ShaftPlan plan;
  plan.joints = {joint_at(Vec3::Zero()), joint_at(Vec3(400, 0, 0))};
  plan.shafts = {shaft_with(SlipKind::spline)};
  plan.shafts[0].section.diameter = 20.0;
  plan.shafts[0].engagement = 55.0;
  plan.shafts[0].slide_in_left = 30.0;
  plan.joints[0].yoke_depth = 24.0;
  plan.joints[1].yoke_depth = 26.0;
  return plan;
}

TEST(ShaftCheck, LengthsByHand) {
  const ShaftCheck check = shaft_check(line_of(straight_plan()));
  ASSERT_EQ(check.lengths.size(), 1u);
  EXPECT_NEAR(check.lengths[0].centre_to_centre, 400.0, 1e-12);
  EXPECT_NEAR(check.lengths[0].cut_length, 400.0 - 24.0 - 26.0, 1e-12);
  EXPECT_NEAR(check.lengths[0].both_pieces, 350.0 + 55.0, 1e-12);
  EXPECT_NEAR(check.lengths[0].grips, 60.0, 1e-12);
}

// The plan puts the column's end 40 before the first joint, the box's 40 after the last.
TEST(ShaftCheck, EndsInTheirYokes) {
  ShaftPlan plan = straight_plan();
  plan.joints[1].yoke_depth = 45.0;  // the box's end enters the cross by 5
  const ShaftCheck check = shaft_check(line_of(plan));
  ASSERT_EQ(check.ends.size(), 2u);
  EXPECT_FALSE(check.ends[0].at_box);
  EXPECT_NEAR(check.ends[0].distance, 40.0, 1e-12);
  EXPECT_NEAR(check.ends[0].clear, 16.0, 1e-12);
  EXPECT_NEAR(check.ends[0].gripped, 14.0, 1e-12);
  EXPECT_TRUE(check.ends[1].at_box);
  EXPECT_NEAR(check.ends[1].clear, -5.0, 1e-12);
  EXPECT_NEAR(check.ends[1].gripped, 30.0, 1e-12);
  EXPECT_NEAR(check.ends[0].off_axis, 0.0, 1e-12);
}

// Cab forward 10: the shaft shortens by 10. Cab rearward 15 with 6 up: hypot(415, 6).
TEST(ShaftCheck, SlipAndAnglesOverTheShake) {
  ShaftPlan plan = straight_plan();
  plan.cab.shake.forward = 10.0;
  plan.cab.shake.rearward = 15.0;
  plan.cab.shake.up = 6.0;
  const ShaftCheck check = shaft_check(line_of(plan));
  ASSERT_EQ(check.slips.size(), 1u);
  const SlipResult& slip = check.slips[0];
  EXPECT_NEAR(slip.longest_change, std::hypot(415.0, 6.0) - 400.0, 1e-9);
  EXPECT_EQ(slip.longest_shake_mm, Vec3(-15, 0, 6));
  EXPECT_NEAR(slip.shortest_change, -10.0, 1e-9);
  EXPECT_NEAR(*slip.least_engagement, 55.0 - slip.longest_change, 1e-12);
  EXPECT_NEAR(*slip.least_slide_in, 20.0, 1e-9);
  EXPECT_TRUE(slip.wanted_is_common_practice);
  EXPECT_NEAR(slip.wanted_engagement, 30.0, 1e-12);  // 1.5 diameters
  ASSERT_EQ(check.joints.size(), 2u);
  EXPECT_NEAR(check.joints[0].worst, std::atan2(6.0, 390.0), 1e-9);
  EXPECT_EQ(check.joints[0].worst_shake_mm, Vec3(10, 0, 6));
  EXPECT_EQ(check.misfit.places, 0);
}

TEST(ShaftCheck, WithoutSlipTheShakeDoesNotFit) {
  ShaftPlan plan = straight_plan();
  plan.shafts[0].slip = SlipKind::none;
  plan.cab.shake.rearward = 15.0;
  const ShaftCheck check = shaft_check(line_of(plan));
  EXPECT_TRUE(check.slips.empty());
  EXPECT_EQ(check.misfit.places, 1);
  EXPECT_NEAR(check.misfit.worst, 15.0, 1e-9);
}

// The cab comes so far forward that the slip shaft would have to point back at the column: no
// length is missing, and no joint turns there.
TEST(ShaftCheck, AShakeThatFoldsAJointIsCounted) {
  ShaftPlan plan = straight_plan();
  EXPECT_EQ(shaft_check(line_of(plan)).misfit.folds, 0);
  plan.joints[1].centre = Vec3(20, 0, 0);
  plan.cab.shake.forward = 30.0;  // the first joint passes the second, 20 ahead of it
  const ShaftCheck check = shaft_check(line_of(plan));
  EXPECT_EQ(check.misfit.places, 1);
  EXPECT_EQ(check.misfit.folds, 1);
}

TEST(ShaftCheck, SupportTiltAndSleeve) {
  ShaftPlan plan = straight_plan();
  plan.joints.push_back(joint_at(Vec3(800, 0, 0)));
  plan.shafts.insert(plan.shafts.begin(), shaft_with(SlipKind::none));
  plan.supports = {eye_at(Vec3(200, 0, 3), 0)};
  plan.supports[0].base = Vec3(200, 0, -60);
  plan.supports[0].bore = 25.0;
  plan.supports[0].width = 31.0;
  plan.cab.shake.up = 10.0;
  const ShaftCheck check = shaft_check(line_of(plan));
  ASSERT_EQ(check.supports.size(), 1u);
  const SupportResult& support = check.supports[0];
  // The first shaft turns about the eye's place on its line, 200 from the joint that rises by 10.
  EXPECT_NEAR(support.worst_tilt, std::atan2(10.0, 200.0), 1e-6);
  EXPECT_NEAR(support.off_line, 3.0, 1e-12);
  EXPECT_NEAR(support.height_above_base, 63.0, 1e-12);
  EXPECT_NEAR(support.sleeve_bore, 19.05, 1e-12);
  EXPECT_NEAR(support.sleeve_outside, 25.0, 1e-12);
  EXPECT_NEAR(support.sleeve_length, 31.0, 1e-12);
  EXPECT_NEAR(support.to_hand_cross, 200.0, 1e-9);
  EXPECT_NEAR(support.to_road_cross, 200.0, 1e-9);
}

TEST(ShaftCheck, NothingWithoutJoints) {
  const ShaftCheck check = shaft_check(line_of(ShaftPlan{}));
  EXPECT_TRUE(check.joints.empty());
  EXPECT_TRUE(check.ends.empty());
  EXPECT_EQ(check.ripple.ripple, 0.0);
  EXPECT_FALSE(check.clocking.matters);
}

// A double joint that is not centred counts both its crosses.
TEST(ShaftCheck, DoubleJointCountsBothCrosses) {
  ShaftPlan plan = bent_chain({28, 15}, {0, 60});
  plan.joints[0].kind = JointKind::double_joint;
  const ShaftCheck check = shaft_check(line_of(plan));
  ASSERT_EQ(check.joints.size(), 2u);
  EXPECT_NEAR(check.joints[0].as_drawn, 28.0 * kDegree, 1e-12);
  EXPECT_FALSE(check.joints[0].held);  // no slip: two joints and one more in a row
}

// 50 N m at 30 degrees: 28.87 on the driving, 25.00 N m on the driven shaft (T tan b and T sin b;
// SAE AE-7, from memory; computed).
TEST(SecondaryCouples, PeaksOfOneJoint) {
  const CouplesResult couples = secondary_couples(line_of(bent_chain({30}, {0})), 50'000.0);
  ASSERT_EQ(couples.crosses.size(), 1u);
  EXPECT_NEAR(couples.crosses[0].hand_side, 28'870.0, 5.0);
  EXPECT_NEAR(couples.crosses[0].road_side, 25'000.0, 2.0);
  EXPECT_TRUE(couples.torque_given);
  EXPECT_NEAR(secondary_couples(line_of(bent_chain({30}, {0})), std::nullopt).crosses[0].hand_side,
              std::tan(30.0 * kDegree), 1e-4);
}

// Support load = couple / span: the first shaft stands between the column's joint and an eye 120
// away; beyond the eye a slip shaft in line can take no side force.
TEST(SecondaryCouples, SupportLoadIsCoupleOverSpan) {
  ShaftPlan plan = bent_chain({30, 0, 0}, {0, 0, 0});
  plan.shafts[1].slip = SlipKind::spline;
  const Vec3 along = sloping(30);
  plan.supports = {eye_at(120.0 * along, 0)};
  const CouplesResult couples = secondary_couples(line_of(plan), 50'000.0);
  ASSERT_EQ(couples.supports.size(), 1u);
  EXPECT_TRUE(couples.supports[0].known);
  EXPECT_NEAR(couples.supports[0].sideways, 25'000.0 / 120.0, 0.05);
  // Free, or held twice: statics does not say.
  plan.supports.clear();
  plan.supports = {eye_at(Vec3::Zero(), 0)};
  EXPECT_FALSE(secondary_couples(line_of(plan), 50'000.0).supports[0].known);
}

}  // namespace
}  // namespace tackbench::test
