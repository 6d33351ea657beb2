// Where a point has to go for a number that was entered exactly. Chassis frame, drawn position, mm.
#pragma once

#include "core/basics/shown_number.h"
#include "core/project/grips.h"

namespace tackbench::ui {

// At that distance from `other_mm`, moved as little as possible: straight away from the other
// point, along its line, or round its circle. A fault says the nearest that it can get.
Result<Vec3> place_at_distance(const Grip& grip, const Vec3& other_mm, double distance_mm,
                               ShownUnit unit);

// With that coordinate (0 X, 1 Y, 2 Z): a free point moves along the axis, one with a line or
// circle as far along it as that takes. A fault says what it can reach.
Result<Vec3> place_with_coordinate(const Grip& grip, int axis, double value_mm, ShownUnit unit);

// For a point that goes by steps and so cannot go to `wanted_mm`: why, and the places to either
// side of it, in words.
Problem steps_only(const Project& project, const Grip& grip, const Vec3& wanted_mm, ShownUnit unit);

// The smallest length that the shown numbers tell apart, mm: what was typed as it was read off the
// screen is meant exactly.
double length_as_read(ShownUnit unit);

}  // namespace tackbench::ui
