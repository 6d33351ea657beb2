#include <Eigen/Geometry>
#include <algorithm>
#include <cmath>
#include <limits>

#include "core/geometry/nearest_to_origin.h"
#include "core/geometry/solid_gap.h"
#include "core/geometry/support.h"

namespace tackbench {

namespace {

// Cores nearer than this share of the coordinates touch: no direction can be read from less.
constexpr double kTouching = 1e-12;

struct Found {
  Vec3 on_first = Vec3::Zero();  // of the cores, against the search's origin
  Vec3 on_second = Vec3::Zero();
  double high = std::numeric_limits<double>::infinity();
  double low = -std::numeric_limits<double>::infinity();
  Vec3 normal = Vec3::UnitX();  // of the plane that proves `low`
  bool overlap = false;
  int rounds = 0;
};

class CoreSearch {
 public:
  CoreSearch(const ConvexSolid& first, const ConvexSolid& second, const Vec3& origin)
      : first_(first), second_(second), origin_(origin) {}

  // How far the planes square to `along` (unit) stand apart, from the corner that it gives.
  SimplexCorner corner(const Vec3& along) const {
    SimplexCorner made;
    made.on_first = furthest_of_core(first_, along, origin_);
    made.on_second = furthest_of_core(second_, -along, origin_);
    made.apart = made.on_second - made.on_first;
    return made;
  }

  Found run(const GapWanted& wanted) {
    Found found;
    Vec3 along = second_.centre_mm - first_.centre_mm;
    const double distance = along.norm();
    along = distance > 0.0 ? Vec3(along / distance) : Vec3::UnitX();
    Simplex simplex;
    double scale = 0.0;
    const int most = std::max(1, wanted.most_rounds);
    for (found.rounds = 1; found.rounds <= most; ++found.rounds) {
      const SimplexCorner next = corner(along);
      scale = std::max(scale, next.apart.norm());
      if (const double low = along.dot(next.apart); low > found.low) {
        found.low = low;
        found.normal = along;
      }
      if (found.high - found.low <= wanted.tolerance_mm) return found;
      simplex.corners[static_cast<std::size_t>(simplex.count++)] = next;
      const Simplex whole = simplex;
      if (reduce_to_nearest(simplex)) return overlapping(found, whole, simplex);
      const Vec3 apart = simplex.apart();
      const double high = apart.norm();
      // No nearer than before: the numbers' own grain is reached.
      if (!(high < found.high)) return found;
      found.high = high;
      found.on_first = simplex.on_first();
      found.on_second = simplex.on_second();
      if (high <= kTouching * scale) return overlapping(found, whole, simplex);
      along = apart / high;
    }
    found.rounds = most;
    return found;
  }

 private:
  // The faces of the last simplex lie near the surface that the origin is nearest to: the best of
  // the planes along them tells touching from overlap, and bounds the depth.
  Found overlapping(Found found, const Simplex& whole, const Simplex& common) const {
    constexpr int kFaces[4][3] = {{0, 1, 2}, {0, 1, 3}, {0, 2, 3}, {1, 2, 3}};
    for (const auto& face : kFaces) {
      if (face[2] >= whole.count) continue;
      const auto at = [&](int i) -> const Vec3& {
        return whole.corners[static_cast<std::size_t>(face[i])].apart;
      };
      const Vec3 square = (at(1) - at(0)).cross(at(2) - at(0));
      const double area = square.norm();
      if (!(area > 0.0)) continue;
      for (const double way : {1.0, -1.0}) {
        const Vec3 along = way / area * square;
        const double low = along.dot(corner(along).apart);
        if (low <= found.low) continue;
        found.low = low;
        found.normal = along;
      }
    }
    // The place that both cores hold.
    found.on_first = common.on_first();
    found.on_second = common.on_second();
    found.high = 0.0;
    found.overlap = true;
    return found;
  }

  const ConvexSolid& first_;
  const ConvexSolid& second_;
  const Vec3& origin_;
};

}  // namespace

SolidGap searched_gap(const ConvexSolid& first, const ConvexSolid& second,
                      const GapWanted& wanted) {
  SolidGap gap;
  const auto bounded = [](const ConvexSolid& solid) {
    return solid.kind != CoreKind::nothing && solid.kind != CoreKind::half_space;
  };
  if (!bounded(first) || !bounded(second)) return gap;
  const Vec3 origin = 0.5 * (first.centre_mm + second.centre_mm);
  const Found found = CoreSearch(first, second, origin).run(wanted);
  const double roundings = first.rounding_mm + second.rounding_mm;
  gap.high_mm = found.high - roundings;
  gap.low_mm = std::min(found.low, found.high) - roundings;
  gap.rounds = found.rounds;
  const Vec3 step = found.on_second - found.on_first;
  // At the core's own surface the step gives the way; touching cores have only the plane's.
  gap.normal = found.overlap || !(found.high > 0.0) ? found.normal : Vec3(step / step.norm());
  gap.on_first = origin + found.on_first + first.rounding_mm * gap.normal;
  gap.on_second = origin + found.on_second - second.rounding_mm * gap.normal;
  if (gap.high_mm - gap.low_mm <= wanted.tolerance_mm) {
    gap.outcome = GapOutcome::measured;
  } else {
    gap.outcome = found.overlap ? GapOutcome::deeper_than : GapOutcome::not_narrowed;
  }
  return gap;
}

}  // namespace tackbench
