// How the stations put their solids together; inside this room only.
#pragma once

#include <string>
#include <utility>
#include <vector>

#include "core/clearance/truck_solids.h"
#include "core/mechanism/usual_sizes.h"

namespace tackbench {

class SolidsMaker {
 public:
  explicit SolidsMaker(const Mechanism& of) : mechanism(of), project(of.project) {}

  Vec3 in_chassis(const Point<Cab>& place) const { return (mechanism.chassis_from_cab * place).mm; }
  Vec3 in_chassis(const Direction<Cab>& way) const {
    return (mechanism.chassis_from_cab * way).along;
  }
  Vec3 drawn_place(RidesOn rides_on, const Vec3& mm) const {
    return rides_on == RidesOn::cab ? in_chassis(Point<Cab>{mm}) : mm;
  }

  // A part without pieces is left out.
  void add(SolidPart part) {
    if (!part.pieces.empty()) made.parts.push_back(std::move(part));
  }

  const Mechanism& mechanism;
  const Project& project;
  TruckSolids made;
};

inline SolidBody rides(Body body, int index = 0) {
  return {SolidBody::Kind::of_grips, body, index};
}
inline Body knuckle_body(Side side) {
  return side == Side::left ? Body::left_knuckle : Body::right_knuckle;
}
inline std::string side_word(Side side) {
  return side == Side::left ? "left" : "right";
}
inline std::string item_path(const std::string& list, std::size_t index) {
  return list + '[' + std::to_string(index) + ']';
}

// A bar of rectangular section from end to end, `width` along the direction nearest to `across`.
ConvexSolid flat_bar(const Vec3& from, const Vec3& to, const Vec3& across, double width,
                     double depth, double rounding);

void add_axle_solids(SolidsMaker& maker);
void add_steering_solids(SolidsMaker& maker);
void add_shaft_solids(SolidsMaker& maker);
void add_pedal_solids(SolidsMaker& maker);
void add_shape_solids(SolidsMaker& maker);

}  // namespace tackbench
