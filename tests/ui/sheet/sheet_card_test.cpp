// The sheet with real events, without a display.
#include <QComboBox>
#include <QLineEdit>
#include <QWheelEvent>
#include <cmath>

#include "core/project-file/project_file.h"
#include "tests/ui/sheet/open_sheet.h"
#include "ui/sheet/finding_places.h"
#include "ui/sheet/rulers.h"

namespace tackbench::ui {
namespace {

std::string text_of(const Project& project) {
  return project_text(project);
}

Vec3 drawn_place(const Session& session, const std::string& path) {
  const auto grip = grip_at(session.project(), path);
  EXPECT_TRUE(grip.has_value()) << path;
  return grip ? grip->at_mm : Vec3::Zero();
}

constexpr auto kKnuckleBall = "drag_link.knuckle_ball_mm";

// Every point of the truck in every view: one drag is one undo step, undo brings the very text of
// the file back, redo the change.
class EveryPoint : public testing::TestWithParam<std::string> {};

TEST_P(EveryPoint, IsDraggedInEveryViewUndoneAndRedone) {
  OpenSheet sheet(GetParam());
  const std::string before = text_of(sheet.session.project());
  int moved = 0;
  for (const Grip& grip : grips(sheet.session.project())) {
    for (const SheetView view : kSheetViews) {
      sheet.session.select(grip.path);
      const QPoint from = sheet.at(grip.path, view);
      // The far end of rails that are drawn cut short.
      if (!sheet.card.paper().contains(from)) {
        EXPECT_EQ(grip.path, "shapes.rails.rear_end_mm");
        continue;
      }
      sheet.drag(from, from + QPoint(13, -9));
      sheet.settle();
      EXPECT_EQ(sheet.session.selected(), grip.path);
      const std::string after = text_of(sheet.session.project());
      EXPECT_EQ(after.find("nan"), std::string::npos) << grip.path;
      const Vec3 now = drawn_place(sheet.session, grip.path);
      EXPECT_TRUE(now.allFinite()) << grip.path;
      if (after == before) {
        EXPECT_FALSE(sheet.session.can_undo()) << grip.path;
        continue;
      }
      ++moved;
      // What is free stays in the plane of the view.
      if (grip.freedom == GripFreedom::free) {
        EXPECT_NEAR(sight(view).dot(now - grip.at_mm), 0.0, 1e-3) << grip.path;
      }
      EXPECT_EQ(sheet.session.undo_name(), QString::fromStdString("Move " + grip.words));
      sheet.session.undo();
      EXPECT_EQ(text_of(sheet.session.project()), before) << grip.path;
      EXPECT_FALSE(sheet.session.can_undo()) << grip.path << ": one drag, one step";
      sheet.session.redo();
      EXPECT_EQ(text_of(sheet.session.project()), after) << grip.path;
      sheet.session.undo();
      sheet.settle();
    }
  }
  // Most points are free and move in all three views.
  EXPECT_GT(moved, 2 * static_cast<int>(grips(sheet.session.project()).size()));
}

INSTANTIATE_TEST_SUITE_P(Samples, EveryPoint,
                         testing::Values("tender-as-first-tacked", "timber-wagon"));

TEST(SheetCard, PointFollowsThePointer) {
  OpenSheet sheet;
  const QPoint from = sheet.at(kKnuckleBall, SheetView::side);
  sheet.session.select(kKnuckleBall);
  sheet.drag(from, from + QPoint(30, -20), Qt::ControlModifier);
  sheet.settle();
  const QPoint now = sheet.at(kKnuckleBall, SheetView::side);
  EXPECT_LE((now - from - QPoint(30, -20)).manhattanLength(), 2);
}

// With the wheels turned the ball stands elsewhere; it still goes where the hand pulls it.
TEST(SheetCard, PointIsDraggedInATurnedTruck) {
  OpenSheet sheet;
  Controls turned;
  turned.hand_wheel = radians_from_degrees(300.0);
  turned.bump_left = 30.0;
  sheet.session.set_controls(turned);
  sheet.settle();
  sheet.session.select(kKnuckleBall);
  const QPoint from = sheet.at(kKnuckleBall, SheetView::plan);
  const GripLayer before = [&] {
    GripLayer layer;
    layer.show(sheet.session.project(), sheet.session.posed());
    return layer;
  }();
  const GripPlace* place = before.find(kKnuckleBall);
  const QPoint by(12, 7);
  sheet.drag(from, from + by, Qt::ControlModifier);
  sheet.settle();
  // Mapped back by the motion at the press: the drawn place, put through it, lies under the hand.
  const Vec3 posed = (place->moved * Point<Chassis>{drawn_place(sheet.session, kKnuckleBall)}).mm;
  const QPointF wanted = sheet.card.place_in(SheetView::plan, place->posed_mm) + by;
  const QPointF got = sheet.card.place_in(SheetView::plan, posed);
  EXPECT_LT(std::hypot(wanted.x() - got.x(), wanted.y() - got.y()), 1.0);
  EXPECT_NEAR(posed.z(), place->posed_mm.z(), 1e-2);
}

TEST(SheetCard, EscapeCancelsADrag) {
  OpenSheet sheet;
  const std::string before = text_of(sheet.session.project());
  const QPoint from = sheet.at(kKnuckleBall, SheetView::side);
  sheet.session.select(kKnuckleBall);
  sheet.press(from);
  sheet.move(from + QPoint(30, 0));
  EXPECT_TRUE(sheet.session.dragging());
  EXPECT_NE(text_of(sheet.session.project()), before);
  QTest::keyClick(&sheet.card, Qt::Key_Escape);
  EXPECT_FALSE(sheet.session.dragging());
  EXPECT_EQ(text_of(sheet.session.project()), before);
  EXPECT_FALSE(sheet.session.can_undo());
  sheet.release(from + QPoint(30, 0));
  EXPECT_EQ(text_of(sheet.session.project()), before);
}

TEST(SheetCard, PressAloneChangesNothing) {
  OpenSheet sheet;
  const QPoint at = sheet.at(kKnuckleBall, SheetView::side);
  QTest::mouseClick(&sheet.card, Qt::LeftButton, {}, at);
  EXPECT_FALSE(sheet.session.can_undo());
  EXPECT_FALSE(sheet.session.selected().empty());
}

TEST(SheetCard, DragGoesToWholeMillimetresUnlessControlIsHeld) {
  OpenSheet sheet;
  // Far from what it could line up with, so that only the unit is left.
  sheet.card.fill_with(SheetView::side);
  sheet.session.select("driver.heel_point_mm");
  for (const bool free : {false, true}) {
    const QPoint from = sheet.at("driver.heel_point_mm", SheetView::side);
    const auto held = free ? Qt::ControlModifier : Qt::NoModifier;
    sheet.press(from, held);
    sheet.move(from + QPoint(17, 29), held);
    const bool lined_up = !sheet.card.snap_guides().empty();
    const Vec3 now = drawn_place(sheet.session, "driver.heel_point_mm");
    const bool whole = std::abs(now.x() - std::round(now.x())) < 2e-3 &&
                       std::abs(now.z() - std::round(now.z())) < 2e-3;
    if (free) {
      EXPECT_FALSE(lined_up);
      EXPECT_FALSE(whole) << now.transpose();
    } else {
      EXPECT_TRUE(whole || lined_up) << now.transpose();
    }
    QTest::keyClick(&sheet.card, Qt::Key_Escape);
    sheet.release(from);
    sheet.settle();
  }
}

TEST(SheetCard, SnapsLevelWithANeighbourAndSaysSo) {
  OpenSheet sheet;
  sheet.card.fill_with(SheetView::side);
  constexpr auto kMiddle = "shaft_line.joints[1].centre_mm";
  const Vec3 upper = drawn_place(sheet.session, "shaft_line.joints[0].centre_mm");
  sheet.session.select(kMiddle);
  const QPoint from = sheet.at(kMiddle, SheetView::side);
  const QPointF level = sheet.card.place_in(SheetView::side, upper);
  const QPoint to(from.x() + 3, qRound(level.y()) + 2);
  sheet.press(from);
  sheet.move((from + to) / 2);
  sheet.move(to);
  ASSERT_FALSE(sheet.card.snap_guides().empty());
  EXPECT_NEAR(drawn_place(sheet.session, kMiddle).z(), upper.z(), 2e-3);
  EXPECT_TRUE(sheet.card.snap_guides().front().words.contains("level"))
      << sheet.card.snap_guides().front().words.toStdString();
  // Suspended while Ctrl is held.
  sheet.move(to, Qt::ControlModifier);
  EXPECT_TRUE(sheet.card.snap_guides().empty());
  EXPECT_GT(std::abs(drawn_place(sheet.session, kMiddle).z() - upper.z()), 0.1);
  sheet.release(to);
}

TEST(SheetCard, ShiftKeepsAJointOnItsShaft) {
  OpenSheet sheet;
  constexpr auto kMiddle = "shaft_line.joints[1].centre_mm";
  const auto grip = grip_at(sheet.session.project(), kMiddle);
  ASSERT_TRUE(grip && grip->has_along);
  sheet.session.select(kMiddle);
  const QPoint from = sheet.at(kMiddle, SheetView::side);
  sheet.drag(from, from + QPoint(4, 30), Qt::ShiftModifier);
  const Vec3 step = drawn_place(sheet.session, kMiddle) - grip->at_mm;
  EXPECT_GT(step.norm(), 1.0);
  EXPECT_LT(step.cross(grip->along).norm(), 2e-3);
}

struct Nudge {
  Qt::Key key;
  Qt::KeyboardModifiers held;
  SheetView view;
  Vec3 step;  // chassis, mm
};

class ArrowKeys : public testing::TestWithParam<Nudge> {};

TEST_P(ArrowKeys, MoveThePointAlongTheViewsAxes) {
  const Nudge& nudge = GetParam();
  OpenSheet sheet;
  sheet.session.select(kKnuckleBall);
  sheet.card.focus_view(nudge.view);
  const Vec3 before = drawn_place(sheet.session, kKnuckleBall);
  QTest::keyClick(&sheet.card, nudge.key, nudge.held);
  const Vec3 step = drawn_place(sheet.session, kKnuckleBall) - before;
  EXPECT_LT((step - nudge.step).norm(), 1e-6) << step.transpose();
  EXPECT_FALSE(sheet.session.dragging());
  sheet.session.undo();
  EXPECT_EQ(drawn_place(sheet.session, kKnuckleBall), before);
  EXPECT_FALSE(sheet.session.can_undo());
}

// Forward (X) is to the left in the side view and in the plan, left (Y) to the right from ahead.
INSTANTIATE_TEST_SUITE_P(
    Steps, ArrowKeys,
    testing::Values(Nudge{Qt::Key_Left, {}, SheetView::side, {1, 0, 0}},
                    Nudge{Qt::Key_Up, {}, SheetView::side, {0, 0, 1}},
                    Nudge{Qt::Key_Down, Qt::ShiftModifier, SheetView::side, {0, 0, -10}},
                    Nudge{Qt::Key_Right, Qt::ControlModifier, SheetView::side, {-0.1, 0, 0}},
                    Nudge{Qt::Key_Right, {}, SheetView::front, {0, 1, 0}},
                    Nudge{Qt::Key_Up, {}, SheetView::plan, {0, -1, 0}}));

TEST(SheetCard, ArrowKeysGoBySixteenthsInInches) {
  OpenSheet sheet;
  ASSERT_TRUE(sheet.session.set_field("sheet.unit", "inch_fraction").empty());
  sheet.settle();
  sheet.session.select(kKnuckleBall);
  const Vec3 before = drawn_place(sheet.session, kKnuckleBall);
  QTest::keyClick(&sheet.card, Qt::Key_Left);
  // Places are kept to a micrometre.
  EXPECT_NEAR(drawn_place(sheet.session, kKnuckleBall).x() - before.x(), 25.4 / 16.0, 1e-3);
}

TEST(SheetCard, WhatIsNudgedIsSpoken) {
  OpenSheet sheet;
  sheet.session.select(kKnuckleBall);
  const QString before = sheet.card.accessibleDescription();
  EXPECT_TRUE(before.contains("Drag-link ball on the knuckle"));
  QTest::keyClick(&sheet.card, Qt::Key_Up, Qt::ShiftModifier);
  sheet.settle();
  const QString after = sheet.card.accessibleDescription();
  EXPECT_NE(before, after);
  EXPECT_TRUE(after.contains("drag link")) << after.toStdString();
}

TEST(SheetCard, KeysGoThroughThePointsInTheOrderOfMotion) {
  OpenSheet sheet;
  std::vector<std::string> wanted;
  for (const Grip& grip : grips(sheet.session.project())) wanted.push_back(grip.path);
  for (const std::string& path : wanted) {
    QTest::keyClick(&sheet.card, Qt::Key_N);
    EXPECT_EQ(sheet.session.selected(), path);
  }
  QTest::keyClick(&sheet.card, Qt::Key_N);
  EXPECT_EQ(sheet.session.selected(), wanted.front());
  QTest::keyClick(&sheet.card, Qt::Key_P);
  EXPECT_EQ(sheet.session.selected(), wanted.back());
}

TEST(SheetCard, WheelKeepsWhatIsUnderThePointer) {
  OpenSheet sheet;
  const QPointF pointer(313.0, 207.0);
  for (const int turn : {120, 120, -240, 360}) {
    const ViewPoint before = sheet.card.transform().to_sheet(pointer);
    QWheelEvent event(pointer, sheet.card.mapToGlobal(pointer), {}, {0, turn}, Qt::NoButton, {},
                      Qt::NoScrollPhase, false);
    const double scale = sheet.card.transform().scale();
    QApplication::sendEvent(&sheet.card, &event);
    const ViewPoint after = sheet.card.transform().to_sheet(pointer);
    EXPECT_NEAR(before.x, after.x, 1e-6);
    EXPECT_NEAR(before.y, after.y, 1e-6);
    EXPECT_GT((sheet.card.transform().scale() - scale) * turn, 0.0);
  }
}

TEST(SheetCard, PaperIsPannedUnderThePointer) {
  OpenSheet sheet;
  const QPoint empty(sheet.card.width() - 60, 70);
  for (const Qt::MouseButton button : {Qt::LeftButton, Qt::MiddleButton}) {
    const ViewPoint before = sheet.card.transform().to_sheet(empty);
    QTest::mousePress(&sheet.card, button, {}, empty);
    sheet.move(empty + QPoint(-20, 5));
    sheet.move(empty + QPoint(-50, 30));
    QTest::mouseRelease(&sheet.card, button, {}, empty + QPoint(-50, 30));
    const ViewPoint after = sheet.card.transform().to_sheet(empty + QPoint(-50, 30));
    EXPECT_NEAR(before.x, after.x, 1e-6);
    EXPECT_NEAR(before.y, after.y, 1e-6);
    EXPECT_FALSE(sheet.session.can_undo());
  }
  QTest::keyClick(&sheet.card, Qt::Key_F);
  EXPECT_TRUE(sheet.card.paper().contains(sheet.at(kKnuckleBall, SheetView::side)));
}

TEST(SheetCard, ClickOnALineSelectsWhatItDraws) {
  OpenSheet sheet;
  const Pose& pose = sheet.session.posed().pose;
  const Vec3 on_link = 0.4 * pose.steering.drag_link.from_mm + 0.6 * pose.steering.drag_link.to_mm;
  QTest::mouseClick(&sheet.card, Qt::LeftButton, {},
                    sheet.card.place_in(SheetView::plan, on_link).toPoint());
  EXPECT_TRUE(sheet.session.selected().starts_with("drag_link")) << sheet.session.selected();
  QTest::mouseClick(&sheet.card, Qt::LeftButton, {}, {sheet.card.width() - 40, 60});
  EXPECT_EQ(sheet.session.selected(), "");
}

TEST(SheetCard, TypingADigitOpensExactEntry) {
  OpenSheet sheet;
  sheet.session.select(kKnuckleBall);
  QTest::keyClick(&sheet.card, Qt::Key_4, {});
  auto* entry = sheet.card.findChild<ExactEntry*>();
  ASSERT_TRUE(entry->is_open());
  auto* x = entry->findChildren<QLineEdit*>()[0];
  EXPECT_EQ(x->text(), "4");
  const Vec3 before = drawn_place(sheet.session, kKnuckleBall);
  x->setText("12-3/8 in");
  QTest::keyClick(x, Qt::Key_Return);
  EXPECT_FALSE(entry->is_open());
  const Vec3 after = drawn_place(sheet.session, kKnuckleBall);
  EXPECT_NEAR(after.x(), 314.325, 1e-9);
  EXPECT_EQ(after.y(), before.y());
  EXPECT_EQ(after.z(), before.z());
  sheet.session.undo();
  EXPECT_EQ(drawn_place(sheet.session, kKnuckleBall), before);
}

// The unit of the window is switched while the entry is open, with the point's own numbers in it.
TEST(SheetCard, ExactEntryReadsItsNumbersInTheUnitThatTheyWereWrittenIn) {
  OpenSheet sheet;
  sheet.session.select(kKnuckleBall);
  sheet.card.enter_exactly();
  auto* entry = sheet.card.findChild<ExactEntry*>();
  const Vec3 before = drawn_place(sheet.session, kKnuckleBall);
  Project inches = sheet.session.project();
  auto settings = std::make_shared<SheetSettings>();
  settings->unit = ShownUnit::inch_decimal;
  inches.sheet = settings;
  sheet.session.edit("Switch unit", inches);
  sheet.settle();
  ASSERT_TRUE(entry->is_open());
  auto* x = entry->findChildren<QLineEdit*>()[0];
  x->setText("75");
  QTest::keyClick(x, Qt::Key_Return);
  EXPECT_EQ(drawn_place(sheet.session, kKnuckleBall), Vec3(75.0, before.y(), before.z()));
}

TEST(SheetCard, DoubleClickOpensExactEntryAndAWrongOneKeepsTheOldPlace) {
  OpenSheet sheet;
  const std::string before = text_of(sheet.session.project());
  sheet.session.select(kKnuckleBall);
  const QPoint at = sheet.at(kKnuckleBall, SheetView::side);
  QTest::mouseDClick(&sheet.card, Qt::LeftButton, {}, at);
  auto* entry = sheet.card.findChild<ExactEntry*>();
  ASSERT_TRUE(entry->is_open());
  auto* z = entry->findChildren<QLineEdit*>()[2];
  z->setText("12 kg");
  QTest::keyClick(z, Qt::Key_Return);
  EXPECT_TRUE(entry->is_open());
  EXPECT_TRUE(entry->accessibleDescription().contains("kg"))
      << entry->accessibleDescription().toStdString();
  EXPECT_EQ(text_of(sheet.session.project()), before);
  QTest::keyClick(z, Qt::Key_Escape);
  EXPECT_FALSE(entry->is_open());
  EXPECT_EQ(text_of(sheet.session.project()), before);
}

TEST(SheetCard, DistanceToAnotherPointIsEntered) {
  OpenSheet sheet;
  sheet.session.select(kKnuckleBall);
  sheet.card.enter_exactly();
  auto* entry = sheet.card.findChild<ExactEntry*>();
  auto* other = entry->findChild<QComboBox*>();
  const int row = other->findData("steering_box.arm");
  ASSERT_GT(row, 0);
  other->setCurrentIndex(row);
  auto* distance = entry->findChildren<QLineEdit*>()[3];
  distance->setText("812 - 40");
  QTest::keyClick(distance, Qt::Key_Return);
  EXPECT_FALSE(entry->is_open());
  const Vec3 between =
      drawn_place(sheet.session, kKnuckleBall) - drawn_place(sheet.session, "steering_box.arm");
  EXPECT_NEAR(between.norm(), 772.0, 2e-3);  // places are kept to a micrometre
}

TEST(SheetCard, MeasuresBetweenPointsAndKeepsANote) {
  OpenSheet sheet;
  QTest::keyClick(&sheet.card, Qt::Key_M);
  ASSERT_TRUE(sheet.card.measuring());
  const std::string from = "column.hand_wheel_centre_mm";
  QTest::mouseClick(&sheet.card, Qt::LeftButton, {}, sheet.at(from, SheetView::side));
  QTest::mouseClick(&sheet.card, Qt::LeftButton, {}, sheet.at(kKnuckleBall, SheetView::side));
  const auto& points = sheet.card.measure_tool().points();
  ASSERT_EQ(points.size(), 2U);
  EXPECT_EQ(points[0].path, from);
  const Vec3 step = drawn_place(sheet.session, points[1].path) - drawn_place(sheet.session, from);
  const auto measured = measure(points);
  ASSERT_TRUE(measured);
  EXPECT_NEAR(measured->distance, step.norm(), 1e-6);
  EXPECT_NEAR(*measured->level_off, std::hypot(step.x(), step.y()), 1e-6);
  EXPECT_NEAR(*measured->drop, -step.z(), 1e-6);
  QTest::keyClick(&sheet.card, Qt::Key_K);
  ASSERT_TRUE(sheet.session.project().sheet);
  ASSERT_EQ(sheet.session.project().sheet->notes.size(), 1U);
  EXPECT_EQ(sheet.session.project().sheet->notes[0].from, from);
  sheet.session.undo();
  EXPECT_TRUE(!sheet.session.project().sheet || sheet.session.project().sheet->notes.empty());
}

TEST(SheetCard, MeasuresAnAngleAndAPlaceOnThePaper) {
  OpenSheet sheet;
  sheet.card.set_measuring(true);
  const std::vector<std::string> three{"column.hand_wheel_centre_mm", "steering_box",
                                       "front_axle.left_knuckle.tie_rod_ball_mm"};
  std::vector<Vec3> at;
  std::vector<std::string> points;
  for (const std::string& path : three) {
    QTest::mouseClick(&sheet.card, Qt::LeftButton, {}, sheet.at(path, SheetView::side));
    points.push_back(sheet.card.measure_tool().points().back().path);
    at.push_back(drawn_place(sheet.session, points.back()));
  }
  const auto measured = measure(sheet.card.measure_tool().points());
  ASSERT_TRUE(measured && measured->angle);
  const Vec3 back = at[0] - at[1];
  const Vec3 on = at[2] - at[1];
  EXPECT_NEAR(std::cos(*measured->angle), back.dot(on) / back.norm() / on.norm(), 1e-9);
  QTest::keyClick(&sheet.card, Qt::Key_K);
  sheet.settle();
  ASSERT_TRUE(sheet.session.project().sheet);
  ASSERT_EQ(sheet.session.project().sheet->notes.size(), 1U);
  EXPECT_EQ(sheet.session.project().sheet->notes[0].corner, points[1]);
  // Places on the paper: as long as the paper says.
  QTest::keyClick(&sheet.card, Qt::Key_M);
  QTest::keyClick(&sheet.card, Qt::Key_M);
  const QPoint empty(sheet.card.width() - 90, sheet.card.height() - 120);
  QTest::mouseClick(&sheet.card, Qt::LeftButton, {}, empty);
  QTest::mouseClick(&sheet.card, Qt::LeftButton, {}, empty + QPoint(60, 0));
  const auto paper = measure(sheet.card.measure_tool().points());
  ASSERT_TRUE(paper);
  EXPECT_FALSE(paper->in_space);
  EXPECT_NEAR(paper->distance * sheet.card.transform().scale(), 60.0, 1e-6);
}

TEST(SheetCard, AnyViewFillsTheSheetAndGivesItBack) {
  OpenSheet sheet;
  const double scale = sheet.card.transform().scale();
  for (const SheetView view : kSheetViews) {
    sheet.card.fill_with(view);
    EXPECT_GT(sheet.card.transform().scale(), scale);
    EXPECT_EQ(sheet.card.focused_view(), view);
    sheet.settle();
    sheet.card.fill_with(std::nullopt);
    EXPECT_DOUBLE_EQ(sheet.card.transform().scale(), scale);
  }
}

TEST(SheetCard, FindingsArePutOnTheSheet) {
  OpenSheet sheet;
  int placed = 0;
  for (const Finding& finding : sheet.session.judged().findings) {
    sheet.card.show_finding(finding);
    const auto places = finding_places(sheet.session.project(), finding);
    for (const std::string& path : places)
      EXPECT_TRUE(grip_at(sheet.session.project(), path)) << finding.name << " at " << path;
    placed += places.empty() ? 0 : 1;
    sheet.card.grab();
  }
  EXPECT_EQ(placed, static_cast<int>(sheet.session.judged().findings.size()));
}

// A left turn of the hand wheel is anticlockwise for the driver, so clockwise from ahead.
TEST(SheetCard, HandWheelIsTurnedByItsRim) {
  OpenSheet sheet;
  sheet.card.fill_with(SheetView::front);
  const ColumnStation& column = *sheet.session.project().column;
  const auto& cab = sheet.session.posed().mechanism->chassis_from_cab;
  const Vec3 centre = (cab * column.hand_wheel_centre).mm;
  const Vec3 right_rim = centre - Vec3(0, column.hand_wheel_diameter / 2.0 - 8.0, 0);
  const QPoint rim = sheet.card.place_in(SheetView::front, right_rim).toPoint();
  ASSERT_LT(rim.x(), sheet.card.place_in(SheetView::front, centre).x());
  sheet.drag(rim, rim - QPoint(0, 40));
  EXPECT_GT(sheet.session.controls().hand_wheel, 0.1);
  EXPECT_FALSE(sheet.session.can_undo()) << "controls are no part of the document";
  sheet.drag(rim, rim + QPoint(0, 40));
  sheet.drag(rim, rim + QPoint(0, 40));
  EXPECT_LT(sheet.session.controls().hand_wheel, -0.1);
}

TEST(SheetCard, RoadWheelIsSteeredInPlanAndRaisedInTheOtherViews) {
  OpenSheet sheet;
  const FrontAxleStation& axle = *sheet.session.project().front_axle;
  const double radius = axle.tyre.diameter / 2.0;
  // Front end of the left tyre, from above.
  const Vec3 front(radius - 2.0, axle.track / 2.0, -300.0);
  const QPoint nose = sheet.card.place_in(SheetView::plan, front).toPoint();
  sheet.drag(nose, nose + QPoint(0, 20));  // down the page is to the left
  sheet.settle();
  EXPECT_GT(sheet.session.posed().pose.steering.left.steer, radians_from_degrees(2.0));
  sheet.session.set_controls({});
  sheet.settle();
  const Vec3 top(0.0, axle.track / 2.0, axle.wheel_centre_height + radius);
  const QPoint crown = sheet.card.place_in(SheetView::side, top).toPoint();
  sheet.drag(crown, crown - QPoint(0, 5));
  EXPECT_GT(sheet.session.controls().bump_left, 10.0);
  EXPECT_EQ(sheet.session.controls().bump_right, 0.0);
  sheet.drag(crown, crown - QPoint(0, 200));
  EXPECT_LE(sheet.session.controls().bump_left, axle.suspension.bump);
}

TEST(SheetCard, ALoopThatCannotCloseIsSaid) {
  OpenSheet sheet;
  sheet.session.select(kKnuckleBall);
  // The link as drawn always fits where it is drawn; a given one need not.
  ASSERT_TRUE(sheet.session.set_field("drag_link.given_length_mm", "3000").empty());
  sheet.settle();
  EXPECT_TRUE(sheet.card.accessibleDescription().contains("wheels cannot be set straight"))
      << sheet.card.accessibleDescription().toStdString();
  sheet.session.undo();
  sheet.settle();
  EXPECT_FALSE(sheet.card.accessibleDescription().contains("cannot"));
}

TEST(SheetCard, OtherSamplesAndAnEmptyProjectArePainted) {
  for (const char* sample : {"bare-start", "timber-wagon", "tender-sorted"}) {
    OpenSheet sheet(sample, {700, 420});
    EXPECT_FALSE(sheet.card.grab().isNull());
    QTest::keyClick(&sheet.card, Qt::Key_N);
    QTest::keyClick(&sheet.card, Qt::Key_Up);
    sheet.settle();
  }
  OpenSheet blank("");
  EXPECT_FALSE(blank.card.grab().isNull());
}

}  // namespace
}  // namespace tackbench::ui
