// What must hold for any two solids.
#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <cmath>

#include "core/geometry/solid_gap.h"
#include "tests/geometry/random_solid.h"

namespace tackbench {
namespace {

struct Scene {
  RandomSolids random{*rc::gen::arbitrary<std::uint32_t>()};
  ConvexSolid first = random.any(random.vector(50.0));
  ConvexSolid second = random.any(random.vector(400.0));
  SolidGap gap = gap_between(first, second);

  bool measured() const { return gap.outcome == GapOutcome::measured; }
};

// Two brackets of the same number, each no wider than asked.
void same(const SolidGap& a, const SolidGap& b, double more = 0.0) {
  RC_ASSERT(a.outcome == b.outcome);
  RC_ASSERT(a.low_mm <= b.high_mm + more + 1e-6);
  RC_ASSERT(b.low_mm + more <= a.high_mm + 1e-6);
}

RC_GTEST_PROP(GapOfAnyTwo, IsTheSameBothWays, ()) {
  const Scene scene;
  const SolidGap back = gap_between(scene.second, scene.first);
  RC_ASSERT(scene.gap.outcome == back.outcome);
  if (!scene.measured()) return;
  same(scene.gap, back);
  RC_ASSERT(std::abs((back.on_first - back.on_second).dot(back.normal) + back.high_mm) < 1e-6);
}

RC_GTEST_PROP(GapOfAnyTwo, IsTheSameAfterARigidMotion, ()) {
  Scene scene;
  if (!scene.measured()) return;
  const Mat3 turn = scene.random.turn();
  const Vec3 shift = scene.random.vector(5000.0);
  same(scene.gap, gap_between(moved(scene.first, turn, shift), moved(scene.second, turn, shift)));
}

RC_GTEST_PROP(GapOfAnyTwo, ShrinksByWhatASolidGrows, ()) {
  Scene scene;
  if (!scene.measured()) return;
  const double by = scene.random.between(0.0, 100.0);
  same(gap_between(grown(scene.first, by), scene.second), scene.gap, -by);
}

RC_GTEST_PROP(GapOfAnyTwo, ChangesNoFasterThanASolidMoves, ()) {
  Scene scene;
  if (!scene.measured()) return;
  const Vec3 step = scene.random.vector(20.0);
  const SolidGap after = gap_between(moved(scene.first, Mat3::Identity(), step), scene.second);
  RC_ASSERT(after.low_mm <= scene.gap.high_mm + step.norm() + 1e-6);
  if (after.outcome == GapOutcome::measured)
    RC_ASSERT(after.high_mm >= scene.gap.low_mm - step.norm() - 1e-6);
}

// Stopped early, the bracket is wide but true.
RC_GTEST_PROP(GapOfAnyTwo, KeepsItsPromiseWhenStopped, ()) {
  Scene scene;
  if (!scene.measured()) return;
  const SolidGap early = searched_gap(scene.first, scene.second, {1e-3, scene.random.whole(0, 4)});
  RC_ASSERT(early.low_mm <= scene.gap.high_mm + 1e-6);
  RC_ASSERT(early.high_mm >= scene.gap.low_mm - 1e-6);
  RC_ASSERT(std::isfinite(early.low_mm) && std::isfinite(early.high_mm));
  RC_ASSERT((early.outcome == GapOutcome::measured) == (early.high_mm - early.low_mm <= 1e-3));
}

RC_GTEST_PROP(GapOfAnyTwo, IsAboutTheBallsAroundThem, ()) {
  const Scene scene;
  const BoundingBall a = bounding_ball(scene.first);
  const BoundingBall b = bounding_ball(scene.second);
  const double at_least = (a.centre_mm - b.centre_mm).norm() - a.radius - b.radius;
  RC_ASSERT(scene.gap.high_mm >= at_least - 1e-6);
}

}  // namespace
}  // namespace tackbench
