#include "core/checks/link_travel.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>

#include "core/basics/units.h"
#include "core/checks/link_ends.h"
#include "tests/support/bench_truck.h"
#include "tests/support/mirror_image.h"
#include "tests/support/random_truck.h"

namespace tackbench {
namespace {

double deg(double radians) {
  return degrees_from_radians(radians);
}

struct Checked {
  Mechanism mechanism;
  LockResult locks;
  LinkTravel travel;
};

Checked checked(const Project& project) {
  Checked all{compiled(project), {}, {}};
  all.locks = check_locks(all.mechanism, {}).value();
  all.travel = check_link_travel(all.mechanism, all.locks).value();
  return all;
}

Pose pose_at(const Mechanism& mechanism, const Controls& controls) {
  return solved_pose(mechanism, controls);
}

// The same truck posed on a fine grid by the full solver, each lock up to its stop or the box's end
// at that corner: no swing may be larger, no effective angle smaller, than what is reported.
TEST(LinkTravel, NothingIsWorseOnAFineGridOfWholePoses) {
  for (const std::uint64_t seed : {1U, 2U, 3U, 4U, 5U, 6U}) {
    SCOPED_TRACE(seed);
    const Project project = random_truck(seed);
    const Checked all = checked(project);
    const Suspension& given = project.front_axle->suspension;
    const Side driven = all.mechanism.steering->driven_side;
    const double rise = all.mechanism.suspension->half_track * std::sin(given.roll);
    const double up = std::min(rise, given.bump);
    const double down = std::min(rise, given.droop);
    const double corners[][2] = {{0.0, 0.0},
                                 {given.bump, given.bump},
                                 {-given.droop, -given.droop},
                                 {up, -down},
                                 {-down, up}};
    double arm_end = 0.0;
    double knuckle_end = 0.0;
    double leverage = 1.0;
    for (const auto& corner : corners) {
      for (const LockSide* lock : {&all.locks.left, &all.locks.right}) {
        const auto end =
            std::find_if(lock->events.begin(), lock->events.end(), [](const LockEvent& event) {
              return event.ends && event.kind == LockEventKind::axle_stop;
            });
        ASSERT_NE(end, lock->events.end());
        for (int i = 0; i <= 400; ++i) {
          Controls controls;
          controls.bump_left = corner[0];
          controls.bump_right = corner[1];
          controls.hand_wheel = side_sign(lock->side) * lock->events.back().hand_wheel * i / 400.0;
          const Pose pose = pose_at(all.mechanism, controls);
          if (pose.outcome != Outcome::solved || pose.beyond_box_travel) break;
          const double swivel = pose.steering.knuckle(driven).swivel;
          if (std::abs(swivel) > std::abs(end->driven_swivel) &&
              (swivel > 0.0) == (end->driven_swivel > 0.0))
            break;
          arm_end = std::max(arm_end, pose.ball_swing.arm_end);
          knuckle_end = std::max(knuckle_end, pose.ball_swing.knuckle_end);
          leverage =
              std::min(leverage, least_leverage(*all.mechanism.steering, pose.steering).leverage);
        }
      }
    }
    EXPECT_LE(deg(arm_end), deg(all.travel.swing_arm_end.value) + 0.01);
    EXPECT_LE(deg(knuckle_end), deg(all.travel.swing_knuckle_end.value) + 0.01);
    EXPECT_GE(deg(effective_angle(leverage)), deg(all.travel.effective_angle.value) - 0.02);
  }
}

// What is reported is met at the controls that are reported with it.
TEST(LinkTravel, ControlsGiveTheNumbersBack) {
  for (const std::uint64_t seed : {7U, 8U, 9U, 10U}) {
    SCOPED_TRACE(seed);
    const Checked all = checked(random_truck(seed));
    const LinkTravel& travel = all.travel;
    EXPECT_NEAR(pose_at(all.mechanism, travel.swing_arm_end.at).ball_swing.arm_end,
                travel.swing_arm_end.value, 1e-9);
    EXPECT_NEAR(pose_at(all.mechanism, travel.swing_knuckle_end.at).ball_swing.knuckle_end,
                travel.swing_knuckle_end.value, 1e-9);
    EXPECT_GE(travel.swing_arm_end.value, all.locks.swing_used_arm_end);
    EXPECT_GE(travel.swing_knuckle_end.value, all.locks.swing_used_knuckle_end);
    EXPECT_TRUE(travel.travel_given);
    EXPECT_EQ(travel.corners_out_of_reach, 0);
  }
}

// A fore-aft link of length L whose knuckle ball rises by h climbs by asin(h / L) (right triangle),
// and the upright stud of the knuckle takes the climb up; the arm's stud lies across and does not.
TEST(LinkTravel, TheAxlesTravelCostsTheUprightStudItsClimb) {
  BenchTruck truck;
  truck.axle.suspension.roll = 0.0;
  const Checked all = checked(truck.project());
  const double climb =
      std::asin(truck.axle.suspension.bump / all.mechanism.steering->drag_link.length);
  const double added = all.travel.swing_knuckle_end.value - all.locks.swing_used_knuckle_end;
  EXPECT_NEAR(deg(added), deg(climb), 0.3 * deg(climb));
  EXPECT_NE(all.travel.swing_knuckle_end.at.bump_left, 0.0);
  EXPECT_LT(all.travel.swing_arm_end.value - all.locks.swing_used_arm_end, 0.3 * climb);
}

TEST(LinkTravel, WithoutTravelItIsRideHeight) {
  BenchTruck truck;
  truck.axle.suspension.bump = 0.0;
  truck.axle.suspension.droop = 0.0;
  const Checked all = checked(truck.project());
  EXPECT_FALSE(all.travel.travel_given);
  EXPECT_DOUBLE_EQ(all.travel.swing_arm_end.value, all.locks.swing_used_arm_end);
  EXPECT_DOUBLE_EQ(all.travel.swing_knuckle_end.value, all.locks.swing_used_knuckle_end);
  EXPECT_NEAR(all.travel.effective_angle.value,
              std::min(all.locks.left.least_effective_angle, all.locks.right.least_effective_angle),
              1e-12);
  EXPECT_EQ(all.travel.effective_angle.at.bump_left, 0.0);
  EXPECT_NEAR(all.travel.best_stud_clocking, all.locks.best_stud_clocking, 1e-9);
}

TEST(LinkTravel, AMirroredTruckIsWorstAtTheMirroredPlace) {
  for (const std::uint64_t seed : {3U, 11U, 12U}) {
    SCOPED_TRACE(seed);
    const Project project = random_truck(seed);
    const LinkTravel travel = checked(project).travel;
    const LinkTravel mirrored = checked(mirror_image(project)).travel;
    EXPECT_NEAR(travel.swing_arm_end.value, mirrored.swing_arm_end.value, 1e-6);
    EXPECT_NEAR(travel.swing_knuckle_end.value, mirrored.swing_knuckle_end.value, 1e-6);
    EXPECT_NEAR(travel.effective_angle.value, mirrored.effective_angle.value, 1e-6);
    EXPECT_NEAR(travel.swing_arm_end.at.bump_left, mirrored.swing_arm_end.at.bump_right, 1e-6);
    EXPECT_NEAR(travel.swing_arm_end.at.hand_wheel, -mirrored.swing_arm_end.at.hand_wheel, 1e-3);
  }
}

// A link that is too short for the droop: its loop opens, which is worse than any angle.
TEST(LinkTravel, ALoopThatOpensAtACornerIsAnAngleOfNothing) {
  BenchTruck truck;
  truck.axle.suspension.kind = SuspensionKind::straight;
  truck.axle.suspension.leaf.reset();
  truck.axle.suspension.roll = 0.0;
  truck.axle.suspension.bump = 0.0;
  truck.axle.suspension.droop = 500.0;
  truck.link.knuckle_ball.mm = Vec3(-640.0, 615.0, -190.0);
  const Checked all = checked(truck.project());
  EXPECT_LT(deg(all.travel.effective_angle.value), 1.0);
  EXPECT_LT(all.travel.effective_angle.at.bump_left + all.travel.effective_angle.at.bump_right,
            0.0);
}

TEST(LinkTravel, NothingWithoutASteering) {
  EXPECT_FALSE(check_link_travel(pedals_alone({bench_brake()}, std::nullopt), LockResult{}));
}

}  // namespace
}  // namespace tackbench
