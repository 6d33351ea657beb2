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
  double angle = 0.0;   // of the driven crank from its drawn position, (-pi, pi]
  double cosine = 1.0;  // of that angle
  double sine = 0.0;
  double closure = 0.0;  // 1 - |C| / sqrt(A^2 + B^2): 0 at toggle, negative when it cannot close
  bool closes = false;   // false: `angle` is where the loop comes nearest to closing
};

// Branch fixed at the drawn position, where the driving ball is at `driving_ball` and the driven
// crank at `driven_angle` (0 = as drawn).
LinkLoop loop_as_drawn(const Crank& driven, double length, const Vec3& driving_ball,
                       double driven_angle = 0.0);

// The driven crank's angle for a driving ball given in the crank's frame. Never NaN.
LoopAnswer solve_loop(const LinkLoop& loop, const Vec3& driving_ball);

// Sine of the effective angle between link and lever, 0 (toggle) to 1 (best): |l . (k x u)| with l
// the unit link, k the lever's axis and u its unit lever. `ball_rate` is the ball's movement per
// radian, k x lever. 0 for a lever of no length.
inline double leverage(const Crank& crank, const Vec3& ball_rate, const Vec3& link_direction) {
  return crank.radius > 0.0 ? std::abs(link_direction.dot(ball_rate)) / crank.radius : 0.0;
}

// Driven angle per driving angle of two cranks joined by a link: l . (p x a) / l . (k x u), the
// link's direction against both balls' movements per radian. Held finite within a hair of toggle.
inline double rate_through_link(double driving_along_link, double driven_along_link) {
  constexpr double kHair = 1e-9;  // mm per radian
  return driving_along_link / (std::abs(driven_along_link) > kHair
                                   ? driven_along_link
                                   : std::copysign(kHair, driven_along_link));
}
inline double link_ratio(const Vec3& link_direction, const Vec3& driving_ball_rate,
                         const Vec3& driven_ball_rate) {
  return rate_through_link(link_direction.dot(driving_ball_rate),
                           link_direction.dot(driven_ball_rate));
}

}  // namespace tackbench
