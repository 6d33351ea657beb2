// How the stations put their parts into a scene; inside this room only.
#pragma once

#include <string>

#include "core/mechanism/usual_sizes.h"
#include "core/scene/mesh_flat.h"
#include "core/scene/scene.h"

namespace tackbench {

class SceneMaker {
 public:
  explicit SceneMaker(const Mechanism& of) : mechanism(of), project(of.project) {}

  // `make(Detail)` gives the mesh in its drawn place. Parts with one rider become one body.
  template <class Make>
  void add(const Rider& rider, const std::string& part, SceneRole role, const Make& make) {
    put(rider, {part, role, make(Detail::fine), make(Detail::coarse)});
  }

  Vec3 in_chassis(const Point<Cab>& place) const { return (mechanism.chassis_from_cab * place).mm; }
  Vec3 in_chassis(const Direction<Cab>& way) const {
    return (mechanism.chassis_from_cab * way).along;
  }
  Vec3 drawn_place(RidesOn rides_on, const Vec3& mm) const {
    return rides_on == RidesOn::cab ? in_chassis(Point<Cab>{mm}) : mm;
  }

  Scene finished();

  const Mechanism& mechanism;
  const Project& project;

 private:
  void put(const Rider& rider, ScenePiece piece);

  Scene scene_;
};

inline std::string item_path(const std::string& list, std::size_t index) {
  return list + '[' + std::to_string(index) + ']';
}

inline Vec3 mirrored_if(const Vec3& mm, Side side) {
  return side == Side::left ? mm : Vec3(mm.x(), -mm.y(), mm.z());
}

inline Body knuckle_of(Side side) {
  return side == Side::left ? Body::left_knuckle : Body::right_knuckle;
}

// A ball stud's housing about its ball, and the stud from the ball into its lever.
Mesh ball_housing(const Vec3& ball, const Vec3& stud, Detail detail);
Mesh ball_stud(const Vec3& ball, const Vec3& stud, Detail detail);

void add_rails(SceneMaker& maker);
void add_axle(SceneMaker& maker);
void add_suspension(SceneMaker& maker);
void add_steering(SceneMaker& maker);
void add_column(SceneMaker& maker);
void add_shaft_line(SceneMaker& maker);
void add_pedals(SceneMaker& maker);
void add_driver(SceneMaker& maker);
void add_shapes(SceneMaker& maker);

}  // namespace tackbench
