// Bump check: what the road wheels do by themselves when the axle moves with the hand wheel held,
// what the hand wheel does with the road wheels held, and where the chassis-side ball would be
// best.
#pragma once

#include <string>
#include <vector>

#include "core/mechanism/solve.h"

namespace tackbench {

enum class BumpMotion { heave, roll, wind_up };

struct BumpRow {
  double at = 0.0;          // heave mm (bump positive), roll rad (left wheel up positive) or
                            // wind-up rad
  double steer_left = 0.0;  // change from ride height, left positive, rad
  double steer_right = 0.0;
  double swivel_left = 0.0;
  double hand_wheel = 0.0;  // turn that holding the road wheels would force on the hand wheel, rad
  bool solved = false;
};

struct BumpCurve {
  BumpMotion motion = BumpMotion::heave;
  std::vector<BumpRow> rows;  // from least to greatest
  double rate_per_25 = 0.0;   // heave: d steer at ride height, rad per 25 mm (mean of wheels)
  double roll_rate = 0.0;     // roll: d steer per d roll, rad per rad
  double greatest = 0.0;      // largest change of mean steer over the range, signed, rad
  double greatest_at = 0.0;   // where (mm or rad)
  double kickback = 0.0;      // largest turn of the hand wheel, signed, rad
  double kickback_at = 0.0;
};

// Where the chassis-side ball of the drag link would give least bump steer.
struct BestBall {
  Vec3 as_drawn_mm = Vec3::Zero();  // chassis, straight
  Vec3 best_mm = Vec3::Zero();      // moved in height only (Z); its fore-aft and side place kept
  double greatest = 0.0;            // largest heave steer left then, rad
  double rate_per_25 = 0.0;
};

struct BumpResult {
  BumpCurve heave;
  BumpCurve roll;
  BumpCurve wind_up;  // empty rows when no wind-up is given
  std::optional<BestBall> best_ball;
};

struct BumpSettings {
  double hand_wheel = 0.0;  // held, rad
  int rows_each_side = 8;
};

std::optional<BumpResult> check_bump(const Mechanism& mechanism, const BumpSettings& settings);

}  // namespace tackbench
