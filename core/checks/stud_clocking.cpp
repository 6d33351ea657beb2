#include "core/checks/stud_clocking.h"

#include <algorithm>
#include <cmath>

#include "core/basics/golden_section.h"
#include "core/basics/units.h"

namespace tackbench {

std::optional<StudClocking> best_stud_clocking(const Steering& steering,
                                               const std::vector<SteeringPose>& poses,
                                               std::optional<double> arm_limit,
                                               std::optional<double> knuckle_limit) {
  if (poses.empty()) return std::nullopt;
  Steering variant = steering;
  variant.stud_clocking_given = true;
  const auto swing = [&](const SteeringPose& pose) {
    return ball_swing(variant, pose, arm_limit, knuckle_limit);
  };

  // Natural clockings, unwrapped about the first one.
  const double first = swing(poses.front()).natural_clocking;
  double low = 0.0;
  double high = 0.0;
  for (const SteeringPose& pose : poses) {
    const double from_first = wrapped(swing(pose).natural_clocking - first);
    low = std::min(low, from_first);
    high = std::max(high, from_first);
  }

  // The worse use of the limits where both are known, else the greater swing.
  const bool by_use = arm_limit && knuckle_limit && *arm_limit > 0.0 && *knuckle_limit > 0.0;
  StudClocking best;
  const auto need = [&](double from_first) {
    best = {wrapped(first + from_first), 0.0, 0.0};
    variant.stud_clocking = best.clocking;
    for (const SteeringPose& pose : poses) {
      const BallSwing at = swing(pose);
      best.arm_end = std::max(best.arm_end, at.arm_end);
      best.knuckle_end = std::max(best.knuckle_end, at.knuckle_end);
    }
    return by_use ? std::max(best.arm_end / *arm_limit, best.knuckle_end / *knuckle_limit)
                  : std::max(best.arm_end, best.knuckle_end);
  };

  constexpr double kTolerance = 0.01 * kRadiansPerDegree;
  need(lowest_place(need, low, high, kTolerance));  // leaves `best` there
  return best;
}

}  // namespace tackbench
