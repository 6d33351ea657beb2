// Published and computed values of the leaf-spring path. C = computed from the stated formula.
#include <gtest/gtest.h>

#include <array>
#include <cmath>

#include "core/basics/units.h"
#include "core/mechanism/suspension_path.h"

namespace tackbench {
namespace {

double along_at(double half, double rise) {
  const auto bend = bend_for_height(half, 0.0, rise);
  EXPECT_TRUE(bend.has_value());
  return eye_from_seat(half, 0.0, bend.value_or(0.0)).along;
}

// Circular-arc leaf, half length 600 (C): where the seat stands for each rise; the rule of 0.75 of
// the length (SAE HS-788, M) is within 0.016 mm, a link of the full length wrong by up to 4.2.
TEST(CircularArcLeaf, SeatPathOfA600Half) {
  const std::array<std::pair<double, double>, 6> table{{{20, 599.5553},
                                                        {40, 598.2185},
                                                        {60, 595.9812},
                                                        {80, 592.8289},
                                                        {100, 588.7409},
                                                        {120, 583.6895}}};
  for (const auto& [rise, along] : table) {
    EXPECT_NEAR(along_at(600.0, rise), along, 5e-5) << rise;
    const double three_quarter_link = 150.0 + std::sqrt(450.0 * 450.0 - rise * rise);
    EXPECT_NEAR(along_at(600.0, rise), three_quarter_link, 0.016) << rise;
  }
  EXPECT_NEAR(150.0 + std::sqrt(450.0 * 450.0 - 100.0 * 100.0), 588.7482, 5e-5);
  EXPECT_NEAR(std::sqrt(600.0 * 600.0 - 120.0 * 120.0) - along_at(600.0, 120.0), 4.2, 0.05);
}

// The same numbers where a truck meets them: an axle on flat springs, raised.
TEST(CircularArcLeaf, AxleOnFlatSprings) {
  FrontAxleStation axle;
  axle.suspension.kind = SuspensionKind::leaf;
  LeafSpring leaf;
  leaf.seat.mm = Vec3(0.0, 425.0, -150.0);
  leaf.fixed_eye.mm = Vec3(600.0, 425.0, -150.0);
  axle.suspension.leaf = leaf;
  const SuspensionPath path = compile_suspension(axle);
  for (const double rise : {-100.0, 100.0}) {
    const AxleAnswer answer = axle_pose(path, rise, rise, 0.0);
    ASSERT_TRUE(answer.closes);
    EXPECT_NEAR(answer.pose.dx, 600.0 - 588.7409, 5e-5);  // towards the fixed eye, ahead
  }
}

// Brake wind-up (C): 2 degrees turn the axle about its spring, a ball 150 above the seat moves 5.2
// fore and aft, 1.7 degrees of steer on an arm of 180.
TEST(BrakeWindUp, MovesTheArmBallForeAndAft) {
  FrontAxleStation axle;
  axle.suspension.kind = SuspensionKind::leaf;
  LeafSpring leaf;
  leaf.seat.mm = Vec3(0.0, 425.0, axle.wheel_centre_height);
  leaf.fixed_eye.mm = leaf.seat.mm + Vec3(600.0, 0.0, 0.0);
  axle.suspension.leaf = leaf;
  const SuspensionPath path = compile_suspension(axle);
  const AxleAnswer answer = axle_pose(path, 0.0, 0.0, radians_from_degrees(2.0));
  ASSERT_TRUE(answer.closes);
  const auto placed = chassis_from_axle(path, answer.pose);
  const double seat = (placed * Point<Axle>{{0.0, 425.0, 0.0}}).mm.x();
  const double ball = (placed * Point<Axle>{{0.0, 425.0, 150.0}}).mm.x();
  EXPECT_NEAR(ball - seat, 5.2, 0.05);  // top forward
  EXPECT_NEAR(degrees_from_radians((ball - seat) / 180.0), 1.7, 0.05);
}

}  // namespace
}  // namespace tackbench
