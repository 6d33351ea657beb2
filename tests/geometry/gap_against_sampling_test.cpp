// Pairs of discs have no closed form: here against sampling, made sharp by zooming in. The distance
// of a point from a disc is known; over the points of another disc it is a convex function, so the
// least of a grid leads to the least of all.
#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>

#include "core/geometry/solid_gap.h"
#include "core/geometry/support.h"
#include "tests/geometry/random_solid.h"

namespace tackbench {
namespace {

struct FlatDisc {
  Vec3 centre;
  Mat3 axes;
  double radius;

  double distance(const Vec3& point) const {
    const Vec3 own = axes.transpose() * (point - centre);
    return std::hypot(std::max(0.0, std::hypot(own.x(), own.y()) - radius), own.z());
  }
};

double sampled(const FlatDisc& first, const FlatDisc& second) {
  constexpr int kGrid = 40;
  double x = 0.0;
  double y = 0.0;
  double least = second.distance(first.centre);
  double reach = first.radius;
  for (int zoom = 0; zoom < 40; ++zoom) {
    const double middle_x = x;
    const double middle_y = y;
    for (int i = -kGrid; i <= kGrid; ++i)
      for (int j = -kGrid; j <= kGrid; ++j) {
        double at_x = middle_x + reach * i / kGrid;
        double at_y = middle_y + reach * j / kGrid;
        // Outside points are drawn in to the edge, so that the edge is well covered.
        const double out = std::hypot(at_x, at_y);
        if (out > first.radius) {
          at_x *= first.radius / out;
          at_y *= first.radius / out;
        }
        const Vec3 point = first.centre + first.axes * Vec3(at_x, at_y, 0.0);
        const double distance = second.distance(point);
        if (distance >= least) continue;
        least = distance;
        x = at_x;
        y = at_y;
      }
    reach *= 0.6;
  }
  return least;
}

TEST(GapAgainstSampling, Discs) {
  RandomSolids random(11);
  int apart = 0;
  for (int scene = 0; scene < 60; ++scene) {
    const FlatDisc first{random.vector(10.0), random.turn(), random.between(5.0, 300.0)};
    const FlatDisc second{random.vector(400.0), random.turn(), random.between(5.0, 300.0)};
    const double expected = sampled(first, second);
    const SolidGap gap =
        searched_gap(rounded_disc(first.centre, first.axes.col(2), first.radius, 0.0),
                     rounded_disc(second.centre, second.axes.col(2), second.radius, 0.0));
    if (expected < 1e-3) {
      EXPECT_LE(gap.low_mm, 1e-3) << scene;
      continue;
    }
    ++apart;
    ASSERT_EQ(gap.outcome, GapOutcome::measured) << scene;
    EXPECT_NEAR(gap.high_mm, expected, 2e-3) << scene;
    EXPECT_LE(gap.low_mm, expected + 1e-9) << scene;
  }
  EXPECT_GT(apart, 30);
}

// No two sampled surface points stand nearer than the low bound, and the nearest points lie on both
// solids.
TEST(GapAgainstSampling, BoundsHoldForEveryKind) {
  RandomSolids random(12);
  for (int scene = 0; scene < 400; ++scene) {
    const ConvexSolid first = random.any(random.vector(50.0));
    const ConvexSolid second = random.any(random.vector(400.0));
    const SolidGap gap = gap_between(first, second);
    ASSERT_LE(gap.low_mm, gap.high_mm + 1e-9) << scene;
    if (gap.outcome == GapOutcome::deeper_than) continue;
    ASSERT_EQ(gap.outcome, GapOutcome::measured) << scene;
    EXPECT_NEAR((gap.on_second - gap.on_first).dot(gap.normal), gap.high_mm, 1e-6) << scene;
    for (int i = 0; i < 200; ++i) {
      const Vec3 way = random.direction();
      EXPECT_LE(way.dot(gap.on_first), way.dot(furthest_of(first, way)) + 1e-6) << scene;
      EXPECT_LE(way.dot(gap.on_second), way.dot(furthest_of(second, way)) + 1e-6) << scene;
      const double between = way.dot(furthest_of(second, -way) - furthest_of(first, way));
      // Every plane is a bound: none may promise more than is there.
      EXPECT_LE(between, gap.high_mm + 1e-6) << scene;
    }
  }
}

}  // namespace
}  // namespace tackbench
