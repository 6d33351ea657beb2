// Pedal geometry against published and independently computed values.
#include <gtest/gtest.h>

#include <cmath>

#include "core/basics/units.h"
#include "core/checks/pedal_check.h"
#include "tests/support/bench_truck.h"

namespace tackbench {
namespace {

// A pad on an arm of 280 that moves 150 along its chord sweeps 31.074 degrees (the arc would say
// 30.694). Chord of a circle, computed.
TEST(PedalReference, SweepOfChordAndArc) {
  Pedal pedal = bench_brake();
  pedal.pad_centre.mm = pedal.pivot.mm - 280.0 * Vec3::UnitZ();
  pedal.full_travel = radians_from_degrees(31.074);
  const Mechanism mechanism = pedals_alone({pedal}, std::nullopt);
  const PedalPose rest = pose_pedal(mechanism.pedals.front(), 0.0);
  const PedalPose full = pose_pedal(mechanism.pedals.front(), pedal.full_travel);
  EXPECT_NEAR((full.pad_centre_mm - rest.pad_centre_mm).norm(), 150.0, 2e-3);
  const std::vector<PedalResult> results = check_pedals(mechanism);
  ASSERT_EQ(results.size(), 1U);
  EXPECT_NEAR(results.front().pad_arc_radius, 280.0, 1e-9);
  EXPECT_NEAR(degrees_from_radians(150.0 / results.front().pad_arc_radius), 30.694, 1e-3);
  EXPECT_NEAR(results.front().pad_travel_full, 280.0 * radians_from_degrees(31.074), 1e-9);
}

// Pad 300 and pin 50 from the pivot: ratio 6, at rest with the rod square to its arm. Lever law; a
// brake supplier's note calls 6 to 1 the general rule for a manual brake.
TEST(PedalReference, LeverRatioAtRest) {
  Pedal pedal = bench_brake();
  pedal.rod->pedal_pin.mm = pedal.pivot.mm - 50.0 * Vec3::UnitZ();
  pedal.rod->cylinder_pin.mm = pedal.rod->pedal_pin.mm + 150.0 * Vec3::UnitX();
  const std::vector<PedalResult> results = check_pedals(pedals_alone({pedal}, std::nullopt));
  EXPECT_NEAR(results.front().ratio_rest.value(), 6.0, 1e-9);
}

}  // namespace
}  // namespace tackbench
