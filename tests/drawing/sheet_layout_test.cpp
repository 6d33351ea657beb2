#include <gtest/gtest.h>

#include "core/drawing/truck_view.h"

namespace tackbench {
namespace {

constexpr SheetView kViews[] = {SheetView::side, SheetView::front, SheetView::plan};

// Axes of the vehicle: ISO 8855, X forward, Y left, Z up. Seen from the left the front is to the
// left; from ahead the vehicle's left is to the right; from above both hold.
TEST(Projection, AxesLieAsEachViewSeesThem) {
  const auto same = [](const ViewPoint& a, double x, double y) { return a.x == x && a.y == y; };
  EXPECT_TRUE(same(seen(SheetView::side, Vec3(1, 0, 0)), -1, 0));
  EXPECT_TRUE(same(seen(SheetView::side, Vec3(0, 1, 0)), 0, 0));
  EXPECT_TRUE(same(seen(SheetView::side, Vec3(0, 0, 1)), 0, 1));
  EXPECT_TRUE(same(seen(SheetView::front, Vec3(1, 0, 0)), 0, 0));
  EXPECT_TRUE(same(seen(SheetView::front, Vec3(0, 1, 0)), 1, 0));
  EXPECT_TRUE(same(seen(SheetView::front, Vec3(0, 0, 1)), 0, 1));
  EXPECT_TRUE(same(seen(SheetView::plan, Vec3(1, 0, 0)), -1, 0));
  EXPECT_TRUE(same(seen(SheetView::plan, Vec3(0, 1, 0)), 0, -1));
  EXPECT_TRUE(same(seen(SheetView::plan, Vec3(0, 0, 1)), 0, 0));
}

// A view that is no mirror image: right across up points to the eye.
TEST(Projection, NoViewIsAMirrorImage) {
  for (const SheetView view : kViews) {
    const Vec3 right = movement_of(view, {1.0, 0.0});
    const Vec3 up = movement_of(view, {0.0, 1.0});
    EXPECT_EQ(right.cross(up), sight(view));
  }
}

TEST(Projection, AMovementIsSeenAsItWasMade) {
  const ViewPoint step{12.5, -7.25};
  for (const SheetView view : kViews) {
    const ViewPoint back = seen(view, movement_of(view, step));
    EXPECT_EQ(back.x, step.x);
    EXPECT_EQ(back.y, step.y);
    EXPECT_EQ(movement_of(view, step).dot(sight(view)), 0.0);
  }
}

TruckView bounded(SheetView view, ViewPoint least, ViewPoint greatest) {
  TruckView made;
  made.view = view;
  made.least = least;
  made.greatest = greatest;
  return made;
}

struct Laid {
  TruckView side = bounded(SheetView::side, {-1000, -750}, {2800, 1100});
  TruckView front = bounded(SheetView::front, {-1100, -760}, {1100, 1050});
  TruckView plan = bounded(SheetView::plan, {-980, -1080}, {2750, 1080});

  SheetLayout in(Projection projection) const {
    return sheet_layout(side, front, plan, projection, 300.0);
  }
};

// Places line up across the views, whatever the projection (ISO 128-3, from memory).
TEST(SheetLayout, PlacesLineUp) {
  for (const Projection projection : {Projection::first_angle, Projection::third_angle}) {
    const SheetLayout layout = Laid().in(projection);
    EXPECT_EQ(layout.plan.x, layout.side.x);
    EXPECT_EQ(layout.front.y, layout.side.y);
    for (const SheetView view : kViews)
      EXPECT_EQ(&layout.origin(view), view == SheetView::side    ? &layout.side
                                      : view == SheetView::front ? &layout.front
                                                                 : &layout.plan);
  }
}

// ISO 128-3 (from memory), the side view being the principal one. First angle: the view from the
// left lies to the right, the view from above below.
TEST(SheetLayout, FirstAngle) {
  const Laid laid;
  const SheetLayout layout = laid.in(Projection::first_angle);
  EXPECT_EQ(layout.front.x + laid.front.least.x, 2800.0 + 300.0);
  EXPECT_EQ(layout.plan.y + laid.plan.greatest.y, -760.0 - 300.0);
}

// Third angle: the view from the left lies to the left, the view from above above.
TEST(SheetLayout, ThirdAngle) {
  const Laid laid;
  const SheetLayout layout = laid.in(Projection::third_angle);
  EXPECT_EQ(layout.front.x + laid.front.greatest.x, -1000.0 - 300.0);
  EXPECT_EQ(layout.plan.y + laid.plan.least.y, 1100.0 + 300.0);
}

}  // namespace
}  // namespace tackbench
