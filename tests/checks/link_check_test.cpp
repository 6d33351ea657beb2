#include "core/checks/link_check.h"

#include <gtest/gtest.h>

#include <cmath>

#include "core/basics/units.h"
#include "core/checks/lock_check.h"
#include "tests/support/bench_truck.h"

namespace tackbench {
namespace {

TEST(LinkCheck, AsDrawnIsCentred) {
  const BenchTruck truck;
  const auto link = check_link(truck.mechanism());
  ASSERT_TRUE(link);
  // Arm ball (-850, 530, -190), knuckle ball (10, 615, -190).
  EXPECT_NEAR(link->drawn_length, std::hypot(860.0, 85.0), 1e-9);
  EXPECT_EQ(link->real_length, link->drawn_length);
  EXPECT_NEAR(link->centring_length, link->drawn_length, 1e-9);
  EXPECT_NEAR(link->arm_offset, 0.0, 1e-12);
  EXPECT_NEAR(link->box_turns_left, 2.5, 1e-9);  // 45 degrees times 20
  EXPECT_NEAR(link->box_turns_right, 2.5, 1e-9);
  EXPECT_NEAR(link->turns_lost, 0.0, 1e-9);
  EXPECT_TRUE(link->within_adjustment);
}

// A link 6 mm long of drawn pushes the arm 6 mm rearward at straight: asin(6 / 190) on an arm
// square to it, to the right of centre for this box.
TEST(LinkCheck, LongLinkPutsTheBoxOffCentre) {
  BenchTruck truck;
  truck.link.given_length = std::hypot(860.0, 85.0) + 6.0;
  const auto link = check_link(truck.mechanism());
  ASSERT_TRUE(link);
  EXPECT_NEAR(link->arm_offset, -std::asin(6.0 / 190.0), 3e-4);
  EXPECT_NEAR(link->input_offset, 20.0 * link->arm_offset, 1e-9);
  EXPECT_NEAR(link->centring_length, link->drawn_length, 1e-9);
  EXPECT_GT(link->box_turns_left, link->box_turns_right);
  EXPECT_NEAR(link->box_turns_left + link->box_turns_right, 5.0, 1e-9);
  EXPECT_NEAR(link->turns_lost, 2.5 - link->box_turns_right, 1e-9);
  EXPECT_TRUE(link->within_adjustment);
  truck.link.adjustment = 5.0;
  EXPECT_FALSE(check_link(truck.mechanism())->within_adjustment);

  truck.link.given_length = link->centring_length;
  const auto cured = check_link(truck.mechanism());
  EXPECT_NEAR(cured->arm_offset, 0.0, 1e-9);
  EXPECT_NEAR(cured->turns_lost, 0.0, 1e-7);
}

// A tie rod of another length turns both knuckles a little at straight: the link that centres the
// box is then not the drawn one.
TEST(LinkCheck, CentringLengthFollowsTheTieRod) {
  BenchTruck truck;
  truck.axle.tie_rod_length = 1544.0;
  const auto link = check_link(truck.mechanism());
  ASSERT_TRUE(link);
  EXPECT_GT(std::abs(link->centring_length - link->drawn_length), 0.5);
  truck.link.given_length = link->centring_length;
  EXPECT_NEAR(check_link(truck.mechanism())->arm_offset, 0.0, 1e-9);
}

// Unequal turns from an off-centre box: with the stops acting, turns differ by about twice the
// offset; cured by the centring length.
TEST(LinkCheck, TurnsDifferByTheOffset) {
  BenchTruck truck;
  truck.axle.left_knuckle.stops.clear();  // the box ends both locks
  truck.box.travel_left = truck.box.travel_right = radians_from_degrees(36.0);
  truck.link.given_length = std::hypot(860.0, 85.0) + 6.0;
  const Mechanism mechanism = truck.mechanism();
  const auto locks = check_locks(mechanism, {});
  ASSERT_TRUE(locks);
  EXPECT_EQ(locks->left.events[locks->left.end].kind, LockEventKind::box_end);
  EXPECT_EQ(locks->right.events[locks->right.end].kind, LockEventKind::box_end);
  EXPECT_NEAR(locks->turns_difference,
              -2.0 * turns_from_radians(check_link(mechanism)->input_offset), 1e-9);
  EXPECT_GT(locks->turns_difference, 0.15);
  truck.link.given_length = check_link(mechanism)->centring_length;
  EXPECT_NEAR(check_locks(truck.mechanism(), {})->turns_difference, 0.0, 1e-7);
}

}  // namespace
}  // namespace tackbench
