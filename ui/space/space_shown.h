// What the view in space shows, as plain values: both ways of drawing it read the same.
#pragma once

#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "core/project/grips.h"
#include "core/scene/camera.h"
#include "core/scene/scene.h"

namespace tackbench::ui {

// A point that a hand can take, where it stands in the pose.
struct SpacePoint {
  Grip grip;
  SceneMotion moved;             // of its body, drawn to posed
  Vec3 posed_mm = Vec3::Zero();  // chassis
};

// A line along which a point is held while it is dragged, chassis.
struct HeldLine {
  Vec3 through_mm = Vec3::Zero();
  Vec3 along = Vec3::UnitX();  // unit
};

// A body of the scene where it could be, translucent.
struct SpaceGhost {
  std::size_t body = 0;
  SceneMotion motion;

  bool operator==(const SpaceGhost& other) const {
    return body == other.body && motion.turn == other.motion.turn &&
           motion.shift_mm == other.motion.shift_mm;
  }
};

struct SpaceShown {
  std::shared_ptr<const Scene> scene = std::make_shared<const Scene>();  // never null
  std::vector<SceneMotion> motions;                                      // one a body
  std::vector<SpaceGhost> ghosts;
  std::vector<SpacePoint> points;
  Camera camera;
  std::string selected;  // member path, as the session has it
  std::string hovered;   // path of a point
  std::optional<HeldLine> held_line;
  bool coarse = false;  // in motion
};

// The points of a project in that pose. `mechanism` and `pose` as posed_changed brought them.
std::vector<SpacePoint> space_points(const Mechanism& mechanism, const Pose& pose);

}  // namespace tackbench::ui
