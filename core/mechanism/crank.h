// Crank: a body turning about one axis, carrying a ball.
#pragma once

#include <cmath>

#include "core/basics/frames.h"

namespace tackbench {

// All vectors in one frame, mm. Angle 0 is the drawn position; positive is right-handed about axis.
struct Crank {
  Vec3 axis = Vec3::UnitZ();     // unit
  Vec3 foot = Vec3::Zero();      // of the ball's perpendicular on the axis
  Vec3 lever = Vec3::Zero();     // from foot to ball at angle 0, square to the axis
  Vec3 sideways = Vec3::Zero();  // axis x lever

  Vec3 ball(double angle) const {
    return foot + std::cos(angle) * lever + std::sin(angle) * sideways;
  }
  // Movement of the ball per radian, mm.
  Vec3 ball_rate(double angle) const {
    return std::cos(angle) * sideways - std::sin(angle) * lever;
  }
};

// The crank that carries `ball` about the line through `pivot` along the unit vector `axis`.
inline Crank crank_through(const Vec3& pivot, const Vec3& axis, const Vec3& ball) {
  Crank crank;
  crank.axis = axis;
  crank.foot = pivot + axis.dot(ball - pivot) * axis;
  crank.lever = ball - crank.foot;
  crank.sideways = axis.cross(crank.lever);
  return crank;
}

}  // namespace tackbench
