#include "ui/sheet/grip_drag.h"

#include <algorithm>
#include <cmath>

#include "ui/motion/hand_steps.h"

namespace tackbench::ui {

namespace {

constexpr std::ptrdiff_t kNeighboursEachWay = 3;

// Points that come along when this one moves can be nothing to line up with.
std::vector<std::string> paths_that_stay(const Project& project, const Grip& grip) {
  std::vector<std::string> staying;
  const Vec3 aside = grip.at_mm + Vec3(1.0, 1.0, 1.0);
  const Result<Project> moved = with_grip_at(project, grip, aside);
  if (!moved) return staying;
  const std::vector<Grip> before = grips(project);
  const std::vector<Grip> after = grips(*moved);
  for (std::size_t i = 0; i < std::min(before.size(), after.size()); ++i)
    if (before[i].path == after[i].path && before[i].path != grip.path &&
        (before[i].at_mm - after[i].at_mm).norm() < 1e-6)
      staying.push_back(before[i].path);
  return staying;
}

bool is_unturned(const Placement<Chassis, Chassis>& moved) {
  return moved.turn.isIdentity(1e-12);
}

}  // namespace

GripDrag::GripDrag(Project project, const GripPlace& place, SheetView view,
                   const std::vector<GripPlace>& others)
    : project_(std::move(project)), place_(place), view_(view) {
  const std::vector<std::string> staying = paths_that_stay(project_, place.grip);
  const auto own = std::find_if(others.begin(), others.end(), [&](const GripPlace& other) {
    return other.grip.path == place.grip.path;
  });
  if (own == others.end()) return;
  const auto first =
      std::max(others.begin(), own - std::min(own - others.begin(), kNeighboursEachWay));
  const auto last = own + std::min(others.end() - own, kNeighboursEachWay + 1);
  for (auto other = first; other != last; ++other) {
    if (std::find(staying.begin(), staying.end(), other->grip.path) == staying.end()) continue;
    neighbours_.push_back({QString::fromStdString(other->grip.words), seen(view, other->posed_mm)});
  }
}

Result<Project> GripDrag::with_place(const Vec3& posed_mm, bool keep_line) const {
  const Vec3 drawn_mm = (place_.moved.inverse() * Point<Chassis>{posed_mm}).mm;
  return with_grip_at(project_, place_.grip, drawn_mm, keep_line);
}

Vec3 GripDrag::in_whole_units(const Path& path, const Vec3& meant_mm, double unit_mm) const {
  if (path.freedom == GripFreedom::on_line) {
    double moved = path.along.dot(meant_mm - path.at_mm);
    // Along an axis the coordinate itself becomes whole, else the way that it went.
    const double lead = path.along.cwiseAbs().maxCoeff();
    const double start = lead > 1.0 - 1e-9 ? path.along.dot(path.at_mm) : 0.0;
    moved = whole_units(start + moved, unit_mm) - start;
    return path.at_mm + moved * path.along;
  }
  const Vec3 arm = path.at_mm - path.centre_mm;
  const double radius = arm.norm();
  if (radius < 1e-6) return meant_mm;
  const double angle = angle_about(path.along, arm, meant_mm - path.centre_mm);
  return path.centre_mm + turned(arm, path.along, whole_units(angle, unit_mm / radius));
}

DragStep GripDrag::to(const ViewPoint& wanted, const DragHow& how) const {
  const Path path = posed_path(place_.grip, place_.moved, how.keep_line);
  DragStep step{Project{}, {}, path, seen_end_on(path, view_)};
  const double unit_mm = unit_step(how.unit);
  Vec3 meant_mm = place_meant(path, view_, wanted);
  if (how.snapping && path.freedom != GripFreedom::free) {
    if (!step.end_on) meant_mm = in_whole_units(path, meant_mm, unit_mm);
  } else if (how.snapping) {
    SnapSettings settings;
    settings.view = view_;
    settings.unit_mm = unit_mm;
    settings.catch_mm = how.catch_mm;
    // Coordinates of the drawing become whole; on a body that is turned, the way that it went.
    settings.unit_origin = is_unturned(place_.moved) ? seen(view_, place_.moved.shift_mm)
                                                     : seen(view_, place_.posed_mm);
    Snapped snapped = snap(wanted, neighbours_, settings);
    meant_mm = place_meant(path, view_, snapped.at);
    step.guides = std::move(snapped.guides);
  }
  step.after = with_place(meant_mm, how.keep_line);
  return step;
}

DragStep GripDrag::by(const ViewPoint& step, bool keep_line) const {
  const Path path = posed_path(place_.grip, place_.moved, keep_line);
  DragStep made{Project{}, {}, path, seen_end_on(path, view_)};
  Vec3 meant_mm = place_.posed_mm + movement_of(view_, step);
  if (path.freedom == GripFreedom::on_line && !made.end_on) {
    // The key's direction says which way along the line; the step is taken whole.
    const ViewPoint along = seen(view_, path.along);
    const double way = along.x * step.x + along.y * step.y;
    meant_mm = path.at_mm + std::copysign(std::hypot(step.x, step.y), way) * path.along;
    if (std::abs(way) < 1e-9) meant_mm = path.at_mm;
  } else if (path.freedom == GripFreedom::on_circle) {
    const Vec3 arm = path.at_mm - path.centre_mm;
    const ViewPoint along = seen(view_, path.along.cross(arm).normalized());
    const double way = along.x * step.x + along.y * step.y;
    const double angle = std::hypot(step.x, step.y) / std::max(arm.norm(), 1.0);
    meant_mm = path.centre_mm + turned(arm, path.along, std::copysign(angle, way));
    if (std::abs(way) < 1e-9) meant_mm = path.at_mm;
  }
  made.after = with_place(meant_mm, keep_line);
  return made;
}

}  // namespace tackbench::ui
