#include "core/checks/lock_check.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>

#include "core/basics/units.h"
#include "core/checks/axle_stop.h"
#include "core/checks/link_check.h"
#include "core/checks/stud_clocking.h"
#include "tests/support/bench_truck.h"

namespace tackbench {
namespace {

double deg(double radians) {
  return degrees_from_radians(radians);
}
double rad(double degrees) {
  return radians_from_degrees(degrees);
}

LockResult locks_of(const BenchTruck& truck, const LockSettings& settings = {}) {
  const auto locks = check_locks(truck.mechanism(), settings);
  EXPECT_TRUE(locks);
  return locks.value_or(LockResult{});
}

std::vector<LockEventKind> order(const LockSide& side) {
  std::vector<LockEventKind> kinds;
  for (const LockEvent& event : side.events) kinds.push_back(event.kind);
  return kinds;
}

const LockEvent* find_event(const LockSide& side, LockEventKind kind) {
  const auto found = std::find_if(side.events.begin(), side.events.end(),
                                  [&](const LockEvent& event) { return event.kind == kind; });
  return found == side.events.end() ? nullptr : &*found;
}

Pose pose_at(const Mechanism& mechanism, double hand_wheel) {
  Controls controls;
  controls.hand_wheel = hand_wheel;
  return solved_pose(mechanism, controls);
}

TEST(LockCheck, StopComesBeforeBoxEndAndToggle) {
  const LockResult locks = locks_of(BenchTruck());
  EXPECT_EQ(order(locks.left),
            (std::vector{LockEventKind::axle_stop, LockEventKind::box_end, LockEventKind::toggle}));
  ASSERT_TRUE(locks.left.found);
  EXPECT_EQ(locks.left.end, 0U);
  EXPECT_EQ(locks.left.steers, Side::left);
  EXPECT_EQ(locks.right.steers, Side::right);
  // Constant ratio 20 and no shaft line: turns are arm times 20 over a turn.
  const LockEvent& stop = locks.left.events[0];
  EXPECT_NEAR(stop.hand_wheel, 20.0 * stop.arm, 1e-9);
  EXPECT_NEAR(locks.left.turns, 20.0 * deg(stop.arm) / 360.0, 1e-12);
  const LockEvent& box_end = locks.left.events[1];
  EXPECT_NEAR(deg(box_end.hand_wheel), 900.0, 1e-9);
  EXPECT_NEAR(locks.turns_total, locks.left.turns + locks.right.turns, 1e-12);
  EXPECT_NEAR(locks.turns_difference, locks.left.turns - locks.right.turns, 1e-12);
}

// Each stop names its lock: one that names the other lock is no stop of this one, even where its
// bolt would reach its pad.
TEST(LockCheck, AStopActsOnTheLockThatItNames) {
  BenchTruck truck;
  truck.axle.left_knuckle.stops[0].lock = Side::right;
  const LockResult locks = locks_of(truck);
  EXPECT_EQ(find_event(locks.left, LockEventKind::axle_stop), nullptr);
  ASSERT_TRUE(locks.left.found);
  EXPECT_EQ(locks.left.events[locks.left.end].kind, LockEventKind::box_end);
}

// The stop is built to touch at 36 degrees of swivel, square and on the pad's middle.
TEST(LockCheck, StopContactAsBuilt) {
  const BenchTruck truck;
  const Mechanism mechanism = truck.mechanism();
  const LockResult locks = locks_of(truck);
  for (const LockSide* side : {&locks.left, &locks.right}) {
    ASSERT_TRUE(side->stop);
    EXPECT_NEAR(deg(side->stop->swivel), 36.0 * side_sign(side->side), 1e-6);
    EXPECT_EQ(side->stop->knuckle, side->side);
    EXPECT_NEAR(side->stop->off_centre, 0.0, 1e-5);
    EXPECT_NEAR(side->stop->off_square, 0.0, 1e-6);
    EXPECT_TRUE(side->stop->inside_pad);
    // Independent of the closed form: the tip carried by the solved knuckle touches the pad.
    const Pose pose =
        pose_at(mechanism, side_sign(side->side) * side->events[side->end].hand_wheel);
    const LockStop stop = knuckle_side(truck.axle, side->side).stops.front();
    const Vec3 tip = (pose.steering.knuckle(side->side).chassis_from_knuckle *
                      Point<Knuckle>{stop.tip_centre.mm - Vec3(0.0, 0.0, -250.0)})
                         .mm;
    EXPECT_NEAR((tip - stop.pad_centre.mm).norm(), stop.tip_radius, 1e-5);
    // Straight ahead: same tip, unturned.
    const double gap = (stop.tip_centre.mm - stop.pad_centre.mm).dot(stop.pad_normal) - 8.0;
    EXPECT_NEAR(side->stop->gap_straight, gap, 1e-9);
    EXPECT_GT(gap, 40.0);
  }
}

BenchTruck with_longer_bolt(BenchTruck truck, double screw_out) {
  LockStop& stop = truck.axle.left_knuckle.stops.front();
  stop.tip_centre.mm += screw_out * stop.bolt_axis;
  return truck;
}

TEST(LockCheck, SteerLostPerMillimetreOfBolt) {
  const BenchTruck truck;
  const LockResult at = locks_of(truck);
  const LockResult longer = locks_of(with_longer_bolt(truck, 0.01));
  const LockResult shorter = locks_of(with_longer_bolt(truck, -0.01));
  ASSERT_TRUE(at.left.stop && at.right.stop);
  EXPECT_NEAR((shorter.left.inner_steer - longer.left.inner_steer) / 0.02,
              at.left.stop->degrees_per_mm, 1e-6);
  EXPECT_NEAR((shorter.right.inner_steer - longer.right.inner_steer) / 0.02,
              at.right.stop->degrees_per_mm, 1e-6);
  // 117 mm from the kingpin: half a degree a millimetre.
  EXPECT_NEAR(deg(at.left.stop->degrees_per_mm), 0.5, 0.1);
}

TEST(LockCheck, BoltForAWantedSteer) {
  BenchTruck truck;
  truck.axle.wanted_steer_left = rad(32.0);
  truck.axle.wanted_steer_right = rad(38.0);
  const LockResult locks = locks_of(truck);
  ASSERT_TRUE(locks.left.wanted && locks.right.wanted);
  EXPECT_GT(locks.left.wanted->screw_out, 0.0);
  EXPECT_LT(locks.right.wanted->screw_out, 0.0);
  EXPECT_TRUE(locks.left.wanted->within_adjustment);
  EXPECT_NEAR(deg(locks_of(with_longer_bolt(truck, locks.left.wanted->screw_out)).left.inner_steer),
              32.0, 1e-6);
  EXPECT_NEAR(
      deg(locks_of(with_longer_bolt(truck, locks.right.wanted->screw_out)).right.inner_steer), 38.0,
      1e-6);
  truck.axle.wanted_steer_left = rad(5.0);
  EXPECT_FALSE(locks_of(truck).left.wanted->within_adjustment);
  truck.axle.wanted_steer_left = rad(89.0);  // past toggle: no bolt can do that
  EXPECT_FALSE(locks_of(truck).left.wanted);
}

TEST(LockCheck, BoltToActBeforeEverythingElse) {
  BenchTruck truck;
  truck.axle.left_knuckle.stops = {
      square_stop(truck.axle.left_knuckle, Side::left, rad(50.0), -250.0)};
  LockSettings settings;
  settings.margin_before_others = rad(2.0);
  const LockResult locks = locks_of(truck, settings);
  EXPECT_EQ(order(locks.left),
            (std::vector{LockEventKind::box_end, LockEventKind::axle_stop, LockEventKind::toggle}));
  EXPECT_EQ(locks.left.end, 0U);
  ASSERT_TRUE(locks.left.before_others);
  const LockResult set =
      locks_of(with_longer_bolt(truck, locks.left.before_others->screw_out), settings);
  ASSERT_EQ(set.left.events[set.left.end].kind, LockEventKind::axle_stop);
  EXPECT_NEAR(
      deg(find_event(locks.left, LockEventKind::box_end)->inner_steer) - deg(set.left.inner_steer),
      2.0, 1e-6);
}

TEST(LockCheck, ABoltThatMissesItsPadEndsNothing) {
  BenchTruck truck;
  truck.axle.left_knuckle.stops.front().pad_centre.mm.z() -= 40.0;
  const LockResult locks = locks_of(truck);
  const LockEvent* stop = find_event(locks.left, LockEventKind::axle_stop);
  ASSERT_NE(stop, nullptr);
  EXPECT_FALSE(stop->ends);
  EXPECT_EQ(locks.left.events[locks.left.end].kind, LockEventKind::box_end);
  ASSERT_TRUE(locks.left.stop);
  EXPECT_FALSE(locks.left.stop->inside_pad);
  EXPECT_NEAR(locks.left.stop->off_centre, 40.0, 2.0);
}

TEST(LockCheck, AssistCutIsListedAndDoesNotEnd) {
  BenchTruck truck;
  truck.box.assist_cut_left = rad(33.0);
  truck.box.assist_cut_right = rad(40.0);
  const LockResult locks = locks_of(truck);
  ASSERT_EQ(locks.left.events.front().kind, LockEventKind::assist_cut);
  EXPECT_NEAR(deg(locks.left.events.front().arm), 33.0, 1e-9);
  EXPECT_FALSE(locks.left.events.front().ends);
  EXPECT_EQ(locks.left.events[locks.left.end].kind, LockEventKind::axle_stop);
  EXPECT_NEAR(deg(find_event(locks.right, LockEventKind::assist_cut)->arm), -40.0, 1e-9);
}

TEST(LockCheck, BallStudUsesUpItsSwing) {
  BenchTruck truck;
  truck.link.arm_end.swing_limit = rad(7.5);
  const Mechanism mechanism = truck.mechanism();
  const LockResult locks = locks_of(truck);
  const LockEvent& end = locks.left.events[locks.left.end];
  ASSERT_EQ(end.kind, LockEventKind::ball_stud);
  EXPECT_EQ(end.name, "arm end");
  EXPECT_NEAR(deg(pose_at(mechanism, end.hand_wheel).ball_swing.arm_end), 7.5, 1e-6);
  EXPECT_LT(deg(pose_at(mechanism, end.hand_wheel - rad(0.001)).ball_swing.arm_end), 7.5);
}

TEST(LockCheck, SwingUsedUpStraightAheadLeavesNoLock) {
  BenchTruck truck;
  truck.link.arm_end.swing_limit = rad(4.0);
  const LockResult locks = locks_of(truck);
  for (const LockSide* side : {&locks.left, &locks.right}) {
    ASSERT_TRUE(side->found);
    EXPECT_EQ(side->events[side->end].kind, LockEventKind::ball_stud);
    EXPECT_NEAR(side->turns, 0.0, 1e-9);
  }
  // What the stud would need on the way to the stops still shows.
  EXPECT_GT(deg(locks.swing_used_arm_end), 8.0);
  EXPECT_GT(locks.rows.back().hand_wheel, 10.0);
}

TEST(LockCheck, DrivenAxleJoint) {
  BenchTruck truck;
  truck.axle.driven = true;
  truck.axle.left_knuckle.camber = rad(1.0);
  truck.axle.outer_joint_limit = rad(30.0);
  const Mechanism mechanism = truck.mechanism();
  const LockResult locks = locks_of(truck);
  const LockEvent& end = locks.left.events[locks.left.end];
  ASSERT_EQ(end.kind, LockEventKind::outer_joint);
  EXPECT_EQ(end.name, "left wheel");
  const Vec3 spindle = pose_at(mechanism, end.hand_wheel).steering.left.spindle;
  EXPECT_NEAR(deg(std::acos(spindle.y())), 30.0, 1e-6);
}

TEST(LockCheck, ToggleToAThousandthOfADegree) {
  BenchTruck truck;
  truck.axle.left_knuckle.stops.clear();
  truck.box.travel_left = truck.box.travel_right = rad(120.0);
  truck.link.arm_end.swing_limit.reset();
  truck.link.knuckle_end.swing_limit.reset();
  const Mechanism mechanism = truck.mechanism();
  const LockResult locks = locks_of(truck);
  const LockEvent& end = locks.right.events[locks.right.end];
  ASSERT_EQ(end.kind, LockEventKind::toggle);
  EXPECT_EQ(end.name, "tie rod at the right knuckle");
  EXPECT_EQ(pose_at(mechanism, -end.hand_wheel + rad(0.001)).outcome, Outcome::solved);
  EXPECT_EQ(pose_at(mechanism, -end.hand_wheel - rad(0.001)).outcome,
            Outcome::tie_rod_does_not_close);
  // On the left the arm comes into line with the drag link first: there the steer is greatest.
  const LockEvent& over = locks.left.events[locks.left.end];
  ASSERT_EQ(over.kind, LockEventKind::toggle);
  EXPECT_EQ(over.name, "drag link at the arm");
  const double at = pose_at(mechanism, over.hand_wheel).steering.left.swivel;
  EXPECT_GT(at, pose_at(mechanism, over.hand_wheel + rad(5.0)).steering.left.swivel);
  EXPECT_GT(at, pose_at(mechanism, over.hand_wheel - rad(5.0)).steering.left.swivel);
}

TEST(LockCheck, ReversedBoxSteersTheOtherWay) {
  BenchTruck truck;
  EXPECT_TRUE(check_direction(truck.mechanism())->left_steers_left);
  const LockResult right_way = locks_of(truck);
  truck.box.left_turns_arm = TurnSense::anticlockwise;
  const auto direction = check_direction(truck.mechanism());
  ASSERT_TRUE(direction);
  EXPECT_FALSE(direction->left_steers_left);
  const LockResult locks = locks_of(truck);
  EXPECT_EQ(locks.left.steers, Side::right);
  // Same iron: turning left now meets what turning right met.
  ASSERT_TRUE(locks.left.stop);
  EXPECT_EQ(locks.left.stop->knuckle, Side::right);
  EXPECT_NEAR(locks.left.turns, right_way.right.turns, 1e-9);
  EXPECT_NEAR(locks.right.turns, right_way.left.turns, 1e-9);
  EXPECT_NEAR(locks.left.inner_steer, right_way.right.inner_steer, 1e-9);
  EXPECT_NEAR(locks.ratio_on_centre, -right_way.ratio_on_centre, 1e-9);
}

TEST(LockCheck, RatiosAreDerivativesAndRowsRunFromRightToLeft) {
  const BenchTruck truck;
  const Mechanism mechanism = truck.mechanism();
  const LockResult locks = locks_of(truck);
  ASSERT_EQ(locks.rows.size(), 49U);
  EXPECT_NEAR(locks.rows.front().hand_wheel, -locks.right.turns * kRadiansPerTurn, 1e-9);
  EXPECT_NEAR(locks.rows.back().hand_wheel, locks.left.turns * kRadiansPerTurn, 1e-9);
  constexpr double kStep = 1e-4;
  for (const LockRow& row : locks.rows) {
    const auto mean = [&](double hand_wheel) {
      const Pose pose = pose_at(mechanism, hand_wheel);
      return 0.5 * (pose.steering.left.steer + pose.steering.right.steer);
    };
    const double rate = (mean(row.hand_wheel + kStep) - mean(row.hand_wheel - kStep)) / (2 * kStep);
    EXPECT_NEAR(row.ratio, 1.0 / rate, 1e-5 * std::abs(row.ratio));
  }
  EXPECT_NEAR(locks.ratio_on_centre, locks.rows[24].ratio, 1e-9);
  EXPECT_NEAR(locks.left.overall_ratio_end, locks.rows.back().ratio, 1e-12);
  EXPECT_TRUE(locks.circles_left && locks.circles_right);
  EXPECT_TRUE(locks.rows.back().ackermann_known);
  EXPECT_FALSE(locks.rows[24].ackermann_known);
}

TEST(LockCheck, BestClockingBeatsItsNeighbours) {
  BenchTruck truck;
  // 25 degrees off the clocking that centres both studs straight ahead.
  truck.link.stud_clocking = truck.mechanism().steering->stud_clocking + rad(25.0);
  const LockResult locks = locks_of(truck);
  const auto greatest_swing = [&](double clocking) {
    truck.link.stud_clocking = clocking;
    const LockResult at = locks_of(truck);
    return std::max(at.swing_used_arm_end, at.swing_used_knuckle_end);
  };
  const double best = greatest_swing(locks.best_stud_clocking);
  EXPECT_NEAR(best, locks.swing_at_best_clocking, 1e-9);
  EXPECT_LT(best, std::max(locks.swing_used_arm_end, locks.swing_used_knuckle_end));
  for (const double off : {-6.0, -2.0, -0.5, 0.5, 2.0, 6.0})
    EXPECT_GE(greatest_swing(locks.best_stud_clocking + rad(off)), best - 1e-7) << off;
}

TEST(LockCheck, NothingWithoutASteering) {
  EXPECT_FALSE(check_locks(pedals_alone({bench_brake()}, std::nullopt), {}));
  EXPECT_FALSE(check_link(pedals_alone({bench_brake()}, std::nullopt)));
  EXPECT_FALSE(check_direction(pedals_alone({bench_brake()}, std::nullopt)));
}

}  // namespace
}  // namespace tackbench
