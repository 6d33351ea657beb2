// The sweep behind the lock check: from straight outwards in the arm's angle to toggle or 100
// degrees, watching signed functions of the pose and locating where each first turns positive.
#pragma once

#include <string>
#include <vector>

#include "core/basics/units.h"
#include "core/checks/axle_stop.h"
#include "core/checks/lock_check.h"

namespace tackbench {

// Step of the sweep in the arm's angle. Every watched function is continuous; a crossing and
// re-crossing between two samples shows as a peak of three samples and is refined, so only a
// function with two peaks inside two steps could be missed. That the linkage closes is watched the
// same way.
inline constexpr double kLockSweepStep = 1.0 * kRadiansPerDegree;
inline constexpr double kLockSweepEnd = 100.0 * kRadiansPerDegree;  // of arm from straight

// Where one event lies on a sweep.
struct LockHit {
  LockEventKind kind = LockEventKind::axle_stop;
  std::string name;
  int stop = -1;     // index into `stops` for an axle stop
  double arm = 0.0;  // from the box's centre, rad
  bool ends = true;
};

struct LockSweep {
  std::vector<LockHit> hits;  // in order of arm turn from straight
  double last_arm = 0.0;      // last arm angle that the linkage closes at, or the sweep's end
};

// What a sweep needs to know beside the mechanism.
struct LockSweepInput {
  const Mechanism& mechanism;
  const Placement<Chassis, Axle>& chassis_from_axle;
  const std::vector<AxleStop>& stops;
  Side hand = Side::left;    // to which the hand wheel is turned
  Side steers = Side::left;  // to which the road wheels then go
};

// `pose` is scratch, sized by blank_pose.
LockSweep sweep_lock(const LockSweepInput& input, SteeringPose& pose);

}  // namespace tackbench
