#include "core/basics/frames.h"

#include <gtest/gtest.h>

#include <cmath>

#include "core/basics/units.h"

namespace tackbench {
namespace {

TEST(Frames, PositivePitchLeansTheTopForward) {
  const Vec3 top = pitch_turn(radians_from_degrees(10.0)) * Vec3::UnitZ();
  EXPECT_GT(top.x(), 0.0);
  EXPECT_NEAR(top.y(), 0.0, 1e-15);
}

TEST(Frames, AngleAboutIsRightHanded) {
  EXPECT_NEAR(angle_about(Vec3::UnitZ(), Vec3::UnitX(), Vec3::UnitY()), kPi / 2, 1e-15);
  EXPECT_NEAR(angle_about(Vec3::UnitZ(), Vec3::UnitY(), Vec3::UnitX()), -kPi / 2, 1e-15);
}

TEST(Frames, SquareToNeverFails) {
  for (const Vec3& axis : {Vec3(Vec3::UnitX()), Vec3(Vec3::UnitY()), Vec3(Vec3::UnitZ())}) {
    const Vec3 square = square_to(axis, axis);
    EXPECT_NEAR(square.norm(), 1.0, 1e-15);
    EXPECT_NEAR(square.dot(axis), 0.0, 1e-15);
  }
}

TEST(Frames, PlacementInverseUndoes) {
  const Placement<Chassis, Axle> place{roll_pitch_yaw_turn(0.1, -0.2, 0.3), Vec3(1, 2, 3)};
  const Point<Axle> p{Vec3(10, 20, 30)};
  EXPECT_TRUE((place.inverse() * (place * p)).mm.isApprox(p.mm, 1e-14));
}

// Rodrigues: a third of a turn about (1,1,1) takes X to Y, Y to Z, Z to X.
TEST(Frames, ThirdTurnAboutTheSpaceDiagonalPermutesTheAxes) {
  const Vec3 diagonal = Vec3::Ones() / std::sqrt(3.0);
  const double third = 2.0 * kPi / 3.0;
  EXPECT_NEAR((turned(Vec3::UnitX(), diagonal, third) - Vec3::UnitY()).norm(), 0.0, 1e-15);
  EXPECT_NEAR((turned(Vec3::UnitY(), diagonal, third) - Vec3::UnitZ()).norm(), 0.0, 1e-15);
  EXPECT_NEAR((turn_about(diagonal, third) * Vec3::UnitZ() - Vec3::UnitX()).norm(), 0.0, 1e-15);
}

// ISO 8855: yaw left, pitch top-forward, roll right are positive; fixed axes in the order roll,
// pitch, yaw. X after a quarter pitch points down, whatever the roll was.
TEST(Frames, RollPitchYawAboutFixedAxesInThatOrder) {
  const Mat3 turn = roll_pitch_yaw_turn(kPi / 2, kPi / 2, 0.0);
  EXPECT_NEAR((turn * Vec3::UnitX() + Vec3::UnitZ()).norm(), 0.0, 1e-15);
  EXPECT_NEAR((turn * Vec3::UnitY() - Vec3::UnitX()).norm(), 0.0, 1e-15);
  const Mat3 yawed = roll_pitch_yaw_turn(0.0, 0.0, kPi / 2);
  EXPECT_NEAR((yawed * Vec3::UnitX() - Vec3::UnitY()).norm(), 0.0, 1e-15);
  const Mat3 rolled = roll_pitch_yaw_turn(kPi / 2, 0.0, 0.0);
  EXPECT_NEAR((rolled * Vec3::UnitY() - Vec3::UnitZ()).norm(), 0.0, 1e-15);
}

// Forms by acos lose half the digits here.
TEST(Frames, AngleBetweenIsExactNearZeroAndHalfTurn) {
  const double small = 1e-9;
  const Vec3 near(std::cos(small), std::sin(small), 0.0);
  EXPECT_NEAR(angle_between(Vec3::UnitX(), near), small, 1e-18);
  EXPECT_NEAR(angle_between(-Vec3::UnitX(), near), kPi - small, 1e-15);
}

TEST(Frames, WrappedLiesAboveMinusPi) {
  EXPECT_NEAR(wrapped(3.0 * kPi), kPi, 1e-14);
  EXPECT_NEAR(wrapped(-kPi), kPi, 1e-15);
  EXPECT_NEAR(wrapped(2.0 * kPi + 0.25), 0.25, 1e-14);
  EXPECT_NEAR(wrapped(-2.0 * kPi - 0.25), -0.25, 1e-14);
}

}  // namespace
}  // namespace tackbench
