// Column: hand wheel, its axis down to the output end, and what that end offers a joint.
#pragma once

#include "core/project/common.h"

namespace tackbench {

enum class SectionKind { round, spline, double_d };

// Section of a shaft where a yoke or a slip half sits on it.
struct ShaftSection {
  SectionKind kind = SectionKind::double_d;
  double diameter = 19.05;             // over the round, mm
  std::optional<double> across_flats;  // double-D: distance between the flats, mm
  std::optional<int> teeth;            // spline: tooth count; sets the clocking step
  UnknownMembers unknown;
};

enum class ColumnBearingKind { bush, ball };

struct ColumnBearing {
  std::string name;
  double from_hand_wheel = 0.0;  // along the column axis from the hand-wheel centre, mm
  ColumnBearingKind kind = ColumnBearingKind::ball;
  UnknownMembers unknown;
};

struct ColumnStation {
  Point<Cab> hand_wheel_centre;           // required
  double hand_wheel_diameter = 450.0;     // outside, mm
  Point<Cab> output_end;                  // lower end of the column; the axis runs from the hand
                                          // wheel's centre to here; required
  std::vector<ColumnBearing> bearings;    // two or more hold the axis; fewer leave it free
  std::optional<double> collapse_stroke;  // mm
  ShaftSection output;
  UnknownMembers unknown;
};

// Unit vector from the hand wheel to the output end.
Direction<Cab> column_axis(const ColumnStation& column);

}  // namespace tackbench
