// Curves over the reach of one control: what graphs draw. Each place is a pose of its own, so a
// curve shows exactly what the truck shows there.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/basics/units.h"
#include "core/checks/control_reach.h"
#include "core/mechanism/solve.h"

namespace tackbench {

// A curve begins at straight, at rest or at ride height and goes out from there; where the truck
// cannot be solved it ends, since no hand gets past that place.
struct EarlyEnd {
  double x = 0.0;   // the last place that the truck reaches
  std::string why;  // a sentence
};

// One line of a graph; mm, rad and plain ratios, as `unit` says. Past an early end all is gap, and
// so is a place where the value has no size. Never NaN.
struct Curve {
  std::string words;  // "left wheel", "drag link at the arm"
  Unit unit = Unit::degree;
  bool wished = false;  // what would be wanted, not what is there
  std::vector<double> x;
  std::vector<std::optional<double>> y;
  std::vector<EarlyEnd> early_ends;  // none, one or two
};

// Value at `x` by straight lines between neighbours; empty in a gap and beyond the ends.
std::optional<double> value_at(const Curve& curve, double x);

// Every function gives curves with one common x, from least to greatest, `places` of them (at least
// 2), or none when the truck has not got the parts.

// Both wheels' steer (rad, left positive) over the hand wheel (rad, left positive) within `reach`,
// at ride height; with a wheelbase also the outer wheel as Ackermann wants it
// (ideal_outer_steer).
std::vector<Curve> wheel_angle_curves(const Mechanism& mechanism, const ControlReach& reach,
                                      int places);
// Effective angle (rad) at every link end over the hand wheel, at ride height.
std::vector<Curve> effective_angle_curves(const Mechanism& mechanism, const ControlReach& reach,
                                          int places);
// Change of both wheels' steer from ride height (rad, left positive) over both wheels' bump (mm),
// hand wheel held straight.
std::vector<Curve> bump_steer_curves(const Mechanism& mechanism, const ControlReach& reach,
                                     int places);
// The same over the axle's roll (rad, left wheel up positive), one wheel up as much as the other
// goes down; to the project's greatest roll, or as far as bump and droop allow when none is given.
std::vector<Curve> roll_steer_curves(const Mechanism& mechanism, const ControlReach& reach,
                                     int places);
// d box input / d hand wheel over one turn of the hand wheel about straight, cab in its drawn
// place.
std::vector<Curve> shaft_ratio_curves(const Mechanism& mechanism, int places);
// Ratio of one pedal with a rod over its turn from rest (rad): pad travel per rod travel.
std::vector<Curve> pedal_ratio_curves(const Mechanism& mechanism, int pedal, int places);

// Controls that roll the axle by `roll` (rad) as roll_steer_curves() does.
Controls rolled(const Mechanism& mechanism, Controls controls, double roll);

}  // namespace tackbench
