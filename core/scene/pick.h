// What a line of sight meets first.
#pragma once

#include <optional>
#include <vector>

#include "core/scene/camera.h"
#include "core/scene/scene.h"

namespace tackbench {

struct SightHit {
  std::size_t body = 0;
  std::size_t piece = 0;
  double distance = 0.0;  // from the ray's origin, mm
  Vec3 at_mm = Vec3::Zero();
};

// Nearest piece on the ray, by its fine mesh. A soft piece is looked through while something else
// that can be chosen lies behind it.
std::optional<SightHit> pick(const Scene& scene, const std::vector<SceneMotion>& motions,
                             const SightRay& ray);

// The same within `reach` pixels of a place on the picture: what lies under it, otherwise the
// nearest hit on circles about it, so that thin rods can be taken.
std::optional<SightHit> pick_near(const Scene& scene, const std::vector<SceneMotion>& motions,
                                  const Camera& camera, const PictureSize& size,
                                  const PicturePoint& at, double reach);

// Where the ray crosses the plane through `point` with that normal; empty when it runs beside it or
// away from it.
std::optional<Vec3> on_plane(const SightRay& ray, const Vec3& point, const Vec3& normal);

// The piece whose part is the path, or the longest of the parts that the path lies within; bounds
// of all pieces of that part in the pose. Empty when nothing shows it.
Bounds bounds_of_part(const Scene& scene, const std::vector<SceneMotion>& motions,
                      const std::string& part);

// Whether a piece belongs to what is selected: the same path, or a member of it ("steering_box.arm"
// shows for "steering_box.arm.length_mm", "pedals.pedals[0]" for all of its members).
bool shows_selected(const std::string& part, const std::string& selected);

}  // namespace tackbench
