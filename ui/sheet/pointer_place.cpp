#include "ui/sheet/pointer_place.h"

#include <cmath>

#include "core/basics/units.h"

namespace tackbench::ui {

namespace {

constexpr double kEndOn = 0.06;  // of a unit vector seen; below it a pixel would be many mm

ViewPoint minus(const ViewPoint& a, const ViewPoint& b) {
  return {a.x - b.x, a.y - b.y};
}
double dot(const ViewPoint& a, const ViewPoint& b) {
  return a.x * b.x + a.y * b.y;
}

Vec3 on_circle(const Path& path, double angle) {
  return path.centre_mm + turned(Vec3(path.at_mm - path.centre_mm), path.along, angle);
}

// Nearest as seen; of two that look alike (the circle edge on) the one that is less far to turn.
double angle_meant(const Path& path, SheetView view, const ViewPoint& wanted) {
  const double radius = (path.at_mm - path.centre_mm).norm();
  const auto cost = [&](double angle) {
    const ViewPoint away = minus(seen(view, on_circle(path, angle)), wanted);
    const double turned_far = 1e-3 * radius * angle;
    return dot(away, away) + turned_far * turned_far;
  };
  constexpr int kSteps = 180;
  double best = 0.0;
  double least = cost(0.0);
  for (int i = -kSteps; i <= kSteps; ++i) {
    const double angle = kPi * i / kSteps;
    const double here = cost(angle);
    if (here >= least) continue;
    least = here;
    best = angle;
  }
  double step = kPi / kSteps;
  while (step > 1e-7) {
    step /= 2.0;
    for (const double angle : {best - step, best + step}) {
      const double here = cost(angle);
      if (here >= least) continue;
      least = here;
      best = angle;
    }
  }
  return best;
}

}  // namespace

Path posed_path(const Grip& grip, const Placement<Chassis, Chassis>& moved, bool keep_line) {
  Path path;
  path.freedom = grip.freedom;
  if (grip.freedom == GripFreedom::free && keep_line && grip.has_along)
    path.freedom = GripFreedom::on_line;
  path.at_mm = (moved * Point<Chassis>{grip.at_mm}).mm;
  path.along = moved.turn * grip.along;
  path.centre_mm = (moved * Point<Chassis>{grip.centre_mm}).mm;
  return path;
}

bool seen_end_on(const Path& path, SheetView view) {
  if (path.freedom != GripFreedom::on_line) return false;
  const ViewPoint along = seen(view, path.along);
  return std::hypot(along.x, along.y) < kEndOn;
}

Vec3 place_meant(const Path& path, SheetView view, const ViewPoint& wanted) {
  const ViewPoint step = minus(wanted, seen(view, path.at_mm));
  switch (path.freedom) {
    case GripFreedom::free:
      return path.at_mm + movement_of(view, step);
    case GripFreedom::on_line: {
      if (seen_end_on(path, view)) return path.at_mm;
      const ViewPoint along = seen(view, path.along);
      return path.at_mm + path.along * (dot(step, along) / dot(along, along));
    }
    case GripFreedom::on_circle:
      return on_circle(path, angle_meant(path, view, wanted));
  }
  return path.at_mm;
}

std::vector<ViewPoint> seen_path(const Path& path, SheetView view, double reach_mm) {
  if (path.freedom == GripFreedom::on_line)
    return {seen(view, path.at_mm - reach_mm * path.along),
            seen(view, path.at_mm + reach_mm * path.along)};
  std::vector<ViewPoint> through;
  if (path.freedom == GripFreedom::on_circle) {
    constexpr int kSteps = 72;
    for (int i = 0; i <= kSteps; ++i)
      through.push_back(seen(view, on_circle(path, kRadiansPerTurn * i / kSteps)));
  }
  return through;
}

}  // namespace tackbench::ui
