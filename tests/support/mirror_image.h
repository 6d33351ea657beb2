// Mirror image of a truck about its centreline: left and right change places, turns change sense.
#pragma once

#include "core/mechanism/controls.h"
#include "core/project/project.h"

namespace tackbench {

// Stations from hand to road and pedals are mirrored; others are left out.
Project mirror_image(const Project& project);
// The controls that bring the mirrored truck into the mirrored pose.
Controls mirror_image(const Controls& controls);
AxlePose mirror_image(const AxlePose& pose);
Vec3 mirror_image(const Vec3& v);  // Y negated

}  // namespace tackbench
