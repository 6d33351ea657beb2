// Suspension path: where the beam axle goes when its wheels rise, from leaf springs, radius arms
// with a lateral rod, or straight guides.
//
// Leaf springs. Each lies in the fore-aft upright plane through its seat; side bending and twist of
// the leaves are left out. The seat plane is level at ride height, so that the path follows from
// half lengths, eye offset and camber alone, and starts at the drawn place. The fixed eye stays in
// the chassis; the shackle eye keeps its height. Both halves share one curvature, which sets the
// spring's own pitch; the axle takes the mean of the two. In roll the middle of the two seats keeps
// its Y (the springs hold the axle there).
//
// Radius arms. Rigid with the axle in pitch, soft in roll at their bushes: the axle's middle line,
// where each arm crosses it, moves on an arc about that arm's chassis pivot, and the axle pitches
// by the mean of the arms' turns. The lateral rod keeps its length and sets the sideways place.
//
// Straight. The axle's origin keeps its X and Y.
#pragma once

#include <array>
#include <optional>

#include "core/basics/result.h"
#include "core/mechanism/controls.h"
#include "core/project/front_axle.h"

namespace tackbench {

// One half leaf of uniform strength bending to a circular arc: place of the eye seen from the
// clamped seat. l = active length, e = eye offset, p = the half leaf's bend angle (positive lifts
// the eye over the seat; at most kMostLeafBend either way):
// (l sin p / p - e sin p, l (1 - cos p) / p + e cos p). mm, rad. Source: geometry of the arc;
// SAE HS-788 gives the same three-link idea (from memory).
struct EyePlace {
  double along = 0.0;   // from the seat towards the eye, mm
  double height = 0.0;  // of the eye over the seat, mm
};
EyePlace eye_from_seat(double length, double eye_offset, double bend);

// A leaf bent further than this is taken as unable to reach, rad.
inline constexpr double kMostLeafBend = 1.5;

// Bend angle at which the eye stands `height` above the seat. Empty when the leaf is too short.
std::optional<double> bend_for_height(double length, double eye_offset, double height);

// One leaf spring, compiled. "Seat offset" is in the axle frame: from the axle's origin, chassis
// axes at ride height.
struct LeafPath {
  Vec3 seat_offset_mm = Vec3::Zero();
  double fixed_half = 0.0;        // mm
  double shackle_half = 0.0;      // mm
  double eye_offset = 0.0;        // mm
  double towards_fixed = 1.0;     // +1 when the fixed eye is ahead of the seat, -1 behind
  double bend_at_ride = 0.0;      // of the fixed half, rad
  double bend_by_height = 0.0;    // of the fixed half per mm of its eye's height, rad
  double bend_by_height_2 = 0.0;  // second order, rad per mm squared
  EyePlace fixed_eye_at_ride;     // seen from the seat
  EyePlace shackle_eye_at_ride;
};

// One radius arm: its chassis pivot seen from where the arm crosses the axle's middle line.
struct RadiusArmPath {
  double middle_line_y = 0.0;  // of that crossing, axle frame, mm
  double reach = 0.0;          // from the crossing to the pivot along X, signed, mm
  double height = 0.0;         // likewise along Z
};

struct LateralRodPath {
  Vec3 axle_end_mm = Vec3::Zero();     // axle frame
  Vec3 chassis_end_mm = Vec3::Zero();  // from the axle's origin at ride height, chassis axes
  double length = 0.0;                 // mm
};

// Compiled once; constant after.
struct SuspensionPath {
  SuspensionKind kind = SuspensionKind::straight;
  double half_track = 0.0;        // wheel centre from the axle's middle, mm
  Vec3 origin_mm = Vec3::Zero();  // axle origin in the chassis at ride height
  std::array<LeafPath, 2> leaf;   // left, right
  std::array<RadiusArmPath, 2> radius_arm;
  LateralRodPath lateral_rod;
};

struct AxleAnswer {
  AxlePose pose;
  Placement<Chassis, Axle> chassis_from_axle;  // that pose
  bool closes = false;  // false: the path cannot reach that bump; pose is the nearest found
};

// Every fault that would keep the path from being posed, `place` starting at "suspension".
Problems suspension_faults(const FrontAxleStation& axle);

// Of an axle without faults.
SuspensionPath compile_suspension(const FrontAxleStation& axle);

// Axle pose with the unsteered wheel centres raised by the two bumps (mm); wind_up (rad) is added
// to the path's own pitch. Roll = asin((bump left - bump right) / (track cos pitch)). Never NaN.
AxleAnswer axle_pose(const SuspensionPath& path, double bump_left, double bump_right,
                     double wind_up);

Placement<Chassis, Axle> chassis_from_axle(const SuspensionPath& path, const AxlePose& pose);

}  // namespace tackbench
