#include "core/checks/link_check.h"

#include <algorithm>
#include <cmath>

#include "core/basics/units.h"
#include "core/checks/link_ends.h"

namespace tackbench {

namespace {

// Hand-wheel turn that moves the box input from its centre by `input` with the box centred when
// the wheels are straight.
double centred_turn(const Mechanism& mechanism, double input) {
  if (!mechanism.shaft_line) return input;
  return hand_wheel_from_box_turn(*mechanism.shaft_line, mechanism.chassis_from_cab, input);
}

}  // namespace

std::optional<DirectionResult> check_direction(const Mechanism& mechanism) {
  if (!mechanism.steering) return std::nullopt;
  Pose pose = blank_pose(mechanism);
  if (solve(mechanism, Controls{}, pose) != Outcome::solved) return std::nullopt;
  DirectionResult result;
  result.steer_per_hand_wheel =
      pose.arm_rate * 0.5 * (pose.steering.left.steer_rate + pose.steering.right.steer_rate);
  result.left_steers_left = result.steer_per_hand_wheel > 0.0;
  return result;
}

std::optional<LinkResult> check_link(const Mechanism& mechanism) {
  if (!mechanism.steering || !mechanism.suspension) return std::nullopt;
  const Steering& steering = *mechanism.steering;
  const Placement<Chassis, Axle> at_ride = chassis_from_axle(*mechanism.suspension, AxlePose{});
  const std::optional<Vec3> hand_ball = drag_link_hand_ball(steering, 0.0);
  if (!hand_ball) return std::nullopt;
  const Vec3 road_ball =
      (at_ride * Point<Axle>{steering.drag_link.driven.ball(steering.straight_swivel)}).mm;

  LinkResult result;
  result.drawn_length = steering.drag_link_drawn;
  result.real_length = steering.drag_link.length;
  result.centring_length = (road_ball - *hand_ball).norm();
  result.arm_offset = steering.straight_arm;
  result.input_offset = steering.straight_input;
  result.box_turns_left = turns_from_radians(hand_wheel_from_arm(mechanism, steering.travel_left));
  result.box_turns_right =
      -turns_from_radians(hand_wheel_from_arm(mechanism, -steering.travel_right));
  const double centred_left = turns_from_radians(
      centred_turn(mechanism, steering.box.input_from_output(steering.travel_left)));
  const double centred_right = -turns_from_radians(
      centred_turn(mechanism, steering.box.input_from_output(-steering.travel_right)));
  result.turns_lost =
      std::max({0.0, centred_left - result.box_turns_left, centred_right - result.box_turns_right});
  result.within_adjustment = std::abs(result.centring_length - result.real_length) <=
                             mechanism.project.drag_link->adjustment;
  return result;
}

}  // namespace tackbench
