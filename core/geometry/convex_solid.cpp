#include "core/geometry/convex_solid.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <utility>

namespace tackbench {

namespace {

// Shorter than this is no length, mm.
constexpr double kNothing = 1e-12;

// Lets NaN through, for checked() to find.
double at_least_zero(double size) {
  return size < 0.0 ? 0.0 : size;
}

Mat3 axes_along(const Vec3& z) {
  Mat3 axes;
  axes.col(2) = z;
  axes.col(0) = square_to(z, Vec3::UnitX());
  axes.col(1) = z.cross(axes.col(0));
  return axes;
}

// Whatever is not finite is nothing, so that no NaN goes on from here.
ConvexSolid checked(ConvexSolid solid) {
  const bool finite = solid.axes.allFinite() && solid.centre_mm.allFinite() &&
                      solid.half_mm.allFinite() && std::isfinite(solid.rounding_mm);
  return finite ? solid : ConvexSolid{};
}

ConvexSolid round_core(CoreKind kind, const Vec3& centre, const Mat3& axes, double radius,
                       double half_length, double rounding) {
  ConvexSolid solid;
  solid.kind = kind;
  solid.centre_mm = centre;
  solid.axes = axes;
  solid.half_mm = Vec3(radius, radius, half_length);
  solid.rounding_mm = rounding;
  return checked(solid);
}

// A cylinder core, or the disc, segment or point that it shrinks to.
ConvexSolid cylinder_core(const Vec3& centre, const Mat3& axes, double radius, double half_length,
                          double rounding) {
  const bool wide = !(radius <= kNothing);
  const bool tall = !(half_length <= kNothing);
  const CoreKind kind = wide && tall ? CoreKind::cylinder
                        : wide       ? CoreKind::disc
                        : tall       ? CoreKind::segment
                                     : CoreKind::point;
  return round_core(kind, centre, axes, wide ? radius : 0.0, tall ? half_length : 0.0, rounding);
}

}  // namespace

ConvexSolid ball(const Vec3& centre, double radius) {
  return round_core(CoreKind::point, centre, Mat3::Identity(), 0.0, 0.0, at_least_zero(radius));
}

ConvexSolid capsule(const Vec3& from, const Vec3& to, double radius) {
  const Vec3 step = to - from;
  const double length = step.norm();
  if (!(length > kNothing)) return ball(0.5 * (from + to), radius);
  return cylinder_core(0.5 * (from + to), axes_along(step / length), 0.0, 0.5 * length,
                       at_least_zero(radius));
}

ConvexSolid rounded_disc(const Vec3& centre, const Vec3& axis, double radius, double rounding) {
  return cylinder_core(centre, axes_along(axis), at_least_zero(radius), 0.0,
                       at_least_zero(rounding));
}

ConvexSolid rounded_cylinder(const Vec3& from, const Vec3& to, double radius, double rounding) {
  const Vec3 step = to - from;
  const double length = step.norm();
  const double outside = at_least_zero(radius);
  // Without a length its axis is not known either.
  if (!(length > kNothing)) return rounded_disc(0.5 * (from + to), Vec3::UnitZ(), outside, 0.0);
  const double round = std::clamp(at_least_zero(rounding), 0.0, std::min(outside, 0.5 * length));
  return cylinder_core(0.5 * (from + to), axes_along(step / length), outside - round,
                       0.5 * length - round, round);
}

ConvexSolid rounded_box(const Vec3& centre, const Mat3& axes, const Vec3& size, double rounding) {
  if (!size.allFinite()) return {};
  const Vec3 outside = (0.5 * size).cwiseMax(0.0);
  const double round = std::clamp(at_least_zero(rounding), 0.0, outside.minCoeff());
  ConvexSolid solid;
  solid.kind = CoreKind::box;
  solid.centre_mm = centre;
  solid.axes = axes;
  solid.half_mm = outside.array() - round;
  solid.rounding_mm = round;
  int sides = 0;
  int last = 2;
  for (int i = 0; i < 3; ++i) {
    if (solid.half_mm[i] <= kNothing) {
      solid.half_mm[i] = 0.0;
      continue;
    }
    ++sides;
    last = i;
  }
  if (sides == 0) solid.kind = CoreKind::point;
  if (sides == 1) {
    const double half = solid.half_mm[last];
    solid.kind = CoreKind::segment;
    solid.axes = axes_along(axes.col(last));
    solid.half_mm = Vec3(0.0, 0.0, half);
  }
  return checked(solid);
}

ConvexSolid convex_hull_of(std::vector<Vec3> points, double rounding) {
  const double round = at_least_zero(rounding);
  if (points.empty()) return {};
  for (const Vec3& point : points)
    if (!point.allFinite()) return {};
  if (points.size() == 1) return ball(points.front(), round);
  if (points.size() == 2) return capsule(points.front(), points.back(), round);
  Vec3 middle = Vec3::Zero();
  for (const Vec3& point : points) middle += point / static_cast<double>(points.size());
  for (Vec3& point : points) point -= middle;
  ConvexSolid solid;
  solid.kind = CoreKind::hull;
  solid.centre_mm = middle;
  solid.points_mm = std::make_shared<const std::vector<Vec3>>(std::move(points));
  solid.rounding_mm = round;
  return checked(solid);
}

ConvexSolid half_space(const Vec3& on_face, const Vec3& outward) {
  return round_core(CoreKind::half_space, on_face, axes_along(outward), 0.0, 0.0, 0.0);
}

ConvexSolid moved(const ConvexSolid& solid, const Mat3& turn, const Vec3& shift_mm) {
  ConvexSolid made = solid;
  made.axes = turn * solid.axes;
  made.centre_mm = turn * solid.centre_mm + shift_mm;
  return made;
}

ConvexSolid grown(ConvexSolid solid, double by) {
  solid.rounding_mm = at_least_zero(solid.rounding_mm + by);
  return solid;
}

BoundingBall bounding_ball(const ConvexSolid& solid) {
  double reach = 0.0;
  switch (solid.kind) {
    case CoreKind::nothing:
      return {solid.centre_mm, 0.0};
    case CoreKind::point:
      break;
    case CoreKind::segment:
    case CoreKind::disc:
    case CoreKind::cylinder:
      reach = std::hypot(solid.half_mm.x(), solid.half_mm.z());
      break;
    case CoreKind::box:
      reach = solid.half_mm.norm();
      break;
    case CoreKind::hull:
      for (const Vec3& point : *solid.points_mm) reach = std::max(reach, point.norm());
      break;
    case CoreKind::half_space:
      return {solid.centre_mm, std::numeric_limits<double>::infinity()};
  }
  return {solid.centre_mm, reach + solid.rounding_mm};
}

}  // namespace tackbench
