// From controls to a pose, in order of motion.
#include "core/mechanism/solve.h"

#include <algorithm>
#include <cmath>

namespace tackbench {

namespace {

// Keeps the first failure in order of motion.
class FirstFailure {
 public:
  explicit FirstFailure(Pose& pose) : pose_(pose) {
    pose_.outcome = Outcome::solved;
    pose_.place = 0;
  }
  void note(Outcome outcome, int place = 0) {
    if (outcome == Outcome::solved || pose_.outcome != Outcome::solved) return;
    pose_.outcome = outcome;
    pose_.place = place;
  }

 private:
  Pose& pose_;
};

void pose_pedals(const Mechanism& mechanism, const Controls& controls, Pose& pose,
                 FirstFailure& failure) {
  for (std::size_t i = 0; i < mechanism.pedals.size(); ++i) {
    const PedalLinkage& linkage = mechanism.pedals[i];
    pose_pedal(linkage, controls.pedals[i] * linkage.pedal.full_travel, pose.pedals[i]);
    if (!pose.pedals[i].closes) failure.note(Outcome::pedal_does_not_close, static_cast<int>(i));
  }
}

void pose_axle(const SuspensionPath& path, const Controls& controls, Pose& pose,
               FirstFailure& failure) {
  if (controls.axle_pose) {
    pose.axle = *controls.axle_pose;
    pose.chassis_from_axle = chassis_from_axle(path, pose.axle);
  } else {
    const AxleAnswer answer =
        axle_pose(path, controls.bump_left, controls.bump_right, controls.wind_up);
    if (!answer.closes) failure.note(Outcome::suspension_does_not_close);
    pose.axle = answer.pose;
    pose.chassis_from_axle = answer.chassis_from_axle;
  }
}

}  // namespace

Outcome solve(const Mechanism& mechanism, const Controls& controls, Pose& pose) {
  FirstFailure failure(pose);
  pose.chassis_from_cab = mechanism.chassis_from_cab;
  pose.chassis_from_cab.shift_mm += controls.cab_shake;

  double box_turn = controls.hand_wheel;
  double box_rate = 1.0;
  if (mechanism.shaft_line) {
    pose_shaft_line(*mechanism.shaft_line, pose.chassis_from_cab, controls.hand_wheel,
                    pose.shaft_line);
    box_turn = pose.shaft_line.box_turn;
    box_rate = pose.shaft_line.box_rate;
    if (!pose.shaft_line.closes) failure.note(Outcome::shaft_line_does_not_close);
  }
  if (mechanism.suspension) pose_axle(*mechanism.suspension, controls, pose, failure);
  if (mechanism.steering) {
    const Steering& steering = *mechanism.steering;
    pose.box_input = steering.straight_input + box_turn;
    pose.arm_rate = box_rate / steering.box.ratio_at(pose.box_input);
    const double arm = steering.box.output_from_input(pose.box_input);
    pose.beyond_box_travel = arm > steering.travel_left || arm < -steering.travel_right;
    int failed_relay = 0;
    const Outcome outcome =
        solve_steering(steering, pose.chassis_from_axle, arm, pose.steering, &failed_relay);
    failure.note(outcome, failed_relay);
    const DragLinkStation& link = *mechanism.project.drag_link;
    pose.ball_swing =
        ball_swing(steering, pose.steering, link.arm_end.swing_limit, link.knuckle_end.swing_limit);
  } else {
    failure.note(Outcome::not_compiled);
  }
  pose_pedals(mechanism, controls, pose, failure);
  return pose.outcome;
}

Pose solved_pose(const Mechanism& mechanism, const Controls& controls) {
  Pose pose = blank_pose(mechanism);
  static_cast<void>(solve(mechanism, controls, pose));  // the pose carries its outcome
  return pose;
}

double hand_wheel_from_arm(const Mechanism& mechanism, double arm) {
  if (!mechanism.steering) return 0.0;
  const Steering& steering = *mechanism.steering;
  const double box_turn = steering.box.input_from_output(arm) - steering.straight_input;
  return mechanism.shaft_line
             ? hand_wheel_from_box_turn(*mechanism.shaft_line, mechanism.chassis_from_cab, box_turn)
             : box_turn;
}

double arm_from_hand_wheel(const Mechanism& mechanism, double hand_wheel) {
  if (!mechanism.steering) return 0.0;
  const Steering& steering = *mechanism.steering;
  double box_turn = hand_wheel;
  if (mechanism.shaft_line) {
    ShaftLinePose pose;
    pose_shaft_line(*mechanism.shaft_line, mechanism.chassis_from_cab, hand_wheel, pose);
    box_turn = pose.box_turn;
  }
  return steering.box.output_from_input(steering.straight_input + box_turn);
}

}  // namespace tackbench
