// Ball-stud swing against a plain search over the link's spin, with studs and housings as vectors.
#include <gtest/gtest.h>

#include <cmath>
#include <random>

#include "core/basics/units.h"
#include "core/mechanism/solve.h"
#include "tests/support/random_truck.h"

namespace tackbench {
namespace {

struct Searched {
  double worst_use = 1e9;  // larger of swing / limit
  double arm_end = 0.0;
  double knuckle_end = 0.0;
};

// Housing axes are square to the link; the arm's stands at `spin`, the knuckle's `clocking` beyond.
Searched at_spin(const Vec3& link, const Vec3& arm_stud, const Vec3& knuckle_stud, double spin,
                 double clocking, double arm_limit, double knuckle_limit) {
  const Vec3 zero = (arm_stud - link.dot(arm_stud) * link).normalized();
  Searched at;
  at.arm_end = std::acos(turned(zero, link, spin).dot(arm_stud));
  at.knuckle_end = std::acos(turned(zero, link, spin + clocking).dot(knuckle_stud));
  at.worst_use = std::max(at.arm_end / arm_limit, at.knuckle_end / knuckle_limit);
  return at;
}

TEST(BallSwing, NoOtherSpinUsesLess) {
  std::mt19937_64 random(5);
  for (std::uint64_t seed = 0; seed < 40; ++seed) {
    const Project project = random_truck(seed);
    const auto mechanism = compile(project);
    ASSERT_TRUE(mechanism.ok());
    const Steering& steering = *mechanism->steering;
    Controls controls;
    controls.hand_wheel = std::uniform_real_distribution<double>(-8.0, 8.0)(random);
    controls.bump_left = std::uniform_real_distribution<double>(-60.0, 60.0)(random);
    const Pose pose = solved_pose(*mechanism, controls);
    ASSERT_EQ(pose.outcome, Outcome::solved);
    const double arm_limit = *project.drag_link->arm_end.swing_limit;
    const double knuckle_limit =
        seed % 3 == 0 ? arm_limit : *project.drag_link->knuckle_end.swing_limit;
    const BallSwing swing = ball_swing(steering, pose.steering, arm_limit, knuckle_limit);

    const bool relay = !steering.relays.empty();
    const Vec3 arm_stud =
        turned(steering.arm_stud, relay ? steering.relays.back().output.axis : steering.arm.axis,
               relay ? pose.steering.relays.back().angle : pose.steering.arm);
    const Vec3 knuckle_stud =
        pose.steering.knuckle(steering.driven_side).chassis_from_knuckle.turn *
        steering.knuckle_stud;
    const Vec3& link = pose.steering.drag_link.along;
    const double clocking = steering.stud_clocking;
    const Searched chosen =
        at_spin(link, arm_stud, knuckle_stud, swing.spin, clocking, arm_limit, knuckle_limit);
    EXPECT_NEAR(swing.arm_end, chosen.arm_end, 1e-7) << seed;
    EXPECT_NEAR(swing.knuckle_end, chosen.knuckle_end, 1e-7) << seed;
    for (double spin = -kPi; spin < kPi; spin += 0.002) {
      const Searched other =
          at_spin(link, arm_stud, knuckle_stud, spin, clocking, arm_limit, knuckle_limit);
      ASSERT_GE(other.worst_use, chosen.worst_use - 1e-7) << seed << " spin " << spin;
      ASSERT_GE(other.arm_end, swing.least_arm_end - 1e-9);
      ASSERT_GE(other.knuckle_end, swing.least_knuckle_end - 1e-9);
    }
  }
}

TEST(BallSwing, FreeSpinsAreThoseWithinBothLimits) {
  for (std::uint64_t seed = 0; seed < 40; ++seed) {
    const Project project = random_truck(seed);
    const auto mechanism = compile(project);
    ASSERT_TRUE(mechanism.ok());
    const Steering& steering = *mechanism->steering;
    const Pose pose = solved_pose(*mechanism, Controls{});
    const double arm_limit = 0.5;
    const double knuckle_limit = 0.4;
    const BallSwing swing = ball_swing(steering, pose.steering, arm_limit, knuckle_limit);
    const bool relay = !steering.relays.empty();
    const Vec3 arm_stud =
        turned(steering.arm_stud, relay ? steering.relays.back().output.axis : steering.arm.axis,
               relay ? pose.steering.relays.back().angle : pose.steering.arm);
    const Vec3 knuckle_stud =
        pose.steering.knuckle(steering.driven_side).chassis_from_knuckle.turn *
        steering.knuckle_stud;
    double free = 0.0;
    constexpr double kStep = 1e-3;
    for (double spin = -kPi; spin < kPi; spin += kStep) {
      if (at_spin(pose.steering.drag_link.along, arm_stud, knuckle_stud, spin,
                  steering.stud_clocking, arm_limit, knuckle_limit)
              .worst_use <= 1.0) {
        free += kStep;
      }
    }
    EXPECT_NEAR(swing.spin_free, free, 3.0 * kStep) << seed;
  }
}

}  // namespace
}  // namespace tackbench
