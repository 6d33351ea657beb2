// The views of the drag link's drawing: side view and end view, drawn into a sheet.
#pragma once

#include "core/drawing/sheet.h"
#include "core/fabrication/cut_list.h"

namespace tackbench {

// Where the side view may lie, paper mm.
struct ViewSpace {
  double left = 0.0;
  double right = 0.0;
  double axis_y = 0.0;
};

// The largest of 1:1, 1:2, 1:5, 1:10 at which both ends fit (ISO 5455).
double end_scale(const DragLinkPart& part, const ViewSpace& space);
// "1:2"
std::string scale_words(double scale);

// `item` is the drag link's: figures come from it, so that paper and list cannot differ. Returns
// whether the tube had to be broken.
bool draw_side_view(const DragLinkPart& part, const CutItem& item, const ViewSpace& space,
                    double scale, Sheet& sheet);

// Studs as seen from the hand-side end along the link, that end's stud upward. A small angle is
// drawn on a long radius, its arrows outside and its figure beside them.
void draw_clocking_view(const DragLinkPart& part, PaperPoint centre, double scale, Sheet& sheet);

// "803.6 +/-0.5"; without a tolerance the value alone.
std::string figure(const CutItem& item, const std::string& name);

}  // namespace tackbench
