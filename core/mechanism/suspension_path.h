// Suspension path: where the beam axle goes when its wheels rise, from leaf springs, radius arms
// with a lateral rod, or straight guides.
#pragma once

#include "core/mechanism/controls.h"
#include "core/project/front_axle.h"

namespace tackbench {

// One half leaf of uniform strength bending to a circular arc: place of the eye seen from the
// clamped seat. l = active length, e = eye offset, p = the half leaf's bend angle (positive lifts
// the eye over the seat):
// (l sin p / p - e sin p, l (1 - cos p) / p + e cos p). mm, rad. Source: geometry of the arc;
// SAE HS-788 gives the same three-link idea (from memory).
struct EyePlace {
  double along = 0.0;   // from the seat towards the eye, mm
  double height = 0.0;  // of the eye over the seat, mm
};
EyePlace eye_from_seat(double length, double eye_offset, double bend);
// Bend angle at which the eye stands `height` above the seat. Empty when the leaf is too short.
std::optional<double> bend_for_height(double length, double eye_offset, double height);

// Compiled once; constant after.
struct SuspensionPath {
  SuspensionKind kind = SuspensionKind::straight;
  double half_track = 0.0;        // wheel centre from the axle's middle, mm
  Vec3 origin_mm = Vec3::Zero();  // axle origin in the chassis at ride height
  LeafSpring leaf;                // left one, points in the chassis frame
  double bend_at_ride = 0.0;      // of the fixed half at ride height, rad
  RadiusArms radius_arms;
  double lateral_rod_length = 0.0;
};

struct AxleAnswer {
  AxlePose pose;
  bool closes = false;  // false: the path cannot reach that bump; pose is the nearest found
};

SuspensionPath compile_suspension(const FrontAxleStation& axle);

// Axle pose with the unsteered wheel centres raised by the two bumps (mm); wind_up (rad) is added
// to the path's own pitch. Roll = asin((bump left - bump right) / (track cos pitch)).
AxleAnswer axle_pose(const SuspensionPath& path, double bump_left, double bump_right,
                     double wind_up);

Placement<Chassis, Axle> chassis_from_axle(const SuspensionPath& path, const AxlePose& pose);

}  // namespace tackbench
