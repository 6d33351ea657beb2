// One drag of a point in space: from a line of sight to the project as it would be.
#pragma once

#include <optional>

#include "core/basics/result.h"
#include "core/basics/shown_number.h"
#include "ui/space/space_shown.h"

namespace tackbench::ui {

enum class HeldAxis { x, y, z };

struct SpaceDragHow {
  std::optional<HeldAxis> axis;  // along it alone; none: in the plane that faces the eye
  bool keep_line = false;        // a free point that has a line keeps it
  bool whole_units = true;
  ShownUnit unit = ShownUnit::millimetre;
};

class PointDrag {
 public:
  // `project` and `point` as at the press.
  PointDrag(Project project, SpacePoint point);

  const SpacePoint& point() const { return point_; }
  // The project with the point where the line of sight `ray` means it; faults when it cannot be
  // there. `facing`: unit, towards the eye.
  Result<Project> to(const SightRay& ray, const Vec3& facing, const SpaceDragHow& how) const;
  // Moved along an axis, mm; nothing is rounded.
  Result<Project> along(HeldAxis axis, double mm) const;
  // The line that it keeps with that choice; none when it moves in a plane or on a circle.
  std::optional<HeldLine> line(const SpaceDragHow& how) const;

 private:
  Vec3 meant(const SightRay& ray, const Vec3& facing, const SpaceDragHow& how) const;
  Vec3 in_whole_units(const Vec3& drawn_mm, const SpaceDragHow& how) const;

  Project project_;
  SpacePoint point_;
};

Vec3 unit_along(HeldAxis axis);
// Place on the line nearest to the line of sight; its start when the eye looks along it.
Vec3 nearest_on_line(const HeldLine& line, const SightRay& ray);

}  // namespace tackbench::ui
