// Solids of every bounded kind with random sizes and places, for properties and comparisons.
#pragma once

#include <random>

#include "core/basics/units.h"
#include "core/geometry/convex_solid.h"

namespace tackbench {

class RandomSolids {
 public:
  explicit RandomSolids(std::uint64_t seed) : random_(seed) {}

  double between(double low, double high) {
    return std::uniform_real_distribution<double>(low, high)(random_);
  }
  int whole(int low, int high) { return std::uniform_int_distribution<int>(low, high)(random_); }
  Vec3 vector(double reach) {
    return {between(-reach, reach), between(-reach, reach), between(-reach, reach)};
  }
  Vec3 direction() {
    Vec3 step = vector(1.0);
    while (step.norm() < 0.1 || step.norm() > 1.0) step = vector(1.0);
    return step.normalized();
  }
  Mat3 turn() { return turn_about(direction(), between(-kPi, kPi)); }

  ConvexSolid of_kind(CoreKind kind, const Vec3& at) {
    const double size = between(1.0, 200.0);
    const double rounding = whole(0, 2) == 0 ? 0.0 : between(0.0, 60.0);
    switch (kind) {
      case CoreKind::segment:
        return capsule(at - size * direction(), at + size * direction(), rounding);
      case CoreKind::disc:
        return rounded_disc(at, direction(), size, rounding);
      case CoreKind::box:
        return rounded_box(at, turn(), Vec3(size, between(1.0, 200.0), between(1.0, 300.0)),
                           0.1 * rounding);
      case CoreKind::cylinder: {
        const Vec3 half = between(1.0, 200.0) * direction();
        return rounded_cylinder(at - half, at + half, size, 0.5 * rounding);
      }
      case CoreKind::hull: {
        std::vector<Vec3> points;
        for (int i = whole(3, 12); i > 0; --i) points.emplace_back(at + vector(size));
        return convex_hull_of(points, rounding);
      }
      default:
        return ball(at, rounding);
    }
  }
  ConvexSolid any(const Vec3& at) {
    constexpr CoreKind kKinds[] = {CoreKind::point, CoreKind::segment,  CoreKind::disc,
                                   CoreKind::box,   CoreKind::cylinder, CoreKind::hull};
    return of_kind(kKinds[whole(0, 5)], at);
  }

 private:
  std::mt19937_64 random_;
};

}  // namespace tackbench
