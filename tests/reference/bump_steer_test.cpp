// Bump steer of a truck-like linkage against independently computed values (not read in a text):
// pitman axis through (-850, 520, 700) along +Y, its ball at (-850, 520, 510); kingpin through
// (0, 800, 500), caster 3 and inclination 6 degrees; steering-arm ball (20, 620, 540). The axle
// moves on an arc of 450 radius, 0.75 of a 600 half leaf, about its fixed eye's side.
#include <gtest/gtest.h>

#include <cmath>

#include "core/basics/units.h"
#include "core/checks/bump_check.h"
#include "tests/support/bench_truck.h"

namespace tackbench {
namespace {

BenchTruck truck_like_case(bool fixed_eye_in_front) {
  BenchTruck truck;
  truck.box.output_point.mm = Vec3(-850.0, 520.0, 700.0);
  truck.box.arm.length = 190.0;
  truck.box.arm.offset = 0.0;
  truck.link.knuckle_ball.mm = Vec3(20.0, 620.0, 540.0);
  truck.axle.wheel_centre_height = 500.0;
  truck.axle.left_knuckle.kingpin_point.mm = Vec3(0.0, 800.0, 500.0);
  truck.axle.left_knuckle.tie_rod_ball.mm = Vec3(-170.0, 770.0, 470.0);
  truck.axle.left_knuckle.stops.clear();
  LeafSpring& leaf = *truck.axle.suspension.leaf;
  leaf.seat.mm = Vec3(0.0, 425.0, 550.0);
  leaf.fixed_eye.mm = leaf.seat.mm + Vec3(fixed_eye_in_front ? 600.0 : -600.0, 0.0, 0.0);
  truck.axle.suspension.bump = 80.0;
  truck.axle.suspension.droop = 60.0;
  return truck;
}

constexpr double kHeaves[] = {-60, -40, -20, 0, 20, 40, 60, 80};
constexpr double kEyeInFront[] = {-1.3025, -0.4278, 0.0048,  0.0,
                                  -0.4398, -1.3140, -2.6244, -4.3764};
constexpr double kEyeBehind[] = {1.3030, 0.7256, 0.2923, 0.0, -0.1532, -0.1675, -0.0417, 0.2270};

double swivel_degrees(const Mechanism& mechanism, const AxlePose& axle) {
  Controls controls;
  controls.axle_pose = axle;
  const Pose pose = solved_pose(mechanism, controls);
  EXPECT_EQ(pose.outcome, Outcome::solved);
  return degrees_from_radians(pose.steering.left.swivel);
}

TEST(BumpSteerReference, SwivelOnTheArc) {
  constexpr double kRadius = 450.0;
  for (const bool in_front : {true, false}) {
    const Mechanism mechanism = truck_like_case(in_front).mechanism();
    for (std::size_t i = 0; i < std::size(kHeaves); ++i) {
      AxlePose axle;
      axle.dz = kHeaves[i];
      // Either way from the level place the arc pulls the axle towards the fixed eye.
      const double pulled = kRadius - std::sqrt(kRadius * kRadius - axle.dz * axle.dz);
      axle.dx = in_front ? pulled : -pulled;
      EXPECT_NEAR(swivel_degrees(mechanism, axle), in_front ? kEyeInFront[i] : kEyeBehind[i], 1e-4)
          << kHeaves[i];
    }
  }
}

// The leaf itself: its path differs from the 450 arc by less than 0.016 mm (published for the
// 0.75 arc), 0.005 degrees on a 180 arm.
TEST(BumpSteerReference, SwivelOnTheLeaf) {
  for (const bool in_front : {true, false}) {
    const Mechanism mechanism = truck_like_case(in_front).mechanism();
    BumpSettings settings;
    settings.rows_each_side = 4;
    const auto bump = check_bump(mechanism, settings);
    ASSERT_TRUE(bump);
    int compared = 0;
    for (const BumpRow& row : bump->heave.rows)
      for (std::size_t i = 0; i < std::size(kHeaves); ++i) {
        if (std::abs(row.at - kHeaves[i]) > 1e-9) continue;
        ASSERT_TRUE(row.solved);
        EXPECT_NEAR(degrees_from_radians(row.swivel_left),
                    in_front ? kEyeInFront[i] : kEyeBehind[i], 0.005);
        ++compared;
      }
    EXPECT_GE(compared, 6);
  }
}

// Brake wind-up of 2 degrees moves a ball 150 mm over the axis it turns about 5.2 mm, 1.7 degrees
// on a 180 arm (computed). On straight guides that axis joins the wheel centres.
TEST(BumpSteerReference, WindUp) {
  BenchTruck truck = truck_like_case(false);
  truck.axle.suspension.kind = SuspensionKind::straight;
  truck.axle.suspension.leaf.reset();
  truck.axle.left_knuckle.kingpin_inclination = 0.0;
  truck.axle.left_knuckle.caster = 0.0;
  truck.link.knuckle_ball.mm = Vec3(0.0, 620.0, 650.0);
  truck.box.output_point.mm = Vec3(-850.0, 620.0, 840.0);
  truck.axle.suspension.wind_up = radians_from_degrees(2.0);
  const auto bump = check_bump(truck.mechanism(), {});
  ASSERT_TRUE(bump);
  ASSERT_FALSE(bump->wind_up.rows.empty());
  const BumpRow& full = bump->wind_up.rows.back();
  // Top forward carries the ball forward; the link held, the knuckle gives by turning right.
  EXPECT_NEAR(degrees_from_radians(full.swivel_left), -1.7, 0.05);
}

}  // namespace
}  // namespace tackbench
