// Ball-stud swing against a brute-force search over the link's spin.
#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>

#include "core/basics/units.h"
#include "core/mechanism/solve.h"

namespace tackbench {
namespace {

// A steering with nothing but a link along +X, a stud on the arm and one on the left knuckle.
Steering studs(const Vec3& arm_stud, const Vec3& knuckle_stud, double clocking) {
  Steering steering;
  steering.arm = crank_through(Vec3::Zero(), Vec3::UnitY(), Vec3(0, 0, -190));
  steering.arm_stud = arm_stud.normalized();
  steering.knuckle_stud = knuckle_stud.normalized();
  steering.stud_clocking = clocking;
  return steering;
}

SteeringPose link_along_x() {
  SteeringPose pose;
  pose.drag_link.along = Vec3::UnitX();
  return pose;
}

struct BothEnds {
  double arm;
  double knuckle;
};

// Swing of both studs when the link is spun by `spin` from the arm's stud.
BothEnds swings_at(const Steering& steering, double spin) {
  const Vec3 link = Vec3::UnitX();
  const Vec3 zero = square_to(link, steering.arm_stud);
  const Vec3 arm_housing = turned(zero, link, spin);
  const Vec3 knuckle_housing = turned(zero, link, spin + steering.stud_clocking);
  return {angle_between(arm_housing, steering.arm_stud),
          angle_between(knuckle_housing, steering.knuckle_stud)};
}

double least_worst_use(const Steering& steering, double arm_limit, double knuckle_limit) {
  double least = 1e9;
  constexpr int kSteps = 720;
  for (int i = 0; i < kSteps; ++i) {
    const BothEnds swing = swings_at(steering, kRadiansPerTurn * i / kSteps);
    least = std::min(least, std::max(swing.arm / arm_limit, swing.knuckle / knuckle_limit));
  }
  return least;
}

TEST(BallSwing, ChosenSpinIsTheBestThatBruteForceFinds) {
  const Vec3 arm_studs[] = {{0.1, 0, 1}, {-0.3, 0.2, 1}, {0, 1, 0.05}, {0.2, -1, 0.4}};
  const Vec3 knuckle_studs[] = {{0.05, 0.1, 1}, {0.4, 0.5, 1}, {-0.1, -0.6, -1}, {0.2, 1, 0}};
  const double limits[][2] = {{0.4, 0.4}, {0.5, 0.3}, {0.25, 0.6}};
  for (const Vec3& arm_stud : arm_studs) {
    for (const Vec3& knuckle_stud : knuckle_studs) {
      for (const double clocking : {0.0, 0.3, -1.2, 3.0}) {
        for (const auto& limit : limits) {
          const Steering steering = studs(arm_stud, knuckle_stud, clocking);
          const BallSwing swing = ball_swing(steering, link_along_x(), limit[0], limit[1]);
          const BothEnds there = swings_at(steering, swing.spin);
          EXPECT_NEAR(swing.arm_end, there.arm, 1e-9);
          EXPECT_NEAR(swing.knuckle_end, there.knuckle, 1e-9);
          const double use = std::max(swing.arm_end / limit[0], swing.knuckle_end / limit[1]);
          // The search steps by half a degree: it can only be a little worse.
          EXPECT_LE(use, least_worst_use(steering, limit[0], limit[1]) + 1e-9);
        }
      }
    }
  }
}

TEST(BallSwing, NaturalClockingCentresBothEnds) {
  Steering steering = studs({0.1, 0, 1}, {0.05, 0.7, 1}, 0.0);
  steering.stud_clocking = ball_swing(steering, link_along_x(), {}, {}).natural_clocking;
  const BallSwing swing = ball_swing(steering, link_along_x(), {}, {});
  EXPECT_NEAR(swing.arm_end, swing.least_arm_end, 1e-12);
  EXPECT_NEAR(swing.knuckle_end, swing.least_knuckle_end, 1e-12);
}

TEST(BallSwing, FreeSpinIsTheOverlapOfBothLimits) {
  const Steering steering = studs({0, 0, 1}, {0, 0, 1}, 0.0);
  const double limit = radians_from_degrees(20.0);
  // Studs square to the link and aligned: either way by the limit.
  EXPECT_NEAR(ball_swing(steering, link_along_x(), limit, limit).spin_free, 2.0 * limit, 1e-12);
  const Steering clocked = studs({0, 0, 1}, {0, 0, 1}, radians_from_degrees(30.0));
  EXPECT_NEAR(ball_swing(clocked, link_along_x(), limit, limit).spin_free,
              radians_from_degrees(10.0), 1e-12);
}

}  // namespace
}  // namespace tackbench
