// Outlines of simple solids in a projected view, from their support points: the outline of a convex
// solid passes, for each direction on the view, through its point that lies furthest that way.
#pragma once

#include <span>
#include <vector>

#include "core/drawing/truck_view.h"

namespace tackbench {

// A flat round disc in space. Chassis, mm.
struct Disc {
  Vec3 centre_mm = Vec3::Zero();
  Vec3 axis = Vec3::UnitX();  // unit
  double radius = 1.0;
};

enum class OutlineGrain { coarse, fine };  // about 30 or 90 points at most

// Outline of the convex hull of discs, swollen by a ball of radius `rounding`: two discs make a
// cylinder (a tyre with its shoulders), a disc alone with rounding the rim of a hand wheel, four a
// flat lever. Anticlockwise.
std::vector<ViewPoint> outline(SheetView view, std::span<const Disc> discs, double rounding,
                               OutlineGrain grain);

// Convex hull, anticlockwise.
std::vector<ViewPoint> hull(std::vector<ViewPoint> points);

// The part of a closed outline above y = `least_y`.
std::vector<ViewPoint> cut_below(const std::vector<ViewPoint>& closed, double least_y);

}  // namespace tackbench
