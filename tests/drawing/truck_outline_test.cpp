#include "core/drawing/truck_outline.h"

#include <gtest/gtest.h>

#include <array>
#include <cmath>

#include "core/basics/units.h"
#include "tests/drawing/drawn_extent.h"

namespace tackbench {
namespace {

Extent extent(const std::vector<ViewPoint>& points) {
  Extent made;
  made.add(points);
  return made;
}

// Geometry of the support of a cylinder: along a direction at angle t to its axis it reaches
// half cos t + radius sin t, and a ball swells that by its own radius.
TEST(Outline, CylinderAtAnyTurnReachesAsFarAsItsSupport) {
  constexpr double kRadius = 410.0;
  constexpr double kHalf = 87.5;
  constexpr double kRounding = 40.0;
  for (int degrees = 0; degrees <= 180; degrees += 5) {
    const double steer = radians_from_degrees(degrees);
    const Vec3 axis(-std::sin(steer), std::cos(steer), 0.0);
    const std::array discs{Disc{Vec3(10, 20, 30) + kHalf * axis, axis, kRadius},
                           Disc{Vec3(10, 20, 30) - kHalf * axis, axis, kRadius}};
    const double c = std::abs(std::cos(steer));
    const double s = std::abs(std::sin(steer));
    // Points are set a few degrees apart along the rounding: what they miss of it.
    constexpr double kMissed = 0.5;
    for (const SheetView view : {SheetView::side, SheetView::front, SheetView::plan}) {
      const Extent seen_as = extent(outline(view, discs, kRounding, OutlineGrain::fine));
      const double along_x = 2.0 * (kHalf * s + kRadius * c + kRounding);
      const double along_y = 2.0 * (kHalf * c + kRadius * s + kRounding);
      const double wanted = view == SheetView::front ? along_y : along_x;
      EXPECT_NEAR(seen_as.width(), wanted, kMissed) << degrees;
      EXPECT_LE(seen_as.width(), wanted + 1e-6) << degrees;
      const double upright = view == SheetView::plan ? along_y : 2.0 * (kRadius + kRounding);
      EXPECT_NEAR(seen_as.height(), upright, kMissed) << degrees;
      EXPECT_LE(seen_as.height(), upright + 1e-6) << degrees;
    }
  }
}

TEST(Outline, SquareToTheViewIsExact) {
  const std::array discs{Disc{Vec3(0, 87.5, 0), Vec3::UnitY(), 410.0},
                         Disc{Vec3(0, -87.5, 0), Vec3::UnitY(), 410.0}};
  const Extent front = extent(outline(SheetView::front, discs, 40.0, OutlineGrain::fine));
  EXPECT_NEAR(front.width(), 255.0, 1e-5);
  EXPECT_NEAR(front.height(), 900.0, 1e-5);
}

// A convex outline turns one way only, and anticlockwise has the area positive.
TEST(Outline, IsConvexAndAnticlockwise) {
  const Vec3 axis = Vec3(0.3, 0.8, -0.2).normalized();
  const std::array discs{Disc{Vec3(0, 0, 0), axis, 36.0}, Disc{Vec3(20, 5, -180), axis, 22.0}};
  for (const OutlineGrain grain : {OutlineGrain::coarse, OutlineGrain::fine}) {
    for (const SheetView view : {SheetView::side, SheetView::front, SheetView::plan}) {
      const std::vector<ViewPoint> points = outline(view, discs, 0.0, grain);
      ASSERT_GE(points.size(), 8U);
      double area = 0.0;
      for (std::size_t i = 0; i < points.size(); ++i) {
        const ViewPoint& a = points[i];
        const ViewPoint& b = points[(i + 1) % points.size()];
        const ViewPoint& c = points[(i + 2) % points.size()];
        area += a.x * b.y - a.y * b.x;
        EXPECT_GE((b.x - a.x) * (c.y - b.y) - (b.y - a.y) * (c.x - b.x), -0.05);
      }
      EXPECT_GT(area, 0.0);
    }
  }
}

TEST(Hull, KeepsTheCornersOfASquareOnly) {
  const std::vector<ViewPoint> corners =
      hull({{0, 0}, {2, 0}, {1, 1}, {2, 2}, {0, 2}, {1, 0}, {0, 0}, {2, 2}});
  ASSERT_EQ(corners.size(), 4U);
  double area = 0.0;
  for (std::size_t i = 0; i < 4; ++i) {
    const ViewPoint& a = corners[i];
    const ViewPoint& b = corners[(i + 1) % 4];
    area += 0.5 * (a.x * b.y - a.y * b.x);
  }
  EXPECT_DOUBLE_EQ(area, 4.0);
}

TEST(CutBelow, LeavesAFlatFoot) {
  const Disc disc{Vec3::Zero(), Vec3::UnitY(), 450.0};
  const std::vector<ViewPoint> round =
      outline(SheetView::side, {&disc, 1}, 0.0, OutlineGrain::fine);
  const Extent stood = extent(cut_below(round, -430.0));
  EXPECT_DOUBLE_EQ(stood.bottom, -430.0);
  EXPECT_NEAR(stood.top, 450.0, 1e-5);
}

}  // namespace
}  // namespace tackbench
