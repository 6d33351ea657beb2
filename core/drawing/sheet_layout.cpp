#include "core/drawing/truck_view.h"

#include <algorithm>

namespace tackbench {

const ViewPoint& SheetLayout::origin(SheetView view) const {
  switch (view) {
    case SheetView::side:
      return side;
    case SheetView::front:
      return front;
    case SheetView::plan:
      return plan;
  }
  return side;
}

SheetLayout sheet_layout(const TruckView& side, const TruckView& front, const TruckView& plan,
                         Projection projection, double gap_mm) {
  // Side and plan share x, side and front share y. Each view clears both the side view and the
  // third one, which lies across the corner from it.
  SheetLayout layout;
  if (projection == Projection::first_angle) {
    const double right = std::max(side.greatest.x, plan.greatest.x);
    const double below = std::min(side.least.y, front.least.y);
    layout.front.x = right + gap_mm - front.least.x;
    layout.plan.y = below - gap_mm - plan.greatest.y;
  } else {
    const double left = std::min(side.least.x, plan.least.x);
    const double above = std::max(side.greatest.y, front.greatest.y);
    layout.front.x = left - gap_mm - front.greatest.x;
    layout.plan.y = above + gap_mm - plan.least.y;
  }
  return layout;
}

}  // namespace tackbench
