// A pose with its shaft line led off along a way in which it is free to wander.
#pragma once

#include "core/mechanism/pose.h"

namespace tackbench {

// Every cross shifted by its entry (chassis, mm), the column's hand-wheel end by its own; shafts
// and pins follow, each joint turning as its geometry says. The pose must be of that mechanism;
// entries that are missing shift nothing. A line that would fold past a right angle is left as it
// is.
Pose wandered(const Mechanism& mechanism, Pose pose, const std::vector<Vec3>& cross_shift_mm,
              const Vec3& hand_wheel_shift_mm);

}  // namespace tackbench
