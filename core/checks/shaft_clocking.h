// Ripple of a shaft line and the clocking of its forks.
#pragma once

#include <optional>
#include <vector>

#include "core/mechanism/shaft_line.h"

namespace tackbench {

// Speed of the box input against the hand wheel over a turn, cab in its drawn place.
struct LineRipple {
  double least_rate = 1.0;  // d box / d hand wheel
  double most_rate = 1.0;
  double least_at = 0.0;  // hand-wheel turn there, rad
  double most_at = 0.0;
  double ripple = 0.0;       // (most - least) / mean over a turn; the mean is 1
  double most_ahead = 0.0;   // box input before the hand wheel's evenly turning mean, rad
  double most_behind = 0.0;  // rad, positive
};

LineRipple line_ripple(const ShaftLine& line);
// The same for other fork offsets: one a shaft of the project, rad.
LineRipple line_ripple_with(const ShaftLine& line, const std::vector<double>& fork_offsets);

// How finely a shaft can be clocked: both its ends' sections and, where it slips, the slip.
struct ClockingSteps {
  std::optional<double> step;  // rad; empty: free (round section, or a slipping round tube)
  bool makers_cut = false;     // double-D: half turns and however its maker cut it
};

struct ShaftClocking {
  int shaft = 0;
  double as_drawn = 0.0;  // fork offset, rad, wrapped into (-pi/2, pi/2]: half a turn is the same
  double ideal = 0.0;
  double nearest = 0.0;  // that the steps allow, counted from aligned forks
  ClockingSteps steps;
};

struct ClockingResult {
  std::vector<ShaftClocking> shafts;  // one a shaft of the project
  bool matters = false;               // false: no shaft lies between two crosses that ripple
  double ripple_as_drawn = 0.0;
  double ripple_ideal = 0.0;
  double ripple_nearest = 0.0;
  bool closed_form =
      false;           // two crosses: twist between the bend planes; else a least-ripple search
  double twist = 0.0;  // two crosses: from the first bend plane to the second, right-handed
                       // about the shaft between, rad
};

ClockingResult clocking(const ShaftLine& line);

}  // namespace tackbench
