// From a pointer on a view to a place in space: what a hand that sees only two directions means.
#pragma once

#include <vector>

#include "core/drawing/truck_view.h"
#include "core/project/grips.h"

namespace tackbench::ui {

// Where a grip may go, as it stands in the pose. Chassis frame, mm.
struct Path {
  GripFreedom freedom = GripFreedom::free;
  Vec3 at_mm = Vec3::Zero();
  Vec3 along = Vec3::UnitX();     // unit
  Vec3 centre_mm = Vec3::Zero();  // of the circle
};

// `moved`: of the grip's body, drawn to posed. `keep_line`: a free grip that has a line keeps it.
Path posed_path(const Grip& grip, const Placement<Chassis, Chassis>& moved, bool keep_line);

// The place on the path that is seen nearest to `wanted` (view mm). A free one keeps its depth
// along the line of sight. One whose line is seen end on stays where it is.
Vec3 place_meant(const Path& path, SheetView view, const ViewPoint& wanted);

// A line that is seen too nearly end on to be moved along in that view.
bool seen_end_on(const Path& path, SheetView view);

// The line or circle as it is seen, view mm; empty for a free one. `reach`: of the line each way.
std::vector<ViewPoint> seen_path(const Path& path, SheetView view, double reach_mm);

}  // namespace tackbench::ui
