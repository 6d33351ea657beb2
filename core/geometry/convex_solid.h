// A convex solid: a core (point, segment, disc, box, cylinder, hull of points, half-space) and
// everything within a rounding radius of it. A ball is a rounded point, a capsule a rounded
// segment, a tyre a rounded cylinder: its shoulders are the rounding. Millimetres, in one frame.
#pragma once

#include <memory>
#include <vector>

#include "core/basics/frames.h"

namespace tackbench {

enum class CoreKind {
  nothing,     // no points, or numbers that are not finite: no distance to it
  point,       //
  segment,     // along its own Z, `half.z()` each way
  disc,        // flat, radius `half.x()`, square to its own Z
  box,         // `half` each way along its own axes
  cylinder,    // radius `half.x()`, `half.z()` each way along its own Z
  hull,        // of `points`, in its own frame
  half_space,  // all that lies at or below its own Z = 0
};

// Made by the functions below, which keep it plain: a core whose sizes are zero is the smaller kind
// that it is (a disc of no radius is a point), and a size under zero counts as zero.
struct ConvexSolid {
  CoreKind kind = CoreKind::nothing;
  Mat3 axes = Mat3::Identity();  // columns: its own axes, unit, right-handed
  Vec3 centre_mm = Vec3::Zero();
  Vec3 half_mm = Vec3::Zero();
  std::shared_ptr<const std::vector<Vec3>> points_mm;  // of a hull, never changed
  double rounding_mm = 0.0;

  Vec3 axis() const { return axes.col(2); }
};

ConvexSolid ball(const Vec3& centre, double radius);
ConvexSolid capsule(const Vec3& from, const Vec3& to, double radius);
// `radius` of the flat core; `axis` unit.
ConvexSolid rounded_disc(const Vec3& centre, const Vec3& axis, double radius, double rounding);
// Outside sizes, the rounding within them; it is cut to half of the least size.
ConvexSolid rounded_cylinder(const Vec3& from, const Vec3& to, double radius, double rounding = 0);
ConvexSolid rounded_box(const Vec3& centre, const Mat3& axes, const Vec3& size,
                        double rounding = 0);
ConvexSolid convex_hull_of(std::vector<Vec3> points, double rounding = 0);
// All on the side of `on_face` that `outward` (unit) points away from.
ConvexSolid half_space(const Vec3& on_face, const Vec3& outward);

// The same solid after a rigid motion.
ConvexSolid moved(const ConvexSolid& solid, const Mat3& turn, const Vec3& shift_mm);
// Swollen by `by` mm; a shrinking goes down to the core.
ConvexSolid grown(ConvexSolid solid, double by);

// A ball about the whole solid; its radius is infinite for a half-space, 0 for nothing.
struct BoundingBall {
  Vec3 centre_mm = Vec3::Zero();
  double radius = 0.0;
};
BoundingBall bounding_ball(const ConvexSolid& solid);

}  // namespace tackbench
