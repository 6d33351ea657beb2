// What the hand holds on the sheet, while the project changes under it.
#include <QLineEdit>
#include <QRegularExpression>
#include <cmath>

#include "core/checks/control_reach.h"
#include "core/project-file/project_file.h"
#include "core/project/field_path.h"
#include "tests/ui/sheet/open_sheet.h"

namespace tackbench::ui {
namespace {

constexpr auto kKnuckleBall = "drag_link.knuckle_ball_mm";

Vec3 drawn_place(const Session& session, const std::string& path) {
  const auto grip = grip_at(session.project(), path);
  EXPECT_TRUE(grip.has_value()) << path;
  return grip ? grip->at_mm : Vec3::Zero();
}

// The hand wheel's middle and the right of its rim, seen from ahead.
struct Rim {
  QPointF middle;
  double radius = 0.0;

  QPoint at(double angle) const {
    return (middle + radius * QPointF(std::cos(angle), std::sin(angle))).toPoint();
  }
};

Rim rim_of(OpenSheet& sheet) {
  sheet.card.fill_with(SheetView::front);
  sheet.settle();
  const ColumnStation& column = *sheet.session.project().column;
  const Vec3 centre =
      (sheet.session.posed().mechanism->chassis_from_cab * column.hand_wheel_centre).mm;
  const Vec3 side = centre + Vec3(0, column.hand_wheel_diameter / 2.0 - 8.0, 0);
  Rim rim;
  rim.middle = sheet.card.place_in(SheetView::front, centre);
  rim.radius = std::abs(sheet.card.place_in(SheetView::front, side).x() - rim.middle.x());
  return rim;
}

TEST(SheetHand, LetsGoOfAControlWhoseStationGoes) {
  OpenSheet sheet;
  const Rim rim = rim_of(sheet);
  sheet.press(rim.at(M_PI));
  sheet.move(rim.at(M_PI) - QPoint(0, 10));
  const double turned = sheet.session.controls().hand_wheel;
  ASSERT_GT(std::abs(turned), 0.01);
  ASSERT_TRUE(sheet.session.set_field("column", "none").empty());
  for (int i = 2; i < 6; ++i) sheet.move(rim.at(M_PI) - QPoint(0, 10 * i));
  sheet.settle();
  for (int i = 6; i < 10; ++i) sheet.move(rim.at(M_PI) - QPoint(0, 10 * i));
  EXPECT_EQ(sheet.session.controls().hand_wheel, turned);
  sheet.release(rim.at(M_PI));
}

// A press alone holds on to nothing either once its station has gone by undo.
TEST(SheetHand, ForgetsWhatItPressedOnWhenAnUndoTakesItAway) {
  OpenSheet sheet;
  Project whole = sheet.session.project();
  Project bare = whole;
  bare.column.reset();
  sheet.session.take(bare, {});
  sheet.settle();
  sheet.session.edit("Begin the column", whole);
  sheet.settle();
  const Rim rim = rim_of(sheet);
  sheet.press(rim.at(M_PI));
  sheet.session.undo();
  sheet.settle();
  sheet.move(rim.at(M_PI) - QPoint(0, 30));
  EXPECT_EQ(sheet.session.controls().hand_wheel, 0.0);
  sheet.release(rim.at(M_PI));
}

TEST(SheetHand, ANudgeDoesNotOutliveItsProject) {
  OpenSheet sheet;
  sheet.session.select("steering_box");
  QTest::keyPress(&sheet.card, Qt::Key_Right);
  ASSERT_TRUE(sheet.session.dragging());
  ASSERT_TRUE(sheet.session.open(sample_file("timber-wagon")).empty());
  sheet.settle();
  sheet.session.select("steering_box");
  const Vec3 before = drawn_place(sheet.session, "steering_box");
  QTest::keyPress(&sheet.card, Qt::Key_Up);
  EXPECT_LT((drawn_place(sheet.session, "steering_box") - before - Vec3(0, 0, 1)).norm(), 1e-6);
  QTest::keyRelease(&sheet.card, Qt::Key_Up);
  EXPECT_FALSE(sheet.session.dragging());
  EXPECT_EQ(sheet.session.project().name, read_project(sample_file("timber-wagon"))->name);
}

// Something else ends the drag (a save does): the next key begins a new one.
TEST(SheetHand, ANudgeThatWasEndedBeginsAnew) {
  OpenSheet sheet;
  sheet.session.select(kKnuckleBall);
  const Vec3 before = drawn_place(sheet.session, kKnuckleBall);
  QTest::keyPress(&sheet.card, Qt::Key_Up);
  sheet.session.end_drag();
  QTest::keyPress(&sheet.card, Qt::Key_Up);
  QTest::keyRelease(&sheet.card, Qt::Key_Up);
  EXPECT_LT((drawn_place(sheet.session, kKnuckleBall) - before - Vec3(0, 0, 2)).norm(), 1e-6);
}

// Steering angles between lock and lock are tens of degrees; what a nudge of one millimetre does to
// them is far below one.
TEST(SheetHand, WhatChangedSinceADragDoesNotCountTheHandWheel) {
  OpenSheet sheet;
  sheet.session.select("steering_box");
  QTest::keyClick(&sheet.card, Qt::Key_Right);
  sheet.settle();
  static const QRegularExpression kChange(
      QString("(?:~?)([+%1][0-9.]+)%2").arg(QChar(0x2212)).arg(QChar(0x00B0)));
  Controls turned;
  turned.hand_wheel = 5.0;
  sheet.session.set_controls(turned);
  sheet.settle();
  ASSERT_GT(std::abs(sheet.session.posed().pose.steering.left.steer), radians_from_degrees(5.0));
  const QString spoken = sheet.card.accessibleDescription();
  EXPECT_TRUE(kChange.match(spoken).hasMatch()) << spoken.toStdString();
  auto changes = kChange.globalMatch(spoken);
  while (changes.hasNext())
    EXPECT_LT(std::abs(changes.next().captured(1).replace(QChar(0x2212), '-').toDouble()), 2.0)
        << spoken.toStdString();
  for (const PlacedTag& placed : sheet.card.placed_tags()) {
    if (!placed.tag.change.endsWith(QChar(0x00B0))) continue;
    QString number = placed.tag.change;
    number.remove('~').remove(QChar(0x00B0)).replace(QChar(0x2212), '-');
    EXPECT_LT(std::abs(number.toDouble()), 2.0) << placed.tag.heading.toStdString();
  }
}

TEST(SheetHand, AMinusBeginsAnEntryOnlyWithAPointSelected) {
  OpenSheet sheet;
  auto* entry = sheet.card.findChild<ExactEntry*>();
  const double scale = sheet.card.transform().scale();
  QTest::keyClick(&sheet.card, '-');
  EXPECT_FALSE(entry->is_open());
  const double smaller = sheet.card.transform().scale();
  EXPECT_LT(smaller, scale);
  sheet.session.select(kKnuckleBall);
  QTest::keyClick(&sheet.card, Qt::Key_Minus, Qt::ControlModifier);
  EXPECT_FALSE(entry->is_open());
  EXPECT_LT(sheet.card.transform().scale(), smaller);
  QTest::keyClick(&sheet.card, '-');
  ASSERT_TRUE(entry->is_open());
  auto* x = entry->findChildren<QLineEdit*>()[0];
  EXPECT_EQ(x->text(), "-");
  x->setFocus();
  QTest::keyClicks(x, "412.5");
  QTest::keyClick(x, Qt::Key_Return);
  EXPECT_EQ(drawn_place(sheet.session, kKnuckleBall).x(), -412.5);
}

// With the checks stopped the hand wheel still ends where the truck's reach ends.
TEST(SheetHand, TheHandWheelEndsWithoutFreshChecks) {
  OpenSheet sheet;
  const LockResult locks = *sheet.session.judged().results.locks;
  ASSERT_TRUE(sheet.session.set_field("steering_box.ratio", "19").empty());
  sheet.session.stop_checks();
  const Rim rim = rim_of(sheet);
  ASSERT_FALSE(sheet.session.judged_fresh());
  sheet.press(rim.at(M_PI));
  const ControlReach reach = control_reach(*sheet.session.posed().mechanism, &locks);
  for (const double way : {1.0, -1.0}) {
    for (int i = 1; i <= 300; ++i) sheet.move(rim.at(M_PI + way * 0.2 * i));
    const double turned = sheet.session.controls().hand_wheel;
    EXPECT_GE(turned, reach.full_right - 1e-9);
    EXPECT_LE(turned, reach.full_left + 1e-9);
    EXPECT_GT(std::abs(turned), 3.0);
  }
  sheet.release(rim.at(M_PI));
}

}  // namespace
}  // namespace tackbench::ui
