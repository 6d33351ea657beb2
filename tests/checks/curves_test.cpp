// Curves against single poses of the truck, and against the plane linkage's own formulas.
#include "core/checks/curves.h"

#include <gtest/gtest.h>

#include <cmath>

#include "core/checks/turning.h"
#include "tests/support/bench_truck.h"

namespace tackbench {
namespace {

ControlReach wide(const Mechanism& mechanism) {
  return control_reach(mechanism, nullptr);
}

TEST(Curves, WheelAnglesAreThoseOfSinglePoses) {
  BenchTruck truck;
  truck.axle.road.wheelbase = 4000.0;
  const Mechanism mechanism = truck.mechanism();
  const std::vector<Curve> curves = wheel_angle_curves(mechanism, wide(mechanism), 31);
  ASSERT_EQ(curves.size(), 3U);
  const double distance = kingpin_distance(*mechanism.steering);
  int compared = 0;
  for (std::size_t i = 0; i < curves[0].x.size(); ++i) {
    Controls controls;
    controls.hand_wheel = curves[0].x[i];
    const Pose pose = solved_pose(mechanism, controls);
    ASSERT_EQ(pose.outcome == Outcome::solved, curves[0].y[i].has_value());
    if (!curves[0].y[i]) continue;
    ++compared;
    EXPECT_EQ(*curves[0].y[i], pose.steering.left.steer);
    EXPECT_EQ(*curves[1].y[i], pose.steering.right.steer);
    // cot outer - cot inner = c / L (exam texts on steering geometry; see turning.h).
    const double inner = controls.hand_wheel > 0.0 ? *curves[0].y[i] : -*curves[1].y[i];
    if (std::abs(inner) < 1e-3) continue;
    const double outer = controls.hand_wheel > 0.0 ? *curves[2].y[i] : -*curves[2].y[i];
    EXPECT_NEAR(1.0 / std::tan(outer) - 1.0 / std::tan(inner), distance / 4000.0, 1e-9);
  }
  EXPECT_GT(compared, 10);
}

TEST(Curves, WithoutAWheelbaseNothingIsWished) {
  BenchTruck truck;
  truck.axle.road.wheelbase.reset();
  const Mechanism mechanism = truck.mechanism();
  EXPECT_EQ(wheel_angle_curves(mechanism, wide(mechanism), 5).size(), 2U);
}

TEST(Curves, BumpAndRollSteerStartFromRideHeight) {
  const Mechanism mechanism = BenchTruck().mechanism();
  const Pose ride = solved_pose(mechanism, {});
  const auto bump = bump_steer_curves(mechanism, wide(mechanism), 17);
  ASSERT_EQ(bump.size(), 2U);
  EXPECT_EQ(bump[0].x.front(), -80.0);
  EXPECT_EQ(bump[0].x.back(), 80.0);
  EXPECT_NEAR(bump[0].y[8].value_or(1.0), 0.0, 1e-12);
  const auto roll = roll_steer_curves(mechanism, wide(mechanism), 9);
  ASSERT_EQ(roll.size(), 2U);
  EXPECT_NEAR(degrees_from_radians(roll[0].x.back()), 4.0, 1e-9);
  for (std::size_t i = 0; i < bump[0].x.size(); ++i) {
    Controls controls;
    controls.bump_left = controls.bump_right = bump[0].x[i];
    const Pose pose = solved_pose(mechanism, controls);
    ASSERT_TRUE(bump[1].y[i]);
    EXPECT_EQ(*bump[1].y[i], pose.steering.right.steer - ride.steering.right.steer);
  }
  for (std::size_t i = 0; i < roll[0].x.size(); ++i) {
    const Pose pose = solved_pose(mechanism, rolled(mechanism, {}, roll[0].x[i]));
    ASSERT_TRUE(roll[0].y[i]);
    EXPECT_EQ(*roll[0].y[i], pose.steering.left.steer - ride.steering.left.steer);
    EXPECT_NEAR(pose.axle.roll, roll[0].x[i], 1e-4);  // pitch of the axle enters in second order
  }
}

TEST(Curves, EffectiveAnglesAreTheSinglePosesLeverages) {
  const Mechanism mechanism = BenchTruck().mechanism();
  const auto curves = effective_angle_curves(mechanism, wide(mechanism), 11);
  ASSERT_EQ(curves.size(), 4U);
  EXPECT_EQ(curves[0].words, "drag link at the arm");
  for (std::size_t i = 0; i < curves[0].x.size(); ++i) {
    if (!curves[0].y[i]) continue;
    Controls controls;
    controls.hand_wheel = curves[0].x[i];
    const SteeringPose pose = solved_pose(mechanism, controls).steering;
    EXPECT_NEAR(std::sin(*curves[0].y[i]), pose.drag_link.from_leverage, 1e-12);
    EXPECT_NEAR(std::sin(*curves[1].y[i]), pose.drag_link.to_leverage, 1e-12);
    EXPECT_NEAR(std::sin(*curves[3].y[i]), pose.tie_rod.to_leverage, 1e-12);
  }
}

// Slider-crank by hand: x = r sin a + sqrt(l^2 - (r - r cos a)^2), ratio = pad radius / (dx/da).
TEST(Curves, PedalRatioIsTheSliderCranks) {
  const Mechanism mechanism = pedals_alone({bench_brake()}, std::nullopt);
  const auto curves = pedal_ratio_curves(mechanism, 0, 13);
  ASSERT_EQ(curves.size(), 1U);
  EXPECT_NEAR(curves[0].x.back(), radians_from_degrees(60.0), 1e-12);
  for (std::size_t i = 0; i < curves[0].x.size(); ++i) {
    const double a = curves[0].x[i];
    const double drop = 60.0 - 60.0 * std::cos(a);
    const double rate =
        60.0 * std::cos(a) - drop * 60.0 * std::sin(a) / std::sqrt(150.0 * 150.0 - drop * drop);
    ASSERT_TRUE(curves[0].y[i]);
    EXPECT_NEAR(*curves[0].y[i], 300.0 / rate, 1e-9);
  }
  EXPECT_TRUE(pedal_ratio_curves(mechanism, 1, 13).empty());
  EXPECT_TRUE(wheel_angle_curves(mechanism, wide(mechanism), 13).empty());
  EXPECT_TRUE(shaft_ratio_curves(mechanism, 13).empty());
}

// The tie rod opens before the box's right end is reached. Where the loop closes again further on,
// no hand gets there.
TEST(Curves, ALinkThatCannotCloseEndsTheCurveAndSaysWhy) {
  const Mechanism mechanism = BenchTruck().mechanism();
  ControlReach reach = wide(mechanism);
  reach.full_right = -80.0;
  const auto curves = wheel_angle_curves(mechanism, reach, 401);
  ASSERT_FALSE(curves.empty());
  const std::vector<double>& x = curves[0].x;
  bool closes_again = false;
  for (std::size_t i = 0; i < x.size(); ++i) {
    ASSERT_EQ(curves[0].early_ends.size(), 1U);
    const EarlyEnd& end = curves[0].early_ends.front();
    EXPECT_NE(end.why.find("tie rod"), std::string::npos) << end.why;
    for (const Curve& curve : curves) EXPECT_EQ(curve.y[i].has_value(), x[i] >= end.x) << x[i];
    Controls controls;
    controls.hand_wheel = x[i];
    const Outcome alone = solved_pose(mechanism, controls).outcome;
    if (x[i] >= end.x) {
      EXPECT_EQ(alone, Outcome::solved) << x[i];
    } else if (x[i] >= end.x - 1.5 * (x[1] - x[0])) {
      EXPECT_EQ(alone, Outcome::tie_rod_does_not_close) << x[i];
    } else {
      closes_again = closes_again || alone == Outcome::solved;
    }
  }
  EXPECT_TRUE(closes_again);
  EXPECT_FALSE(value_at(curves[0], -80.0).has_value());
  EXPECT_FALSE(value_at(curves[0], -81.0).has_value());
  EXPECT_TRUE(value_at(curves[0], 0.0).has_value());
}

TEST(Curves, BetweenTwoPlacesStandsTheStraightLine) {
  Curve curve;
  curve.x = {0.0, 2.0, 4.0};
  curve.y = {1.0, 5.0, std::nullopt};
  EXPECT_EQ(value_at(curve, 0.5), 2.0);
  EXPECT_EQ(value_at(curve, 2.0), 5.0);
  EXPECT_FALSE(value_at(curve, 3.0));
  EXPECT_FALSE(value_at(curve, -0.1));
}

TEST(ControlReach, EndsAtTheLocksOrAtTheBox) {
  const Mechanism mechanism = BenchTruck().mechanism();
  const ControlReach free = control_reach(mechanism, nullptr);
  EXPECT_FALSE(free.ends_at_locks);
  EXPECT_NEAR(free.full_left, hand_wheel_from_arm(mechanism, mechanism.steering->travel_left),
              1e-12);
  LockResult locks;
  locks.left.found = locks.right.found = true;
  locks.left.turns = 1.5;
  locks.right.turns = 2.0;
  const ControlReach ended = control_reach(mechanism, &locks);
  EXPECT_TRUE(ended.ends_at_locks);
  EXPECT_NEAR(ended.full_left, 3.0 * kPi, 1e-12);
  EXPECT_NEAR(ended.full_right, -4.0 * kPi, 1e-12);
  Controls controls;
  controls.hand_wheel = 20.0;
  controls.bump_left = -300.0;
  controls.pedals[1] = 2.0;
  const Controls held = held_within(ended, controls);
  EXPECT_EQ(held.hand_wheel, ended.full_left);
  EXPECT_EQ(held.bump_left, -80.0);
  EXPECT_EQ(held.pedals[1], 1.0);
}

}  // namespace
}  // namespace tackbench
