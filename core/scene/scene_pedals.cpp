// Pedals with their rods, bell-cranks, cylinders, cables and springs.
#include <Eigen/Geometry>
#include <algorithm>
#include <cmath>

#include "core/scene/scene_maker.h"

namespace tackbench {

namespace {

// Sizes of what is drawn but not measured, mm.
constexpr double kPivotRadius = 14.0;
constexpr double kRodRadius = 6.0;
constexpr double kCylinderLength = 130.0;
constexpr double kCableRadius = 4.5;

class PedalParts {
 public:
  PedalParts(SceneMaker& maker, std::size_t index)
      : maker_(maker),
        pedal_(maker.project.pedals->pedals[index]),
        index_(static_cast<int>(index)),
        part_(item_path("pedals.pedals", index)),
        axis_(maker.in_chassis(pedal_.axis)) {}

  void add() {
    add_arm_and_pad();
    for (std::size_t i = 0; i < pedal_.springs.size(); ++i) add_spring(i);
    if (pedal_.rod && compiled()) add_rod(*pedal_.rod);
    if (pedal_.cable) add_cable(*pedal_.cable);
  }

 private:
  bool compiled() const {
    const auto index = static_cast<std::size_t>(index_);
    return index < maker_.mechanism.pedals.size() && maker_.mechanism.pedals[index].has_rod;
  }
  Vec3 at(const Point<Cab>& place) const { return maker_.in_chassis(place); }
  Rider with_pedal() const { return RidesBody{Body::pedal, index_}; }
  ScenePlace on_pedal(const Vec3& drawn) const {
    return {ScenePlace::Carrier::body, drawn, Body::pedal, index_, 0};
  }
  ScenePlace in_cab(const Vec3& drawn) const {
    return {ScenePlace::Carrier::body, drawn, Body::cab, 0, 0};
  }

  void add_arm_and_pad() {
    const Vec3 pivot = at(pedal_.pivot);
    const Vec3 pad = at(pedal_.pad_centre);
    maker_.add(with_pedal(), part_, SceneRole::moving, [&](Detail detail) {
      Mesh mesh = cylinder(pivot - 20.0 * axis_, pivot + 20.0 * axis_, kPivotRadius, detail);
      std::vector<Vec3> path;
      for (const Point<Cab>& point : pedal_.arm_path) path.push_back(at(point));
      if (path.size() < 2) path = {pivot, pad};
      for (std::size_t i = 0; i + 1 < path.size(); ++i)
        append(mesh, bar(path[i], path[i + 1], axis_, std::max(1.0, pedal_.arm_thickness),
                         std::max(1.0, pedal_.arm_width)));
      if (pedal_.rod) {
        append(mesh, lever(pivot, at(pedal_.rod->pedal_pin), axis_, 13.0, 11.0, 12.0, detail));
        const Vec3 pin = at(pedal_.rod->pedal_pin);
        append(mesh, cylinder(pin - 13.0 * axis_, pin + 13.0 * axis_, 6.0, detail));
      }
      if (pedal_.cable)
        append(mesh, lever(pivot, at(pedal_.cable->pedal_pin), axis_, 12.0, 9.0, 8.0, detail));
      return mesh;
    });
    maker_.add(with_pedal(), part_ + ".pad_centre_mm", SceneRole::moving, [&](Detail) {
      // The face's normal points at the foot, rearward; its height leans by the pad's angle.
      BoxPlace place;
      const Mat3 cab = maker_.mechanism.chassis_from_cab.turn;
      const Vec3 up = cab * (pitch_turn(pedal_.pad_angle) * Vec3::UnitZ());
      place.axes.col(1) = cab * Vec3::UnitY();
      place.axes.col(2) = up;
      place.axes.col(0) = place.axes.col(1).cross(up);
      place.centre = pad + 0.5 * pedal_.pad_thickness * place.axes.col(0);
      return box(place, {std::max(1.0, pedal_.pad_thickness), pedal_.pad_width, pedal_.pad_height},
                 0.4 * pedal_.pad_thickness);
    });
    // The bracket's cheeks that hold the pivot.
    maker_.add(RidesBody{Body::cab, 0}, part_, SceneRole::fixed, [&](Detail detail) {
      Mesh mesh;
      for (const double way : {1.0, -1.0}) {
        const Vec3 cheek = pivot + way * 25.0 * axis_;
        append(mesh, cylinder(cheek - 4.0 * axis_, cheek + 4.0 * axis_, 22.0, detail));
      }
      return mesh;
    });
  }

  // Two halves that slide in one another, so that its length may change.
  void add_spring(std::size_t i) {
    const ReturnSpring& spring = pedal_.springs[i];
    const Vec3 from = at(spring.pedal_point);
    const Vec3 to = at(spring.fixed_point);
    if ((to - from).norm() < 1.0) return;
    const std::string part = part_ + item_path(".springs", i);
    maker_.add(Reaches{on_pedal(from), in_cab(to)}, part, SceneRole::soft, [&](Detail detail) {
      return cylinder(from, from + 0.62 * (to - from), 4.0, detail);
    });
    maker_.add(Reaches{in_cab(to), on_pedal(from)}, part, SceneRole::soft,
               [&](Detail detail) { return cylinder(to, to + 0.62 * (from - to), 6.0, detail); });
  }

