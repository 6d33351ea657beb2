// Shaft line compiled: where its crosses stand, how they turn, and what the box input does for a
// turn of the hand wheel. A project without joints is a column that drives the box directly.
//
// Turns are positive as a left turn of the hand wheel makes them: anticlockwise for the driver, who
// looks along the hand-to-road axis, so left-handed about it. Clocking angles are right-handed
// about the hand-to-road axis.
#pragma once

#include <array>
#include <vector>

#include "core/basics/result.h"
#include "core/mechanism/universal_joint.h"
#include "core/project/project.h"

namespace tackbench {

inline constexpr int kMostJoints = 4;
inline constexpr int kMostCrosses = 2 * kMostJoints;  // each joint may be double

// One turning joint of the chain: a single cross, or a constant-velocity unit.
struct CrossPose {
  int joint = 0;                      // index in the project's shaft line
  Vec3 centre_mm = Vec3::Zero();      // chassis
  Vec3 in_direction = Vec3::UnitX();  // unit, hand to road, chassis
  Vec3 out_direction = Vec3::UnitX();
  Vec3 in_pin = Vec3::UnitY();   // pin of the hand-side yoke, unit
  Vec3 out_pin = Vec3::UnitZ();  // pin of the road-side yoke, unit
  double angle = 0.0;            // between the two shafts, rad
  double in_turn = 0.0;          // of the incoming shaft from hand-wheel zero with the cab at rest,
                                 // rad, left positive, unwrapped
  double out_turn = 0.0;         // likewise of the outgoing shaft
  double ratio = 1.0;            // d out / d in
  bool held = true;              // false: free to wander; it keeps near its drawn place
};

struct ShaftLinePose {
  std::array<CrossPose, kMostCrosses> crosses;
  int cross_count = 0;
  double box_turn = 0.0;  // box input from hand-wheel zero, left positive, rad
  double box_rate = 1.0;  // d box input / d hand wheel
  bool closes = true;     // false: a length cannot be kept with the cab there
  double misfit = 0.0;    // how far the worst length or eye is out when it does not close, mm
};

// A cross as drawn. Chassis frame, cab in its drawn place.
struct DrawnCross {
  int joint = 0;  // index in the project's shaft line
  Vec3 centre_mm = Vec3::Zero();
  RidesOn rides_on = RidesOn::chassis;  // chassis or cab: what it follows when nothing holds it
  bool held = true;                     // by lengths and supports
  UniversalJoint geometry;
  double angle = 0.0;            // rad
  Vec3 in_pin = Vec3::UnitY();   // at hand-wheel zero
  Vec3 out_pin = Vec3::UnitZ();  // at hand-wheel zero
  PinAngle in_at_zero;           // its angle on the geometry's own zero at hand-wheel zero
  PinAngle out_at_zero;
  double lead_at_zero = 0.0;  // rad
};

// What lies between cross i and cross i + 1: a shaft, or the middle piece of a double joint.
struct DrawnSpan {
  int shaft = -1;            // index in the project's shaft line, -1 for a middle piece
  bool slips = false;        // its length may change
  double length = 0.0;       // between the cross centres as drawn, mm
  double fork_offset = 0.0;  // rad, right-handed about the span from hand to road
  PinAngle to_next;          // from the hand-side joint's out zero to the next joint's in zero,
                             // fork offset included
};

// A support as drawn. Its eye is taken on the shaft's line: an eye drawn beside it is a finding of
// the shaft check, not a bend in the shaft.
struct DrawnSupport {
  int support = 0;  // index in the project's shaft line
  int span = 0;     // index in spans
  RidesOn rides_on = RidesOn::chassis;
  Vec3 eye_mm = Vec3::Zero();      // as drawn, chassis
  Vec3 on_line_mm = Vec3::Zero();  // nearest point of the shaft's line to the eye, chassis
  Vec3 along = Vec3::UnitX();      // unit, the shaft's line, hand to road, chassis
  double from_hand_cross = 0.0;    // to on_line_mm along the shaft, 0 to the span's length, mm
  bool holds_direction = false;    // bearing block
  bool holds_lengthways = false;   // collar
  bool on_road_half = false;       // the half that the collar grips
  double collar_distance = 0.0;    // from the eye to the cross of that half, along the line, mm
  double off_line = 0.0;           // how far the eye is drawn beside the shaft's line, mm
};

// Compiled shaft line. Members are public for checks that need geometry as drawn.
struct ShaftLine {
  ShaftLineStation station;  // empty lists when the column drives the box
  ColumnStation column;
  CabShake shake;
  Placement<Chassis, Cab> cab_as_drawn;
  Direction<Chassis> column_axis;  // hand to road, cab in its drawn place
  Point<Chassis> box_input_end;
  Direction<Chassis> box_input_axis;  // hand to road
  bool has_joints = false;
  std::vector<DrawnCross> crosses;
  std::vector<DrawnSpan> spans;  // one fewer than crosses
  std::vector<DrawnSupport> supports;
};

// Faults: a joint on the column's wrong side, coincident joints, a bend of 90 degrees or more,
// shafts that are not one fewer than the joints, a support of a shaft that is not there, an eye
// that stands beyond its shaft's joints or that its shaft does not go through.
Result<ShaftLine> compile_shaft_line(const Project& project);

// The same line with its forks clocked otherwise: one offset a shaft of the project, rad.
ShaftLine with_fork_offsets(ShaftLine line, const std::vector<double>& fork_offsets);

// Pose for a cab placed at `chassis_from_cab` (shaken or not). No allocation, never NaN.
void pose_shaft_line(const ShaftLine& line, const Placement<Chassis, Cab>& chassis_from_cab,
                     double hand_wheel, ShaftLinePose& pose);
// Inverse in the turn: hand-wheel turn that gives the box input turn. Exact: the chain run
// backward.
double hand_wheel_from_box_turn(const ShaftLine& line,
                                const Placement<Chassis, Cab>& chassis_from_cab, double box_turn);

}  // namespace tackbench
