#include "core/clearance/truck_solids.h"

#include <algorithm>

#include "core/clearance/solids_maker.h"

namespace tackbench {

namespace {

bool moves(const SolidPart& part) {
  return std::any_of(part.pieces.begin(), part.pieces.end(),
                     [](const SolidPiece& piece) { return !piece.body.stands(); });
}

// On one body they keep their places; in a joint they meet.
bool may_touch(const SolidPart& first, const SolidPart& second) {
  for (const SolidPiece& a : first.pieces)
    for (const SolidPiece& b : second.pieces)
      if (a.body == b.body) return true;
  return std::find_first_of(first.joints.begin(), first.joints.end(), second.joints.begin(),
                            second.joints.end()) != first.joints.end();
}

}  // namespace

ConvexSolid flat_bar(const Vec3& from, const Vec3& to, const Vec3& across, double width,
                     double depth, double rounding) {
  const Vec3 step = to - from;
  const double length = step.norm();
  if (!(length > 1e-6)) return ball(from, 0.5 * std::min(width, depth));
  Mat3 axes;
  axes.col(0) = step / length;
  axes.col(1) = square_to(axes.col(0), across);
  axes.col(2) = axes.col(0).cross(axes.col(1));
  return rounded_box(0.5 * (from + to), axes, Vec3(length, width, depth), rounding);
}

std::shared_ptr<const TruckSolids> truck_solids(const Mechanism& mechanism) {
  SolidsMaker maker(mechanism);
  add_axle_solids(maker);
  add_steering_solids(maker);
  add_shaft_solids(maker);
  add_pedal_solids(maker);
  add_shape_solids(maker);
  TruckSolids& made = maker.made;
  for (std::size_t i = 0; i < made.parts.size(); ++i) {
    for (std::size_t j = i + 1; j < made.parts.size(); ++j) {
      const bool first = moves(made.parts[i]);
      const bool second = moves(made.parts[j]);
      if ((!first && !second) || may_touch(made.parts[i], made.parts[j])) continue;
      made.pairs.push_back({first ? i : j, first ? j : i, first && second});
    }
  }
  return std::make_shared<const TruckSolids>(std::move(made));
}

}  // namespace tackbench
