#include "ui/space/point_drag.h"

#include <cmath>

#include "core/scene/pick.h"
#include "ui/motion/hand_steps.h"

namespace tackbench::ui {

namespace {

// A circle seen flatter than this is followed by where the hand is, not by what lies under it.
constexpr double kFlatCircle = 0.15;

}  // namespace

Vec3 unit_along(HeldAxis axis) {
  return Vec3::Unit(static_cast<Eigen::Index>(axis));
}

// Closest points of two lines: Ericson, Real-Time Collision Detection 2005, 5.1.8 (from memory).
Vec3 nearest_on_line(const HeldLine& line, const SightRay& ray) {
  const Vec3 from_ray = line.through_mm - ray.origin;
  const double both = line.along.dot(ray.along);
  const double square = 1.0 - both * both;
  if (square < 1e-4) return line.through_mm;
  const double part = (both * ray.along.dot(from_ray) - line.along.dot(from_ray)) / square;
  return line.through_mm + part * line.along;
}

PointDrag::PointDrag(Project project, SpacePoint point)
    : project_(std::move(project)), point_(std::move(point)) {}

std::optional<HeldLine> PointDrag::line(const SpaceDragHow& how) const {
  const Grip& grip = point_.grip;
  if (grip.freedom == GripFreedom::on_circle) return std::nullopt;
  if (grip.freedom == GripFreedom::on_line || (how.keep_line && grip.has_along))
    return HeldLine{point_.posed_mm, point_.moved.turn * grip.along};
  if (how.axis) return HeldLine{point_.posed_mm, unit_along(*how.axis)};
  return std::nullopt;
}

Vec3 PointDrag::meant(const SightRay& ray, const Vec3& facing, const SpaceDragHow& how) const {
  if (const auto kept = line(how)) return nearest_on_line(*kept, ray);
  Vec3 normal = facing;
  const Vec3 axis = point_.moved.turn * point_.grip.along;
  if (point_.grip.freedom == GripFreedom::on_circle && std::abs(axis.dot(ray.along)) > kFlatCircle)
    normal = axis;
  return on_plane(ray, point_.posed_mm, normal).value_or(point_.posed_mm);
}

// Coordinates of the drawing become whole where the hand changes them.
Vec3 PointDrag::in_whole_units(const Vec3& drawn_mm, const SpaceDragHow& how) const {
  const double unit = unit_step(how.unit);
  const Vec3& start = point_.grip.at_mm;
  if (const auto kept = line(how)) {
    const Vec3 along = point_.moved.turn.transpose() * kept->along;
    Eigen::Index lead = 0;
    const bool on_axis = along.cwiseAbs().maxCoeff(&lead) > 1.0 - 1e-9;
    if (!on_axis) return start + unit * std::round(along.dot(drawn_mm - start) / unit) * along;
    Vec3 whole = start;
    whole[lead] = unit * std::round(drawn_mm[lead] / unit);
    return whole;
  }
  Vec3 whole = drawn_mm;
  for (Eigen::Index i = 0; i < 3; ++i) {
    const bool changed = std::abs(drawn_mm[i] - start[i]) >= 0.5 * unit;
    whole[i] = changed ? unit * std::round(drawn_mm[i] / unit) : start[i];
  }
  return whole;
}

Result<Project> PointDrag::to(const SightRay& ray, const Vec3& facing,
                              const SpaceDragHow& how) const {
  Vec3 drawn = (point_.moved.inverse() * Point<Chassis>{meant(ray, facing, how)}).mm;
  if (how.whole_units && point_.grip.freedom != GripFreedom::on_circle)
    drawn = in_whole_units(drawn, how);
  return with_grip_at(project_, point_.grip, drawn, how.keep_line);
}

Result<Project> PointDrag::along(HeldAxis axis, double mm) const {
  const Vec3 posed = point_.posed_mm + mm * unit_along(axis);
  return with_grip_at(project_, point_.grip, (point_.moved.inverse() * Point<Chassis>{posed}).mm);
}

}  // namespace tackbench::ui
