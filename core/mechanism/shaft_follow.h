// Where the crosses of a shaft line go when the cab, or anything else that carries an end or a
// support, moves. Unknowns are the centres of the crosses between the first, which the column
// carries, and the last, which the box carries. Equations: a span without slip keeps its length; an
// eye lies on its shaft's line; a collar keeps its distance along it from the cross of its half; a
// bearing block keeps the line's direction too.
// Method: damped Gauss-Newton from the given start, which goes to a near solution by a least
// movement where the equations leave freedom. Source: Levenberg 1944, Marquardt 1963 (from memory).
#pragma once

#include <array>

#include "core/mechanism/shaft_line.h"

namespace tackbench {

using CrossCentres = std::array<Vec3, kMostCrosses>;

// What holds the line. Chassis frame; the last cross is given, the first too unless it may slide.
struct FollowTask {
  CrossCentres start;          // of all crosses; the last stays there, mm
  bool column_slides = false;  // the first cross may move along the column's axis
  std::array<bool, kMostCrosses> fixed_length{};
  std::array<double, kMostCrosses> length{};  // wanted where fixed, mm
  Placement<Chassis, Cab> chassis_from_cab;   // for supports that ride in the cab
  Vec3 chassis_shift_mm = Vec3::Zero();       // of supports that ride on the chassis
};

struct FollowAnswer {
  CrossCentres centres;
  double misfit = 0.0;  // worst remaining equation, mm
  bool closes = false;
};

// The task for a cab at `chassis_from_cab` with everything else as drawn.
FollowTask follow_task(const ShaftLine& line, const Placement<Chassis, Cab>& chassis_from_cab);
// No allocation, never NaN.
FollowAnswer follow(const ShaftLine& line, const FollowTask& task);

// Sets DrawnCross::held from the null space of the same equations as drawn, the column held by its
// declared bearings.
void mark_held(ShaftLine& line);

}  // namespace tackbench
