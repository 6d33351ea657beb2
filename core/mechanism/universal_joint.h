// Universal joint from the directions of its two shafts and its yokes' pins, in space.
//
// Symbols: b = bend (angle between the shafts), n = unit normal of the bend plane (in x out
// direction), a = angle of the hand-side yoke's pin from n, right-handed about the incoming shaft.
// The pins of a cross stay square to one another and each to its own shaft, so the road-side pin is
// out direction x in pin, made unit. That gives tan(a2) = tan(a) cos b for this zero (pin square to
// the bend plane; tan(a2) = tan(a) / cos b when the pin lies in it) and
// d a2 / d a = cos b / (1 - sin^2 a sin^2 b).
// Source: geometry of the cross; the textbook forms are in Theory of Machines texts.
#pragma once

#include <cmath>

#include "core/basics/angle_of.h"
#include "core/basics/frames.h"

namespace tackbench {

// How a joint hands on rotation.
enum class JointTurning {
  cross,                      // one cross: its speed rises and falls twice a turn
  constant_velocity_aligned,  // centred double joint: pins of both outer yokes aligned when
                              // straight
  constant_velocity_crossed,  // flexible disc: bolts of the two spiders square to one another
};

// An angle kept as its cosine and sine, so that a chain needs no trigonometry in between.
struct PinAngle {
  double cosine = 1.0;
  double sine = 0.0;
};
inline PinAngle pin_angle(double angle) {
  return {std::cos(angle), std::sin(angle)};
}
inline PinAngle operator+(const PinAngle& a, const PinAngle& b) {
  return {a.cosine * b.cosine - a.sine * b.sine, a.sine * b.cosine + a.cosine * b.sine};
}

// One joint at rest in space. All vectors in one frame, unit, directions from hand to road.
struct UniversalJoint {
  Vec3 in_direction = Vec3::UnitX();
  Vec3 out_direction = Vec3::UnitX();
  JointTurning turning = JointTurning::cross;
  double cos_bend = 1.0;
  Vec3 in_zero = Vec3::UnitY();       // n: hand-side pin at angle 0
  Vec3 in_quarter = Vec3::UnitZ();    // hand-side pin at a quarter turn
  Vec3 out_zero = Vec3::UnitZ();      // road-side pin when the hand-side pin is at angle 0
  Vec3 out_quarter = -Vec3::UnitY();  // and a quarter turn on

  Vec3 in_pin(const PinAngle& in) const { return in.cosine * in_zero + in.sine * in_quarter; }
  Vec3 out_pin(const PinAngle& out) const { return out.cosine * out_zero + out.sine * out_quarter; }
};

// For shafts in line, where the bend plane is not defined, any plane through them serves.
UniversalJoint universal_joint(const Vec3& in_direction, const Vec3& out_direction,
                               JointTurning turning);

// Angle between the shafts, [0, pi/2), rad.
double bend(const UniversalJoint& joint);
// Angle of a pin square to the shaft on the joint's own zeros.
PinAngle in_pin_angle(const UniversalJoint& joint, const Vec3& in_pin);
PinAngle out_pin_angle(const UniversalJoint& joint, const Vec3& out_pin);

struct JointAnswer {
  PinAngle pin;        // of the yoke asked for
  double lead = 0.0;   // road-side angle less hand-side angle, rad, in (-pi/2, pi/2)
  double ratio = 1.0;  // d out / d in
};

// Road-side pin for a hand-side pin.
inline JointAnswer turn_out(const UniversalJoint& joint, const PinAngle& in) {
  if (joint.turning != JointTurning::cross) return {in, 0.0, 1.0};
  const double cosine2 = in.cosine * in.cosine;
  const double sine2 = in.sine * in.sine;
  const double square = cosine2 + joint.cos_bend * joint.cos_bend * sine2;
  const double scale = 1.0 / std::sqrt(square);
  return {{in.cosine * scale, joint.cos_bend * in.sine * scale},
          angle_of((joint.cos_bend - 1.0) * in.sine * in.cosine, cosine2 + joint.cos_bend * sine2),
          joint.cos_bend / square};
}

// Hand-side pin for a road-side pin: exact inverse of turn_out.
inline JointAnswer turn_in(const UniversalJoint& joint, const PinAngle& out) {
  if (joint.turning != JointTurning::cross) return {out, 0.0, 1.0};
  const double cosine2 = out.cosine * out.cosine;
  const double sine2 = out.sine * out.sine;
  const double square = joint.cos_bend * joint.cos_bend * cosine2 + sine2;
  const double scale = 1.0 / std::sqrt(square);
  return {
      {joint.cos_bend * out.cosine * scale, out.sine * scale},
      angle_of((joint.cos_bend - 1.0) * out.sine * out.cosine, joint.cos_bend * cosine2 + sine2),
      square / joint.cos_bend};
}

// Road-side pin for a hand-side pin, both as vectors, when the shafts have moved.
Vec3 out_pin_of(const Vec3& in_direction, const Vec3& out_direction, JointTurning turning,
                const Vec3& in_pin);
// Hand-side pin for a road-side pin.
Vec3 in_pin_of(const Vec3& in_direction, const Vec3& out_direction, JointTurning turning,
               const Vec3& out_pin);
// d out / d in for that hand-side pin.
double speed_ratio(const Vec3& in_direction, const Vec3& out_direction, JointTurning turning,
                   const Vec3& in_pin);

// A vector carried from square to `from` to square to `to` by the least rotation between them.
Vec3 carried(const Vec3& vector, const Vec3& from, const Vec3& to);

// Closed forms for one cross at bend b, rad; for tables, traces and first estimates.
double greatest_lead(double bend);  // asin(tan^2(b / 2)), rad
double fluctuation(double bend);    // (max - min) / mean of the speed = 1 / cos b - cos b

}  // namespace tackbench