  void add_rod(const PedalRod& rod) {
    const std::string part = part_ + ".rod";
    const Vec3 way = maker_.in_chassis(rod.cylinder_axis);
    Vec3 from = at(rod.pedal_pin);
    ScenePlace carried = on_pedal(from);
    for (std::size_t i = 0; i < rod.bell_cranks.size(); ++i) {
      const BellCrank& crank = rod.bell_cranks[i];
      const std::string crank_part = part + item_path(".bell_cranks", i);
      const int number = static_cast<int>(i);
      const Vec3 input = at(crank.input_pin);
      const Vec3 output = at(crank.output_pin);
      const Vec3 pivot = at(crank.pivot);
      const Vec3 axis = maker_.in_chassis(crank.axis);
      const ScenePlace input_place{ScenePlace::Carrier::bell_crank, input, Body::cab, index_,
                                   number};
      add_push_rod(carried, input_place, part);
      maker_.add(TurnsOnBellCrank{index_, number}, crank_part, SceneRole::moving,
                 [&](Detail detail) {
                   Mesh mesh = lever(pivot, input, axis, 14.0, 10.0, 10.0, detail);
                   append(mesh, lever(pivot, output, axis, 14.0, 10.0, 10.0, detail));
                   append(mesh, cylinder(pivot - 18.0 * axis, pivot + 18.0 * axis, 10.0, detail));
                   return mesh;
                 });
      carried = {ScenePlace::Carrier::bell_crank, output, Body::cab, index_, number};
    }
    const Vec3 pin = at(rod.cylinder_pin);
    add_push_rod(carried, {ScenePlace::Carrier::piston, pin, Body::cab, index_, 0}, part);
    const double stroke = rod.full_stroke.value_or(30.0);
    const double radius = 0.5 * rod.bore.value_or(24.0) + 9.0;
    maker_.add(
        RidesBody{Body::cab, 0}, part + ".cylinder_pin_mm", SceneRole::fixed, [&](Detail detail) {
          const Vec3 mouth = pin + (stroke + 6.0) * way;
          Mesh mesh = cylinder(mouth, mouth + kCylinderLength * way, radius, detail);
          append(mesh, cylinder(mouth + 8.0 * way, mouth + 18.0 * way, radius + 16.0, detail));
          return mesh;
        });
    // The piston's own rod follows the pin into the cylinder.
    maker_.add(Reaches{{ScenePlace::Carrier::piston, pin, Body::cab, index_, 0},
                       in_cab(pin + (stroke + 6.0 + kCylinderLength) * way)},
               part + ".cylinder_pin_mm", SceneRole::moving, [&](Detail detail) {
                 Mesh mesh = cylinder(pin, pin + (stroke + 10.0) * way, 8.0, detail);
                 append(mesh, sphere(pin, 11.0, detail));
                 return mesh;
               });
  }

  void add_push_rod(const ScenePlace& from, const ScenePlace& to, const std::string& part) {
    if ((to.drawn_mm - from.drawn_mm).norm() < 1.0) return;
    maker_.add(Reaches{from, to}, part, SceneRole::moving, [&](Detail detail) {
      return cylinder(from.drawn_mm, to.drawn_mm, kRodRadius, detail);
    });
  }

  // The outer as it is laid, straight from point to point.
  void add_cable(const PedalCable& given) {
    std::vector<Vec3> route{at(given.cab_exit)};
    for (const Point<Chassis>& point : given.route) route.push_back(point.mm);
    route.push_back(given.engine_exit.mm);
    const std::string part = part_ + ".cable";
    maker_.add(RidesBody{}, part, SceneRole::soft,
               [&](Detail detail) { return cable(route, kCableRadius, detail); });
    const Vec3 pin = at(given.pedal_pin);
    if ((route.front() - pin).norm() > 1.0)
      maker_.add(Reaches{on_pedal(pin), in_cab(route.front())}, part, SceneRole::soft,
                 [&](Detail detail) { return cylinder(pin, route.front(), 2.0, detail); });
    const EngineLever& engine = given.engine_lever;
    if ((engine.pin.mm - engine.pivot.mm).norm() > 1.0)
      maker_.add(
          RidesBody{}, part + ".engine_lever.pivot_mm", SceneRole::fixed, [&](Detail detail) {
            return lever(engine.pivot.mm, engine.pin.mm, engine.axis.along, 12.0, 9.0, 6.0, detail);
          });
  }

  SceneMaker& maker_;
  const Pedal& pedal_;
  int index_;
  std::string part_;
  Vec3 axis_;
};

}  // namespace

void add_pedals(SceneMaker& maker) {
  if (!maker.project.pedals) return;
  const std::size_t count =
      std::min(maker.project.pedals->pedals.size(), static_cast<std::size_t>(kMostPedals));
  for (std::size_t i = 0; i < count; ++i) PedalParts(maker, i).add();
}

}  // namespace tackbench
