// One drag of a point in a view: from where the pointer is to the project as it would be.
#pragma once

#include <vector>

#include "core/basics/shown_number.h"
#include "ui/sheet/grip_layer.h"
#include "ui/sheet/pointer_place.h"
#include "ui/sheet/snap.h"

namespace tackbench::ui {

struct DragHow {
  bool keep_line = false;  // a free point that has a line keeps it
  bool snapping = true;
  ShownUnit unit = ShownUnit::millimetre;
  double catch_mm = 20.0;
};

struct DragStep {
  Result<Project> after;  // the project as it was at the press with the point there, or why not
  std::vector<SnapGuide> guides;  // view mm
  Path path;                      // where it may go, as at the press
  bool end_on = false;            // its line is seen end on: it cannot go anywhere in this view
};

class GripDrag {
 public:
  // `others`: all points as they stand at the press.
  GripDrag(Project project, const GripPlace& place, SheetView view,
           const std::vector<GripPlace>& others);

  const Grip& grip() const { return place_.grip; }
  SheetView view() const { return view_; }
  const Vec3& start_mm() const { return place_.posed_mm; }  // posed, chassis

  // `wanted`: where the hand wants the point, view mm.
  DragStep to(const ViewPoint& wanted, const DragHow& how) const;
  // Moved by whole steps along the view's axes, as with the arrow keys; no snapping.
  DragStep by(const ViewPoint& step, bool keep_line) const;

 private:
  Result<Project> with_place(const Vec3& posed_mm, bool keep_line) const;
  Vec3 in_whole_units(const Path& path, const Vec3& meant_mm, double unit_mm) const;

  Project project_;
  GripPlace place_;
  SheetView view_;
  std::vector<SnapNeighbour> neighbours_;
};

}  // namespace tackbench::ui
