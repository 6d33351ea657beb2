// Where the chassis-side ball of the drag link would give least bump steer.
#pragma once

#include "core/checks/bump_check.h"

namespace tackbench {

// The steering with its drag link's chassis-side ball fixed at a place of its own (chassis frame)
// and the link made to that place's length: box, arm and relays play no part, solve_steering of it
// at arm 0 answers for the hand wheel held straight.
Steering steering_held_at(const Steering& steering, const Placement<Chassis, Axle>& axle_at_ride,
                          const Vec3& ball_mm);

// Searches the ball's height (Z) alone, its fore-aft and side place kept, within 300 mm of where
// it is, for the least greatest change of mean steer over the heave range; to 0.1 mm. Empty when
// the straight pose does not close.
std::optional<BestBall> best_chassis_side_ball(const Mechanism& mechanism, int rows_each_side);

}  // namespace tackbench
