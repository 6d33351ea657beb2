#include "ui/desk/motion_cycle.h"

#include <algorithm>
#include <cmath>

namespace tackbench::ui {

namespace {

// From `start` to `most`, to `least` and back at an even speed.
double to_and_fro(double start, double least, double most, double share) {
  const double up = std::max(most - start, 0.0);
  const double across = std::max(most - least, 0.0);
  const double back = std::max(start - least, 0.0);
  const double gone = std::clamp(share, 0.0, 1.0) * (up + across + back);
  if (gone <= up) return start + gone;
  if (gone <= up + across) return most - (gone - up);
  return least + (gone - up - across);
}

}  // namespace

Controls along_cycle(MotionCycle cycle, const Controls& start, const ControlReach& reach,
                     double share) {
  if (share <= 0.0 || share >= 1.0) return start;
  Controls now = start;
  now.axle_pose.reset();
  if (cycle != MotionCycle::bump)
    now.hand_wheel = to_and_fro(start.hand_wheel, reach.full_right, reach.full_left, share);
  if (cycle != MotionCycle::lock_to_lock) {
    const double own = cycle == MotionCycle::both ? std::fmod(2.0 * share, 1.0) : share;
    now.bump_left = to_and_fro(start.bump_left, reach.full_droop, reach.full_bump, own);
    now.bump_right = to_and_fro(start.bump_right, reach.full_droop, reach.full_bump, own);
  }
  return held_within(reach, now);
}

double cycle_seconds(MotionCycle cycle) {
  return cycle == MotionCycle::bump ? 3.0 : 8.0;
}

}  // namespace tackbench::ui
