#include "core/mechanism/universal_joint.h"

#include <Eigen/Geometry>

namespace tackbench {

UniversalJoint universal_joint(const Vec3& in_direction, const Vec3& out_direction,
                               JointTurning turning) {
  constexpr double kInLine = 1e-12;
  UniversalJoint joint;
  joint.in_direction = in_direction;
  joint.out_direction = out_direction;
  joint.turning = turning;
  joint.cos_bend = in_direction.dot(out_direction);
  const Vec3 normal = in_direction.cross(out_direction);
  joint.in_zero =
      normal.norm() > kInLine ? Vec3(normal.normalized()) : square_to(in_direction, Vec3::UnitZ());
  joint.in_quarter = in_direction.cross(joint.in_zero);
  if (turning == JointTurning::constant_velocity_aligned) {
    joint.out_zero = joint.in_zero;
    joint.out_quarter = out_direction.cross(joint.in_zero);
  } else {
    joint.out_zero = out_direction.cross(joint.in_zero);
    joint.out_quarter = -joint.in_zero;
  }
  return joint;
}

double bend(const UniversalJoint& joint) {
  return angle_between(joint.in_direction, joint.out_direction);
}

namespace {

PinAngle angle_on(const Vec3& zero, const Vec3& quarter, const Vec3& pin) {
  const double cosine = pin.dot(zero);
  const double sine = pin.dot(quarter);
  const double length = std::hypot(cosine, sine);
  return {cosine / length, sine / length};
}

}  // namespace

PinAngle in_pin_angle(const UniversalJoint& joint, const Vec3& in_pin) {
  return angle_on(joint.in_zero, joint.in_quarter, in_pin);
}

PinAngle out_pin_angle(const UniversalJoint& joint, const Vec3& out_pin) {
  return angle_on(joint.out_zero, joint.out_quarter, out_pin);
}

Vec3 carried(const Vec3& vector, const Vec3& from, const Vec3& to) {
  return vector - (from + to) * (to.dot(vector) / (1.0 + from.dot(to)));
}

Vec3 out_pin_of(const Vec3& in_direction, const Vec3& out_direction, JointTurning turning,
                const Vec3& in_pin) {
  switch (turning) {
    case JointTurning::cross:
      break;
    case JointTurning::constant_velocity_aligned:
      return carried(in_pin, in_direction, out_direction);
    case JointTurning::constant_velocity_crossed:
      return carried(in_direction.cross(in_pin), in_direction, out_direction);
  }
  return out_direction.cross(in_pin).normalized();
}

Vec3 in_pin_of(const Vec3& in_direction, const Vec3& out_direction, JointTurning turning,
               const Vec3& out_pin) {
  switch (turning) {
    case JointTurning::cross:
      break;
    case JointTurning::constant_velocity_aligned:
      return carried(out_pin, out_direction, in_direction);
    case JointTurning::constant_velocity_crossed:
      return carried(out_pin.cross(out_direction), out_direction, in_direction);
  }
  return out_pin.cross(in_direction).normalized();
}

double speed_ratio(const Vec3& in_direction, const Vec3& out_direction, JointTurning turning,
                   const Vec3& in_pin) {
  if (turning != JointTurning::cross) return 1.0;
  const double along = in_pin.dot(out_direction);
  return in_direction.dot(out_direction) / (1.0 - along * along);
}

double greatest_lead(double bend) {
  const double half = std::tan(0.5 * bend);
  return std::asin(half * half);
}

double fluctuation(double bend) {
  return 1.0 / std::cos(bend) - std::cos(bend);
}

}  // namespace tackbench
