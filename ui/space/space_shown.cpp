#include "ui/space/space_shown.h"

#include "core/mechanism/body_motion.h"

namespace tackbench::ui {

std::vector<SpacePoint> space_points(const Mechanism& mechanism, const Pose& pose) {
  std::vector<SpacePoint> points;
  for (Grip& grip : grips(mechanism.project)) {
    SpacePoint point;
    point.moved = moved_from_drawn(mechanism, pose, grip.body, grip.body_index);
    point.posed_mm = (point.moved * Point<Chassis>{grip.at_mm}).mm;
    point.grip = std::move(grip);
    points.push_back(std::move(point));
  }
  return points;
}

}  // namespace tackbench::ui
