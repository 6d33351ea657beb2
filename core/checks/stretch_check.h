// Stretch pairs: least and greatest distance of two points over the motion.
#pragma once

#include <string>
#include <vector>

#include "core/checks/lock_check.h"
#include "core/mechanism/solve.h"

namespace tackbench {

struct StretchResult {
  std::size_t pair = 0;  // index in the project's stretch pairs
  std::string name;
  bool locks_known = true;  // false: a knuckle carries it but how far it steers is not known, so
                            // only straight ahead was looked at
  double as_drawn = 0.0;    // mm
  double least = 0.0;       // over locks, bump, droop, roll and cab shake, mm
  double greatest = 0.0;
  Controls least_at;
  Controls greatest_at;
  std::optional<double> least_allowed;     // closed length, mm
  std::optional<double> greatest_allowed;  // open length, mm
};

// Extremes by a grid over the controls that move the pair, refined from the best node by coordinate
// descent to 0.01 mm. `locks` bounds the hand wheel; without it straight only. A pair whose bodies
// cannot be posed has no result.
std::vector<StretchResult> check_stretch(const Mechanism& mechanism,
                                         const std::optional<LockResult>& locks);

}  // namespace tackbench
