// Ripple: how unevenly the box input turns for an evenly turning hand wheel.
#pragma once

#include <vector>

#include "core/mechanism/shaft_line.h"

namespace tackbench {

// Over a turn, cab in its drawn place. The rate's mean over a turn is 1.
struct LineRipple {
  double least_rate = 1.0;   // d box / d hand wheel
  double most_rate = 1.0;    //
  double least_at = 0.0;     // hand-wheel turn there, rad; comes again every half turn
  double most_at = 0.0;      //
  double ripple = 0.0;       // (most - least) / mean
  double most_ahead = 0.0;   // box input ahead of its evenly turning mean, rad, 0 or more
  double most_behind = 0.0;  // and behind it
};

LineRipple line_ripple(const ShaftLine& line);
// The same for other fork offsets: one a shaft of the project, rad.
LineRipple line_ripple_with(const ShaftLine& line, const std::vector<double>& fork_offsets);

}  // namespace tackbench
