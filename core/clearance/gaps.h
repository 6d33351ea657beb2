// Gaps between the truck's solids in one pose: moving against moving and moving against standing.
// They say nothing about any other pose and are no verdict.
#pragma once

#include <limits>
#include <string>
#include <vector>

#include "core/clearance/truck_solids.h"
#include "core/geometry/solid_gap.h"

namespace tackbench {

struct PairGap {
  std::size_t first = 0;   // in TruckSolids::parts; moves
  std::size_t second = 0;  // moves too, or stands
  bool both_move = false;
  bool assumed = false;  // one of the nearest pieces has a size that is not in the document
  SolidGap gap;          // points and normal in the chassis frame at the pose
};

struct GapsAsked {
  // Pairs further apart are left out; a chosen part has its own.
  double within_mm = std::numeric_limits<double>::infinity();
  std::string chosen;  // member path; empty for none
  double chosen_within_mm = std::numeric_limits<double>::infinity();
};

// Least first. Empty when a loop of the pose does not close.
std::vector<PairGap> gaps(const TruckSolids& solids, const Mechanism& mechanism, const Pose& pose,
                          const GapsAsked& asked = {});

// Whether choosing `path` (of a grip or a record) chooses the part.
bool is_of(const SolidPart& part, const std::string& path);

}  // namespace tackbench
