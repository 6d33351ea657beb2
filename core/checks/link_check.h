// Direction and link length: does left steer left, how far is the box off its centre with the
// wheels straight, and which length would centre it.
#pragma once

#include "core/mechanism/solve.h"

namespace tackbench {

struct DirectionResult {
  double steer_per_hand_wheel =
      0.0;  // mean of both road wheels at straight, d steer / d hand wheel
  bool left_steers_left = false;
};
// At the straight pose. Empty when the steering is not compiled or has no straight pose.
std::optional<DirectionResult> check_direction(const Mechanism& mechanism);

struct LinkResult {
  double drawn_length = 0.0;     // box at its centre, wheels straight, mm
  double real_length = 0.0;      // given, or as drawn, mm
  double centring_length = 0.0;  // that puts the box at its centre with the wheels straight, mm
  double arm_offset = 0.0;       // arm from the box's centre with the wheels straight, rad
  double input_offset = 0.0;     // box input likewise, rad: turns of the hand wheel off centre
  double box_turns_left = 0.0;   // hand-wheel turns from straight to the box's own end
  double box_turns_right = 0.0;
  double turns_lost = 0.0;         // of the shorter side against a centred box, turns (not rad)
  bool within_adjustment = false;  // centring_length is within the link's adjustment
};
std::optional<LinkResult> check_link(const Mechanism& mechanism);

}  // namespace tackbench
