// How far what a test picks out of a view reaches.
#pragma once

#include <algorithm>
#include <vector>

#include "core/drawing/truck_view.h"

namespace tackbench {

struct Extent {
  double left = 1e9;
  double right = -1e9;
  double bottom = 1e9;
  double top = -1e9;

  bool any() const { return left <= right; }
  double width() const { return right - left; }
  double height() const { return top - bottom; }
  void add(const std::vector<ViewPoint>& points) {
    for (const ViewPoint& point : points) {
      left = std::min(left, point.x);
      right = std::max(right, point.x);
      bottom = std::min(bottom, point.y);
      top = std::max(top, point.y);
    }
  }
};

template <class Wanted>
Extent extent_of(const TruckView& view, const Wanted& wanted) {
  Extent extent;
  for (const DrawnLine& line : view.lines)
    if (wanted(line)) extent.add(line.through);
  return extent;
}

}  // namespace tackbench
