// Driver's points, shapes, stretch pairs: what stands around.
#include <Eigen/Geometry>
#include <algorithm>
#include <cmath>

#include "core/mechanism/body_motion.h"
#include "core/scene/scene_maker.h"

namespace tackbench {

namespace {

// A seat as it is drawn; people are drawn elsewhere. mm.
constexpr double kSeatWidth = 460.0;
constexpr double kCushion = 480.0;
constexpr double kBack = 560.0;
constexpr double kUnderSeat = 70.0;
constexpr double kPadding = 60.0;

void add_seat(SceneMaker& maker, const DriverStation& driver) {
  maker.add(
      RidesBody{Body::cab, 0}, "driver.seat_reference_mm", SceneRole::soft, [&](Detail detail) {
        const Mat3 cab = maker.mechanism.chassis_from_cab.turn;
        const Vec3 reference = maker.in_chassis(driver.seat_reference);
        BoxPlace cushion{reference + cab * Vec3(130.0, 0.0, -kUnderSeat - 0.5 * kPadding), cab};
        Mesh mesh = box(cushion, {kCushion, kSeatWidth, kPadding}, 18.0);
        BoxPlace back;
        back.axes = cab * pitch_turn(-driver.back_angle);
        back.centre = reference + cab * Vec3(-100.0, 0.0, -kUnderSeat) +
                      back.axes * Vec3(-0.5 * kPadding, 0.0, 0.5 * kBack);
        append(mesh, box(back, {kPadding, kSeatWidth, kBack}, 18.0));
        append(mesh, sphere(reference, 16.0, detail));
        return mesh;
      });
  maker.add(RidesBody{Body::cab, 0}, "driver.heel_point_mm", SceneRole::soft, [&](Detail detail) {
    return sphere(maker.in_chassis(driver.heel_point), 16.0, detail);
  });
}

Mesh shape_mesh(const SceneMaker& maker, const Shape& shape, Detail detail) {
  const Mat3 frame =
      shape.rides_on == RidesOn::cab ? maker.mechanism.chassis_from_cab.turn : Mat3::Identity();
  BoxPlace place;
  place.centre = maker.drawn_place(shape.rides_on, shape.place);
  place.axes = frame * roll_pitch_yaw_turn(shape.turn.x(), shape.turn.y(), shape.turn.z());
  const Vec3 end = maker.drawn_place(shape.rides_on, shape.end);
  switch (shape.kind) {
    case ShapeKind::box:
      return box(place, shape.size, shape.rounding);
    case ShapeKind::tube:
      return tube(place.centre, end, 0.5 * shape.diameter, shape.wall, detail);
    case ShapeKind::cylinder:
      return cylinder(place.centre, end, 0.5 * shape.diameter, detail);
    case ShapeKind::plate: {
      std::vector<RoundHole> holes;
      for (const PlateHole& hole : shape.holes)
        holes.push_back({{hole.across, hole.up}, 0.5 * hole.diameter});
      return plate(place, shape.size, holes, detail);
    }
    case ShapeKind::mesh:
      break;  // a scan lies in a file of its own
  }
  return {};
}

// A box about a spring's seat stands for the spring, which is drawn itself.
bool is_around_spring(const Project& project, const Shape& shape) {
  if (!project.front_axle || project.front_axle->suspension.kind != SuspensionKind::leaf ||
      !project.front_axle->suspension.leaf || shape.rides_on != RidesOn::axle ||
      shape.kind != ShapeKind::box)
    return false;
  const Vec3& seat = project.front_axle->suspension.leaf->seat.mm;
  for (const Side side : {Side::left, Side::right}) {
    const Vec3 apart = (mirrored_if(seat, side) - shape.place).cwiseAbs();
    if ((apart.array() <= 0.5 * shape.size.array()).all()) return true;
  }
  return false;
}

void add_stretch_pair(SceneMaker& maker, const StretchPair& pair, const std::string& part) {
  const auto place = [&](const AnchoredPoint& point) {
    return ScenePlace{ScenePlace::Carrier::body, maker.drawn_place(point.rides_on, point.at),
                      body_of(point.rides_on), 0, 0};
  };
  const ScenePlace from = place(pair.from);
  const ScenePlace to = place(pair.to);
  const Vec3 step = to.drawn_mm - from.drawn_mm;
  if (step.norm() < 1.0) return;
  maker.add(Reaches{from, to}, part, SceneRole::fixed, [&](Detail detail) {
    Mesh mesh = cylinder(from.drawn_mm, from.drawn_mm + 0.55 * step, 26.0, detail);
    append(mesh, sphere(from.drawn_mm, 18.0, detail));
    return mesh;
  });
  maker.add(Reaches{to, from}, part, SceneRole::fixed, [&](Detail detail) {
    Mesh mesh = cylinder(to.drawn_mm, to.drawn_mm - 0.62 * step, 10.0, detail);
    append(mesh, sphere(to.drawn_mm, 18.0, detail));
    return mesh;
  });
}

}  // namespace

void add_driver(SceneMaker& maker) {
  if (maker.project.driver) add_seat(maker, *maker.project.driver);
}

void add_shapes(SceneMaker& maker) {
  if (!maker.project.shapes) return;
  const ShapesStation& station = *maker.project.shapes;
  for (std::size_t i = 0; i < station.shapes.size(); ++i) {
    const Shape& shape = station.shapes[i];
    const bool soft = shape.rides_on == RidesOn::cab || is_around_spring(maker.project, shape);
    maker.add(RidesBody{body_of(shape.rides_on), 0}, item_path("shapes.shapes", i),
              soft ? SceneRole::soft : SceneRole::fixed,
              [&](Detail detail) { return shape_mesh(maker, shape, detail); });
  }
  for (std::size_t i = 0; i < station.stretch_pairs.size(); ++i)
    add_stretch_pair(maker, station.stretch_pairs[i], item_path("shapes.stretch_pairs", i));
}

}  // namespace tackbench
