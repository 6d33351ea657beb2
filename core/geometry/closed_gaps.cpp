#include "core/geometry/closed_gaps.h"

#include <algorithm>
#include <cmath>
#include <utility>

#include "core/geometry/support.h"

namespace tackbench {

namespace {

bool is_line(const ConvexSolid& solid) {
  return solid.kind == CoreKind::point || solid.kind == CoreKind::segment;
}

SolidGap flipped(SolidGap gap) {
  std::swap(gap.on_first, gap.on_second);
  gap.normal = -gap.normal;
  return gap;
}

// Square to both axes; for those that lie along one line, square to one.
Vec3 square_to_both(const ConvexSolid& first, const ConvexSolid& second) {
  const Vec3 square = first.axis().cross(second.axis());
  const double length = square.norm();
  if (first.kind == CoreKind::segment && second.kind == CoreKind::segment && length > 1e-9)
    return square / length;
  return square_to(first.kind == CoreKind::segment ? first.axis() : second.axis(), Vec3::UnitZ());
}

SolidGap line_gap(const ConvexSolid& first, const ConvexSolid& second) {
  const CorePair pair = nearest_of_segments(first, second);
  const Vec3 step = pair.on_second - pair.on_first;
  const double distance = step.norm();
  SolidGap gap;
  gap.outcome = GapOutcome::measured;
  gap.high_mm = gap.low_mm = distance - first.rounding_mm - second.rounding_mm;
  gap.normal = distance > 0.0 ? Vec3(step / distance) : square_to_both(first, second);
  gap.on_first = pair.on_first + first.rounding_mm * gap.normal;
  gap.on_second = pair.on_second - second.rounding_mm * gap.normal;
  return gap;
}

// Signed at any depth: the furthest point of the solid towards the inside.
SolidGap half_space_gap(const ConvexSolid& ground, const ConvexSolid& solid) {
  SolidGap gap;
  const Vec3 outward = ground.axis();
  gap.outcome = GapOutcome::measured;
  gap.normal = outward;
  gap.on_second = furthest_of(solid, -outward);
  const double over = outward.dot(gap.on_second - ground.centre_mm);
  gap.on_first = gap.on_second - over * outward;
  gap.low_mm = gap.high_mm = over - ground.rounding_mm;
  gap.on_first += ground.rounding_mm * outward;
  return gap;
}

// Only faces that look at each other leave a gap; all others meet somewhere.
SolidGap two_half_spaces(const ConvexSolid& first, const ConvexSolid& second) {
  SolidGap gap;
  gap.normal = first.axis();
  gap.on_first = first.centre_mm;
  gap.on_second = first.centre_mm;
  const double roundings = first.rounding_mm + second.rounding_mm;
  const double over = gap.normal.dot(second.centre_mm - first.centre_mm);
  const bool facing = (first.axis() + second.axis()).norm() < 1e-12;
  gap.outcome = facing ? GapOutcome::measured : GapOutcome::deeper_than;
  gap.high_mm = facing ? over - roundings : -roundings;
  gap.low_mm = facing ? gap.high_mm : -kUnboundedDepth;
  if (facing) gap.on_second += over * gap.normal;
  gap.on_first += first.rounding_mm * gap.normal;
  gap.on_second -= second.rounding_mm * gap.normal;
  return gap;
}

}  // namespace

CorePair nearest_of_segments(const ConvexSolid& first, const ConvexSolid& second) {
  const Vec3 a = first.axis();
  const Vec3 b = second.axis();
  const double half_a = first.half_mm.z();
  const double half_b = second.half_mm.z();
  const Vec3 between = second.centre_mm - first.centre_mm;
  const double cosine = a.dot(b);
  const double along_a = a.dot(between);
  const double along_b = b.dot(between);
  const double squared_sine = a.cross(b).squaredNorm();
  // Along parallel lines any place of the first will do before the clamping.
  double on_a = squared_sine > 1e-20 ? (along_a - cosine * along_b) / squared_sine : 0.0;
  on_a = std::clamp(on_a, -half_a, half_a);
  const double on_b = std::clamp(cosine * on_a - along_b, -half_b, half_b);
  on_a = std::clamp(cosine * on_b + along_a, -half_a, half_a);
  return {first.centre_mm + on_a * a, second.centre_mm + on_b * b};
}

std::optional<SolidGap> closed_gap(const ConvexSolid& first, const ConvexSolid& second) {
  if (first.kind == CoreKind::nothing || second.kind == CoreKind::nothing) return SolidGap{};
  const bool first_space = first.kind == CoreKind::half_space;
  const bool second_space = second.kind == CoreKind::half_space;
  if (first_space && second_space) return two_half_spaces(first, second);
  if (first_space) return half_space_gap(first, second);
  if (second_space) return flipped(half_space_gap(second, first));
  if (is_line(first) && is_line(second)) return line_gap(first, second);
  return std::nullopt;
}

SolidGap gap_between(const ConvexSolid& first, const ConvexSolid& second, const GapWanted& wanted) {
  if (const auto closed = closed_gap(first, second)) return *closed;
  return searched_gap(first, second, wanted);
}

}  // namespace tackbench
