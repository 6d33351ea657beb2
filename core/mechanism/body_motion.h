// Where a drawn place goes when the truck moves: the same map for everything that rides on a body.
#pragma once

#include "core/mechanism/pose.h"
#include "core/project/grips.h"

namespace tackbench {

// Chassis frame to chassis frame: from the drawn position (cab unshaken, axle at ride height,
// wheels straight, box at its centre, pedals at rest) to the pose. Identity for a body that the
// mechanism has not got, or that the outcome left unposed.
Placement<Chassis, Chassis> moved_from_drawn(const Mechanism& mechanism, const Pose& pose,
                                             Body body, int body_index = 0);

}  // namespace tackbench
