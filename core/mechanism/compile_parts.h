// How each station becomes a part of the mechanism: one small source a station.
#pragma once

#include "core/mechanism/mechanism.h"

namespace tackbench {

// Box, arm and relays. `box` must know which way a left turn moves its arm.
// Faults: no ratio, an arm or lever of no length, a relay whose link has no length.
void compile_box_and_relays(const SteeringBoxStation& box, Steering& steering, Problems& problems);

// Knuckles, kingpins and tie rod in the axle frame, whose origin stands at `origin_mm` (chassis).
// Faults: a tie-rod ball on its kingpin, a tie rod that cannot join its balls.
void compile_knuckles(const FrontAxleStation& axle, const Vec3& origin_mm, Steering& steering,
                      Problems& problems);

// Drag link and its studs; then hand-wheel zero. Wants the two above.
// Faults: a steering-arm ball on its kingpin, a given length with which the wheels cannot be set
// straight.
void compile_drag_link(const DragLinkStation& link, const Placement<Chassis, Axle>& axle_at_ride,
                       Steering& steering, Problems& problems);

}  // namespace tackbench
