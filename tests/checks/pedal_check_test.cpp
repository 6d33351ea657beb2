#include "core/checks/pedal_check.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>

#include "core/basics/units.h"
#include "tests/support/bench_truck.h"

namespace tackbench {
namespace {

double rad(double degrees) {
  return radians_from_degrees(degrees);
}

PedalResult check(const Pedal& pedal, std::optional<double> floor_height = std::nullopt) {
  const std::vector<PedalResult> results = check_pedals(pedals_alone({pedal}, floor_height));
  EXPECT_EQ(results.size(), 1U);
  return results.empty() ? PedalResult{} : results.front();
}

const PedalEnd* find_end(const PedalResult& result, PedalEndKind kind) {
  const auto found = std::find_if(result.ends.begin(), result.ends.end(),
                                  [&](const PedalEnd& end) { return end.kind == kind; });
  return found == result.ends.end() ? nullptr : &*found;
}

// The bench brake's rod: pin 60 below the pivot, rod 150 straight forward (slider-crank).
double bench_rod_travel(double angle) {
  const double drop = 60.0 - 60.0 * std::cos(angle);
  return 60.0 * std::sin(angle) + std::sqrt(150.0 * 150.0 - drop * drop) - 150.0;
}

TEST(PedalCheck, SliderCrankByHand) {
  const PedalResult result = check(bench_brake());
  EXPECT_EQ(result.name, "brake");
  EXPECT_NEAR(result.pad_arc_radius, 300.0, 1e-9);
  EXPECT_NEAR(result.pad_travel_full, 300.0 * rad(60.0), 1e-9);
  ASSERT_EQ(result.rows.size(), 21U);
  for (const PedalRow& row : result.rows) {
    EXPECT_NEAR(row.rod_travel, bench_rod_travel(row.angle), 1e-9);
    EXPECT_NEAR(row.pad_travel, 300.0 * row.angle, 1e-9);
    EXPECT_NEAR(std::abs(row.rod_swing), std::asin((60.0 - 60.0 * std::cos(row.angle)) / 150.0),
                1e-9);
  }
  EXPECT_NEAR(result.ratio_rest.value(), 5.0, 1e-9);
  EXPECT_GT(result.ratio_full.value(), result.ratio_middle.value());
  // 1 mm of free play in the slider-crank.
  ASSERT_TRUE(result.pad_free_travel);
  EXPECT_NEAR(bench_rod_travel(*result.pad_free_travel / 300.0), 1.0, 1e-6);
  EXPECT_NEAR(result.greatest_rod_swing, std::asin(30.0 / 150.0), 1e-9);
  // Hanging pad straight below its pivot: pushed level, then upward.
  EXPECT_NEAR(result.push_angle_rest, 0.0, 1e-9);
  EXPECT_NEAR(result.push_angle_full, -rad(60.0), 1e-9);
}

TEST(PedalCheck, BrakeReachesItsStrokeBeforeItsStop) {
  const PedalResult result = check(bench_brake());
  ASSERT_TRUE(result.stroke_wanted && result.angle_at_wanted);
  EXPECT_EQ(*result.stroke_wanted, 30.0);
  // 30 of stroke and 1 of free play.
  EXPECT_NEAR(bench_rod_travel(*result.angle_at_wanted), 31.0, 1e-6);
  ASSERT_FALSE(result.ends.empty());
  EXPECT_EQ(result.ends.front().kind, PedalEndKind::own_stop);
  EXPECT_NEAR(result.stroke_reached, bench_rod_travel(rad(60.0)) - 1.0, 1e-9);
  EXPECT_GT(result.stroke_reached, 30.0);
  EXPECT_FALSE(result.floor_known);
}

TEST(PedalCheck, ShortTravelCannotBottomTheCylinder) {
  Pedal pedal = bench_brake();
  pedal.full_travel = rad(25.0);
  const PedalResult result = check(pedal);
  EXPECT_EQ(result.ends.front().kind, PedalEndKind::own_stop);
  EXPECT_NEAR(result.stroke_reached, bench_rod_travel(rad(25.0)) - 1.0, 1e-9);
  EXPECT_LT(result.stroke_reached, *result.stroke_wanted);
  ASSERT_TRUE(result.angle_at_wanted);  // where it would be
  EXPECT_GT(*result.angle_at_wanted, pedal.full_travel);
}

// Travel is greatest where the pin's motion stands square to the rod: pivot, pin and cylinder pin
// in one line, the centre distance being rod plus 60.
TEST(PedalCheck, OverCentre) {
  Pedal pedal = bench_brake();
  pedal.full_travel = rad(100.0);
  const PedalResult result = check(pedal);
  const PedalEnd* over = find_end(result, PedalEndKind::over_centre);
  ASSERT_NE(over, nullptr);
  // In line: the cylinder pin runs 60 below the pivot at hypot(210, .) from it.
  const double at = kPi / 2.0 - std::asin(60.0 / 210.0);
  EXPECT_NEAR(over->angle, at, 1e-5);
  EXPECT_EQ(result.ends.front().kind, PedalEndKind::over_centre);
  EXPECT_NEAR(result.stroke_reached, bench_rod_travel(at) - 1.0, 1e-6);
}

TEST(PedalCheck, RodThatCannotFollow) {
  Pedal pedal = bench_brake();
  // A short rod: the pin rises more than the rod is long at 60 - 60 cos a = 40.
  pedal.rod->cylinder_pin.mm = pedal.rod->pedal_pin.mm + 40.0 * Vec3::UnitX();
  pedal.full_travel = rad(100.0);
  const PedalResult result = check(pedal);
  const PedalEnd* open = find_end(result, PedalEndKind::rod_cannot_follow);
  ASSERT_NE(open, nullptr);
  EXPECT_NEAR(open->angle, std::acos(20.0 / 60.0), 1e-6);
}

// A pad that stands behind its pivot sinks as it is pressed.
TEST(PedalCheck, PadMeetsTheFloorFirst) {
  Pedal pedal = bench_brake();
  const double back = rad(50.0);
  pedal.pad_centre.mm = pedal.pivot.mm + 300.0 * Vec3(-std::sin(back), 0.0, -std::cos(back));
  pedal.pad_thickness = 0.0;
  // Lowest edge at rest: 25 below the pad's middle, with the face upright.
  const Vec3 edge(-300.0 * std::sin(back), 0.0, -300.0 * std::cos(back) - 25.0);
  const double reach = std::hypot(edge.x(), edge.z());
  const double start = std::atan2(-edge.x(), -edge.z());  // behind straight down
  const double meets = rad(15.0);
  const double floor_height = 400.0 - reach * std::cos(start - meets);
  const PedalResult result = check(pedal, floor_height);
  const PedalEnd* floor = find_end(result, PedalEndKind::floor);
  ASSERT_NE(floor, nullptr);
  EXPECT_NEAR(floor->angle, meets, 1e-6);
  EXPECT_EQ(result.ends.front().kind, PedalEndKind::floor);
  EXPECT_NEAR(result.stroke_reached, bench_rod_travel(meets) - 1.0, 1e-6);
  EXPECT_LT(result.stroke_reached, *result.stroke_wanted);
  EXPECT_TRUE(result.floor_known);
  EXPECT_LT(result.pad_over_floor, 0.0);
  EXPECT_NEAR(floor->pad_travel, 300.0 * meets, 1e-6);
}

// What lies beyond the floor nobody meets: there the ratio runs away towards over centre.
TEST(PedalCheck, RatioCountsToTheFirstEndOnly) {
  Pedal pedal = bench_brake();
  pedal.full_travel = rad(70.0);
  const PedalResult all = check(pedal);
  ASSERT_TRUE(all.ratio_worst && all.ratio_full);
  EXPECT_NEAR(*all.ratio_worst, *all.ratio_full, 1e-9);
  EXPECT_NEAR(all.ratio_worst_at, rad(70.0), 1e-9);

  // Behind its pivot the pad sinks and meets the floor at 15 degrees, between two rows.
  const double back = rad(50.0);
  pedal.pad_centre.mm = pedal.pivot.mm + 300.0 * Vec3(-std::sin(back), 0.0, -std::cos(back));
  pedal.pad_thickness = 0.0;
  pedal.pad_height = 0.0;
  const double meets = rad(15.0);
  const PedalResult result = check(pedal, 400.0 - 300.0 * std::cos(back - meets));
  ASSERT_EQ(result.ends.front().kind, PedalEndKind::floor);
  // pad lever over the slider-crank's rate of travel by hand.
  const double drop = 60.0 - 60.0 * std::cos(meets);
  const double rate = 60.0 * std::cos(meets) -
                      drop * 60.0 * std::sin(meets) / std::sqrt(150.0 * 150.0 - drop * drop);
  ASSERT_TRUE(result.ratio_worst);
  EXPECT_NEAR(*result.ratio_worst, 300.0 / rate, 1e-5);
  EXPECT_LT(*result.ratio_worst, 0.6 * *all.ratio_worst);
}

TEST(PedalCheck, APedalThatPullsItsRodHasANegativeRatio) {
  Pedal pedal = bench_brake();
  pedal.rod->cylinder_axis.along = -Vec3::UnitX();
  const PedalResult result = check(pedal);
  ASSERT_TRUE(result.ratio_worst);
  EXPECT_NEAR(*result.ratio_worst, -5.0, 1e-9);
}

// Without its free play the rod's whole travel is the most that the piston can move.
TEST(PedalCheck, FreePlayThatIsNotMeasured) {
  Pedal pedal = bench_brake();
  pedal.rod->free_play.reset();
  const PedalResult result = check(pedal);
  EXPECT_FALSE(result.pad_free_travel);
  EXPECT_NEAR(result.stroke_reached, bench_rod_travel(rad(60.0)), 1e-9);
}

TEST(PedalCheck, ClutchWantsItsRelease) {
  Pedal pedal = bench_brake();
  pedal.use = PedalUse::clutch;
  pedal.rod->release_stroke = 20.0;
  const PedalResult result = check(pedal);
  EXPECT_EQ(*result.stroke_wanted, 20.0);
  pedal.rod->release_stroke.reset();
  EXPECT_FALSE(check(pedal).stroke_wanted);
}

TEST(PedalCheck, PedalWithoutARod) {
  Pedal pedal = bench_brake();
  pedal.use = PedalUse::accelerator;
  pedal.rod.reset();
  const PedalResult result = check(pedal, 0.0);
  EXPECT_FALSE(result.stroke_wanted);
  EXPECT_FALSE(result.ratio_rest);
  EXPECT_FALSE(result.ratio_worst);
  EXPECT_EQ(result.stroke_reached, 0.0);
  ASSERT_EQ(result.ends.size(), 1U);
  EXPECT_EQ(result.ends.front().kind, PedalEndKind::own_stop);
  // Pad 300 below a pivot at 400, half its 50 of height lower: 75 over the floor at rest, and
  // nearer to nothing as it swings up.
  EXPECT_GT(result.pad_over_floor, 75.0);
  EXPECT_TRUE(check_pedals(BenchTruck().mechanism()).empty());
}

}  // namespace
}  // namespace tackbench
