// Shaft line compiled: where its crosses stand, how they turn, and what the box input does for a
// turn of the hand wheel. A project without joints is a column that drives the box directly.
#pragma once

#include <array>

#include "core/basics/result.h"
#include "core/project/project.h"

namespace tackbench {

inline constexpr int kMostCrosses = 8;  // four joints, each at most double

// One turning joint of the chain: a single cross, or a constant-velocity unit.
struct CrossPose {
  int joint = 0;                      // index in the project's shaft line
  Vec3 centre_mm = Vec3::Zero();      // chassis
  Vec3 in_direction = Vec3::UnitX();  // unit, hand to road, chassis
  Vec3 out_direction = Vec3::UnitX();
  Vec3 in_pin = Vec3::UnitY();   // pin of the hand-side yoke, unit
  Vec3 out_pin = Vec3::UnitZ();  // pin of the road-side yoke, unit
  double angle = 0.0;            // between the two shafts, rad
  double in_turn = 0.0;          // of the incoming shaft from hand-wheel zero, rad, unwrapped
  double out_turn = 0.0;
  double ratio = 1.0;  // d out / d in
  bool held = true;    // false: free to wander; it keeps near its drawn place
};

struct ShaftLinePose {
  std::array<CrossPose, kMostCrosses> crosses;
  int cross_count = 0;
  double box_turn = 0.0;  // box input from hand-wheel zero, left positive, rad
  double box_rate = 1.0;  // d box input / d hand wheel
  bool closes = true;     // false: a length cannot be kept with the cab there
};

// Compiled shaft line. Members are public for checks that need geometry as drawn.
struct ShaftLine {
  ShaftLineStation station;  // empty lists when the column drives the box
  ColumnStation column;
  Placement<Chassis, Cab> cab_as_drawn;
  Point<Chassis> box_input_end;
  Direction<Chassis> box_input_axis;  // hand to road
  bool has_joints = false;
};

// Faults: a joint on the column's wrong side, coincident joints, a bend of 90 degrees or more.
Result<ShaftLine> compile_shaft_line(const Project& project);

// Pose for a cab placed at `chassis_from_cab` (shaken or not). No allocation, never NaN.
void pose_shaft_line(const ShaftLine& line, const Placement<Chassis, Cab>& chassis_from_cab,
                     double hand_wheel, ShaftLinePose& pose);
// Inverse in the turn: hand-wheel turn that gives the box input turn.
double hand_wheel_from_box_turn(const ShaftLine& line,
                                const Placement<Chassis, Cab>& chassis_from_cab, double box_turn);

}  // namespace tackbench
