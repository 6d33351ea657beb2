// Secondary couples: a bent cross can only hand on a moment square to both its pins, so besides the
// torque each shaft feels a couple that tries to bend it, peaking at T tan b on the hand-side shaft
// and T sin b on the road-side one, a quarter turn apart, twice a turn (SAE AE-7 Universal Joint
// and Driveshaft Design Manual; Seherr-Thoss, Schmelz and Aucktor; from memory). Supports, column
// and box carry them. Friction and inertia are left out.
#pragma once

#include <optional>
#include <vector>

#include "core/mechanism/shaft_line.h"

namespace tackbench {

struct CrossCouple {
  int joint = 0;
  int cross = 0;
  double hand_side = 0.0;  // greatest over a turn on the hand-side shaft, N mm
  double road_side = 0.0;  // on the road-side shaft, N mm
};

struct SupportLoad {
  int support = 0;
  bool known = false;     // false: something else holds the same movement, or the line is free, so
                          // statics alone does not say
  double sideways = 0.0;  // greatest over a turn at the eye, N
};

struct CouplesResult {
  double torque = 1.0;        // in the column, N mm
  bool torque_given = false;  // false: per N mm, so the numbers are factors
  std::vector<CrossCouple> crosses;
  std::vector<SupportLoad> supports;
};

// `torque`: steady in the column, N mm; without it everything comes for 1 N mm.
CouplesResult secondary_couples(const ShaftLine& line, std::optional<double> torque);

}  // namespace tackbench
