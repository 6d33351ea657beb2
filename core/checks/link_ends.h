// The ends of every link between arm and road wheels: their names and their leverage.
#pragma once

#include <optional>
#include <string>

#include "core/mechanism/solve.h"

namespace tackbench {

// One end of one link. Links are counted from hand to road: each relay's driving link, the drag
// link, the tie rod.
struct LinkEndPlace {
  int link = 0;
  bool road_end = false;  // for the tie rod: the follower knuckle's end
};

// "drag link at the knuckle", "tie rod at the left knuckle", "link to the idler at the arm" ...
std::string link_end_name(const Steering& steering, const LinkEndPlace& place);

struct LeastLeverage {
  double leverage = 1.0;  // sine of the effective angle, 0 at toggle
  LinkEndPlace at;
};
// Over all link ends of a solved pose.
LeastLeverage least_leverage(const Steering& steering, const SteeringPose& pose);

// Chassis-side ball of the drag link (on the arm or on the last relay) for an arm angle from the
// box's centre, chassis frame. Empty when a relay's loop does not close.
std::optional<Vec3> drag_link_hand_ball(const Steering& steering, double arm);

}  // namespace tackbench
