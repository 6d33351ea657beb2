// Bump check: what the road wheels do by themselves when the axle moves with the hand wheel held,
// what the hand wheel does with the road wheels held, and where the chassis-side ball would be
// best.
#pragma once

#include <optional>
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
  // Turn that holding the road wheels would force on the hand wheel, rad; empty where no turn of it
  // lets them be held.
  std::optional<double> hand_wheel;
  bool solved = false;  // the axle gets there and the steering follows
};

struct BumpCurve {
  BumpMotion motion = BumpMotion::heave;
  std::vector<BumpRow> rows;  // from least to greatest
  double low = 0.0;           // the range asked for, mm or rad
  double high = 0.0;
  // Where the linkage stops following inside the range, on its way from ride height; empty where it
  // follows to the range's end.
  std::optional<double> follows_down_to;
  std::optional<double> follows_up_to;
  // Heave: d steer at ride height, rad per 25 mm (mean of wheels). Roll: d steer per d roll, rad
  // per rad. Empty when the linkage does not follow near ride height.
  std::optional<double> rate_per_25;
  std::optional<double> roll_rate;
  double greatest = 0.0;     // largest change of mean steer over the solved rows, signed, rad
  double greatest_at = 0.0;  // where (mm or rad)
  double kickback = 0.0;     // largest turn of the hand wheel over the rows that have one, rad
  double kickback_at = 0.0;
  bool kickback_everywhere = false;  // every row has one
};

// Where the chassis-side ball of the drag link would give least bump steer.
struct BestBall {
  Vec3 as_drawn_mm = Vec3::Zero();  // chassis, straight
  Vec3 best_mm = Vec3::Zero();      // moved in height only (Z); its fore-aft and side place kept
  double greatest = 0.0;            // largest heave steer left then, rad
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
