#include "core/clearance/gaps.h"

#include <algorithm>
#include <string_view>

namespace tackbench {

namespace {

struct PosedPiece {
  ConvexSolid solid;
  BoundingBall around;
  bool assumed = false;
};

struct PosedPart {
  std::vector<PosedPiece> pieces;
  BoundingBall around;
};

double between(const BoundingBall& a, const BoundingBall& b) {
  return (a.centre_mm - b.centre_mm).norm() - a.radius - b.radius;
}

PosedPart posed_part(const SolidPart& part, const Mechanism& mechanism, const Pose& pose) {
  PosedPart posed;
  posed.pieces.reserve(part.pieces.size());
  const SolidBody* moved_with = nullptr;
  Placement<Chassis, Chassis> motion;
  for (const SolidPiece& piece : part.pieces) {
    if (moved_with == nullptr || !(*moved_with == piece.body))
      motion = solid_motion(mechanism, pose, piece.body);
    moved_with = &piece.body;
    PosedPiece made{moved(piece.solid, motion.turn, motion.shift_mm), {}, piece.assumed};
    made.around = bounding_ball(made.solid);
    posed.around.centre_mm += made.around.centre_mm / static_cast<double>(part.pieces.size());
    posed.pieces.push_back(std::move(made));
  }
  for (const PosedPiece& piece : posed.pieces)
    posed.around.radius =
        std::max(posed.around.radius,
                 (piece.around.centre_mm - posed.around.centre_mm).norm() + piece.around.radius);
  return posed;
}

// Nearest pieces of both; untouched when they are all further than `within`.
void nearest_pieces(const PosedPart& first, const PosedPart& second, double within,
                    PairGap& nearest, bool& found) {
  for (const PosedPiece& a : first.pieces) {
    for (const PosedPiece& b : second.pieces) {
      const double limit = found ? nearest.gap.high_mm : within;
      if (between(a.around, b.around) > limit) continue;
      const SolidGap gap = gap_between(a.solid, b.solid);
      if (gap.outcome == GapOutcome::nothing_there || gap.high_mm > limit) continue;
      if (found && gap.high_mm >= nearest.gap.high_mm) continue;
      // The least low bound of all pieces is the pair's.
      const double low = found ? std::min(nearest.gap.low_mm, gap.low_mm) : gap.low_mm;
      nearest.gap = gap;
      nearest.gap.low_mm = low;
      nearest.assumed = a.assumed || b.assumed;
      found = true;
    }
  }
}

bool loops_close(const Pose& pose) {
  return pose.outcome == Outcome::solved || pose.outcome == Outcome::not_compiled;
}

bool begins(std::string_view whole, std::string_view part) {
  return whole.starts_with(part) &&
         (whole.size() == part.size() || whole[part.size()] == '.' || whole[part.size()] == '[');
}

}  // namespace

bool is_of(const SolidPart& part, const std::string& path) {
  return !path.empty() && (begins(path, part.path) || begins(part.path, path));
}

std::vector<PairGap> gaps(const TruckSolids& solids, const Mechanism& mechanism, const Pose& pose,
                          const GapsAsked& asked) {
  std::vector<PairGap> list;
  if (!loops_close(pose)) return list;
  std::vector<PosedPart> posed;
  std::vector<bool> chosen;
  for (const SolidPart& part : solids.parts) {
    posed.push_back(posed_part(part, mechanism, pose));
    chosen.push_back(is_of(part, asked.chosen));
  }
  for (const SolidPair& pair : solids.pairs) {
    const double within = chosen[pair.first] || chosen[pair.second]
                              ? std::max(asked.within_mm, asked.chosen_within_mm)
                              : asked.within_mm;
    if (between(posed[pair.first].around, posed[pair.second].around) > within) continue;
    PairGap made{pair.first, pair.second, pair.both_move, false, {}};
    bool found = false;
    nearest_pieces(posed[pair.first], posed[pair.second], within, made, found);
    if (found) list.push_back(made);
  }
  std::stable_sort(list.begin(), list.end(), [](const PairGap& a, const PairGap& b) {
    return a.gap.high_mm < b.gap.high_mm;
  });
  return list;
}

}  // namespace tackbench
