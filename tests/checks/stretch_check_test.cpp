#include "core/checks/stretch_check.h"

#include <gtest/gtest.h>

#include <cmath>

#include "core/basics/units.h"
#include "tests/support/bench_truck.h"

namespace tackbench {
namespace {

AnchoredPoint anchored(RidesOn body, const Vec3& at) {
  AnchoredPoint point;
  point.rides_on = body;
  point.at = at;
  return point;
}

class StretchCheck : public testing::Test {
 protected:
  StretchCheck() {
    truck_.axle.suspension.kind = SuspensionKind::straight;
    truck_.axle.suspension.leaf.reset();
    truck_.axle.suspension.roll = 0.0;
    truck_.axle.suspension.wind_up = 0.0;
  }
  StretchResult stretch(const AnchoredPoint& from, const AnchoredPoint& to) {
    StretchPair pair;
    pair.name = "pair";
    pair.from = from;
    pair.to = to;
    pair.least = 100.0;
    ShapesStation shapes;
    shapes.stretch_pairs = {pair};
    Project project = truck_.project();
    project.shapes = std::make_shared<const ShapesStation>(shapes);
    project.cab = std::make_shared<const CabStation>(cab_);
    const Mechanism mechanism = compiled(project);
    const auto results = check_stretch(mechanism, check_locks(mechanism, {}));
    EXPECT_EQ(results.size(), 1U);
    return results.empty() ? StretchResult{} : results.front();
  }
  // The distance at the controls that a result names.
  double distance_at(const StretchResult& result, const Controls& controls, const Vec3& left,
                     const Vec3& fixed) {
    const Pose pose = solved_pose(truck_.mechanism(), controls);
    EXPECT_EQ(pose.outcome, Outcome::solved) << result.name;
    const Vec3 moved =
        (pose.steering.left.chassis_from_knuckle * Point<Knuckle>{left - Vec3(0.0, 0.0, -250.0)})
            .mm;
    return (moved - fixed).norm();
  }
  BenchTruck truck_;
  CabStation cab_;
};

// A damper 300 long as drawn, upright, on guides that rise 80 and sink 80.
TEST_F(StretchCheck, DamperOverBumpAndDroop) {
  const StretchResult result = stretch(anchored(RidesOn::axle, Vec3(100.0, 500.0, -200.0)),
                                       anchored(RidesOn::chassis, Vec3(100.0, 500.0, 100.0)));
  EXPECT_NEAR(result.as_drawn, 300.0, 1e-9);
  EXPECT_NEAR(result.least, 220.0, 1e-6);
  EXPECT_NEAR(result.greatest, 380.0, 1e-6);
  EXPECT_NEAR(result.least_at.bump_left, 80.0, 1e-9);
  EXPECT_NEAR(result.greatest_at.bump_right, -80.0, 1e-9);
  EXPECT_EQ(*result.least_allowed, 100.0);
}

// With roll the damper 500 out from the middle goes 500 sin(roll) further at mid-heave; wheels on
// their stops cannot follow beyond 80.
TEST_F(StretchCheck, RollMovesOneSide) {
  truck_.axle.suspension.bump = truck_.axle.suspension.droop = 0.0;
  truck_.axle.suspension.roll = radians_from_degrees(2.0);
  StretchResult held = stretch(anchored(RidesOn::axle, Vec3(100.0, 500.0, -250.0)),
                               anchored(RidesOn::chassis, Vec3(100.0, 500.0, 50.0)));
  EXPECT_NEAR(held.greatest - held.least, 0.0, 1e-6);  // both wheels are on their stops
  truck_.axle.suspension.bump = truck_.axle.suspension.droop = 100.0;
  held = stretch(anchored(RidesOn::axle, Vec3(100.0, 500.0, -250.0)),
                 anchored(RidesOn::chassis, Vec3(100.0, 500.0, 50.0)));
  // At full bump of the left wheel the right one cannot be higher: the pair 500 of 900 out gets
  // its extreme level with both wheels up.
  EXPECT_NEAR(held.least, 200.0, 1e-3);
  EXPECT_NEAR(held.greatest, 400.0, 1e-3);
}

// A hose from the left knuckle to the chassis: extremes over both locks against a fine scan.
TEST_F(StretchCheck, HoseOverBothLocks) {
  truck_.axle.suspension.bump = truck_.axle.suspension.droop = 0.0;
  const Vec3 on_knuckle(120.0, 780.0, -200.0);
  const Vec3 fixed(60.0, 600.0, -60.0);
  const StretchResult result =
      stretch(anchored(RidesOn::left_knuckle, on_knuckle), anchored(RidesOn::chassis, fixed));
  const LockResult locks = *check_locks(truck_.mechanism(), {});
  double least = 1e9;
  double greatest = 0.0;
  constexpr int kScan = 4000;
  for (int i = 0; i <= kScan; ++i) {
    Controls controls;
    controls.hand_wheel = kRadiansPerTurn * (-locks.right.turns + locks.turns_total * i / kScan);
    const double at = distance_at(result, controls, on_knuckle, fixed);
    least = std::min(least, at);
    greatest = std::max(greatest, at);
  }
  EXPECT_NEAR(result.least, least, 0.01);
  EXPECT_NEAR(result.greatest, greatest, 0.01);
  EXPECT_NEAR(distance_at(result, result.least_at, on_knuckle, fixed), result.least, 1e-9);
}

// Cab shake 10 each way along every axis: a strap along X from cab to chassis gets its corners.
TEST_F(StretchCheck, CabShake) {
  cab_.shake = {10.0, 10.0, 10.0, 10.0, 10.0, 10.0};
  const StretchResult result = stretch(anchored(RidesOn::cab, Vec3(0.0, 0.0, 0.0)),
                                       anchored(RidesOn::chassis, Vec3(200.0, 0.0, 0.0)));
  EXPECT_NEAR(result.greatest, std::sqrt(210.0 * 210.0 + 2.0 * 100.0), 1e-6);
  EXPECT_NEAR(result.least, 190.0, 1e-6);
}

TEST_F(StretchCheck, PairsOfOneBodyKeepTheirLength) {
  const StretchResult result = stretch(anchored(RidesOn::axle, Vec3(0.0, 100.0, -250.0)),
                                       anchored(RidesOn::axle, Vec3(0.0, -100.0, -250.0)));
  EXPECT_NEAR(result.least, 200.0, 1e-9);
  EXPECT_NEAR(result.greatest, 200.0, 1e-9);
}

}  // namespace
}  // namespace tackbench
