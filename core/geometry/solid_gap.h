// The gap between two convex solids, with its proof.
#pragma once

#include "core/geometry/convex_solid.h"

namespace tackbench {

enum class GapOutcome {
  measured,      // the bracket is as narrow as asked
  deeper_than,   // the cores themselves overlap: they are in each other deeper than their roundings
                 // together, -high_mm; how deep is not known better than -low_mm
  not_narrowed,  // the bracket holds but is wider than asked
  nothing_there,  // one of them has no points, or numbers that are not finite; all members are zero
};

// Millimetres, in the solids' frame. Negative = they overlap by as much.
struct SolidGap {
  GapOutcome outcome = GapOutcome::nothing_there;
  double low_mm = 0.0;            // the true gap is no less ...
  double high_mm = 0.0;           // ... and no more
  Vec3 on_first = Vec3::Zero();   // nearest points on both surfaces; when measured, `high_mm` apart
  Vec3 on_second = Vec3::Zero();  // along `normal` (against it when they overlap)
  Vec3 normal = Vec3::UnitX();    // unit, from the first to the second: a plane square to it
                                  // proves `low_mm`
  int rounds = 0;                 // of the search; 0 = closed form
};

// Stands for a depth without bound, so that every number stays finite.
inline constexpr double kUnboundedDepth = 1e12;

struct GapWanted {
  double tolerance_mm = 1e-3;  // widest bracket that is `measured`
  int most_rounds = 96;
};

// Closed form where one exists, else the search.
SolidGap gap_between(const ConvexSolid& first, const ConvexSolid& second,
                     const GapWanted& wanted = {});

// Gilbert, Johnson and Keerthi's search (1988; the bounds after Gilbert and Foo, 1990) for any two
// bounded cores. High: the distance of two points, one of each core. Low: the distance of the two
// planes square to a direction between which nothing of either core lies; it is a bound for
// overlapping cores too. Rounding radii are taken off both.
SolidGap searched_gap(const ConvexSolid& first, const ConvexSolid& second,
                      const GapWanted& wanted = {});

}  // namespace tackbench
