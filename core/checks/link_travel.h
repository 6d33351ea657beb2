// Ball-stud swing and effective angles of the links where they are worst: over both locks, at ride
// height and at the corners of the axle's travel (both wheels at full bump, both at full droop, one
// up and the other down either way). The lock check locates what ends a lock at ride height; this
// one looks at how far the links are driven while the axle moves, with coarser steps.
#pragma once

#include <optional>
#include <string>

#include "core/checks/lock_check.h"

namespace tackbench {

struct WorstOfLink {
  double value = 0.0;  // rad
  Controls at;         // hand wheel and the corner of the axle's travel
};

struct LinkTravel {
  WorstOfLink swing_arm_end;      // greatest stud from its housing's axis
  WorstOfLink swing_knuckle_end;  // likewise
  WorstOfLink effective_angle;    // least over all link ends; 0 where a loop is open
  std::string effective_at;       // "drag link at the knuckle"
  // Stud clocking that would use least swing over all of that, and the greater swing of both ends
  // with it; rad.
  double best_stud_clocking = 0.0;
  double swing_at_best_clocking = 0.0;
  bool travel_given = false;     // false: neither bump nor droop is given, ride height only
  int corners_out_of_reach = 0;  // that the suspension's path does not come to: not looked at
};

// `locks` of the same mechanism, found at ride height: its rows stand for ride height, and its axle
// stop or outer joint, which depend on the driven knuckle's swivel alone, bound the corners' locks
// together with the box's travel. The corner with one wheel up is at the roll that is given, or at
// full bump and droop without one. Steps of a twelfth of a lock; the worst are refined by golden
// section to 0.01 degrees of arm. Empty when the steering is not compiled.
std::optional<LinkTravel> check_link_travel(const Mechanism& mechanism, const LockResult& locks);

}  // namespace tackbench
