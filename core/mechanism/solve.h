// From controls to a pose. Closed forms, no allocation once the pose is blank_pose()'s, never NaN;
// every caller has to look at the outcome.
#pragma once

#include "core/mechanism/pose.h"

namespace tackbench {

// All of it. On failure `pose` holds what could be posed.
[[nodiscard]] Outcome solve(const Mechanism& mechanism, const Controls& controls, Pose& pose);
// The same with a pose of its own (allocates).
Pose solved_pose(const Mechanism& mechanism, const Controls& controls);

// Arm to road wheels alone, for checks over many poses. `arm` from the box's centre, rad.
// `failed_relay` names the relay when the outcome does.
[[nodiscard]] Outcome solve_steering(const Steering& steering,
                                     const Placement<Chassis, Axle>& chassis_from_axle, double arm,
                                     SteeringPose& pose, int* failed_relay = nullptr);

// Road to hand: the arm angle that holds the driven knuckle at `swivel`, rad. Empty when a loop
// cannot close.
std::optional<double> arm_from_swivel(const Steering& steering,
                                      const Placement<Chassis, Axle>& chassis_from_axle,
                                      double swivel);

// Driven swivel at which the mean of both steer angles is zero at that axle pose. Empty when the
// linkage cannot get there.
std::optional<double> straight_swivel(const Steering& steering,
                                      const Placement<Chassis, Axle>& chassis_from_axle);

// Ball-stud swing at a solved pose; limits in rad, both or neither are used.
BallSwing ball_swing(const Steering& steering, const SteeringPose& pose,
                     std::optional<double> arm_limit, std::optional<double> knuckle_limit);

// Hand wheel <-> arm with the cab at rest, rad.
double hand_wheel_from_arm(const Mechanism& mechanism, double arm);
double arm_from_hand_wheel(const Mechanism& mechanism, double hand_wheel);

// Named points that ride on bodies, chassis frame, for output and outside checks.
struct NamedPoint {
  std::string name;
  Vec3 at_mm;
};
std::vector<NamedPoint> named_points(const Mechanism& mechanism, const Pose& pose);

// One sentence of what the outcome means, with the part's name.
std::string outcome_words(const Mechanism& mechanism, const Pose& pose);
// Stable name: "solved", "drag_link_does_not_close" ...
const char* outcome_name(Outcome outcome);

}  // namespace tackbench
