// Round solids: a profile turned about an axis.
#pragma once

#include <vector>

#include "core/scene/mesh.h"

namespace tackbench {

// Coarse for what must follow a hand, fine for rest.
enum class Detail { coarse, fine };

// Sides of a polygon that stands for a circle of that radius.
int sides_of_circle(Detail detail, double radius_mm);

// One corner of a profile: distance along the axis and from it, mm. Smooth where the surface bends
// on without an edge.
struct ProfilePoint {
  double along = 0.0;
  double radius = 0.0;
  bool smooth = false;
};

// The profile with the solid on its right, along the axis to the right and away from it up: an open
// one starts and ends on the axis, a `ring` closes on itself.
Mesh turned_solid(const Vec3& origin, const Vec3& axis, const std::vector<ProfilePoint>& profile,
                  bool ring, int sides);

Mesh cylinder(const Vec3& from, const Vec3& to, double radius, Detail detail);
Mesh cone(const Vec3& from, const Vec3& to, double from_radius, double to_radius, Detail detail);
// A wall of no thickness or of all of the radius makes a bar.
Mesh tube(const Vec3& from, const Vec3& to, double radius, double wall, Detail detail);
Mesh sphere(const Vec3& centre, double radius, Detail detail);
// `radius` to the middle of the rim, `thickness` the rim's own radius.
Mesh torus(const Vec3& centre, const Vec3& axis, double radius, double thickness, Detail detail);
// A flat ring about `centre`, `width` along the axis.
Mesh ring(const Vec3& centre, const Vec3& axis, double outside_radius, double inside_radius,
          double width, Detail detail);
// A ball-ended bar through the points in turn: cables, hoses.
Mesh cable(const std::vector<Vec3>& points, double radius, Detail detail);

}  // namespace tackbench
