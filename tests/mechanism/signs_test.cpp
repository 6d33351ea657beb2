// Signs that a whole mirrored truck could not tell apart from their opposites.
#include <gtest/gtest.h>

#include <cmath>

#include "core/basics/units.h"
#include "core/mechanism/solve.h"
#include "tests/support/random_truck.h"

namespace tackbench {
namespace {

Project truck_with(double toe, double camber_each) {
  TruckChoices choices;
  choices.suspension = SuspensionKind::straight;
  std::mt19937_64 random(11);
  Project project = random_truck(choices, random);
  FrontAxleStation axle = *project.front_axle;
  axle.toe = toe;
  axle.left_knuckle.camber = camber_each;
  axle.right_knuckle.reset();
  project.front_axle = std::make_shared<FrontAxleStation>(axle);
  return project;
}

Vec3 wheel_centre(const KnuckleBody& body, const KnucklePose& pose) {
  return (pose.chassis_from_knuckle * Point<Knuckle>{body.wheel_centre_mm}).mm;
}

// ISO 8855: toe is positive when the wheels' fronts are nearer together than their rears; camber
// is positive when a wheel's top leans outward.
TEST(Signs, ToeInBringsTheFrontsTogether) {
  const double toe = radians_from_degrees(0.4);
  const Result<Mechanism> mechanism = compile(truck_with(toe, 0.0));
  ASSERT_TRUE(mechanism) << one_line(mechanism.problems().front());
  const Pose pose = solved_pose(*mechanism, Controls{});
  ASSERT_EQ(pose.outcome, Outcome::solved);
  const SteeringPose& steering = pose.steering;
  EXPECT_NEAR(steering.right.steer - steering.left.steer, toe, 1e-9);

  const Steering& compiled = *mechanism->steering;
  const auto rim = [](const Vec3& centre, const KnucklePose& knuckle, double ahead) {
    return Vec3(centre + ahead * knuckle.spindle.cross(Vec3::UnitZ()).normalized());
  };
  const Vec3 left = wheel_centre(compiled.left, steering.left);
  const Vec3 right = wheel_centre(compiled.right, steering.right);
  const auto apart = [&](double ahead) {
    return rim(left, steering.left, ahead).y() - rim(right, steering.right, ahead).y();
  };
  EXPECT_NEAR(apart(-400.0) - apart(400.0), 800.0 * toe, 0.01);
}

TEST(Signs, PositiveCamberLeansTheTopsOut) {
  const double lean = radians_from_degrees(2.0);
  const Result<Mechanism> mechanism = compile(truck_with(0.0, lean));
  ASSERT_TRUE(mechanism) << one_line(mechanism.problems().front());
  const Pose pose = solved_pose(*mechanism, Controls{});
  ASSERT_EQ(pose.outcome, Outcome::solved);
  // The wheel's up direction is square to its spindle: outward is +Y on the left, -Y on the right.
  const auto top_y = [](const KnucklePose& knuckle) {
    return square_to(knuckle.spindle, Vec3::UnitZ()).y();
  };
  EXPECT_NEAR(top_y(pose.steering.left), std::sin(lean), 1e-3);
  EXPECT_NEAR(top_y(pose.steering.right), -std::sin(lean), 1e-3);
  EXPECT_GT(camber(pose.steering.left, Side::left), 0.0);
  EXPECT_GT(camber(pose.steering.right, Side::right), 0.0);
}

// Whatever the axle does, a link's direction and ends tell one story in the chassis frame.
TEST(Signs, LinksPointFromEndToEndInTheChassisFrame) {
  for (std::uint64_t seed = 1; seed <= 20; ++seed) {
    const Result<Mechanism> mechanism = compile(random_truck(seed));
    ASSERT_TRUE(mechanism) << one_line(mechanism.problems().front());
    Controls controls;
    controls.hand_wheel = radians_from_degrees(120.0);
    controls.axle_pose = AxlePose{5.0, -3.0, 30.0, 0.06, 0.04, 0.03};
    const Pose pose = solved_pose(*mechanism, controls);
    if (pose.outcome != Outcome::solved) continue;
    for (const LinkPose* link : {&pose.steering.drag_link, &pose.steering.tie_rod}) {
      const Vec3 through = link->to_mm - link->from_mm;
      EXPECT_NEAR((through.normalized() - link->along).norm(), 0.0, 1e-12) << "seed " << seed;
    }
    const Vec3 driving = pose.steering.relays.empty() ? pose.steering.arm_ball_mm
                                                      : pose.steering.relays.back().output_ball_mm;
    EXPECT_NEAR((pose.steering.drag_link.from_mm - driving).norm(), 0.0, 1e-9) << "seed " << seed;
  }
}

}  // namespace
}  // namespace tackbench
