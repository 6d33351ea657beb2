// A whole Project compiled and solved: the truck-like layout whose values were computed with an
// independent least-squares solver (closed form: tan-half-angle position of an RSSR loop).
#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>

#include "core/basics/units.h"
#include "core/mechanism/solve.h"

namespace tackbench {
namespace {

// Pitman axis through (-850, 520, 700) along +Y, ball at (-850, 520, 510); kingpin through
// (0, 800, 500), caster 3, inclination 6; steering-arm ball (20, 620, 540). The hand wheel's left
// turn moves the arm's ball forward, which is clockwise seen from the arm's side.
Project truck_layout() {
  Project project;
  SteeringBoxStation box;
  box.input_end.mm = {-900, 520, 800};
  box.input_axis.along = Vec3(1, 0, -1).normalized();
  box.output_point.mm = {-850, 520, 700};
  box.output_axis.along = Vec3::UnitY();
  box.left_turns_arm = TurnSense::clockwise;
  box.ratio = 20.0;
  box.travel_left = box.travel_right = radians_from_degrees(45.0);
  box.arm.length = 190.0;
  project.steering_box = std::make_shared<SteeringBoxStation>(box);

  DragLinkStation link;
  link.knuckle = Side::left;
  link.knuckle_ball.mm = {20, 620, 540};
  project.drag_link = std::make_shared<DragLinkStation>(link);

  FrontAxleStation axle;
  axle.track = 1900.0;
  axle.wheel_centre_height = 500.0;
  axle.left_knuckle.kingpin_point.mm = {0, 800, 500};
  axle.left_knuckle.caster = radians_from_degrees(3.0);
  axle.left_knuckle.kingpin_inclination = radians_from_degrees(6.0);
  axle.left_knuckle.tie_rod_ball.mm = {-170, 775, 480};
  axle.suspension.kind = SuspensionKind::straight;
  project.front_axle = std::make_shared<FrontAxleStation>(axle);
  return project;
}

struct Row {
  double pitman_deg;  // right-handed about +Y
  double swivel_deg;
  double rate;  // d swivel / d pitman
  double effective_arm_deg;
  double effective_knuckle_deg;
};

// Computed (mark C): closed form and least squares agree to the digits shown.
constexpr Row kRows[] = {
    {-40, 43.175699, -1.060525, 48.71, 49.76}, {-30, 32.435387, -1.083071, 59.61, 59.11},
    {-20, 21.579165, -1.085904, 70.02, 68.82}, {-10, 10.748184, -1.079367, 79.33, 78.80},
    {0, 0, -1.070342, 83.16, 88.14},           {10, -10.669527, -1.064602, 76.68, 80.01},
    {20, -21.324689, -1.068780, 67.95, 69.13}, {30, -32.113318, -1.093821, 59.08, 57.68},
    {40, -43.352136, -1.165785, 50.36, 45.37},
};

TEST(TruckLayout, SwivelRatioAndEffectiveAnglesFollowTheTable) {
  const Result<Mechanism> mechanism = compile(truck_layout());
  ASSERT_TRUE(mechanism) << one_line(mechanism.problems().front());
  EXPECT_NEAR(mechanism->steering->drag_link.length, 876.241976, 1e-6);
  for (const Row& row : kRows) {
    Controls controls;
    controls.hand_wheel = -20.0 * radians_from_degrees(row.pitman_deg);
    const Pose pose = solved_pose(*mechanism, controls);
    ASSERT_EQ(pose.outcome, Outcome::solved);
    EXPECT_NEAR(degrees_from_radians(pose.steering.left.swivel), row.swivel_deg, 1e-6);
    EXPECT_NEAR(-pose.steering.left.swivel_rate, row.rate, 1e-6);
    EXPECT_NEAR(degrees_from_radians(effective_angle(pose.steering.drag_link.from_leverage)),
                row.effective_arm_deg, 5.1e-3);
    EXPECT_NEAR(degrees_from_radians(effective_angle(pose.steering.drag_link.to_leverage)),
                row.effective_knuckle_deg, 5.1e-3);
  }
}

// Swivel 43.176 is steer 42.803 with the spindle along Y when straight and the axle level.
TEST(TruckLayout, SteerIsNotSwivel) {
  const Result<Mechanism> mechanism = compile(truck_layout());
  ASSERT_TRUE(mechanism);
  Controls controls;
  controls.hand_wheel = 20.0 * radians_from_degrees(40.0);
  const Pose pose = solved_pose(*mechanism, controls);
  EXPECT_NEAR(degrees_from_radians(pose.steering.left.steer), 42.803, 5e-4);
}

TEST(TruckLayout, HandWheelZeroIsStraight) {
  const Result<Mechanism> mechanism = compile(truck_layout());
  ASSERT_TRUE(mechanism);
  const Pose pose = solved_pose(*mechanism, Controls{});
  EXPECT_NEAR(pose.steering.left.steer + pose.steering.right.steer, 0.0, 1e-14);
  EXPECT_NEAR(pose.steering.arm, 0.0, 1e-14);
}

TEST(TruckLayout, AGivenLengthMovesTheBoxOffItsCentreNotTheWheels) {
  Project project = truck_layout();
  DragLinkStation link = *project.drag_link;
  link.given_length = 876.241976 + 6.0;
  project.drag_link = std::make_shared<DragLinkStation>(link);
  const Result<Mechanism> mechanism = compile(project);
  ASSERT_TRUE(mechanism);
  const Pose pose = solved_pose(*mechanism, Controls{});
  ASSERT_EQ(pose.outcome, Outcome::solved);
  EXPECT_NEAR(pose.steering.left.steer + pose.steering.right.steer, 0.0, 1e-13);
  // Box behind the axle: a longer link pushes the arm rearward, which is a right turn of the box;
  // to first order 6 mm over the arm's 190 at 83.16 degrees.
  EXPECT_NEAR(pose.steering.arm, -6.0 / (190.0 * std::sin(radians_from_degrees(83.16))), 3e-4);
  EXPECT_NEAR((pose.steering.drag_link.to_mm - pose.steering.drag_link.from_mm).norm(), 882.241976,
              1e-9);
}

TEST(TruckLayout, ALinkThatCannotJoinItsBallsIsRefusedByName) {
  Project project = truck_layout();
  DragLinkStation link = *project.drag_link;
  link.given_length = 400.0;
  project.drag_link = std::make_shared<DragLinkStation>(link);
  const Result<Mechanism> mechanism = compile(project);
  ASSERT_FALSE(mechanism);
  EXPECT_EQ(mechanism.problems().front().place, "drag_link.given_length_mm");
}

TEST(TruckLayout, WithoutTheBoxsSenseTheSteeringIsAskedForNotGuessed) {
  Project project = truck_layout();
  SteeringBoxStation box = *project.steering_box;
  box.left_turns_arm.reset();
  project.steering_box = std::make_shared<SteeringBoxStation>(box);
  const Result<Mechanism> mechanism = compile(project);
  ASSERT_TRUE(mechanism);
  EXPECT_FALSE(mechanism->steering);
  const auto asked = [](const MissingInput& input) {
    return input.place == "steering_box.left_turns_arm";
  };
  EXPECT_TRUE(std::any_of(mechanism->missing.begin(), mechanism->missing.end(), asked));
  EXPECT_EQ(solved_pose(*mechanism, Controls{}).outcome, Outcome::not_compiled);
}

TEST(TruckLayout, FarPastToggleTheOutcomeIsNamedAndNumbersStayFinite) {
  const Result<Mechanism> mechanism = compile(truck_layout());
  ASSERT_TRUE(mechanism);
  bool failed = false;
  for (double arm_deg = -175.0; arm_deg <= 175.0; arm_deg += 1.0) {
    Controls controls;
    controls.hand_wheel = 20.0 * radians_from_degrees(arm_deg);
    const Pose pose = solved_pose(*mechanism, controls);
    failed = failed || pose.outcome != Outcome::solved;
    for (const KnucklePose* knuckle : {&pose.steering.left, &pose.steering.right}) {
      EXPECT_TRUE(std::isfinite(knuckle->steer) && std::isfinite(knuckle->swivel_rate) &&
                  std::isfinite(knuckle->steer_rate));
    }
    EXPECT_TRUE(std::isfinite(pose.ball_swing.arm_end) &&
                std::isfinite(pose.ball_swing.knuckle_end));
  }
  EXPECT_TRUE(failed);
}

}  // namespace
}  // namespace tackbench
