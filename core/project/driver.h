// Driver: the seat, the room around it, and the people who are to fit.
// Points are in the cab frame.
#pragma once

#include "core/project/common.h"

namespace tackbench {

// What a boot adds to a bare foot, mm.
struct Boots {
  double sole = 35.0;     // common practice 30 to 40
  double length = 35.0;   // common practice 30 to 40
  double breadth = 20.0;  // common practice 15 to 25
  UnknownMembers unknown;
};

// A real row of the measured people, found by sex and rank of stature.
struct DrawnPerson {
  std::string name;
  bool woman = true;
  double stature_percentile = 50.0;  // 0 to 100
  UnknownMembers unknown;
};

struct DriverStation {
  Point<Cab> seat_reference;               // in the middle of its travels; required
  double seat_fore_aft = 0.0;              // whole travel, mm
  double seat_height = 0.0;                // whole travel, mm
  double back_angle = 0.0;                 // from vertical, rearward positive, rad
  Point<Cab> heel_point;                   // required
  double floor_height = 0.0;               // Z of the floor under the pedals, mm; required
  std::optional<double> roof_height;       // Z, mm
  std::optional<double> thigh_gap_wanted;  // thigh to rim, mm
  double women_share = 0.5;                // of the group of people, 0 to 1
  Boots boots;
  double clothing = 10.0;          // added all round, mm
  std::vector<DrawnPerson> drawn;  // up to three
  UnknownMembers unknown;
};

}  // namespace tackbench
