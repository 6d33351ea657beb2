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
  double radius = 0.0;           // length of the lever, mm

  Vec3 ball(double cosine, double sine) const { return foot + cosine * lever + sine * sideways; }
  Vec3 ball(double angle) const { return ball(std::cos(angle), std::sin(angle)); }
  // Movement of the ball per radian, mm.
  Vec3 ball_rate(double cosine, double sine) const { return cosine * sideways - sine * lever; }
  Vec3 ball_rate(double angle) const { return ball_rate(std::cos(angle), std::sin(angle)); }
};

// The crank that carries `ball` about the line through `pivot` along the unit vector `axis`.
inline Crank crank_through(const Vec3& pivot, const Vec3& axis, const Vec3& ball) {
  Crank crank;
  crank.axis = axis;
  crank.foot = pivot + axis.dot(ball - pivot) * axis;
  crank.lever = ball - crank.foot;
  crank.sideways = axis.cross(crank.lever);
  crank.radius = crank.lever.norm();
  return crank;
}

}  // namespace tackbench
