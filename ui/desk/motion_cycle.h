// A played motion: the controls along one round that ends where it began.
#pragma once

#include "core/checks/control_reach.h"

namespace tackbench::ui {

enum class MotionCycle { lock_to_lock, bump, both };

// Controls at `share` (0 to 1) of the round. The hand wheel goes left to its end, right to its
// other end and back; the axle up to full bump, down to full droop and back, both wheels together
// (over one round of the hand wheel twice). At 0 and 1 they are `start`.
Controls along_cycle(MotionCycle cycle, const Controls& start, const ControlReach& reach,
                     double share);
// How long a round takes, s.
double cycle_seconds(MotionCycle cycle);

}  // namespace tackbench::ui
