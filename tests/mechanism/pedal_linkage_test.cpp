#include "core/mechanism/pedal_linkage.h"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <cmath>

#include "core/basics/units.h"

namespace tackbench {
namespace {

// Hanging brake pedal: pivot above, pad below, rod forward from a pin 70 below the pivot.
Pedal hanging_brake() {
  Pedal pedal;
  pedal.name = "brake";
  pedal.pivot.mm = {200.0, 300.0, 600.0};
  pedal.axis.along = Vec3::UnitY();
  pedal.pressed_turns = TurnSense::clockwise;  // the pad goes forward, that is against +Y
  pedal.pad_centre.mm = {190.0, 310.0, 250.0};
  pedal.full_travel = radians_from_degrees(25.0);
  PedalRod rod;
  rod.pedal_pin.mm = {200.0, 300.0, 530.0};
  rod.cylinder_pin.mm = {360.0, 300.0, 525.0};
  rod.cylinder_axis.along = Vec3::UnitX();
  pedal.rod = rod;
  return pedal;
}

PedalLinkage compiled(const Pedal& pedal) {
  auto result = compile_pedal(pedal);
  EXPECT_TRUE(result.ok());
  return std::move(result).value();
}

TEST(PedalLinkage, RestIsAsDrawn) {
  const PedalPose pose = pose_pedal(compiled(hanging_brake()), 0.0);
  EXPECT_TRUE(pose.closes);
  EXPECT_NEAR(pose.rod_travel, 0.0, 1e-12);
  EXPECT_NEAR((pose.pad_centre_mm - Vec3(190.0, 310.0, 250.0)).norm(), 0.0, 1e-12);
  EXPECT_NEAR((pose.cylinder_pin_mm - Vec3(360.0, 300.0, 525.0)).norm(), 0.0, 1e-12);
  EXPECT_GT(pose.pad_direction.x(), 0.99);
}

// Offset slider-crank x = r sin t + sqrt(l^2 - (h - r cos t)^2) about the pivot (textbook form with
// the crank measured from the hanging position).
TEST(PedalLinkage, RodTravelIsTheOffsetSliderCrank) {
  const PedalLinkage linkage = compiled(hanging_brake());
  const double r = 70.0;
  const double h = 75.0;  // cylinder line below the pivot
  const double l = std::hypot(160.0, 5.0);
  for (double t = -0.2; t < 0.9; t += 0.05) {
    const PedalPose pose = pose_pedal(linkage, t);
    const double x = r * std::sin(t) + std::sqrt(l * l - std::pow(h - r * std::cos(t), 2));
    EXPECT_NEAR(pose.rod_travel, x - 160.0, 1e-10);
    EXPECT_NEAR(pose.rod_swing, std::asin(std::abs(h - r * std::cos(t)) / l), 1e-10);
  }
}

TEST(PedalLinkage, RatioAtRestIsThatOfTheLevers) {
  Pedal pedal = hanging_brake();
  pedal.pad_centre.mm = {200.0, 300.0, 180.0};  // 420 below the pivot
  pedal.rod->cylinder_pin.mm.z() = 530.0;       // rod level, square to the lever
  const PedalPose pose = pose_pedal(compiled(pedal), 0.0);
  EXPECT_NEAR(pose.ratio, 6.0, 1e-12);
  EXPECT_NEAR(pose.leverage, 1.0, 1e-12);
  EXPECT_NEAR(pose.rod_swing, 0.0, 1e-12);
}

TEST(PedalLinkage, RatioIsTheSlopeOfTheTravel) {
  Pedal pedal = hanging_brake();
  BellCrank bell;
  bell.pivot.mm = {420.0, 300.0, 600.0};
  bell.input_pin.mm = {410.0, 310.0, 540.0};
  bell.output_pin.mm = {480.0, 290.0, 610.0};
  bell.axis.along = Vec3(0.1, 1.0, -0.05).normalized();
  pedal.rod->bell_cranks = {bell};
  pedal.rod->cylinder_pin.mm = {485.0, 300.0, 760.0};
  pedal.rod->cylinder_axis.along = Vec3(0.0, 0.1, 1.0).normalized();
  const PedalLinkage linkage = compiled(pedal);
  const double pad_lever = linkage.pad.lever.norm();
  for (double t = -0.1; t < 0.6; t += 0.07) {
    constexpr double kStep = 1e-6;
    const double slope =
        (pose_pedal(linkage, t + kStep).rod_travel - pose_pedal(linkage, t - kStep).rod_travel) /
        (2.0 * kStep);
    const PedalPose pose = pose_pedal(linkage, t);
    ASSERT_TRUE(pose.closes);
    EXPECT_NEAR(pose.ratio * slope / pad_lever, 1.0, 1e-6);
  }
}

// Norton, Design of Machinery, Ex. 4-1 (from memory, re-solved): a = 40, b = 120, c = 80, d = 100;
// crank at 40 degrees puts the rocker at 57.325. Pedal as crank, bell-crank as rocker.
TEST(PedalLinkage, BellCrankIsThePlanarFourBar) {
  Pedal pedal;
  pedal.axis.along = Vec3::UnitZ();
  pedal.pad_centre.mm = {0.0, -200.0, 0.0};
  pedal.full_travel = 1.0;
  const auto on_circle = [](double radius, double degrees) {
    const double t = radians_from_degrees(degrees);
    return Vec3(radius * std::cos(t), radius * std::sin(t), 0.0);
  };
  PedalRod rod;
  rod.pedal_pin.mm = on_circle(40.0, 40.0);
  BellCrank bell;
  bell.pivot.mm = {100.0, 0.0, 0.0};
  bell.axis.along = Vec3::UnitZ();
  bell.input_pin.mm = bell.pivot.mm + on_circle(80.0, 57.3249);
  bell.output_pin = bell.input_pin;
  rod.bell_cranks = {bell};
  rod.cylinder_pin.mm = bell.output_pin.mm + Vec3(-300.0, 0.0, 0.0);
  rod.cylinder_axis.along = -Vec3::UnitX();
  pedal.rod = rod;
  const PedalLinkage linkage = compiled(pedal);
  EXPECT_NEAR(linkage.bell_cranks[0].loop.length, 120.0, 1e-4);
  // Transmission angles of the same example at the ends of a turn: 26.384 and 86.417.
  double least = 1.0;
  double most = 0.0;
  for (int i = 0; i < 3600; ++i) {
    const double t = i * kPi / 1800.0;
    const LoopAnswer answer = solve_loop(linkage.bell_cranks[0].loop, linkage.pin.ball(t));
    ASSERT_TRUE(answer.closes);
    const Crank& rocker = linkage.bell_cranks[0].loop.driven;
    const Vec3 along = (rocker.ball(answer.angle) - linkage.pin.ball(t)).normalized();
    const double sine = leverage(rocker, rocker.ball_rate(answer.angle), along);
    least = std::min(least, sine);
    most = std::max(most, sine);
  }
  EXPECT_NEAR(degrees_from_radians(std::asin(least)), 26.384, 2e-3);
  EXPECT_NEAR(degrees_from_radians(std::asin(most)), 86.417, 2e-3);
}

TEST(PedalLinkage, GoesOverCentreWithFiniteNumbers) {
  const PedalLinkage linkage = compiled(hanging_brake());
  double before = pose_pedal(linkage, 0.0).leverage;
  bool crossed = false;
  for (double t = 0.0; t < 6.3; t += 0.001) {
    const PedalPose pose = pose_pedal(linkage, t);
    ASSERT_TRUE(std::isfinite(pose.ratio));
    ASSERT_TRUE(std::isfinite(pose.rod_travel));
    ASSERT_LE(std::abs(pose.ratio), kMostPedalRatio);
    crossed = crossed || (before > 0.0 && pose.leverage <= 0.0);
    before = pose.leverage;
  }
  EXPECT_TRUE(crossed);
}

TEST(PedalLinkage, SaysWhenTheRodCannotFollow) {
  Pedal pedal = hanging_brake();
  pedal.rod->cylinder_pin.mm = {230.0, 300.0, 530.0};  // 30 mm rod on a 70 mm lever
  const PedalPose pose = pose_pedal(compiled(pedal), 1.5);
  EXPECT_FALSE(pose.closes);
  EXPECT_TRUE(std::isfinite(pose.rod_travel));
  EXPECT_TRUE(std::isfinite(pose.ratio));
}

TEST(PedalLinkage, AxisSenseDecidesWhichWayIsPressed) {
  Pedal pedal = hanging_brake();
  pedal.axis.along = -Vec3::UnitY();
  pedal.pressed_turns = TurnSense::anticlockwise;
  const PedalPose same = pose_pedal(compiled(pedal), 0.2);
  const PedalPose drawn = pose_pedal(compiled(hanging_brake()), 0.2);
  EXPECT_NEAR(same.rod_travel, drawn.rod_travel, 1e-12);
  pedal.pressed_turns = TurnSense::clockwise;
  EXPECT_LT(pose_pedal(compiled(pedal), 0.2).ratio, 0.0);  // pressing pulls the rod back
}

TEST(PedalLinkage, ReportsEveryFault) {
  Pedal pedal = hanging_brake();
  pedal.full_travel = 0.0;
  pedal.pad_centre = pedal.pivot;
  pedal.rod->pedal_pin = pedal.pivot;
  pedal.rod->cylinder_axis.along = Vec3::UnitZ();
  pedal.rod->cylinder_pin.mm = pedal.pivot.mm + Vec3(100.0, 0.0, 0.0);
  const auto result = compile_pedal(pedal);
  ASSERT_FALSE(result.ok());
  std::vector<std::string> places;
  for (const Problem& problem : result.problems()) places.push_back(problem.place);
  EXPECT_EQ(places, (std::vector<std::string>{"pad_centre_mm", "full_travel_deg",
                                              "rod.pedal_pin_mm", "rod.cylinder_axis"}));
}

TEST(PedalLinkage, CablePedalHasNoRod) {
  Pedal pedal = hanging_brake();
  pedal.rod.reset();
  const PedalPose pose = pose_pedal(compiled(pedal), 0.3);
  EXPECT_EQ(pose.ratio, 0.0);
  EXPECT_TRUE(pose.closes);
}

}  // namespace
}  // namespace tackbench
