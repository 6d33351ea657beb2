// Where parts go that ride on no single body: links and the halves of joints. Like
// moved_from_drawn: chassis to chassis, from the drawn position to the pose, mm.
#pragma once

#include "core/mechanism/pose.h"

namespace tackbench {

using PartMotion = Placement<Chassis, Chassis>;

// Unit from one place to the other; `otherwise` where they coincide.
Vec3 direction_between(const Vec3& from, const Vec3& to, const Vec3& otherwise);

// A right-handed frame there: first axis along `along` (unit), second nearest to `across`.
PartMotion frame_at(const Vec3& origin, const Vec3& along, const Vec3& across);
// The motion that brings one frame to another.
PartMotion frame_to_frame(const PartMotion& drawn, const PartMotion& posed);

enum class CrossPart { hand_side, spider, road_side };
// Yokes and spider of a joint's cross; identity for one that the pose has not got.
PartMotion cross_motion(const Mechanism& mechanism, const Pose& pose, int cross, CrossPart part);

// The drag link, whose balls lie at `from` and `to` now, spun as its studs want: an offset tube
// goes with it. `lever`: the motion of what drives it. The mechanism has to have its steering.
PartMotion spun_link_motion(const Mechanism& mechanism, const Pose& pose, const PartMotion& lever,
                            const Vec3& drawn_from, const Vec3& drawn_to, const Vec3& from,
                            const Vec3& to);

}  // namespace tackbench
