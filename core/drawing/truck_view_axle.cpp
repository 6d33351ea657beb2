// Axle beam, kingpins, lock stops, and the wheels as they steer, camber and rise.
#include <algorithm>
#include <array>
#include <cmath>

#include "core/basics/units.h"
#include "core/drawing/truck_parts.h"

namespace tackbench {

namespace {

// Sizes of what is drawn but not measured; nothing is judged by them.
constexpr double kBeamHalf = 42.0;
constexpr double kKingpinRadius = 22.0;
constexpr double kKingpinHalf = 105.0;
constexpr double kSpindleRadius = 34.0;
constexpr double kBoltLength = 55.0;

struct Wheel {
  Vec3 centre_mm;
  Vec3 spindle;           // unit, pointing left
  double outboard = 1.0;  // along the spindle to the outer face
  bool far = false;       // behind the truck in this view
};

Wheel wheel(const TruckAtPose& truck, const TruckPen& pen, Side side) {
  const FrontAxleStation& axle = *truck.project.front_axle;
  const auto& motion = truck.knuckle(side);
  const Vec3 drawn(0.0, side_sign(side) * (0.5 * axle.track + axle.hub_offset),
                   axle.wheel_centre_height);
  Wheel made;
  made.centre_mm = moved(motion, drawn);
  made.spindle = motion.turn * spindle_straight(axle, side).along;
  made.outboard = side_sign(side);
  made.far = pen.sees(SheetView::side) && side == Side::right;
  return made;
}

// Rim as drawn from the section's usual height, 85 % of its width (common practice).
double rim_radius(const Tyre& tyre) {
  const double outer = tyre.diameter / 2.0;
  return std::max(0.35 * outer, outer - 0.85 * tyre.width);
}

void draw_tyre(const Tyre& tyre, const Wheel& wheel, TruckPen& pen) {
  const double outer = tyre.diameter / 2.0;
  const double rounding = std::clamp(tyre.shoulder_radius, 0.0, std::min(outer, tyre.width / 2.0));
  const double half = tyre.width / 2.0 - rounding;
  const std::array discs{
      Disc{wheel.centre_mm + half * wheel.spindle, wheel.spindle, outer - rounding},
      Disc{wheel.centre_mm - half * wheel.spindle, wheel.spindle, outer - rounding}};
  DrawnLine line;
  line.through = outline(pen.view(), discs, rounding, OutlineGrain::fine);
  // The load flattens it where it stands.
  if (!pen.sees(SheetView::plan))
    line.through = cut_below(line.through, wheel.centre_mm.z() - tyre.loaded_radius);
  line.ink = wheel.far ? Ink::hidden : Ink::tyre;
  line.closed = true;
  line.filled = !pen.sees(SheetView::side);
  line.part = "front_axle.tyre";
  pen.add(std::move(line));
}

// Where the shoulders begin, as far as they face the eye.
void draw_tread_edges(const Tyre& tyre, const Wheel& wheel, TruckPen& pen) {
  constexpr double kFaceOn = 0.97;
  if (std::abs(pen.towards_eye(wheel.spindle)) > kFaceOn) return;
  const double half = std::max(0.0, tyre.width / 2.0 - tyre.shoulder_radius);
  for (const double way : {half, -half}) {
    const Disc edge{wheel.centre_mm + way * wheel.spindle, wheel.spindle, tyre.diameter / 2.0};
    pen.near_arc(edge, wheel.centre_mm.z() - tyre.loaded_radius, Ink::soft, "front_axle.tyre");
  }
}

// Rim and hub on the face that shows.
void draw_rim(const Tyre& tyre, const Wheel& wheel, TruckPen& pen) {
  constexpr double kEdgeOn = 0.08;
  const double facing = pen.towards_eye(wheel.spindle);
  if (std::abs(facing) < kEdgeOn || wheel.far) return;
  const Vec3 out = (facing > 0.0 ? 1.0 : -1.0) * wheel.spindle;
  const double rim = rim_radius(tyre);
  const Vec3 face = wheel.centre_mm + 0.36 * tyre.width * out;
  pen.ring({face, wheel.spindle, rim}, Ink::fixed, "front_axle.tyre");
  pen.ring({face, wheel.spindle, 0.9 * rim}, Ink::soft, "front_axle.tyre");
  const Vec3 hub = wheel.centre_mm + 0.25 * tyre.width * out;
  pen.ring({hub, wheel.spindle, 0.36 * rim}, Ink::fixed, "front_axle.tyre");
  // Wheel bolts, so that the hub reads as one.
  const Vec3 first = square_to(wheel.spindle, Vec3::UnitZ());
  const Vec3 second = wheel.spindle.cross(first);
  constexpr int kBolts = 8;
  for (int i = 0; i < kBolts; ++i) {
    const double angle = kRadiansPerTurn * i / kBolts;
    const Vec3 place = hub + 0.55 * rim * (std::cos(angle) * first + std::sin(angle) * second);
    pen.ring({place, wheel.spindle, 0.05 * rim}, Ink::soft, "front_axle.tyre");
  }
}

// The axis of the wheel, and the wheel's middle plane in plan where steer is read.
void draw_wheel_axes(const Tyre& tyre, const Wheel& wheel, TruckPen& pen) {
  if (wheel.far || pen.is_ghost()) return;
  const Vec3 along = wheel.outboard * wheel.spindle;
  const double past = tyre.diameter / 2.0 + 60.0;
  if (pen.sees(SheetView::side)) {
    const Vec3 across = Vec3::UnitX() * past;
    const Vec3 up = Vec3::UnitZ() * past;
    pen.path({wheel.centre_mm - across, wheel.centre_mm + across}, Ink::centre, "");
    pen.path({wheel.centre_mm - 0.9 * up, wheel.centre_mm + up}, Ink::centre, "");
    return;
  }
  pen.path({wheel.centre_mm - (tyre.width / 2.0 - 40.0) * along,
            wheel.centre_mm + (tyre.width / 2.0 + 70.0) * along},
           Ink::centre, "");
  const Vec3 in_plane = pen.sees(SheetView::plan) ? wheel.spindle.cross(Vec3::UnitZ()).eval()
                                                  : square_to(wheel.spindle, Vec3::UnitZ());
  const double low = pen.sees(SheetView::plan) ? past : tyre.loaded_radius - 20.0;
  pen.path({wheel.centre_mm - low * in_plane, wheel.centre_mm + past * in_plane}, Ink::centre, "");
}

std::string kingpin_part(Side side) {
  return side == Side::left ? "front_axle.left_knuckle.kingpin_point_mm"
                            : "front_axle.right_knuckle.kingpin_point_mm";
}

// True when a box that rides on the axle stands for its beam: it crosses the middle and is wider
// than half the way between the kingpins. Gives how far its ends reach.
bool measured_beam(const Project& project, double kingpin_y, double& reach, double& height) {
  if (!project.shapes) return false;
  for (const Shape& shape : project.shapes->shapes) {
    if (shape.rides_on != RidesOn::axle || shape.kind != ShapeKind::box) continue;
    if (std::abs(shape.place.y()) > 0.25 * shape.size.y()) continue;
    if (shape.size.y() < kingpin_y || shape.turn.norm() > 1e-6) continue;
    reach = shape.size.y() / 2.0;
    height = shape.place.z();
    return true;
  }
  return false;
}

void draw_beam(const TruckAtPose& truck, TruckPen& pen) {
  const FrontAxleStation& axle = *truck.project.front_axle;
  const Vec3 left = knuckle_side(axle, Side::left).kingpin_point.mm;
  const Vec3 right = knuckle_side(axle, Side::right).kingpin_point.mm;
  double reach = 0.0;
  double height = 0.0;
  if (measured_beam(truck.project, left.y(), reach, height)) {
    // The forged ends go from the measured beam up to the kingpins.
    for (const Vec3& kingpin : {left, right}) {
      const Vec3 root(kingpin.x(),
                      std::copysign(std::min(reach, std::abs(kingpin.y())), kingpin.y()), height);
      if ((kingpin - root).norm() < 2.0) continue;
      pen.cone(moved(truck.axle, root), kBeamHalf, moved(truck.axle, kingpin), 0.8 * kBeamHalf,
               Ink::fixed, "front_axle");
    }
    return;
  }
  const Vec3 middle = 0.5 * (left + right);
  const Vec3 half(kBeamHalf, 0.0, kBeamHalf);
  const Vec3 least(middle.x(), right.y(), std::min(left.z(), right.z()));
  const Vec3 greatest(middle.x(), left.y(), std::max(left.z(), right.z()));
  pen.block(truck.axle, least - half, greatest + half, Ink::fixed, "front_axle");
  if (pen.sees(SheetView::front)) {
    // Flanges of the forging.
    for (const double z : {kBeamHalf - 14.0, 14.0 - kBeamHalf})
      pen.path(
          {moved(truck.axle, left + Vec3(0, -60, z)), moved(truck.axle, right + Vec3(0, 60, z))},
          Ink::soft, "front_axle");
  }
}

void draw_kingpin(const TruckAtPose& truck, Side side, TruckPen& pen) {
  const FrontAxleStation& axle = *truck.project.front_axle;
  const KnuckleSide knuckle = knuckle_side(axle, side);
  const Vec3 axis = truck.axle.turn * kingpin_axis(knuckle, side).along;
  Vec3 middle = moved(truck.axle, knuckle.kingpin_point.mm);
  // At the height of the wheel centre, wherever on the axis the point was given.
  const double rise = truck.axle.shift_mm.z() + axle.wheel_centre_height - middle.z();
  if (std::abs(axis.z()) > 0.1 && std::abs(rise) < 500.0) middle += rise / axis.z() * axis;
  const std::string part = kingpin_part(side);
  pen.rod(middle - kKingpinHalf * axis, middle + kKingpinHalf * axis, kKingpinRadius, Ink::fixed,
          part);
  const double past = kKingpinHalf + 70.0;
  pen.path({middle - past * axis, middle + past * axis}, Ink::centre, part);
}

void draw_stops(const TruckAtPose& truck, Side side, TruckPen& pen) {
  const FrontAxleStation& axle = *truck.project.front_axle;
  const KnuckleSide knuckle = knuckle_side(axle, side);
  const auto& motion = truck.knuckle(side);
  const std::string list =
      side == Side::left ? "front_axle.left_knuckle.stops" : "front_axle.right_knuckle.stops";
  for (std::size_t i = 0; i < knuckle.stops.size(); ++i) {
    const LockStop& stop = knuckle.stops[i];
    const std::string place = item(list.c_str(), i);
    const Vec3 normal = truck.axle.turn * stop.pad_normal;
    const Vec3 pad = moved(truck.axle, stop.pad_centre.mm);
    pen.rod(pad - 10.0 * normal, pad, stop.pad_radius, Ink::fixed, place + ".pad_centre_mm");
    const Vec3 axis = motion.turn * stop.bolt_axis;
    const Vec3 tip = moved(motion, stop.tip_centre.mm);
    const std::array bolt{Disc{tip, axis, 0.0}, Disc{tip - kBoltLength * axis, axis, 0.0}};
    pen.solid(bolt, stop.tip_radius, Ink::fixed, place + ".tip_centre_mm");
  }
}

}  // namespace

void draw_axle(const TruckAtPose& truck, TruckPen& pen) {
  if (!truck.project.front_axle) return;
  draw_beam(truck, pen);
  for (const Side side : {Side::right, Side::left}) {
    if (pen.sees(SheetView::side) && side == Side::right) continue;
    draw_kingpin(truck, side, pen);
  }
}

void draw_wheels(const TruckAtPose& truck, TruckPen& pen) {
  if (!truck.project.front_axle) return;
  const FrontAxleStation& axle = *truck.project.front_axle;
  for (const Side side : {Side::right, Side::left}) {
    const Wheel drawn = wheel(truck, pen, side);
    if (!pen.is_ghost() && !drawn.far) {
      const Vec3 kingpin = moved(truck.axle, knuckle_side(axle, side).kingpin_point.mm);
      const Vec3 inner =
          drawn.centre_mm + drawn.spindle.dot(kingpin - drawn.centre_mm) * drawn.spindle;
      pen.cone(inner, 1.4 * kSpindleRadius, drawn.centre_mm, kSpindleRadius, Ink::fixed,
               "front_axle");
      draw_stops(truck, side, pen);
    }
    draw_tyre(axle.tyre, drawn, pen);
    if (pen.is_ghost()) continue;
    draw_tread_edges(axle.tyre, drawn, pen);
    draw_rim(axle.tyre, drawn, pen);
    draw_wheel_axes(axle.tyre, drawn, pen);
  }
}

}  // namespace tackbench
