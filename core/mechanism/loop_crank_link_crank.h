// Loop: a ball in a given place, a rigid link, and a crank whose ball the link holds. With the
// given ball on another crank this is the spatial four-bar (RSSR); cranks coupled this way, one
// after another, are the steering linkage.
//
// Source: closed form A cos t + B sin t = C of the link's length condition |O + R(k,t)u - b| = L
// (Hartenberg & Denavit 1964, from memory; derived and checked in the tests).
#pragma once

#include "core/mechanism/crank.h"

namespace tackbench {

struct LinkLoop {
  Crank driven;
  double length = 0.0;  // ball to ball, mm
  double branch = 1.0;  // +1 or -1: which of the two roots is the drawn one
};

struct LoopAnswer {
  double angle = 0.0;    // of the driven crank from its drawn position, (-pi, pi]
  double closure = 0.0;  // 1 - |C| / sqrt(A^2 + B^2): 0 at toggle, negative when it cannot close
  bool closes = false;   // false: `angle` is where the loop comes nearest to closing
};

// Branch fixed at the drawn position, where the driving ball is at `driving_ball` and the driven
// crank at `driven_angle` (0 = as drawn).
LinkLoop loop_as_drawn(const Crank& driven, double length, const Vec3& driving_ball,
                       double driven_angle = 0.0);

// The driven crank's angle for a driving ball given in the crank's frame. Never NaN.
LoopAnswer solve_loop(const LinkLoop& loop, const Vec3& driving_ball);

// l . (k x u) with l the unit link from driving to driven ball and u the unit lever of the driven
// crank: the sine of the effective angle at that end, signed by branch. 0 for a lever of no length.
double leverage(const Crank& crank, double angle, const Vec3& link_direction);

}  // namespace tackbench
