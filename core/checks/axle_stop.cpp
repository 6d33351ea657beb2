#include "core/checks/axle_stop.h"

#include <cmath>

namespace tackbench {

namespace {

AxleStop axle_stop(const LockStop& stop, const KnuckleBody& body, const Vec3& axle_origin_mm) {
  AxleStop made;
  made.name = stop.name;
  made.knuckle = body.side;
  made.lock = stop.lock;
  made.tip = crank_through(body.kingpin_point_mm, body.tie_rod_arm.axis,
                           stop.tip_centre.mm - axle_origin_mm);
  made.bolt_axis = stop.bolt_axis.normalized();
  made.pad_centre_mm = stop.pad_centre.mm - axle_origin_mm;
  made.pad_normal = stop.pad_normal.normalized();
  made.tip_radius = stop.tip_radius;
  made.pad_radius = stop.pad_radius;
  made.bolt_adjustment = stop.bolt_adjustment;
  return made;
}

}  // namespace

double AxleStop::gap(double swivel) const {
  return (tip.ball(swivel) - pad_centre_mm).dot(pad_normal) - tip_radius;
}

double AxleStop::gap_rate(double swivel) const {
  return tip.ball_rate(swivel).dot(pad_normal);
}

double AxleStop::closing_per_mm(double swivel) const {
  return -turned(bolt_axis, tip.axis, swivel).dot(pad_normal);
}

double AxleStop::off_centre(double swivel) const {
  const Vec3 from_pad = tip.ball(swivel) - pad_centre_mm;
  return (from_pad - from_pad.dot(pad_normal) * pad_normal).norm();
}

double AxleStop::off_square(double swivel) const {
  return angle_between(turned(bolt_axis, tip.axis, swivel), -pad_normal);
}

std::optional<double> AxleStop::screw_out_for(double swivel) const {
  constexpr double kAlongFace = 1e-6;
  const double closing = closing_per_mm(swivel);
  if (std::abs(closing) < kAlongFace) return std::nullopt;
  return gap(swivel) / closing;
}

std::vector<AxleStop> axle_stops(const FrontAxleStation& axle, const Steering& steering) {
  const Vec3 origin(0.0, 0.0, axle.wheel_centre_height);
  std::vector<AxleStop> stops;
  for (const Side side : {Side::left, Side::right}) {
    const KnuckleBody& body = side == Side::left ? steering.left : steering.right;
    for (const LockStop& stop : knuckle_side(axle, side).stops)
      stops.push_back(axle_stop(stop, body, origin));
  }
  return stops;
}

}  // namespace tackbench
