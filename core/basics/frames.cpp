#include "core/basics/frames.h"

#include <Eigen/Geometry>
#include <algorithm>
#include <cmath>

#include "core/basics/units.h"

namespace tackbench {

Mat3 turn_about(const Vec3& axis, double angle) {
  return Eigen::AngleAxisd(angle, axis).toRotationMatrix();
}

Vec3 turned(const Vec3& v, const Vec3& axis, double angle) {
  const double c = std::cos(angle);
  const double s = std::sin(angle);
  return c * v + s * axis.cross(v) + (1.0 - c) * axis.dot(v) * axis;
}

Mat3 pitch_turn(double pitch) {
  return turn_about(Vec3::UnitY(), pitch);
}

Mat3 roll_pitch_yaw_turn(double roll, double pitch, double yaw) {
  const double cr = std::cos(roll);
  const double sr = std::sin(roll);
  const double cp = std::cos(pitch);
  const double sp = std::sin(pitch);
  const double cy = std::cos(yaw);
  const double sy = std::sin(yaw);
  Mat3 turn;
  turn << cy * cp, cy * sp * sr - sy * cr, cy * sp * cr + sy * sr,  //
      sy * cp, sy * sp * sr + cy * cr, sy * sp * cr - cy * sr,      //
      -sp, cp * sr, cp * cr;
  return turn;
}

Vec3 square_to(const Vec3& axis, const Vec3& wanted) {
  constexpr double kParallel = 1e-6;
  Vec3 square = wanted - axis.dot(wanted) * axis;
  if (square.norm() <= kParallel * std::max(1.0, wanted.norm())) {
    Eigen::Index least = 0;
    axis.cwiseAbs().minCoeff(&least);
    square = Vec3::Unit(least) - axis[least] * axis;
  }
  return square.normalized();
}

double angle_about(const Vec3& axis, const Vec3& a, const Vec3& b) {
  return std::atan2(axis.dot(a.cross(b)), a.dot(b));
}

double angle_between(const Vec3& a, const Vec3& b) {
  return std::atan2(a.cross(b).norm(), a.dot(b));
}

double wrapped(double angle) {
  if (angle > -kPi && angle <= kPi) return angle;
  const double whole = std::remainder(angle, kRadiansPerTurn);
  return whole <= -kPi ? whole + kRadiansPerTurn : whole;
}

}  // namespace tackbench
