// Pairs of cores whose distance has a closed form.
#pragma once

#include <optional>

#include "core/geometry/solid_gap.h"

namespace tackbench {

// Nearest points of two cores.
struct CorePair {
  Vec3 on_first = Vec3::Zero();
  Vec3 on_second = Vec3::Zero();
};

// Segments from their middles: centre, unit axis, half length. Points are segments of no length.
// After Ericson, Real-Time Collision Detection, 5.1.9: the lines' nearest points, each clamped to
// its segment.
CorePair nearest_of_segments(const ConvexSolid& first, const ConvexSolid& second);

// Of point and segment cores in any order, and of a half-space and anything. Empty for other pairs.
std::optional<SolidGap> closed_gap(const ConvexSolid& first, const ConvexSolid& second);

}  // namespace tackbench
