#include "core/geometry/support.h"

#include <cmath>

namespace tackbench {

namespace {

// From the centre to the disc's edge, nearest to `along`. Built on the disc's own two axes: the
// part of `along` that lies in its plane is mere rounding when seen nearly square on, and would
// lead off the plane.
Vec3 towards_edge(const ConvexSolid& solid, const Vec3& along) {
  const double x = solid.axes.col(0).dot(along);
  const double y = solid.axes.col(1).dot(along);
  const double length = std::sqrt(x * x + y * y);
  // Square on to the disc every edge point is as far.
  if (!(length > 0.0)) return Vec3::Zero();
  const double out = solid.half_mm.x() / length;
  return out * x * solid.axes.col(0) + out * y * solid.axes.col(1);
}

Vec3 from_centre(const ConvexSolid& solid, const Vec3& along) {
  switch (solid.kind) {
    case CoreKind::nothing:
    case CoreKind::point:
    case CoreKind::half_space:
      break;
    case CoreKind::segment: {
      const Vec3 axis = solid.axis();
      return std::copysign(solid.half_mm.z(), axis.dot(along)) * axis;
    }
    case CoreKind::disc:
      return towards_edge(solid, along);
    case CoreKind::cylinder: {
      const Vec3 axis = solid.axis();
      return towards_edge(solid, along) + std::copysign(solid.half_mm.z(), axis.dot(along)) * axis;
    }
    case CoreKind::box: {
      const Vec3 own = solid.axes.transpose() * along;
      return solid.axes * Vec3(std::copysign(solid.half_mm.x(), own.x()),
                               std::copysign(solid.half_mm.y(), own.y()),
                               std::copysign(solid.half_mm.z(), own.z()));
    }
    case CoreKind::hull: {
      const Vec3 own = solid.axes.transpose() * along;
      const Vec3* best = &solid.points_mm->front();
      double most = own.dot(*best);
      for (const Vec3& point : *solid.points_mm) {
        const double reach = own.dot(point);
        if (reach <= most) continue;
        most = reach;
        best = &point;
      }
      return solid.axes * *best;
    }
  }
  return Vec3::Zero();
}

}  // namespace

Vec3 furthest_of_core(const ConvexSolid& solid, const Vec3& along, const Vec3& origin_mm) {
  return (solid.centre_mm - origin_mm) + from_centre(solid, along);
}

Vec3 furthest_of(const ConvexSolid& solid, const Vec3& along) {
  return solid.centre_mm + from_centre(solid, along) + solid.rounding_mm * along;
}

}  // namespace tackbench
