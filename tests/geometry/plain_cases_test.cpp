// Solids without size, twins, needles, far ones, broken numbers.
#include <gtest/gtest.h>

#include <cmath>
#include <limits>

#include "core/geometry/solid_gap.h"
#include "tests/geometry/random_solid.h"

namespace tackbench {
namespace {

const double kNaN = std::numeric_limits<double>::quiet_NaN();
const Vec3 kX = Vec3::UnitX();
const Vec3 kZ = Vec3::UnitZ();

void expect_finite(const SolidGap& gap) {
  EXPECT_TRUE(std::isfinite(gap.low_mm) && std::isfinite(gap.high_mm));
  EXPECT_TRUE(gap.on_first.allFinite() && gap.on_second.allFinite() && gap.normal.allFinite());
  EXPECT_NEAR(gap.normal.norm(), 1.0, 1e-9);
}

TEST(SolidsWithoutSize, AreTheSmallerKindThatTheyAre) {
  EXPECT_EQ(capsule(kX, kX, 5.0).kind, CoreKind::point);
  EXPECT_EQ(rounded_disc(kX, kZ, 0.0, 5.0).kind, CoreKind::point);
  EXPECT_EQ(rounded_cylinder(-kX, kX, 0.0).kind, CoreKind::segment);
  EXPECT_EQ(rounded_cylinder(kX, kX, 4.0).kind, CoreKind::disc);
  EXPECT_EQ(rounded_cylinder(-4.0 * kX, 4.0 * kX, 4.0, 4.0).kind, CoreKind::point);
  EXPECT_EQ(rounded_box(kX, Mat3::Identity(), {0, 0, 0}).kind, CoreKind::point);
  EXPECT_EQ(rounded_box(kX, Mat3::Identity(), {0, 7, 0}).kind, CoreKind::segment);
  EXPECT_EQ(rounded_box(kX, Mat3::Identity(), {-3, 7, 2}).kind, CoreKind::box);
  EXPECT_EQ(convex_hull_of({kX}).kind, CoreKind::point);
  EXPECT_EQ(convex_hull_of({kX, kZ}).kind, CoreKind::segment);
  EXPECT_EQ(convex_hull_of({}).kind, CoreKind::nothing);
  // A box with one side left is as long as that side, wherever it points.
  const ConvexSolid rod = rounded_box(Vec3::Zero(), Mat3::Identity(), {0, 10, 0});
  EXPECT_NEAR(gap_between(rod, ball({0, 25, 0}, 0.0)).high_mm, 20.0, 1e-9);
  EXPECT_NEAR(gap_between(rod, ball({25, 0, 0}, 0.0)).high_mm, 25.0, 1e-9);
}

TEST(SolidsWithoutSize, FlatBoxesAndFlatHullsHaveADistance) {
  const ConvexSolid sheet = rounded_box(Vec3::Zero(), Mat3::Identity(), {100, 60, 0});
  EXPECT_NEAR(searched_gap(sheet, ball({10, 5, 40}, 3.0)).high_mm, 37.0, 1e-3);
  const ConvexSolid triangle = convex_hull_of({{0, 0, 0}, {100, 0, 0}, {0, 100, 0}});
  EXPECT_NEAR(searched_gap(triangle, ball({20, 20, 9}, 0.0)).high_mm, 9.0, 1e-3);
  // A needle: all but on one line.
  const ConvexSolid needle = convex_hull_of({{0, 0, 0}, {1000, 0, 0}, {500, 1e-9, 0}});
  EXPECT_NEAR(searched_gap(needle, ball({400, 30, 0}, 0.0)).high_mm, 30.0, 1e-3);
  const ConvexSolid same = convex_hull_of({kX, kX, kX, kX});
  EXPECT_NEAR(searched_gap(same, ball({1, 8, 0}, 0.0)).high_mm, 8.0, 1e-3);
}

TEST(SolidsWithoutSize, HullOfABoxesCornersIsTheBox) {
  RandomSolids random(21);
  for (int scene = 0; scene < 200; ++scene) {
    const Mat3 turn = random.turn();
    const Vec3 size(30.0, 70.0, 20.0);
    std::vector<Vec3> corners;
    for (const double x : {-15.0, 15.0})
      for (const double y : {-35.0, 35.0})
        for (const double z : {-10.0, 10.0}) corners.emplace_back(turn * Vec3(x, y, z));
    const ConvexSolid other = random.any(random.vector(200.0));
    const SolidGap hull = searched_gap(convex_hull_of(corners), other);
    const SolidGap box = searched_gap(rounded_box(Vec3::Zero(), turn, size), other);
    EXPECT_EQ(hull.outcome, box.outcome) << scene;
    if (box.outcome != GapOutcome::measured) continue;
    EXPECT_NEAR(hull.high_mm, box.high_mm, 1e-3) << scene;
  }
}

TEST(PlainCases, TwinsAreInEachOtherByTheirRoundingsOrDeeper) {
  RandomSolids random(22);
  for (const CoreKind kind : {CoreKind::point, CoreKind::segment, CoreKind::disc, CoreKind::box,
                              CoreKind::cylinder, CoreKind::hull}) {
    const ConvexSolid solid = random.of_kind(kind, random.vector(100.0));
    const SolidGap gap = gap_between(solid, solid);
    expect_finite(gap);
    EXPECT_NEAR(gap.high_mm, -2.0 * solid.rounding_mm, 1e-6);
    EXPECT_NE(gap.outcome, GapOutcome::nothing_there);
  }
}

TEST(PlainCases, TouchingCoresAreKnownToTouch) {
  const SolidGap boxes = searched_gap(rounded_box({0, 0, 0}, Mat3::Identity(), {10, 10, 10}),
                                      rounded_box({10, 3, 2}, Mat3::Identity(), {10, 10, 10}));
  expect_finite(boxes);
  EXPECT_EQ(boxes.outcome, GapOutcome::measured);
  EXPECT_NEAR(boxes.high_mm, 0.0, 1e-9);
}

TEST(PlainCases, FarAwayKeepsItsDigits) {
  const Vec3 far(1e6, -1e6, 1e6);
  const SolidGap gap =
      searched_gap(rounded_cylinder(far, far + 100.0 * kZ, 30.0, 2.0),
                   rounded_box(far + Vec3(80.0, 0.0, 50.0), Mat3::Identity(), {60, 60, 60}, 3.0));
  EXPECT_EQ(gap.outcome, GapOutcome::measured);
  EXPECT_NEAR(gap.high_mm, 20.0, 1e-3);
  const SolidGap wide = gap_between(ball(Vec3::Zero(), 1.0), rounded_disc(far, kZ, 10.0, 0.0));
  EXPECT_EQ(wide.outcome, GapOutcome::measured);
  EXPECT_NEAR(wide.high_mm, std::hypot(std::sqrt(2.0) * 1e6 - 10.0, 1e6) - 1.0, 1e-3);
}

TEST(PlainCases, BrokenNumbersAreNothing) {
  const ConvexSolid good = ball(kX, 1.0);
  const Vec3 broken(0.0, kNaN, 0.0);
  for (const ConvexSolid& solid :
       {ball(broken, 1.0), ball(kX, kNaN), capsule(kX, broken, 1.0),
        rounded_disc(kX, broken, 1.0, 1.0), rounded_disc(kX, kZ, kNaN, 0.0),
        rounded_cylinder(kX, broken, 2.0), rounded_cylinder(kX, kZ, 2.0, kNaN),
        rounded_box(kX, Mat3::Identity(), broken), convex_hull_of({kX, broken, kZ}),
        half_space(broken, kZ), ball({std::numeric_limits<double>::infinity(), 0, 0}, 1.0)}) {
    EXPECT_EQ(solid.kind, CoreKind::nothing);
    const SolidGap gap = gap_between(solid, good);
    EXPECT_EQ(gap.outcome, GapOutcome::nothing_there);
    expect_finite(gap);
  }
}

}  // namespace
}  // namespace tackbench
