// Snapping on a view: to whole units, to in-line and square with neighbouring points.
#pragma once

#include <QString>
#include <optional>
#include <vector>

#include "core/drawing/truck_view.h"

namespace tackbench::ui {

struct SnapNeighbour {
  QString words;  // "joint "upper joint""
  ViewPoint at;   // view mm
};

// A line that the place was brought onto, shown dotted with its word.
struct SnapGuide {
  ViewPoint from;
  ViewPoint to;
  QString words;  // "level with ..."
};

struct Snapped {
  ViewPoint at;
  std::vector<SnapGuide> guides;  // at most two
};

struct SnapSettings {
  SheetView view = SheetView::side;
  double unit_mm = 1.0;
  ViewPoint unit_origin;   // from which whole units are counted
  double catch_mm = 20.0;  // how near a line has to be
};

// `wanted` and all places in view mm. `neighbours` in the order of motion, those before and after
// the point: the lines are level and plumb through each, and through two that follow each other and
// square to it at either. A place that no line catches goes to whole units both ways.
Snapped snap(const ViewPoint& wanted, const std::vector<SnapNeighbour>& neighbours,
             const SnapSettings& settings);

// Nearest whole number of units.
double whole_units(double mm, double unit_mm, double origin_mm = 0.0);

}  // namespace tackbench::ui
