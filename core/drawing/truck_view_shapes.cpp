// What stands around the moving parts, and stretch pairs.
#include <algorithm>
#include <array>
#include <cmath>

#include "core/drawing/truck_parts.h"

namespace tackbench {

namespace {

constexpr double kPairEye = 15.0;  // of a damper or strap as drawn

// Own frame of a box or plate, in the chassis at the pose.
Placement<Chassis, Chassis> own_place(const TruckAtPose& truck, const Shape& shape) {
  Placement<Chassis, Chassis> place;
  const Mat3 own = roll_pitch_yaw_turn(shape.turn.x(), shape.turn.y(), shape.turn.z());
  place.turn = (shape.rides_on == RidesOn::cab ? truck.pose.chassis_from_cab.turn
                                               : truck.body(shape.rides_on).turn) *
               own;
  place.shift_mm = truck.riding(shape.rides_on, shape.place);
  return place;
}

void draw_block(const TruckAtPose& truck, const Shape& shape, const std::string& part,
                TruckPen& pen) {
  const auto place = own_place(truck, shape);
  const Vec3 half = shape.size.cwiseAbs() / 2.0;
  // A beam or bracket that moves with the axle belongs to the truck; the rest is only around.
  const bool of_the_truck = shape.rides_on != RidesOn::chassis && shape.rides_on != RidesOn::cab;
  pen.block(place, -half, half, of_the_truck ? Ink::fixed : Ink::soft, part, true);
  if (shape.kind != ShapeKind::plate) return;
  for (const PlateHole& hole : shape.holes) {
    const Vec3 centre = moved(place, Vec3(hole.across, hole.up, 0.0));
    const Vec3 axis = place.turn.col(2);
    if (std::abs(pen.towards_eye(axis)) > 0.1) {
      pen.ring({centre, axis, hole.diameter / 2.0}, Ink::soft, part);
    } else {
      // Seen edge on: its two sides through the plate.
      for (const double way : {0.5, -0.5}) {
        const Vec3 side = way * hole.diameter * square_to(axis, sight(pen.view()).cross(axis));
        pen.path({centre + side - half.z() * axis, centre + side + half.z() * axis}, Ink::soft,
                 part);
      }
    }
  }
}

void draw_tube(const TruckAtPose& truck, const Shape& shape, const std::string& part,
               TruckPen& pen) {
  const Vec3 from = truck.riding(shape.rides_on, shape.place);
  const Vec3 to = truck.riding(shape.rides_on, shape.end);
  const double length = (to - from).norm();
  if (!(length > 1e-6)) return;
  const Vec3 axis = (to - from) / length;
  const std::array discs{Disc{from, axis, shape.diameter / 2.0},
                         Disc{to, axis, shape.diameter / 2.0}};
  DrawnLine line;
  line.through = outline(pen.view(), discs, 0.0, OutlineGrain::coarse);
  line.ink = Ink::soft;
  line.closed = true;
  line.body = true;
  line.part = part;
  pen.add(std::move(line));
  const Vec3& near_end = pen.towards_eye(axis) > 0.0 ? to : from;
  if (std::abs(pen.towards_eye(axis)) > 0.1)
    pen.ring({near_end, axis, shape.diameter / 2.0}, Ink::soft, part);
  pen.path({from - 25.0 * axis, to + 25.0 * axis}, Ink::centre, part);
}

}  // namespace

void draw_shapes(const TruckAtPose& truck, TruckPen& pen) {
  if (!truck.project.shapes) return;
  const auto& shapes = truck.project.shapes->shapes;
  for (std::size_t i = 0; i < shapes.size(); ++i) {
    const std::string part = item("shapes.shapes", i);
    switch (shapes[i].kind) {
      case ShapeKind::box:
      case ShapeKind::plate:
      case ShapeKind::mesh:
        draw_block(truck, shapes[i], part, pen);
        break;
      case ShapeKind::tube:
      case ShapeKind::cylinder:
        draw_tube(truck, shapes[i], part, pen);
        break;
    }
  }
}

void draw_stretch_pairs(const TruckAtPose& truck, TruckPen& pen) {
  if (!truck.project.shapes) return;
  const auto& pairs = truck.project.shapes->stretch_pairs;
  for (std::size_t i = 0; i < pairs.size(); ++i) {
    const std::string part = item("shapes.stretch_pairs", i);
    const Vec3 from = truck.riding(pairs[i].from.rides_on, pairs[i].from.at);
    const Vec3 to = truck.riding(pairs[i].to.rides_on, pairs[i].to.at);
    pen.path({from, to}, Ink::soft, part);
    pen.round(from, kPairEye, Ink::soft, true, part + ".from.at_mm");
    pen.round(to, kPairEye, Ink::soft, true, part + ".to.at_mm");
  }
}

}  // namespace tackbench
