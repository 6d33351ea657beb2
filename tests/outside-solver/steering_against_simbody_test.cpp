// Swivel angles of random trucks against Simbody, a general multibody solver that knows nothing of
// closed forms: pin joints and rigid rods, brought together by its own constraint projection.
#include <gtest/gtest.h>

#include <cmath>
#include <random>

#include "core/basics/units.h"
#include "core/mechanism/solve.h"
#include "tests/outside-solver/simbody/simbody_truck.h"
#include "tests/support/random_truck.h"

namespace tackbench {
namespace {

constexpr double kAgreeDegrees = 1e-6;
constexpr int kTrucks = 80;
constexpr int kStatesEach = 6;

AxlePose random_axle_pose(std::mt19937_64& random) {
  const auto between = [&random](double low, double high) {
    return std::uniform_real_distribution<double>(low, high)(random);
  };
  return {between(-30.0, 30.0), between(-20.0, 20.0), between(-80.0, 80.0),
          between(-0.08, 0.08), between(-0.06, 0.06), between(-0.025, 0.025)};
}

double least_leverage(const SteeringPose& pose) {
  double least = std::min({pose.drag_link.from_leverage, pose.drag_link.to_leverage,
                           pose.tie_rod.from_leverage, pose.tie_rod.to_leverage});
  for (const RelayPose& relay : pose.relays) {
    least = std::min({least, relay.link.from_leverage, relay.link.to_leverage});
  }
  return least;
}

TEST(OutsideSolver, SwivelAnglesAgree) {
  std::mt19937_64 random(20240607);
  int compared = 0;
  double worst = 0.0;
  for (std::uint64_t seed = 1; seed <= kTrucks; ++seed) {
    const Project project = random_truck(seed);
    const auto mechanism = compile(project);
    ASSERT_TRUE(mechanism.ok());
    SimbodyTruck outside(project);
    Pose pose = blank_pose(*mechanism);
    for (int i = 0; i < kStatesEach; ++i) {
      Controls controls;
      controls.axle_pose = random_axle_pose(random);
      controls.hand_wheel = std::uniform_real_distribution<double>(-10.0, 10.0)(random);
      if (solve(*mechanism, controls, pose) != Outcome::solved) continue;
      if (least_leverage(pose.steering) < 0.3) continue;  // away from toggle
      ASSERT_TRUE(outside.walk_to(pose.steering.arm, *controls.axle_pose, 8)) << seed;
      ASSERT_LT(outside.worst_rod_error(), 1e-8) << seed;
      for (const Side side : {Side::left, Side::right}) {
        const double difference = degrees_from_radians(
            std::abs(outside.swivel(side) - pose.steering.knuckle(side).swivel));
        EXPECT_LT(difference, kAgreeDegrees) << "truck " << seed << " state " << i;
        worst = std::max(worst, difference);
      }
      ++compared;
    }
  }
  RecordProperty("states", compared);
  RecordProperty("worst_difference_deg", std::to_string(worst));
  std::printf("%d states, worst difference %.2e degrees\n", compared, worst);
  EXPECT_GE(compared, 300);
}

// Axle yaw, roll and wind-up one by one, so that a wrong order of turns cannot hide.
TEST(OutsideSolver, EachMovementOfTheAxleAgrees) {
  const AxlePose kPoses[] = {{30, 0, 0, 0, 0, 0},        {0, 20, 0, 0, 0, 0},
                             {0, 0, 80, 0, 0, 0},        {0, 0, 0, 0.09, 0, 0},
                             {0, 0, 0, 0, 0.07, 0},      {0, 0, 0, 0, 0, 0.03},
                             {0, 0, 0, 0.09, 0.07, 0.03}};
  for (std::uint64_t seed = 101; seed <= 112; ++seed) {
    const Project project = random_truck(seed);
    const auto mechanism = compile(project);
    ASSERT_TRUE(mechanism.ok());
    SimbodyTruck outside(project);
    for (const AxlePose& axle : kPoses) {
      Controls controls;
      controls.axle_pose = axle;
      controls.hand_wheel = 4.0;
      const Pose pose = solved_pose(*mechanism, controls);
      ASSERT_EQ(pose.outcome, Outcome::solved);
      ASSERT_TRUE(outside.walk_to(pose.steering.arm, axle, 8));
      for (const Side side : {Side::left, Side::right}) {
        EXPECT_NEAR(degrees_from_radians(outside.swivel(side)),
                    degrees_from_radians(pose.steering.knuckle(side).swivel), kAgreeDegrees)
            << seed;
      }
    }
  }
}

}  // namespace
}  // namespace tackbench
