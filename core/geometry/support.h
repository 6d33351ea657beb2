// The point of a core that lies furthest along a direction.
#pragma once

#include "core/geometry/convex_solid.h"

namespace tackbench {

// Of the core alone, without its rounding, against `origin_mm` (a place near both solids, so that
// far ones keep their digits). `along` need not be unit; along zero gives some point of the core.
// Not for `nothing`; a half-space answers only along its own face's normal.
Vec3 furthest_of_core(const ConvexSolid& solid, const Vec3& along, const Vec3& origin_mm);

// Of the whole solid; `along` unit.
Vec3 furthest_of(const ConvexSolid& solid, const Vec3& along);

}  // namespace tackbench
