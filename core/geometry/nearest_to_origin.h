// The point of a small simplex nearest to the origin: the inner step of the distance search.
#pragma once

#include <array>

#include "core/basics/frames.h"

namespace tackbench {

// One corner: a point of the second core less a point of the first.
struct SimplexCorner {
  Vec3 on_first = Vec3::Zero();
  Vec3 on_second = Vec3::Zero();
  Vec3 apart = Vec3::Zero();  // on_second - on_first
};

// One to four corners with the weights of its point nearest to the origin (0 or more, sum 1).
struct Simplex {
  std::array<SimplexCorner, 4> corners;
  std::array<double, 4> weights{1.0, 0.0, 0.0, 0.0};
  int count = 0;

  Vec3 on_first() const;
  Vec3 on_second() const;
  Vec3 apart() const;
};

// Leaves only the corners of the smallest part that holds the nearest point. The last corner is the
// newest, and only parts that have it are looked at: the others were looked at before. Flat and
// needle-like parts are left to their edges, so that the answer is always a point of the simplex.
// True when a tetrahedron holds the origin: all four corners stay, weighted to make it.
bool reduce_to_nearest(Simplex& simplex);

}  // namespace tackbench
