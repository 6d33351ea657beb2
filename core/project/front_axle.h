// Front axle: beam axle with two knuckles, tyres, stops, its suspension and the road it stands on.
// Points are in the chassis frame with the axle at design ride height and the wheels straight.
// The left knuckle is given; the right one is its mirror image unless it is freed.
#pragma once

#include "core/project/common.h"

namespace tackbench {

// A lock stop: a bolt with a rounded tip on the knuckle meets a pad on the axle.
struct LockStop {
  std::string name;
  Side lock = Side::left;           // the lock that it ends
  Point<Chassis> tip_centre;        // centre of the tip's rounding, wheels straight
  Vec3 bolt_axis = Vec3::UnitX();   // unit, along the bolt towards its tip
  double tip_radius = 8.0;          // mm
  Point<Chassis> pad_centre;        // on the pad's face
  Vec3 pad_normal = Vec3::UnitX();  // unit, out of the pad
  double pad_radius = 15.0;         // outline of the pad's face, mm
  double bolt_adjustment = 15.0;    // how far the bolt can be screwed out or in, mm
  UnknownMembers unknown;
};

struct KnuckleSide {
  Point<Chassis> kingpin_point;      // any point on the kingpin axis; required
  double kingpin_inclination = 0.0;  // top inward positive, rad
  double caster = 0.0;               // top rearward positive, rad
  double camber = 0.0;               // wheel top outward positive, straight ahead, rad
  Point<Chassis> tie_rod_ball;       // required
  std::vector<LockStop> stops;
  UnknownMembers unknown;
};

struct Tyre {
  double diameter = 900.0;        // unloaded, mm
  double width = 255.0;           // mm
  double shoulder_radius = 40.0;  // rounding between tread and side wall, mm
  double loaded_radius = 430.0;   // wheel centre to ground, mm
  double growth = 15.0;           // flex and growth allowance, mm (common practice)
  UnknownMembers unknown;
};

enum class SuspensionKind { leaf, radius_arms, straight };

// One leaf spring of the pair; the right one is its mirror image.
struct LeafSpring {
  Point<Chassis> fixed_eye;     // centre of the fixed eye at ride height
  Point<Chassis> seat;          // middle of the clamped seat, at mid-thickness of the main leaf
  double fixed_half = 600.0;    // active length from fixed eye to the clamped seat, mm
  double shackle_half = 600.0;  // active length from the clamped seat to the shackle eye, mm
  double eye_offset = 0.0;      // height of the eye centre above mid-thickness of the main leaf,
                                // mm; positive = eye rolled upward
  double camber = 0.0;          // rise of the free end of the fixed half's arc over its seat at
                                // ride height, mm; positive = ends above the seat
  UnknownMembers unknown;
};

// A pair of radius arms rigid with the axle in pitch; the right one is the left's mirror image.
struct RadiusArms {
  Point<Chassis> chassis_pivot;
  // Lateral rod: one, not mirrored.
  Point<Chassis> lateral_rod_chassis;
  Point<Chassis> lateral_rod_axle;
  UnknownMembers unknown;
};

struct Suspension {
  SuspensionKind kind = SuspensionKind::leaf;
  std::optional<LeafSpring> leaf;         // wanted for `leaf`
  std::optional<RadiusArms> radius_arms;  // wanted for `radius_arms`
  double bump = 80.0;                     // wheel up from ride height to its stop, mm
  double droop = 80.0;                    // wheel down, mm, positive
  double roll = 0.0;                      // greatest roll of the axle either way, rad
  double wind_up = 0.0;                   // greatest brake wind-up, top forward, rad
  double heave_empty = 0.0;               // axle against ride height when empty, bump positive, mm
  double heave_laden = 0.0;               // when laden, mm
  UnknownMembers unknown;
};

// What sets the ground, the turning circles and the space around them.
struct Road {
  std::optional<double> wheelbase;                // mm
  std::optional<double> rear_track;               // mm
  std::optional<double> rear_loaded_radius;       // mm
  std::optional<double> rear_wheel_height_empty;  // wheel centre's Z in the chassis frame, mm
  std::optional<double> rear_wheel_height_laden;
  std::vector<Point<Chassis>> body_corners;  // outer corners in plan, for wall to wall
  UnknownMembers unknown;
};

struct FrontAxleStation {
  double track = 1800.0;                // between the tyres' mid-planes at wheel-centre height, mm
  double wheel_centre_height = -200.0;  // Z of the wheel centres at ride height, mm
  double hub_offset = 0.0;              // how much other rims or spacers set each tyre outboard, mm
  double toe = 0.0;  // static, toe-in positive: right steer minus left steer, rad
  KnuckleSide left_knuckle;
  std::optional<KnuckleSide> right_knuckle;  // given only when it is not the left's mirror image
  std::optional<double> tie_rod_length;      // ball to ball; without it as drawn, mm
  bool driven = false;
  std::optional<double> outer_joint_limit;  // driven axle's outer joint, from its maker, rad
  Tyre tyre;
  Suspension suspension;
  Road road;
  std::optional<double> wanted_steer_left;  // inner steer angle wanted at left lock, rad
  std::optional<double> wanted_steer_right;
  UnknownMembers unknown;
};

// The knuckle of one side: the given one or the mirror image (Y negated) of the left.
KnuckleSide knuckle_side(const FrontAxleStation& axle, Side side);
// Unit spindle pointing left on both sides, wheels straight: steer from static toe (half a side),
// camber top outward.
Direction<Chassis> spindle_straight(const FrontAxleStation& axle, Side side);
// Unit vector up along the kingpin: (-tan caster, -+tan inclination, 1) made unit.
Direction<Chassis> kingpin_axis(const KnuckleSide& knuckle, Side side);

}  // namespace tackbench
