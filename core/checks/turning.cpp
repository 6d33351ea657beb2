#include "core/checks/turning.h"

#include <algorithm>
#include <cmath>

namespace tackbench {

namespace {

// A wheel in plan: the middle of its tyre on the ground and the centre about which it would roll.
struct RollingWheel {
  Vec3 tyre_mm;
  Vec3 centre_mm;
};

// The wheel rolls square to its spindle in plan, about the point where the spindle's plan line
// meets the rear axle's line. The tyre's contact lies on that same plan line whatever the camber.
RollingWheel rolling_wheel(const KnuckleBody& body, const KnucklePose& pose, double loaded_radius,
                           double wheelbase) {
  constexpr double kLeastTurn = 1e-9;  // keeps the centre finite for a wheel straight ahead
  const Vec3 centre = (pose.chassis_from_knuckle * Point<Knuckle>{body.wheel_centre_mm}).mm;
  const Vec3 down = -square_to(pose.spindle, Vec3::UnitZ());
  RollingWheel wheel;
  wheel.tyre_mm = centre + loaded_radius * down;
  const double sideways = std::abs(pose.spindle.x()) < kLeastTurn
                              ? std::copysign(kLeastTurn, pose.spindle.x())
                              : pose.spindle.x();
  const double along = (-wheelbase - centre.x()) / sideways;
  wheel.centre_mm = Vec3(-wheelbase, centre.y() + along * pose.spindle.y(), 0.0);
  return wheel;
}

double plan_distance(const Vec3& a, const Vec3& b) {
  return std::hypot(a.x() - b.x(), a.y() - b.y());
}

std::optional<double> wall_to_wall(const std::vector<Point<Chassis>>& corners,
                                   const Vec3& centre_mm) {
  if (corners.empty()) return std::nullopt;
  double radius = 0.0;
  for (const Point<Chassis>& corner : corners)
    radius = std::max(radius, plan_distance(corner.mm, centre_mm));
  return 2.0 * radius;
}

}  // namespace

double ideal_outer_steer(double inner, double pivot_distance, double wheelbase) {
  // cot o = cot i + c / L, multiplied by L sin i so that straight ahead needs no division.
  return std::atan2(wheelbase * std::sin(inner),
                    wheelbase * std::cos(inner) + pivot_distance * std::sin(inner));
}

std::optional<double> ackermann_fraction(double inner, double outer, double pivot_distance,
                                         double wheelbase) {
  constexpr double kLeastDifference = 1e-6;  // rad; below it the quotient is noise
  if (!(inner > 0.0) || !(wheelbase > 0.0)) return std::nullopt;
  const double wanted = inner - ideal_outer_steer(inner, pivot_distance, wheelbase);
  if (!(std::abs(wanted) > kLeastDifference)) return std::nullopt;
  return (inner - outer) / wanted;
}

TurningCircles turning_circles(const Mechanism& mechanism, const SteeringPose& pose, Side turned_to,
                               double wheelbase) {
  constexpr double kDisagreement = 0.01;  // of the radius
  const FrontAxleStation& axle = *mechanism.project.front_axle;
  const Steering& steering = *mechanism.steering;
  const auto wheel = [&](Side side) {
    return rolling_wheel(side == Side::left ? steering.left : steering.right, pose.knuckle(side),
                         axle.tyre.loaded_radius, wheelbase);
  };
  const RollingWheel inner = wheel(turned_to);
  const RollingWheel outer = wheel(other(turned_to));
  const double half_width = 0.5 * axle.tyre.width;

  TurningCircles circles;
  const double radius = plan_distance(outer.tyre_mm, outer.centre_mm);
  circles.tyre_centre_by_outer = 2.0 * radius;
  circles.kerb_by_outer = 2.0 * (radius + half_width);
  circles.kerb_by_inner = 2.0 * (plan_distance(outer.tyre_mm, inner.centre_mm) + half_width);
  circles.wall_by_outer = wall_to_wall(axle.road.body_corners, outer.centre_mm);
  circles.wall_by_inner = wall_to_wall(axle.road.body_corners, inner.centre_mm);
  circles.wheels_disagree =
      plan_distance(outer.centre_mm, inner.centre_mm) > kDisagreement * radius;
  return circles;
}

double kingpin_distance(const Steering& steering) {
  return (steering.left.kingpin_point_mm - steering.right.kingpin_point_mm).norm();
}

}  // namespace tackbench
