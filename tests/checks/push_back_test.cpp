#include "core/checks/push_back.h"

#include <gtest/gtest.h>

#include <cmath>
#include <memory>

#include "core/basics/units.h"
#include "tests/support/shaft_line_plan.h"

namespace tackbench::test {
namespace {

ShaftLine with_stroke(ShaftLine line, double stroke) {
  line.column.collapse_stroke = stroke;
  return line;
}

TEST(PushBack, NotJudgedWithoutADistance) {
  EXPECT_FALSE(push_back(line_of(bent_chain({20, 20}, {0, 180}))).has_value());
  ShaftPlan none;
  none.push_back = 100.0;
  EXPECT_FALSE(push_back(line_of(none)).has_value());
}

// All along X: 60 of slide goes first, the column gives the other 40, its stroke takes 30.
TEST(PushBack, SlideThenStrokeThenHandWheel) {
  ShaftPlan plan;
  plan.joints = {joint_at(Vec3::Zero()), joint_at(Vec3(400, 0, 0))};
  plan.shafts = {shaft_with(SlipKind::spline)};
  plan.shafts[0].slide_in_left = 60.0;
  plan.push_back = 100.0;
  const std::optional<PushBack> push = push_back(with_stroke(line_of(plan), 30.0));
  ASSERT_TRUE(push);
  EXPECT_TRUE(push->whole_way);
  EXPECT_FALSE(push->folds);
  EXPECT_EQ(push->slides_closed, std::vector<int>{0});
  EXPECT_NEAR(push->column_driven, 40.0, 1e-6);
  EXPECT_NEAR(push->collapse_used, 30.0, 1e-9);
  EXPECT_NEAR(push->hand_wheel_moves, 10.0, 1e-6);
  EXPECT_NEAR(push->hand_wheel_rearward, 10.0, 1e-6);
  EXPECT_NEAR(push->steps.back().slide_used[0], 60.0, 1e-6);
  EXPECT_EQ(push->steps.front().pushed, 0.0);
  EXPECT_EQ(push->steps.back().pushed, 100.0);
}

// Two joints without slip, the shaft sloping: the column's end must stay 400 from the box's joint.
TEST(PushBack, ARigidShaftDrivesTheColumn) {
  ShaftPlan plan;
  const Vec3 last = 400.0 * sloping(20);
  plan.joints = {joint_at(Vec3::Zero()), joint_at(last)};
  plan.shafts = {shaft_with(SlipKind::none)};
  plan.push_back = 50.0;
  const std::optional<PushBack> push = push_back(line_of(plan));
  ASSERT_TRUE(push);
  EXPECT_TRUE(push->whole_way);
  EXPECT_NEAR(push->column_driven, 50.0, 1e-6);  // column and push both along X: it moves bodily
  // A column 30 degrees steeper moves by the root of |last - push + s axis| = 400.
  plan.column_axis = sloping(30);
  const std::optional<PushBack> steep = push_back(line_of(plan));
  ASSERT_TRUE(steep);
  const Vec3 apart = last - Vec3(50, 0, 0);
  const double along = apart.dot(plan.column_axis);
  const double expected = -along + std::sqrt(along * along - apart.squaredNorm() + 400.0 * 400.0);
  EXPECT_NEAR(steep->column_driven, expected, 1e-6);
  EXPECT_NEAR(steep->hand_wheel_rearward, expected * std::cos(radians_from_degrees(30.0)), 1e-6);
}

// Three joints with nothing to hold the middle one: it folds there and leaves the hand wheel be.
TEST(PushBack, AFreeChainFolds) {
  ShaftPlan plan;
  plan.joints = {joint_at(Vec3::Zero()), joint_at(Vec3(300, 0, -60)), joint_at(Vec3(600, 0, -60))};
  plan.shafts = {shaft_with(SlipKind::none), shaft_with(SlipKind::none)};
  plan.joints[1].angle_limit = radians_from_degrees(35.0);
  plan.push_back = 60.0;
  const std::optional<PushBack> push = push_back(line_of(plan));
  ASSERT_TRUE(push);
  EXPECT_TRUE(push->whole_way);
  EXPECT_TRUE(push->folds);
  EXPECT_EQ(push->folds_at_joint, 1);
  // It passes its limit on the way: where the same law gives 35 degrees.
  ASSERT_TRUE(push->limit_reached_at);
  const double a_long = std::hypot(300.0, 60.0);
  const double at_limit = std::sqrt(a_long * a_long + 300.0 * 300.0 +
                                    2.0 * a_long * 300.0 * std::cos(*plan.joints[1].angle_limit));
  EXPECT_NEAR(*push->limit_reached_at, 600.0 - std::sqrt(at_limit * at_limit - 60.0 * 60.0), 1.0);
  EXPECT_NEAR(push->column_driven, 0.0, 1e-9);
  // The law of cosines on the two shafts and what is left between their ends.
  const double a = std::hypot(300.0, 60.0);
  const double c = std::hypot(540.0, 60.0);
  const double inside = std::acos((a * a + 300.0 * 300.0 - c * c) / (2.0 * a * 300.0));
  EXPECT_NEAR(push->fold_angle, kPi - inside, 1e-6);
  // A chain in line folds too.
  plan.joints[1].centre.z() = plan.joints[2].centre.z() = 0.0;
  const std::optional<PushBack> straight = push_back(line_of(plan));
  ASSERT_TRUE(straight);
  EXPECT_TRUE(straight->folds);
  EXPECT_NEAR(straight->column_driven, 0.0, 1.0);
}

// A lone joint can only follow along the column's own axis.
TEST(PushBack, ALoneJointSlidesTheColumnOrNothing) {
  ShaftPlan plan = bent_chain({20}, {0});
  plan.push_back = 30.0;
  EXPECT_NEAR(push_back(line_of(plan))->column_driven, 30.0, 1e-9);
  plan.column_axis = sloping(10);
  EXPECT_FALSE(push_back(line_of(plan))->whole_way);
  EXPECT_EQ(push_back(line_of(plan))->pushed, 0.0);
}

// A box that goes away from the column pulls nothing out of it: without slip it cannot go.
TEST(PushBack, NothingIsPulledOutOfTheColumn) {
  ShaftPlan plan;
  plan.column_axis = -Vec3::UnitX();  // the column stands ahead of the box
  plan.box_axis = -Vec3::UnitX();
  plan.joints = {joint_at(Vec3(400, 0, 0)), joint_at(Vec3::Zero())};
  plan.shafts = {shaft_with(SlipKind::none)};
  plan.push_back = 30.0;
  const std::optional<PushBack> push = push_back(line_of(plan));
  ASSERT_TRUE(push);
  EXPECT_FALSE(push->whole_way);
  EXPECT_EQ(push->hand_wheel_moves, 0.0);
}

}  // namespace
}  // namespace tackbench::test
