// The cab as a placed group: moving it carries column, pedals, driver and firewall.
#pragma once

#include "core/project/common.h"

namespace tackbench {

// How far the cab shakes on its mounts from its drawn place, each way, mm, 0 or more.
struct CabShake {
  double forward = 0.0;
  double rearward = 0.0;
  double left = 0.0;
  double right = 0.0;
  double up = 0.0;
  double down = 0.0;
  UnknownMembers unknown = {};
};

struct CabStation {
  Vec3 place = Vec3::Zero();  // cab origin in the chassis frame, mm
  double pitch = 0.0;         // about the cab origin, positive = top forward, rad
  CabShake shake;
  UnknownMembers unknown;
};

// Where the cab stands when it does not shake.
Placement<Chassis, Cab> chassis_from_cab(const CabStation& cab);

}  // namespace tackbench
