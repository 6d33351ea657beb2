#include "core/checks/control_reach.h"

#include <algorithm>
#include <cmath>

#include "core/basics/units.h"

namespace tackbench {

namespace {

double finite_or_nothing(double value) {
  return std::isfinite(value) ? value : 0.0;
}

}  // namespace

ControlReach control_reach(const Mechanism& mechanism, const LockResult* locks) {
  ControlReach reach;
  reach.full_left = kRadiansPerTurn;
  reach.full_right = -kRadiansPerTurn;
  if (mechanism.steering) {
    const Steering& steering = *mechanism.steering;
    const double left = hand_wheel_from_arm(mechanism, steering.travel_left);
    const double right = hand_wheel_from_arm(mechanism, -steering.travel_right);
    reach.full_left = std::max({left, right, 0.0});
    reach.full_right = std::min({left, right, 0.0});
  }
  if (locks != nullptr) {
    if (locks->left.found) reach.full_left = locks->left.turns * kRadiansPerTurn;
    if (locks->right.found) reach.full_right = -locks->right.turns * kRadiansPerTurn;
    reach.ends_at_locks = locks->left.found && locks->right.found;
  }
  reach.full_left = finite_or_nothing(reach.full_left);
  reach.full_right = finite_or_nothing(reach.full_right);
  if (mechanism.suspension) {
    const Suspension& suspension = mechanism.project.front_axle->suspension;
    reach.full_bump = std::max(suspension.bump, 0.0);
    reach.full_droop = -std::max(suspension.droop, 0.0);
    reach.wind_up = std::max(suspension.wind_up, 0.0);
  }
  if (mechanism.shaft_line) {
    const CabShake& shake = mechanism.shaft_line->shake;
    reach.most_shake_mm = Vec3(shake.forward, shake.left, shake.up).cwiseMax(0.0);
    reach.least_shake_mm = -Vec3(shake.rearward, shake.right, shake.down).cwiseMax(0.0);
  }
  reach.pedals = static_cast<int>(mechanism.pedals.size());
  return reach;
}

Controls held_within(const ControlReach& reach, Controls controls) {
  controls.hand_wheel = std::clamp(controls.hand_wheel, reach.full_right, reach.full_left);
  controls.bump_left = std::clamp(controls.bump_left, reach.full_droop, reach.full_bump);
  controls.bump_right = std::clamp(controls.bump_right, reach.full_droop, reach.full_bump);
  controls.wind_up = std::clamp(controls.wind_up, 0.0, reach.wind_up);
  controls.cab_shake =
      controls.cab_shake.cwiseMax(reach.least_shake_mm).cwiseMin(reach.most_shake_mm);
  for (double& pedal : controls.pedals) pedal = std::clamp(pedal, 0.0, 1.0);
  return controls;
}

}  // namespace tackbench
