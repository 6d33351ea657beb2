// Where the steering linkage, turned outwards from straight, first stops closing.
#pragma once

#include <optional>

#include "core/mechanism/mechanism.h"
#include "core/mechanism/pose.h"

namespace tackbench {

struct FirstToggle {
  double arm = 0.0;  // last angle that closes, from the box's centre, rad
  int link = 0;      // whose loop opens; counted from hand to road as in LinkEndPlace
};

struct ToggleSearch {
  const Steering& steering;
  const Placement<Chassis, Axle>& chassis_from_axle;
  double outward = 1.0;  // +1: the arm turns positive
  double step = 0.0;     // of the samples, rad, positive
  int steps = 0;         // from straight
};

// Empty when the linkage closes at every angle, or does not close straight. `pose` is scratch,
// sized by blank_pose. A linkage that opens and closes again between two samples is found by the
// valley of its closure over three samples; only two valleys inside two steps could be missed.
std::optional<FirstToggle> first_toggle(const ToggleSearch& search, SteeringPose& pose);

// Swivels, and all that hangs on them, go with the square root of what is left to toggle. Calls
// `take(arm)` at even steps of that root after `from`, ending at `toggle`.
template <class Take>
void crowd_towards(double from, double toggle, Take&& take) {
  constexpr int kSteps = 6;
  for (int step = kSteps - 1; step >= 0; --step) {
    const double root = static_cast<double>(step) / kSteps;
    take(toggle - (toggle - from) * root * root);
  }
}

}  // namespace tackbench
