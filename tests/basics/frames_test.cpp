#include "core/basics/frames.h"

#include <gtest/gtest.h>

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

}  // namespace
}  // namespace tackbench
