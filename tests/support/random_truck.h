// Plausible trucks with random dimensions, for properties that must hold for every truck: what a
// builder could really have in front of them, with effective angles near 90 degrees straight ahead.
#pragma once

#include <cstdint>
#include <random>

#include "core/project/project.h"

namespace tackbench {

enum class DragLinkLay { fore_aft, across };

struct TruckChoices {
  Side drive = Side::left;  // which side the hand wheel and the box are on
  DragLinkLay lay = DragLinkLay::fore_aft;
  Side knuckle = Side::left;  // that the drag link drives
  bool box_ahead = false;     // of the front axle
  bool arm_up = false;
  int relays = 0;  // 0 to 2
  SuspensionKind suspension = SuspensionKind::leaf;
  int joints = 2;                      // 0 to 4 in the shaft line; with 1 the cab cannot shake
  bool right_knuckle_differs = false;  // given apart, not the left's mirror image
  bool real_lengths_differ = false;    // links some millimetres off the drawn lengths
  bool ratio_table = false;
};

TruckChoices random_choices(std::mt19937_64& random);
Project random_truck(const TruckChoices& choices, std::mt19937_64& random);
// Choices and dimensions from one seed; the same seed gives the same truck.
Project random_truck(std::uint64_t seed);

}  // namespace tackbench
