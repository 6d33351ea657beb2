// Which stud clocking of the drag link would use least of the ball studs' swing over both locks.
#pragma once

#include <vector>

#include "core/mechanism/solve.h"

namespace tackbench {

struct StudClocking {
  double clocking = 0.0;  // about the link, arm housing to knuckle housing, rad
  double arm_end = 0.0;   // greatest swing at each end with it, rad
  double knuckle_end = 0.0;
};

// Over the given poses. At each pose the link's spin is the best one, as
// ball_swing chooses it. Empty without poses.
// Each pose's need grows with the clocking's distance from that pose's natural clocking, so the
// greatest need over the poses has one valley between the least and the greatest natural clocking:
// golden section, to 0.01 degrees.
std::optional<StudClocking> best_stud_clocking(const Steering& steering,
                                               const std::vector<SteeringPose>& poses,
                                               std::optional<double> arm_limit,
                                               std::optional<double> knuckle_limit);

}  // namespace tackbench
