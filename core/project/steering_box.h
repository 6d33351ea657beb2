// Steering box, pitman arm and the relays between it and the drag link.
#pragma once

#include "core/project/column.h"

namespace tackbench {

// Sense of rotation seen when looking at the outer end of a shaft, the axis pointing at the eye:
// anticlockwise is right-handed about the axis.
enum class TurnSense { clockwise, anticlockwise };

// One row of a ratio table; between rows the ratio is linear, beyond them it is held.
struct RatioRow {
  double input =
      0.0;  // input turn from the box's centre, left turn of the hand wheel positive, rad
  double ratio = 20.0;  // input turn over output turn there
  UnknownMembers unknown = {};

  bool operator==(const RatioRow&) const = default;
};

struct PitmanArm {
  double length = 180.0;  // output axis to ball centre, square to the axis, mm
  double offset = 0.0;    // ball centre from `output_point` along the output axis, mm
  double clocking = 0.0;  // with the box at its centre, right-handed about the output axis
                          // from the arm's zero direction (arm_zero_direction), rad
  std::optional<int> spline_teeth;  // sets the steps in which the arm can be clocked
  UnknownMembers unknown;
};

// A lever between arm and drag link: two balls on one axis (idler or bell-crank).
struct Relay {
  std::string name;
  Point<Chassis> pivot;        // on its axis; required
  Direction<Chassis> axis;     // made a unit vector on reading; required
  Point<Chassis> input_ball;   // with the box at its centre and the wheels straight; required
  Point<Chassis> output_ball;  // likewise; required
  std::optional<double> link_length;  // of the link that drives it, ball to ball; without it as
                                      // drawn, mm
  UnknownMembers unknown;
};

struct SteeringBoxStation {
  Point<Chassis> input_end;        // centre of the input shaft's end; required
  Direction<Chassis> input_axis;   // from hand to road; made a unit vector on reading; required
  ShaftSection input;              // what the last joint grips
  Point<Chassis> output_point;     // on the output axis, where the arm sits; required
  Direction<Chassis> output_axis;  // out of the box through the arm; unit; required
  // Sense of the output shaft, seen from the arm's side, when the hand wheel turns left. Read it
  // off the box: no default.
  std::optional<TurnSense> left_turns_arm;
  std::optional<double> ratio;        // input over output turn; required without a table
  std::vector<RatioRow> ratio_table;  // by rising input; empty = constant ratio
  double travel_left = 0.0;   // output travel from the box's centre to its end when the hand wheel
  double travel_right = 0.0;  // is turned left / right, rad, positive; required
  std::optional<double> assist_cut_left;  // output angle from centre at which assist is cut, rad
  std::optional<double> assist_cut_right;
  PitmanArm arm;
  std::vector<Relay> relays;  // in order of motion; none for a plain drag link
  UnknownMembers unknown;
};

// Direction of the arm at clocking 0: square to the output axis, nearest to down; for an output
// axis within 25 degrees of vertical, nearest to rearward. Unit.
Direction<Chassis> arm_zero_direction(const SteeringBoxStation& box);
// Arm ball with the box at its centre.
Point<Chassis> arm_ball_at_centre(const SteeringBoxStation& box);

}  // namespace tackbench
