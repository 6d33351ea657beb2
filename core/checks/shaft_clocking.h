// Clocking: how the forks of every shaft should stand to one another, and how near its sections let
// them come.
//
// Two crosses: constant speed wants equal bends and a fork offset equal to the twist between the
// bend planes; with unequal bends that offset still gives the least ripple (Fischer and Paul,
// Kinematic Displacement Analysis of a Double-Cardan-Joint Driveline, ASME J. Mech. Des.). More
// crosses: the offsets of least ripple are searched for; where several do equally well, the ones
// nearest to the drawing. What the sections allow is searched for by itself, so with more than two
// crosses it may lie beside another of the many good clockings than the ideal shown.
#pragma once

#include <optional>
#include <vector>

#include "core/checks/shaft_ripple.h"
#include "core/mechanism/shaft_line.h"

namespace tackbench {

// How finely a shaft's forks can be clocked by its section where the yokes grip.
enum class ClockingBy {
  any,         // round: drilled or pinched anywhere
  teeth,       // spline: steps of a tooth, counted from aligned forks
  makers_cut,  // double-D: half turns only; the yokes' own cut sets the offset, so it stays as
               // drawn
  not_known,   // spline without a tooth count
};

struct ShaftClocking {
  int shaft = 0;
  double as_drawn = 0.0;  // fork offset, rad, in (-pi/2, pi/2]: half a turn on is the same
  double ideal = 0.0;     // likewise
  double nearest = 0.0;   // of least ripple among what the sections allow, likewise
  ClockingBy by = ClockingBy::any;
  double step = 0.0;     // teeth: rad; makers_cut: pi; otherwise 0
  bool matters = false;  // false: no cross with a bend on both sides of it
};

struct ClockingResult {
  std::vector<ShaftClocking> shafts;  // one a shaft of the project
  bool matters = false;               // false: fewer than two crosses that ripple, or no shaft
                                      // between them
  double ripple_as_drawn = 0.0;       // (most - least) / mean
  double ripple_ideal = 0.0;
  double ripple_nearest = 0.0;  // what remains
  bool closed_form = false;     // two crosses on one shaft: `twist` is the ideal offset
  double twist = 0.0;           // from the first bend plane to the second, right-handed about the
                                // shaft between, rad, in (-pi/2, pi/2]
};

ClockingResult clocking(const ShaftLine& line);

}  // namespace tackbench
