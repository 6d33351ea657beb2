// Ackermann and turning circles.
// cot(outer) - cot(inner) = c / L with c the distance between the points where spindle and kingpin
// axes meet: exact whatever caster, inclination and camber, since each wheel's normal in plan
// passes over that point. Source: three exam texts on steering geometry for the plane case; the
// spatial statement is geometry. Ackermann percentage here: (inner - outer actual) / (inner - outer
// ideal) at the same inner angle; 100 % is exact.
#pragma once

#include "core/mechanism/solve.h"

namespace tackbench {

// Outer steer for an inner steer, both positive, rad. pivot_distance and wheelbase in mm.
double ideal_outer_steer(double inner, double pivot_distance, double wheelbase);
// Empty when inner and ideal outer do not differ (straight ahead).
std::optional<double> ackermann_fraction(double inner, double outer, double pivot_distance,
                                         double wheelbase);

// Diameters, mm. Where inner and outer wheel disagree on the turning centre (on the rear axle's
// line), both are given.
struct TurningCircles {
  double tyre_centre_by_outer = 0.0;  // of the outer tyre's middle, about the outer wheel's centre
                                      // of turn
  double kerb_by_outer = 0.0;         // to the outer tyre's outside edge
  double kerb_by_inner = 0.0;         // the same edge about the inner wheel's centre of turn
  std::optional<double> wall_by_outer;  // to the body's farthest corner
  std::optional<double> wall_by_inner;
  bool wheels_disagree = false;  // the two centres lie more than 1 % of the radius apart
};

// `inner` is the wheel on the side turned to. Wants the wheelbase (mm).
TurningCircles turning_circles(const Mechanism& mechanism, const SteeringPose& pose, Side turned_to,
                               double wheelbase);

// Distance between the points where spindle and kingpin axes meet, mm (nearest points when skew).
double kingpin_distance(const Steering& steering);

}  // namespace tackbench
