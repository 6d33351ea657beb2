// How far each control of the truck can go: what a hand or a cycle of motion is held within.
#pragma once

#include "core/checks/lock_check.h"
#include "core/mechanism/controls.h"

namespace tackbench {

// Hand wheel in rad, left positive; wheel travel and cab shake in mm; wind-up in rad.
struct ControlReach {
  double full_right = 0.0;     // hand wheel, negative or 0
  double full_left = 0.0;      // positive or 0
  bool ends_at_locks = false;  // both sides end where the lock check ends them
  double full_droop = 0.0;     // negative or 0
  double full_bump = 0.0;
  double wind_up = 0.0;
  Vec3 least_shake_mm = Vec3::Zero();  // rearward, right, down: chassis axes, negative or 0
  Vec3 most_shake_mm = Vec3::Zero();
  int pedals = 0;  // each from 0 to 1
};

// A side that `locks` gives no end (or no `locks` at all) goes to the end of the box's travel;
// without steering, a turn each way.
ControlReach control_reach(const Mechanism& mechanism, const LockResult* locks);

// The controls held within the reach; an explicit axle pose is left alone.
Controls held_within(const ControlReach& reach, Controls controls);

}  // namespace tackbench
