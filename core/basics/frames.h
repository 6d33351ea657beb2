// Points, directions and placements that carry their frame in the type, so that a product of
// wrong frames does not compile. Axes of every frame are ISO 8855: X forward, Y left, Z up.
// Lengths in millimetres.
#pragma once

#include <Eigen/Core>
#include <Eigen/Geometry>

namespace tackbench {

using Vec3 = Eigen::Vector3d;
using Mat3 = Eigen::Matrix3d;

// Frame tags.
struct Chassis {
};               // fixed to the rails; X = 0 front wheel centres at design height, Z = 0 rail top
struct Cab {};   // fixed to the cab; equal to Chassis when the cab is placed at 0, 0, 0, pitch 0
struct Axle {};  // beam axle; origin midway between the wheel centres
struct Knuckle {};  // either knuckle; equal to Axle at swivel 0

template <class Frame>
struct Point {
  Vec3 mm = Vec3::Zero();
};

// Free vector; unit length where the declaration says so.
template <class Frame>
struct Direction {
  Vec3 along = Vec3::UnitX();
};

// Rigid placement: to_from_frame maps coordinates in From to coordinates in To.
template <class To, class From>
struct Placement {
  Mat3 turn = Mat3::Identity();
  Vec3 shift_mm = Vec3::Zero();

  Point<To> operator*(const Point<From>& p) const { return {turn * p.mm + shift_mm}; }
  Direction<To> operator*(const Direction<From>& d) const { return {turn * d.along}; }
  template <class Deeper>
  Placement<To, Deeper> operator*(const Placement<From, Deeper>& inner) const {
    return {turn * inner.turn, turn * inner.shift_mm + shift_mm};
  }
  Placement<From, To> inverse() const { return {turn.transpose(), -(turn.transpose() * shift_mm)}; }
};

// Rotation by `angle` radians, right-handed about the unit vector `axis` (Rodrigues).
Mat3 turn_about(const Vec3& axis, double angle);
// Rotate one vector the same way, without forming the matrix.
Vec3 turned(const Vec3& v, const Vec3& axis, double angle);

// Pitch about +Y: positive leans the top forward (ISO 8855).
Mat3 pitch_turn(double pitch);
// roll, then pitch, then yaw about fixed axes: Rz(yaw) Ry(pitch) Rx(roll).
Mat3 roll_pitch_yaw_turn(double roll, double pitch, double yaw);

// A unit vector square to `axis` (unit), nearest to `wanted`; falls back to the axis X, Y or Z
// least aligned with `axis` when `wanted` is within 1e-6 of parallel. Never NaN.
Vec3 square_to(const Vec3& axis, const Vec3& wanted);

// Signed angle from a to b, both square to the unit axis, right-handed about it, in (-pi, pi].
double angle_about(const Vec3& axis, const Vec3& a, const Vec3& b);
// Unsigned angle between two vectors in [0, pi]; exact near 0 and pi. Zero vectors give 0.
double angle_between(const Vec3& a, const Vec3& b);

// Wrapped into (-pi, pi].
double wrapped(double angle);

}  // namespace tackbench
