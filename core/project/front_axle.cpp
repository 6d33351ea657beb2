#include "core/project/front_axle.h"

#include <cmath>

namespace tackbench {

namespace {

Vec3 mirrored(const Vec3& v) {
  return {v.x(), -v.y(), v.z()};
}

KnuckleSide mirror_image(KnuckleSide knuckle) {
  knuckle.kingpin_point.mm = mirrored(knuckle.kingpin_point.mm);
  knuckle.tie_rod_ball.mm = mirrored(knuckle.tie_rod_ball.mm);
  for (LockStop& stop : knuckle.stops) {
    stop.lock = other(stop.lock);
    stop.tip_centre.mm = mirrored(stop.tip_centre.mm);
    stop.bolt_axis = mirrored(stop.bolt_axis);
    stop.pad_centre.mm = mirrored(stop.pad_centre.mm);
    stop.pad_normal = mirrored(stop.pad_normal);
  }
  return knuckle;
}

}  // namespace

KnuckleSide knuckle_side(const FrontAxleStation& axle, Side side) {
  if (side == Side::left) return axle.left_knuckle;
  return axle.right_knuckle ? *axle.right_knuckle : mirror_image(axle.left_knuckle);
}

Direction<Chassis> spindle_straight(const FrontAxleStation& axle, Side side) {
  const double camber = knuckle_side(axle, side).camber;
  const double steer = -side_sign(side) * 0.5 * axle.toe;
  return {Vec3(-std::sin(steer) * std::cos(camber), std::cos(steer) * std::cos(camber),
               -side_sign(side) * std::sin(camber))};
}

Direction<Chassis> kingpin_axis(const KnuckleSide& knuckle, Side side) {
  return {
      Vec3(-std::tan(knuckle.caster), -side_sign(side) * std::tan(knuckle.kingpin_inclination), 1.0)
          .normalized()};
}

}  // namespace tackbench
