// Ackermann's condition and turning circles against published and independently computed values.
#include <gtest/gtest.h>

#include <cmath>

#include "core/basics/units.h"
#include "core/checks/turning.h"
#include "core/mechanism/solve.h"
#include "tests/support/bench_truck.h"

namespace tackbench {
namespace {

double deg(double radians) {
  return degrees_from_radians(radians);
}
double rad(double degrees) {
  return radians_from_degrees(degrees);
}

struct IdealCase {
  double pivots, wheelbase, inner, outer;
};

// Source: cot(outer) - cot(inner) = c / L, three exam texts on steering geometry; the angles are
// computed from it.
TEST(Ackermann, OuterAngleForInner) {
  const IdealCase cases[] = {
      {1600, 3300, 35, 27.597874}, {1200, 2700, 40, 31.432146}, {1750, 4200, 40, 31.870376},
      {1750, 4200, 45, 35.217593}, {1250, 2800, 30, 24.656817},
  };
  for (const IdealCase& each : cases)
    EXPECT_NEAR(deg(ideal_outer_steer(rad(each.inner), each.pivots, each.wheelbase)), each.outer,
                1e-6);
  // c = 1684 in place of 1600: the distance taken on the ground instead of at hub height.
  EXPECT_NEAR(deg(ideal_outer_steer(rad(35), 1684, 3300)), 27.288, 5e-4);
  EXPECT_EQ(ideal_outer_steer(0.0, 1600, 3300), 0.0);
}

// Source: a truck's shop manual of the 1940s: one wheel at 20 degrees, the other at 23 (2 either
// way), which is c/L = 0.39163.
TEST(Ackermann, ShopManualToeOutOnTurns) {
  EXPECT_NEAR(deg(ideal_outer_steer(rad(23), 0.39163, 1.0)), 20.0, 1e-3);
}

// Source: (inner - outer) / (inner - ideal outer) at the same inner angle; the definition varies.
TEST(Ackermann, Percentage) {
  const auto fraction = ackermann_fraction(rad(40), rad(34), 1750, 4200);
  ASSERT_TRUE(fraction);
  EXPECT_NEAR(100.0 * *fraction, 73.80, 0.005);
  EXPECT_FALSE(ackermann_fraction(0.0, 0.0, 1750, 4200));
  EXPECT_NEAR(*ackermann_fraction(rad(40), rad(31.870376), 1750, 4200), 1.0, 1e-7);
}

// Upright kingpins 1250 apart, tie rod 1200, arms 150, as in an exam question (dimensions read;
// angles computed): the arms stand asin((c - rod) / (2 arm)) = 9.594068 degrees inward.
TEST(Ackermann, SteeringTrapezoid) {
  BenchTruck truck;
  truck.axle.track = 1450.0;
  KnuckleSide& knuckle = truck.axle.left_knuckle;
  knuckle.kingpin_inclination = 0.0;
  knuckle.caster = 0.0;
  knuckle.kingpin_point.mm = Vec3(0.0, 625.0, -250.0);
  const double inward = std::asin((1250.0 - 1200.0) / (2.0 * 150.0));
  EXPECT_NEAR(deg(inward), 9.594068, 1e-6);
  knuckle.tie_rod_ball.mm =
      Vec3(-150.0 * std::cos(inward), 625.0 - 150.0 * std::sin(inward), -250.0);
  truck.link.knuckle_ball.mm = Vec3(0.0, 440.0, -190.0);
  const Mechanism mechanism = truck.mechanism();
  EXPECT_NEAR(mechanism.steering->tie_rod.length, 1200.0, 1e-9);
  EXPECT_NEAR(kingpin_distance(*mechanism.steering), 1250.0, 1e-9);

  const Placement<Chassis, Axle> axle = chassis_from_axle(*mechanism.suspension, {});
  SteeringPose pose = blank_pose(mechanism).steering;
  const double expected[][2] = {
      {5, 4.924076}, {10, 9.697838}, {20, 18.780865}, {30, 27.167219}, {40, 34.681055}};
  for (const auto& [inner, outer] : expected) {
    const auto arm = arm_from_swivel(*mechanism.steering, axle, rad(inner));
    ASSERT_TRUE(arm);
    ASSERT_EQ(solve_steering(*mechanism.steering, axle, *arm, pose), Outcome::solved);
    EXPECT_NEAR(deg(pose.left.steer), inner, 1e-9);
    EXPECT_NEAR(deg(pose.right.steer), outer, 1e-6);
  }
}

class TurningCircleReference : public testing::Test {
 protected:
  // Upright kingpins 1750 apart, wheelbase 4200, tyre 130 outside the kingpin.
  TurningCircleReference() {
    truck_.axle.track = 1750.0 + 2.0 * 130.0;
    truck_.axle.road.wheelbase = 4200.0;
    truck_.axle.tyre.width = 255.0;
    truck_.axle.road.body_corners = {{Vec3(1200.0, -1100.0, 0.0)}, {Vec3(1200.0, 1100.0, 0.0)}};
    KnuckleSide& knuckle = truck_.axle.left_knuckle;
    knuckle.kingpin_inclination = 0.0;
    knuckle.caster = 0.0;
    knuckle.kingpin_point.mm.y() = 875.0;
  }
  // Left turn with the two knuckles at given steer angles, whatever the tie rod would do.
  TurningCircles circles(double inner, double outer) {
    const Mechanism mechanism = truck_.mechanism();
    const Placement<Chassis, Axle> axle = chassis_from_axle(*mechanism.suspension, {});
    SteeringPose pose = blank_pose(mechanism).steering;
    const auto turn = [&](KnucklePose& knuckle, const KnuckleBody& body, double steer) {
      const Mat3 about = turn_about(Vec3::UnitZ(), steer);
      knuckle.steer = steer;
      knuckle.spindle = about * body.spindle;
      knuckle.chassis_from_knuckle.turn = about;
      knuckle.chassis_from_knuckle.shift_mm =
          axle.shift_mm + body.kingpin_point_mm - about * body.kingpin_point_mm;
    };
    turn(pose.left, mechanism.steering->left, inner);
    turn(pose.right, mechanism.steering->right, outer);
    return turning_circles(mechanism, pose, Side::left, 4200.0);
  }
  BenchTruck truck_;
};

// Source: radius at the outer kingpin = L / sin(outer); tyre centre 130 further out; kerb to kerb
// adds the tyre's width. L = 4200, outer 31.870376: 7954.556, 8084.556, diameter 16 169.
TEST_F(TurningCircleReference, OuterWheel) {
  const TurningCircles at = circles(rad(40.0), rad(31.870376));
  EXPECT_NEAR(0.5 * at.tyre_centre_by_outer, 8084.556, 1e-3);
  EXPECT_NEAR(at.kerb_by_outer, at.tyre_centre_by_outer + 255.0, 1e-9);
  EXPECT_NEAR(at.kerb_by_inner, at.kerb_by_outer, 1e-2);
  EXPECT_FALSE(at.wheels_disagree);
  // Turning centre: 5880.365 left of the rear axle's middle (L / tan(inner) + c / 2); the far front
  // corner (1200, -1100) is hypot(5400, 6980.365) from it.
  ASSERT_TRUE(at.wall_by_outer && at.wall_by_inner);
  EXPECT_NEAR(0.5 * *at.wall_by_inner, std::hypot(4200.0 + 1200.0, 5880.365 + 1100.0), 1e-2);
}

TEST_F(TurningCircleReference, ParallelWheelsDisagree) {
  const TurningCircles at = circles(rad(35.0), rad(35.0));
  EXPECT_TRUE(at.wheels_disagree);
  // Parallel wheels: the inner wheel's centre of turn lies 1750 further left than the outer's.
  const double outer_centre = 4200.0 / std::tan(rad(35.0)) - 875.0;
  const Vec3 outer_tyre(130.0 * std::sin(rad(35.0)), -875.0 - 130.0 * std::cos(rad(35.0)), 0.0);
  const Vec3 by_inner(-4200.0, outer_centre + 1750.0, 0.0);
  EXPECT_NEAR(0.5 * at.kerb_by_inner, (outer_tyre - by_inner).norm() + 127.5, 1e-6);
}

TEST_F(TurningCircleReference, StraightAheadIsFinite) {
  const TurningCircles at = circles(0.0, 0.0);
  EXPECT_TRUE(std::isfinite(at.kerb_by_outer));
  EXPECT_GT(at.kerb_by_outer, 1e9);
}

// Caster, inclination and camber do not matter: each wheel's normal in plan passes over the point
// where its spindle and kingpin meet. Statement of plane geometry, checked on solved poses.
TEST(Ackermann, NormalsPassOverTheSpindlePoints) {
  BenchTruck truck;
  truck.axle.left_knuckle.camber = rad(1.5);
  truck.axle.left_knuckle.caster = rad(5.0);
  // Kingpin through a point of the spindle line, so that the two really meet.
  truck.axle.left_knuckle.kingpin_point.mm =
      Vec3(0.0, 900.0 - 100.0 * std::cos(rad(1.5)), -250.0 + 100.0 * std::sin(rad(1.5)));
  const Mechanism mechanism = truck.mechanism();
  const Placement<Chassis, Axle> axle = chassis_from_axle(*mechanism.suspension, {});
  SteeringPose pose = blank_pose(mechanism).steering;
  ASSERT_EQ(solve_steering(*mechanism.steering, axle, rad(30.0), pose), Outcome::solved);
  for (const Side side : {Side::left, Side::right}) {
    const KnuckleBody& body =
        side == Side::left ? mechanism.steering->left : mechanism.steering->right;
    const KnucklePose& knuckle = pose.knuckle(side);
    const Vec3 wheel = (knuckle.chassis_from_knuckle * Point<Knuckle>{body.wheel_centre_mm}).mm;
    const Vec3 meeting = (axle * Point<Axle>{body.kingpin_point_mm}).mm;
    const double across = (wheel.x() - meeting.x()) * knuckle.spindle.y() -
                          (wheel.y() - meeting.y()) * knuckle.spindle.x();
    EXPECT_NEAR(across, 0.0, 1e-9);
  }
}

}  // namespace
}  // namespace tackbench
