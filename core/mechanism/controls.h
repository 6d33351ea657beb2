// The inputs that move the build.
#pragma once

#include <array>
#include <optional>

#include "core/basics/frames.h"

namespace tackbench {

inline constexpr int kMostPedals = 4;

// Explicit place of the axle against design ride height: shift of its origin (midway between the
// wheel centres) in chassis axes, mm, then roll, pitch and yaw in that order about chassis axes
// through that origin, rad. Positive roll lifts the left wheel, positive pitch leans the top
// forward, positive yaw turns left (ISO 8855).
struct AxlePose {
  double dx = 0.0;
  double dy = 0.0;
  double dz = 0.0;
  double roll = 0.0;
  double pitch = 0.0;
  double yaw = 0.0;

  bool operator==(const AxlePose&) const = default;
};

struct Controls {
  double hand_wheel = 0.0;  // rad, left positive; 0 = wheels straight at ride height
  double bump_left = 0.0;   // rise of the unsteered left wheel centre from ride height, mm
  double bump_right = 0.0;
  double wind_up = 0.0;           // brake wind-up, added to the path's own pitch, top forward, rad
  Vec3 cab_shake = Vec3::Zero();  // shift of the cab from its drawn place, chassis axes, mm
  std::array<double, kMostPedals> pedals{};  // 0 at rest to 1 at the pedal's own stop
  std::optional<AxlePose> axle_pose;         // replaces both bumps and the wind-up

  bool operator==(const Controls&) const = default;
};

}  // namespace tackbench
