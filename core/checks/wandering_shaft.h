// Wandering-shaft check: is every shaft between the column's end and the box held? The trade's rule
// (no more than two joints in a row without a support) is not coded; the freedom is found.
//
// Bodies: the column, every shaft, both halves of a slip shaft, the middle piece of a double joint;
// each with three shifts and two tilts, its spin left out. The box input is held by its box. A
// cross makes two bodies meet at a point (3 equations); the halves of a slip share a line (4); a
// column bearing holds a point sideways (2), one of them lengthways too (1), two hold the axis
// whole; an eye holds a point of its shaft sideways (2), a collar also lengthways (1), a bearing
// block also the tilt (2). The null space of the Jacobian, tilts scaled to millimetres, is the free
// motion; its left null space is what is held more than once. Source: constraint counting after
// Kutzbach and Gruebler, here by rank so that special positions are seen.
#pragma once

#include <string>
#include <vector>

#include "core/mechanism/shaft_line.h"

namespace tackbench {

// One way in which the line is free, to first order. Ways are square to one another in the movement
// of the joints and come with the largest first.
struct WanderingWay {
  std::vector<Vec3> cross_shift_mm;  // per cross of ShaftLine::crosses, chassis; the largest
                                     // movement of the way is 1 mm long
  Vec3 hand_wheel_shift_mm = Vec3::Zero();
  int most_at_cross = -1;   // where it moves most; -1 = at the hand wheel
  bool column = false;      // the column itself moves
  std::vector<int> shafts;  // shafts of the project that move, rising
};

// One condition that the parts must meet by being made or set right, since something is held twice.
struct OverConstraint {
  struct Part {
    std::string words;   // "shaft 1 length", "eye 'middle' sideways", "joint 'upper'"
    double share = 0.0;  // mm of misfit a mm of error in it makes, 0 to 1; the largest is 1
  };
  std::vector<Part> parts;       // that take part, largest share first
  double misfit_as_drawn = 0.0;  // by how much the drawing misses the condition, mm
};

// What sideways play in a support's eye does.
struct SupportPlay {
  int support = 0;                 // index in the project's shaft line
  double worst_at_cross_mm = 0.0;  // movement of the cross that moves most for 1 mm of play
  int cross = 0;                   // which one
};

// A place for a rod end.
struct RodEndPlace {
  int shaft = 0;      // index in the project's shaft line
  double part = 0.5;  // of the way from its hand-side cross to its road-side cross
};

// What one more rod end would do.
struct SupportTrial {
  int shaft = 0;           // index in the project's shaft line
  int at_cross = -1;       // -1: halfway along the shaft; otherwise at that cross's centre
  int free_ways_left = 0;  // 0: it would hold the line
};

struct WanderingShaft {
  int free_ways = 0;
  int over_constraints = 0;
  std::vector<WanderingWay> ways;    // free_ways of them
  std::vector<OverConstraint> over;  // over_constraints of them
  bool in_line = false;           // shafts without slip in one straight line: free to first order
                                  // though locked. "in line: look by hand"
  std::vector<SupportPlay> play;  // one a support
  std::vector<SupportTrial> trials;   // empty when nothing is free
  int rod_ends_wanted = 0;            // fewest more rod ends that hold the line; -1 = four do not
  std::vector<RodEndPlace> rod_ends;  // fewest of them that do, of the places halfway along the
                                      // shafts and a quarter from their ends
};

// For a line without joints everything is zero.
WanderingShaft wandering_shaft(const ShaftLine& line);

}  // namespace tackbench
