// The sheet's parts, without a window.
#include <gtest/gtest.h>

#include <cmath>
#include <random>

#include "core/basics/units.h"
#include "ui/look/palette.h"
#include "ui/sheet/exact_place.h"
#include "ui/sheet/measure_tool.h"
#include "ui/sheet/pointer_place.h"
#include "ui/sheet/rulers.h"
#include "ui/sheet/sheet_transform.h"
#include "ui/sheet/snap.h"
#include "ui/sheet/tag_layout.h"

namespace tackbench::ui {
namespace {

TEST(SheetTransform, ThereAndBack) {
  SheetTransform transform;
  transform.fit({-1000, -500}, {3000, 1500}, QRectF(10, 20, 800, 500));
  const ViewPoint p{123.0, -45.0};
  const ViewPoint back = transform.to_sheet(transform.to_screen(p));
  EXPECT_NEAR(back.x, p.x, 1e-9);
  EXPECT_NEAR(back.y, p.y, 1e-9);
  // The corners lie inside; the tighter way is used up.
  EXPECT_NEAR(transform.scale(), 0.2, 1e-12);
  EXPECT_GT(transform.to_screen({0, 100}).x(), transform.to_screen({-100, 100}).x());
  EXPECT_LT(transform.to_screen({0, 100}).y(), transform.to_screen({0, 0}).y());
}

TEST(SheetTransform, ZoomsAboutThePointer) {
  SheetTransform transform;
  transform.fit({-1000, -500}, {3000, 1500}, QRectF(10, 20, 800, 500));
  const QPointF pointer(333.0, 77.0);
  const ViewPoint under = transform.to_sheet(pointer);
  for (const double factor : {2.0, 0.3}) {
    transform.zoom_about(pointer, factor);
    EXPECT_NEAR(transform.to_screen(under).x(), pointer.x(), 1e-9);
    EXPECT_NEAR(transform.to_screen(under).y(), pointer.y(), 1e-9);
  }
  EXPECT_NEAR(transform.scale(), 0.2 * 2.0 * 0.3, 1e-12);
}

TEST(RoundStep, IsOneTwoOrFiveAndWideEnough) {
  for (double scale = 0.005; scale < 30.0; scale *= 1.17) {
    for (const ShownUnit unit :
         {ShownUnit::millimetre, ShownUnit::inch_decimal, ShownUnit::inch_fraction}) {
      const double step = round_step(scale, unit, 50.0);
      if (scale * step < 50.0) {
        // Nothing finer than it: the least step of all is kept.
        EXPECT_LE(step, 1.0);
      }
      const double units = unit == ShownUnit::millimetre ? step : step / 25.4;
      if (units >= 1.0) {
        const double lead = units / std::pow(10.0, std::floor(std::log10(units) + 1e-9));
        EXPECT_TRUE(std::abs(lead - 1) < 1e-9 || std::abs(lead - 2) < 1e-9 ||
                    std::abs(lead - 5) < 1e-9)
            << units;
      } else if (unit != ShownUnit::millimetre) {
        EXPECT_NEAR(units * 16.0, std::round(units * 16.0), 1e-9);
      }
    }
  }
}

SnapSettings settings(double catch_mm = 8.0) {
  SnapSettings made;
  made.catch_mm = catch_mm;
  return made;
}

TEST(Snap, GoesToWholeUnits) {
  const Snapped snapped = snap({12.34, -5.67}, {}, settings());
  EXPECT_EQ(snapped.at.x, 12.0);
  EXPECT_EQ(snapped.at.y, -6.0);
  EXPECT_TRUE(snapped.guides.empty());
}

// Of a point that rides on a moved cab, whole units are those of the cab.
TEST(Snap, CountsWholeUnitsFromWhereTheyAreSaidToBegin) {
  SnapSettings moved = settings();
  moved.unit_origin = {0.25, -0.5};
  const Snapped snapped = snap({12.34, -5.67}, {}, moved);
  EXPECT_EQ(snapped.at.x, 12.25);
  EXPECT_EQ(snapped.at.y, -5.5);
}

TEST(Snap, GoesLevelAndPlumb) {
  const std::vector<SnapNeighbour> one{{"pin", {100.5, 50.25}}};
  const Snapped level = snap({300.2, 53.0}, one, settings());
  EXPECT_EQ(level.at.y, 50.25);
  EXPECT_EQ(level.at.x, 300.0);
  ASSERT_EQ(level.guides.size(), 1U);
  EXPECT_EQ(level.guides[0].words, "level with pin");
  const Snapped plumb = snap({104.0, 300.4}, one, settings());
  EXPECT_EQ(plumb.at.x, 100.5);
  EXPECT_EQ(plumb.at.y, 300.0);
}

TEST(Snap, GoesInLineAndSquareWithTwo) {
  // A slope of 4 : 3, so that level and plumb lines are out of the way.
  const std::vector<SnapNeighbour> two{{"a", {0, 0}}, {"b", {400, 300}}};
  const Snapped in_line = snap({803.0, 598.0}, two, settings());
  EXPECT_NEAR(in_line.at.x * 3.0 - in_line.at.y * 4.0, 0.0, 1e-9);
  EXPECT_EQ(in_line.guides.front().words, "in line with a and b");
  const Snapped square = snap({403.0 - 300.0, 301.0 + 400.0}, two, settings());
  EXPECT_NEAR((square.at.x - 400.0) * 400.0 + (square.at.y - 300.0) * 300.0, 0.0, 1e-6);
  EXPECT_EQ(square.guides.front().words, "square at b with a");
}

TEST(Snap, TakesTheCrossingOfTwoLines) {
  const std::vector<SnapNeighbour> two{{"a", {0, 0}}, {"b", {400, 300}}};
  const Snapped corner = snap({403.0, 2.0}, two, settings());
  EXPECT_NEAR(corner.at.x, 400.0, 1e-9);
  EXPECT_NEAR(corner.at.y, 0.0, 1e-9);
  EXPECT_EQ(corner.guides.size(), 2U);
}

TEST(Snap, NeverGoesFurtherThanItsReach) {
  std::mt19937 random(11);
  std::uniform_real_distribution<double> anywhere(-500.0, 500.0);
  for (int i = 0; i < 3000; ++i) {
    std::vector<SnapNeighbour> some(5, SnapNeighbour{"n", {}});
    for (SnapNeighbour& each : some) each.at = {anywhere(random), anywhere(random)};
    const ViewPoint wanted{anywhere(random), anywhere(random)};
    const Snapped snapped = snap(wanted, some, settings(6.0));
    ASSERT_TRUE(std::isfinite(snapped.at.x) && std::isfinite(snapped.at.y));
    EXPECT_LE(std::hypot(snapped.at.x - wanted.x, snapped.at.y - wanted.y), 8.4 + 1e-9);
  }
}

TEST(TagLayout, KeepsOffLinesAndOtherTags) {
  TagLayout layout(QRectF(0, 0, 800, 500));
  layout.avoid_line({0, 250}, {800, 250});
  layout.avoid_line({400, -1e6}, {400, 1e6});
  const QRectF first = layout.place({400, 250}, {120, 40});
  const QRectF second = layout.place({400, 250}, {120, 40});
  for (const QRectF& tag : {first, second}) {
    EXPECT_TRUE(QRectF(0, 0, 800, 500).contains(tag));
    EXPECT_TRUE(tag.bottom() < 250 || tag.top() > 250);
    EXPECT_TRUE(tag.right() < 400 || tag.left() > 400);
  }
  EXPECT_FALSE(first.intersects(second));
}

TEST(TagLayout, StaysWhereItWasWhileThatIsFree) {
  TagLayout layout(QRectF(0, 0, 800, 500));
  const QPointF kept(420, 190);
  EXPECT_EQ(layout.place({400, 250}, {100, 30}, &kept).topLeft(), kept);
  EXPECT_NE(layout.place({400, 250}, {100, 30}, &kept).topLeft(), kept);
}

// A faint line hides little: better over it than far away, and never over the place itself.
TEST(TagLayout, RatherCoversFaintLinesThanGoFar) {
  TagLayout layout(QRectF(0, 0, 800, 500));
  for (int x = 0; x < 800; x += 12)
    layout.avoid_line({x + 0.5, 0}, {x + 0.5, 500}, TagLayout::Cover::faint);
  const QPointF point(400, 250);
  const QRectF tag = layout.place(point, {200, 60});
  EXPECT_LE(distance_to(tag, point), 40.0);
  EXPECT_GT(distance_to(tag, point), 10.0);
}

TEST(TagLayout, GoesFarOnlyFromWhatMustNeverBeCovered) {
  TagLayout layout(QRectF(0, 0, 800, 500));
  const QRectF card(300, 150, 250, 250);
  layout.avoid(card);
  const QRectF tag = layout.place({400, 250}, {120, 40});
  EXPECT_FALSE(tag.intersects(card)) << tag.x() << ' ' << tag.y();
  EXPECT_FALSE(layout.place_close({425, 275}, {120, 40}).has_value());
}

TEST(TagLayout, SaysWhenNothingIsFreeCloseBy) {
  TagLayout layout(QRectF(0, 0, 800, 500));
  EXPECT_TRUE(layout.place_close({400, 250}, {120, 40}).has_value());
  layout.avoid(QRectF(0, 0, 800, 500));
  EXPECT_FALSE(layout.place_close({400, 250}, {120, 40}).has_value());
}

TEST(TagLayout, HasAPlaceEvenWhereNoneIsFree) {
  TagLayout layout(QRectF(0, 0, 60, 60));
  const QRectF tag = layout.place({900, 900}, {200, 40});
  EXPECT_TRUE(std::isfinite(tag.x()) && std::isfinite(tag.y()));
}

Path circle(const Vec3& axis) {
  Path path;
  path.freedom = GripFreedom::on_circle;
  path.centre_mm = Vec3(100, 200, 300);
  path.along = axis;
  path.at_mm = path.centre_mm + 150.0 * square_to(axis, Vec3(0.3, 0.2, -1));
  return path;
}

TEST(PlaceMeant, StaysOnTheCircleAndUnderThePointer) {
  const Path path = circle(Vec3::UnitY());
  for (double angle = -3.0; angle < 3.0; angle += 0.4) {
    const Vec3 wanted =
        path.centre_mm + turned(Vec3(path.at_mm - path.centre_mm), path.along, angle);
    const Vec3 meant = place_meant(path, SheetView::side, seen(SheetView::side, wanted));
    EXPECT_LT((meant - wanted).norm(), 0.05);
  }
}

TEST(PlaceMeant, TurnsTheLesserWayRoundACircleSeenEdgeOn) {
  const Path path = circle(Vec3::UnitY());
  const ViewPoint here = seen(SheetView::plan, path.at_mm);
  const Vec3 meant = place_meant(path, SheetView::plan, {here.x + 5.0, here.y});
  EXPECT_LT((meant - path.at_mm).norm(), 20.0);
  EXPECT_NEAR((meant - path.centre_mm).norm(), 150.0, 1e-9);
}

TEST(PlaceMeant, FollowsThePointerAlongASlopingLine) {
  Path path;
  path.freedom = GripFreedom::on_line;
  path.along = Vec3(0.6, 0.64, 0.48);
  const Vec3 wanted = 300.0 * path.along;
  for (const SheetView view : {SheetView::side, SheetView::front, SheetView::plan})
    EXPECT_LT((place_meant(path, view, seen(view, wanted)) - wanted).norm(), 1e-9);
  path.along = Vec3::UnitY();
  EXPECT_TRUE(seen_end_on(path, SheetView::side));
  EXPECT_EQ(place_meant(path, SheetView::side, {500, 500}), path.at_mm);
}

Grip free_grip(const Vec3& at) {
  Grip grip;
  grip.at_mm = at;
  return grip;
}

TEST(PlaceAtDistance, GoesStraightAwayOrAlongOrRound) {
  const Vec3 other(10, 20, 30);
  const auto straight =
      place_at_distance(free_grip({10, 20, 130}), other, 250.0, ShownUnit::millimetre);
  ASSERT_TRUE(straight);
  EXPECT_LT((*straight - Vec3(10, 20, 280)).norm(), 1e-9);

  Grip on_line = free_grip({0, 0, 0});
  on_line.freedom = GripFreedom::on_line;
  on_line.along = Vec3::UnitX();
  const auto along = place_at_distance(on_line, {0, 30, 0}, 50.0, ShownUnit::millimetre);
  ASSERT_TRUE(along);
  EXPECT_NEAR(std::abs(along->x()), 40.0, 1e-9);
  const auto too_near = place_at_distance(on_line, {0, 30, 0}, 20.0, ShownUnit::millimetre);
  ASSERT_FALSE(too_near);
  EXPECT_NE(too_near.problems()[0].wanted.find("30.0 mm"), std::string::npos);

  Grip round = free_grip({100, 0, 0});
  round.freedom = GripFreedom::on_circle;
  round.along = Vec3::UnitZ();
  round.centre_mm = Vec3::Zero();
  const auto turned_place = place_at_distance(round, {100, 0, 0}, 100.0, ShownUnit::millimetre);
  ASSERT_TRUE(turned_place);
  // A chord as long as the radius spans 60 degrees.
  EXPECT_NEAR(turned_place->x(), 50.0, 1e-6);
  const auto beyond = place_at_distance(round, {100, 0, 0}, 201.0, ShownUnit::millimetre);
  ASSERT_FALSE(beyond);
  EXPECT_NE(beyond.problems()[0].wanted.find("200.0 mm"), std::string::npos);
}

TEST(PlaceWithCoordinate, GoesAlongTheLineOrRoundTheCircle) {
  Grip on_line = free_grip({10, 20, 30});
  on_line.freedom = GripFreedom::on_line;
  on_line.along = Vec3(0.6, 0.0, 0.8);
  const auto along = place_with_coordinate(on_line, 0, 70.0, ShownUnit::millimetre);
  ASSERT_TRUE(along);
  EXPECT_LT((*along - Vec3(70, 20, 110)).norm(), 1e-9);
  EXPECT_FALSE(place_with_coordinate(on_line, 1, 21.0, ShownUnit::millimetre));
  EXPECT_TRUE(place_with_coordinate(on_line, 1, 20.0, ShownUnit::millimetre));

  Grip round = free_grip({100, 0, 0});
  round.freedom = GripFreedom::on_circle;
  round.along = Vec3::UnitZ();
  const auto turned_place = place_with_coordinate(round, 1, 60.0, ShownUnit::millimetre);
  ASSERT_TRUE(turned_place);
  EXPECT_LT((*turned_place - Vec3(80, 60, 0)).norm(), 1e-9);  // 3 : 4 : 5, the near one of two
  const auto beyond = place_with_coordinate(round, 1, 101.0, ShownUnit::millimetre);
  ASSERT_FALSE(beyond);
  EXPECT_NE(beyond.problems()[0].wanted.find("-100.0 mm to 100.0 mm"), std::string::npos)
      << beyond.problems()[0].wanted;
}

Picked point(const Vec3& at) {
  Picked made;
  made.path = "p";
  made.words = "p";
  made.at_mm = at;
  made.in_view = seen(SheetView::side, at);
  return made;
}

TEST(Measure, DistancePlumbAndAngle) {
  // The 3 4 5 triangle, stood up.
  const auto two = measure({point({0, 0, 300}), point({400, 0, 0})});
  ASSERT_TRUE(two);
  EXPECT_NEAR(two->distance, 500.0, 1e-9);
  EXPECT_NEAR(*two->level_off, 400.0, 1e-9);
  EXPECT_NEAR(*two->drop, 300.0, 1e-9);
  const auto three = measure({point({0, 0, 300}), point({0, 0, 0}), point({0, 70, 0})});
  ASSERT_TRUE(three && three->angle);
  EXPECT_NEAR(degrees_from_radians(*three->angle), 90.0, 1e-9);
  EXPECT_FALSE(measure({point({1, 2, 3})}));
}

// Words on the paper, at day and at night: WCAG 2.1 success criterion 1.4.3.
TEST(SheetColours, TextKeepsItsContrast) {
  for (const Palette* colours : {&day_palette(), &night_palette()}) {
    for (const QColor& text : {colours->ink, colours->soft, colours->moves, colours->past})
      for (const QColor& ground : {colours->paper, colours->card})
        EXPECT_GE(contrast(text, ground), 4.5);
  }
}

}  // namespace
}  // namespace tackbench::ui
