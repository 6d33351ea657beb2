#include <utility>

#include "core/scene/scene_maker.h"

namespace tackbench {

namespace {

// Without a front axle the ground is drawn this far under the rails' tops, mm.
constexpr double kUnknownGround = -700.0;

void add_cab_origin(SceneMaker& maker) {
  if (!maker.project.cab) return;
  maker.add(RidesBody{Body::cab, 0}, "cab", SceneRole::soft,
            [&](Detail detail) { return sphere(maker.in_chassis(Point<Cab>{}), 16.0, detail); });
}

}  // namespace

void SceneMaker::put(const Rider& rider, ScenePiece piece) {
  if (piece.fine.empty() || piece.coarse.empty()) return;
  for (SceneBody& body : scene_.bodies) {
    if (!(body.rider == rider)) continue;
    body.pieces.push_back(std::move(piece));
    return;
  }
  scene_.bodies.push_back({rider, {std::move(piece)}});
}

Scene SceneMaker::finished() {
  for (const SceneBody& body : scene_.bodies) {
    for (const ScenePiece& piece : body.pieces) {
      const Bounds bounds = bounds_of(piece.coarse);
      scene_.bounds.take(bounds.least);
      scene_.bounds.take(bounds.greatest);
    }
  }
  scene_.ground_z = project.front_axle ? project.front_axle->wheel_centre_height -
                                             project.front_axle->tyre.loaded_radius
                                       : kUnknownGround;
  return std::move(scene_);
}

Scene make_scene(const Mechanism& mechanism) {
  SceneMaker maker(mechanism);
  add_rails(maker);
  add_axle(maker);
  add_suspension(maker);
  add_steering(maker);
  add_column(maker);
  add_shaft_line(maker);
  add_pedals(maker);
  add_driver(maker);
  add_shapes(maker);
  add_cab_origin(maker);
  return maker.finished();
}

}  // namespace tackbench
