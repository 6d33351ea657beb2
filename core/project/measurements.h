// Measurements: what was read off the vehicle, how well, and which points it fixes. A point is
// named by its member path ("steering_box.input_end_mm") or by a datum's name.
#pragma once

#include "core/basics/units.h"
#include "core/project/common.h"

namespace tackbench {

struct DatumPoint {
  std::string name;
  Point<Chassis> at;
  double accuracy = 1.0;  // one standard deviation, mm
  UnknownMembers unknown;
};

struct TapeReading {
  std::string name;
  std::string from;
  std::string to;
  double distance = 0.0;  // mm; required
  double accuracy = 2.0;  // one standard deviation, mm (judgement: tape direct 2)
  UnknownMembers unknown;
};

// Along gravity from a point to a level plane or to another point.
struct PlumbReading {
  std::string name;
  std::string from;
  std::string to;         // empty = the floor
  double drop = 0.0;      // mm; required
  double accuracy = 3.0;  // mm (judgement: plumb to floor 3)
  UnknownMembers unknown;
};

// Angle of the line between two points against gravity's horizontal.
struct AngleReading {
  std::string name;
  std::string from;
  std::string to;
  double angle = 0.0;                         // rad; required
  double accuracy = 0.5 * kRadiansPerDegree;  // rad (judgement: angle finder half a degree)
  UnknownMembers unknown;
};

// What the finished truck measures.
struct AsBuilt {
  std::optional<double> turns_left;
  std::optional<double> turns_right;
  std::optional<double> inner_steer_left;   // rad
  std::optional<double> inner_steer_right;  // rad
  std::optional<double> drag_link_length;   // mm
  UnknownMembers unknown;
};

struct MeasurementsStation {
  double rail_slope_forward = 0.0;  // rails' front end low positive, rad
  double rail_slope_left = 0.0;     // left rail low positive, rad
  std::vector<DatumPoint> datums;
  std::vector<TapeReading> tapes;
  std::vector<PlumbReading> plumbs;
  std::vector<AngleReading> angles;
  AsBuilt as_built;
  UnknownMembers unknown;
};

}  // namespace tackbench
