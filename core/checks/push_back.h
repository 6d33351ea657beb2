// Push-back: box, firewall and every support move rearward by an amount the builder chooses; how
// does the chain slide or fold, and how far is the hand wheel driven? Geometry, no crash test.
#pragma once

#include <optional>
#include <vector>

#include "core/mechanism/shaft_line.h"

namespace tackbench {

// One stage of the push.
struct PushBackStep {
  double pushed = 0.0;             // box rearward from drawn, mm
  double column_driven = 0.0;      // column's output end along its axis towards the hand wheel, mm
  std::vector<Vec3> centres_mm;    // of the crosses, chassis
  std::vector<double> slide_used;  // per span, mm closed (0 without slip)
};

struct PushBack {
  double pushed = 0.0;      // as far as the chain could be followed, mm
  bool whole_way = false;   // false: nothing slides, folds or gives beyond `pushed`
  bool folds = false;       // a joint bends by more than 5 degrees beyond its drawn angle
  int folds_at_joint = -1;  // the joint that bends most
  double fold_angle = 0.0;  // of that joint at the end, rad
  std::optional<double> limit_reached_at;  // push at which a joint first bends beyond its given
                                           // limit and beyond its drawn angle, mm; from there on
                                           // the chain locks and more is driven than shown
  std::vector<int> slides_closed;          // shafts whose slip ran out
  bool slide_unknown = false;        // a slip shaft without slide_in_left: taken as able to close
                                     // until its shaft has no plain length left
  double column_driven = 0.0;        // at the column's output end, mm
  double collapse_used = 0.0;        // of the column's own stroke, mm
  double hand_wheel_moves = 0.0;     // what the stroke does not take, along the column's axis, mm
  double hand_wheel_rearward = 0.0;  // its part along chassis -X, mm
  std::vector<PushBackStep> steps;   // for drawing, first = drawn
};

// Empty when the builder gave no distance (not judged) or the line has no joints.
std::optional<PushBack> push_back(const ShaftLine& line);

}  // namespace tackbench
