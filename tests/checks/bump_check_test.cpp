#include "core/checks/bump_check.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>

#include "core/basics/units.h"
#include "tests/support/bench_truck.h"

namespace tackbench {
namespace {

double deg(double radians) {
  return degrees_from_radians(radians);
}

BumpResult bump_of(const BenchTruck& truck, const BumpSettings& settings = {}) {
  const auto bump = check_bump(truck.mechanism(), settings);
  EXPECT_TRUE(bump);
  return bump.value_or(BumpResult{});
}

TEST(BumpCheck, RowsSpanTheRangesAndAgreeWithFullPoses) {
  const BenchTruck truck;
  const Mechanism mechanism = truck.mechanism();
  BumpSettings settings;
  settings.hand_wheel = 3.0;
  const BumpResult bump = bump_of(truck, settings);
  ASSERT_EQ(bump.heave.rows.size(), 17U);
  EXPECT_NEAR(bump.heave.rows.front().at, -80.0, 1e-9);
  EXPECT_NEAR(bump.heave.rows.back().at, 80.0, 1e-9);
  ASSERT_EQ(bump.roll.rows.size(), 17U);
  EXPECT_NEAR(deg(bump.roll.rows.back().at), 4.0, 1e-6);
  ASSERT_EQ(bump.wind_up.rows.size(), 9U);
  Controls controls;
  controls.hand_wheel = 3.0;
  const Pose held = solved_pose(mechanism, controls);
  for (const BumpRow& row : bump.heave.rows) {
    ASSERT_TRUE(row.solved);
    controls.bump_left = controls.bump_right = row.at;
    const Pose pose = solved_pose(mechanism, controls);
    EXPECT_NEAR(row.steer_left, pose.steering.left.steer - held.steering.left.steer, 1e-12);
    EXPECT_NEAR(row.steer_right, pose.steering.right.steer - held.steering.right.steer, 1e-12);
  }
}

// Kickback by the road-to-hand loops: the arm that holds the wheels straight at that axle pose.
TEST(BumpCheck, KickbackIsTheTurnThatKeepsTheWheelsStraight) {
  const BenchTruck truck;
  const Mechanism mechanism = truck.mechanism();
  const BumpResult bump = bump_of(truck);
  for (const BumpRow& row : bump.heave.rows) {
    const AxleAnswer axle = axle_pose(*mechanism.suspension, row.at, row.at, 0.0);
    const auto placement = chassis_from_axle(*mechanism.suspension, axle.pose);
    const auto swivel = straight_swivel(*mechanism.steering, placement);
    ASSERT_TRUE(swivel);
    const auto arm = arm_from_swivel(*mechanism.steering, placement, *swivel);
    ASSERT_TRUE(arm);
    ASSERT_TRUE(row.hand_wheel);
    EXPECT_NEAR(*row.hand_wheel, hand_wheel_from_arm(mechanism, *arm), 1e-8);
  }
  const auto larger = [](const BumpRow& a, const BumpRow& b) {
    return std::abs(*a.hand_wheel) < std::abs(*b.hand_wheel);
  };
  const BumpRow& worst = *std::max_element(bump.heave.rows.begin(), bump.heave.rows.end(), larger);
  EXPECT_GE(std::abs(bump.heave.kickback), std::abs(*worst.hand_wheel));
  EXPECT_TRUE(bump.heave.kickback_everywhere);
}

// Straight guides, an arm ball that only rises, and the chassis-side ball level with it at ride
// height: the link swings on an arc, so the steer is even in the heave and starts flat.
TEST(BumpCheck, LevelLinkOnStraightGuidesStartsFlat) {
  BenchTruck truck;
  truck.axle.suspension.kind = SuspensionKind::straight;
  truck.axle.suspension.leaf.reset();
  truck.axle.left_knuckle.caster = 0.0;
  truck.axle.left_knuckle.kingpin_inclination = 0.0;
  truck.link.knuckle_ball.mm = Vec3(0.0, 620.0, -190.0);
  truck.box.output_point.mm = Vec3(-850.0, 560.0, 0.0);
  const BumpResult bump = bump_of(truck);
  EXPECT_NEAR(deg(bump.heave.rate_per_25.value()), 0.0, 1e-6);
  // Link 850 on its arc: (80 h)^2 / (2 850) short at the arm of 180.
  const double expected = -(850.0 - std::sqrt(850.0 * 850.0 - 80.0 * 80.0)) / 180.0;
  EXPECT_NEAR(bump.heave.rows.back().swivel_left, expected, 2e-4);
  EXPECT_NEAR(bump.heave.rows.front().swivel_left, bump.heave.rows.back().swivel_left, 1e-9);
  EXPECT_NEAR(std::abs(bump.heave.greatest_at), 80.0, 1e-9);
}

// By hand: the ball rises by dz, so the link (850, 60, 150) lets it go back by 150/850 dz; its arm
// of 180 stands inboard of an upright kingpin, so the wheel steers right by that over 180.
TEST(BumpCheck, RateOfASlopingLinkByHand) {
  BenchTruck truck;
  truck.axle.suspension.kind = SuspensionKind::straight;
  truck.axle.suspension.leaf.reset();
  truck.axle.left_knuckle.caster = 0.0;
  truck.axle.left_knuckle.kingpin_inclination = 0.0;
  truck.link.knuckle_ball.mm = Vec3(0.0, 620.0, -190.0);
  truck.box.output_point.mm = Vec3(-850.0, 560.0, -150.0);
  const BumpResult bump = bump_of(truck);
  EXPECT_NEAR(bump.heave.rate_per_25.value(), -25.0 * 150.0 / 850.0 / 180.0, 1e-5);
}

TEST(BumpCheck, RatesAreSlopesOfTheCurves) {
  const BenchTruck truck;
  const BumpResult bump = bump_of(truck);
  const auto mean = [](const BumpRow& row) { return 0.5 * (row.steer_left + row.steer_right); };
  // A chord of 10 mm each way around ride height.
  const BumpRow& down = bump.heave.rows[7];
  const BumpRow& up = bump.heave.rows[9];
  EXPECT_NEAR(bump.heave.rate_per_25.value(), 25.0 * (mean(up) - mean(down)) / (up.at - down.at),
              2e-5);
  const BumpRow& right = bump.roll.rows[7];
  const BumpRow& left = bump.roll.rows[9];
  EXPECT_NEAR(bump.roll.roll_rate.value(), (mean(left) - mean(right)) / (left.at - right.at), 2e-4);
}

TEST(BumpCheck, GreatestIsFoundBetweenRows) {
  BenchTruck truck;
  BumpSettings coarse;
  coarse.rows_each_side = 3;
  BumpSettings fine;
  fine.rows_each_side = 400;
  const BumpResult few = bump_of(truck, coarse);
  const BumpResult many = bump_of(truck, fine);
  EXPECT_NEAR(deg(few.heave.greatest), deg(many.heave.greatest), 0.01);
}

// Straight guides, and the chassis-side ball held: the drag link binds when the axle has risen so
// far that it, or the tie rod, no longer closes. Full poses say where.
TEST(BumpCheck, ALinkTooShortForTheTravelStopsFollowing) {
  BenchTruck truck;
  truck.axle.suspension.kind = SuspensionKind::straight;
  truck.axle.suspension.leaf.reset();
  truck.axle.suspension.bump = 700.0;
  truck.axle.suspension.droop = 60.0;
  truck.axle.left_knuckle.caster = 0.0;
  truck.axle.left_knuckle.kingpin_inclination = 0.0;
  truck.link.knuckle_ball.mm = Vec3(0.0, 620.0, -190.0);
  truck.box.output_point.mm = Vec3(-850.0, 560.0, 0.0);
  const BumpResult bump = bump_of(truck);
  ASSERT_TRUE(bump.heave.follows_up_to);
  EXPECT_FALSE(bump.heave.follows_down_to);
  const Mechanism mechanism = truck.mechanism();
  const auto solves = [&](double heave) {
    Controls controls;
    controls.bump_left = controls.bump_right = heave;
    return solved_pose(mechanism, controls).outcome == Outcome::solved;
  };
  EXPECT_TRUE(solves(*bump.heave.follows_up_to - 1e-3));
  EXPECT_FALSE(solves(*bump.heave.follows_up_to + 1e-3));
  EXPECT_FALSE(bump.heave.kickback_everywhere);
  EXPECT_TRUE(bump.heave.rate_per_25);
  EXPECT_FALSE(bump.heave.rows.back().solved);
}

// Built with the ball at the height found, the truck has the steer that was promised, and 5 mm
// either way is worse.
TEST(BumpCheck, BestBallIsBest) {
  BenchTruck truck;
  truck.box.output_point.mm.z() += 60.0;
  const BumpResult bump = bump_of(truck);
  ASSERT_TRUE(bump.best_ball);
  const double higher = bump.best_ball->best_mm.z() - bump.best_ball->as_drawn_mm.z();
  EXPECT_NEAR(bump.best_ball->as_drawn_mm.z(), 60.0 - 190.0, 1e-9);
  EXPECT_GT(std::abs(higher), 5.0);
  const double drawn_z = truck.box.output_point.mm.z();
  const auto greatest_with = [&](double lift) {
    truck.box.output_point.mm.z() = drawn_z + lift;
    return std::abs(bump_of(truck).heave.greatest);
  };
  EXPECT_NEAR(greatest_with(higher), bump.best_ball->greatest, 1e-5);
  EXPECT_LT(bump.best_ball->greatest, greatest_with(higher + 5.0));
  EXPECT_LT(bump.best_ball->greatest, greatest_with(higher - 5.0));
  EXPECT_LT(bump.best_ball->greatest, std::abs(bump.heave.greatest));
}

TEST(BumpCheck, NothingToSayWithoutSteeringOrRange) {
  EXPECT_FALSE(check_bump(pedals_alone({bench_brake()}, std::nullopt), {}));
  BenchTruck truck;
  truck.axle.suspension.roll = 0.0;
  truck.axle.suspension.wind_up = 0.0;
  const BumpResult bump = bump_of(truck);
  EXPECT_EQ(bump.roll.rows.size(), 1U);
  EXPECT_TRUE(bump.wind_up.rows.empty());
}

}  // namespace
}  // namespace tackbench
