// Which bodies of a scene a drawing shows also where they could be.
#pragma once

#include "core/scene/scene.h"

namespace tackbench {

// Wheels with their knuckles, arms, links, relays and pedals: what passes through space beyond its
// own place as the controls move.
bool sweeps(const Rider& rider);
// The column, the shafts after it and their joints, which a line that is free to wander leads off.
bool is_of_shaft_line(const Rider& rider);

}  // namespace tackbench
