// The truck's own controls worked by real events. TACKBENCH_PICTURES=<folder> keeps pictures.
#include "ui/desk/motion_desk.h"

#include <gtest/gtest.h>

#include <QAbstractItemView>
#include <QAccessible>
#include <QApplication>
#include <QComboBox>
#include <QDir>
#include <QElapsedTimer>
#include <QLabel>
#include <QMouseEvent>
#include <QPushButton>
#include <QTest>
#include <QToolButton>
#include <cmath>

#include "ui/desk/desk_words.h"
#include "ui/desk/hand_wheel_dial.h"
#include "ui/desk/lever.h"
#include "ui/look/palette.h"
#include "ui/look/style.h"
#include "ui/motion/pose_words.h"

namespace tackbench::ui {
namespace {

class DeskTest : public testing::Test {
 protected:
  DeskTest() : desk(session) {
    const std::string file =
        std::string(TACKBENCH_SOURCE_FOLDER) + "/sample-projects/tender-sorted/tender-sorted.tack";
    EXPECT_TRUE(session.open(file).empty());
    dress(desk);
    desk.show();
    desk.resize(1248, desk.sizeHint().height());
    settle();
  }
  void TearDown() override { use_theme(Theme::day); }

  void settle() {
    session.wait_until_fresh();
    QApplication::processEvents();
  }
  template <class Kind>
  Kind* part(const char* name) {
    auto* found = desk.findChild<Kind*>(QLatin1String(name));
    EXPECT_NE(found, nullptr) << name;
    return found;
  }
  void click(const char* name) {
    QTest::mouseClick(part<QAbstractButton>(name), Qt::LeftButton);
    settle();
  }
  void press(QWidget* widget, QPointF at) {
    QTest::mousePress(widget, Qt::LeftButton, {}, at.toPoint());
  }
  void move(QWidget* widget, QPointF at, Qt::KeyboardModifiers held = {}) {
    QMouseEvent event(QEvent::MouseMove, at, widget->mapToGlobal(at), Qt::NoButton, Qt::LeftButton,
                      held);
    QApplication::sendEvent(widget, &event);
  }
  void release(QWidget* widget, QPointF at) {
    QTest::mouseRelease(widget, Qt::LeftButton, {}, at.toPoint());
  }
  // On the rim, anticlockwise from the top.
  QPointF on_rim(double degrees) {
    auto* dial = part<HandWheelDial>("hand_wheel");
    const double a = radians_from_degrees(90.0 + degrees);
    const double radius = 0.35 * std::min(dial->width(), dial->height());
    return QRectF(dial->rect()).center() + radius * QPointF(std::cos(a), -std::sin(a));
  }
  void keep(const QString& name) {
    const QString folder = qEnvironmentVariable("TACKBENCH_PICTURES");
    if (folder.isEmpty()) return;
    QDir().mkpath(folder);
    desk.grab().save(folder + '/' + name + ".png");
  }

  Session session;
  MotionDesk desk;
};

TEST_F(DeskTest, ADragRoundTheWheelTurnsIt) {
  auto* dial = part<HandWheelDial>("hand_wheel");
  press(dial, on_rim(0.0));
  for (int a = 0; a <= 90; a += 10) move(dial, on_rim(a));
  release(dial, on_rim(90.0));
  settle();
  // The press falls on a whole pixel.
  EXPECT_NEAR(degrees_from_radians(session.controls().hand_wheel), 90.0, 1.5);
  EXPECT_TRUE(session.posed_fresh());
  EXPECT_EQ(session.posed().controls.hand_wheel, session.controls().hand_wheel);
}

TEST_F(DeskTest, TheWheelStopsAtTheLocks) {
  ASSERT_TRUE(session.judged().results.locks);
  const LockResult& locks = *session.judged().results.locks;
  auto* dial = part<HandWheelDial>("hand_wheel");
  press(dial, on_rim(0.0));
  for (int a = 0; a <= 5 * 360; a += 30) move(dial, on_rim(a));
  EXPECT_DOUBLE_EQ(session.controls().hand_wheel, locks.left.turns * kRadiansPerTurn);
  for (int a = 5 * 360; a >= -5 * 360; a -= 30) move(dial, on_rim(a));
  release(dial, on_rim(0.0));
  EXPECT_DOUBLE_EQ(session.controls().hand_wheel, -locks.right.turns * kRadiansPerTurn);
}

TEST_F(DeskTest, KeysTurnIt) {
  auto* dial = part<HandWheelDial>("hand_wheel");
  QTest::keyClick(dial, Qt::Key_Left);
  EXPECT_NEAR(degrees_from_radians(session.controls().hand_wheel), 5.0, 1e-9);
  QTest::keyClick(dial, Qt::Key_Right, Qt::ShiftModifier);
  EXPECT_NEAR(degrees_from_radians(session.controls().hand_wheel), -40.0, 1e-9);
  QTest::keyClick(dial, Qt::Key_Home);
  EXPECT_EQ(session.controls().hand_wheel, 0.0);
}

TEST_F(DeskTest, ButtonsGoToTheEnds) {
  const LockResult& locks = *session.judged().results.locks;
  const Suspension& suspension = session.project().front_axle->suspension;
  click("full_left");
  EXPECT_DOUBLE_EQ(session.controls().hand_wheel, locks.left.turns * kRadiansPerTurn);
  click("full_right");
  EXPECT_DOUBLE_EQ(session.controls().hand_wheel, -locks.right.turns * kRadiansPerTurn);
  click("straight");
  EXPECT_EQ(session.controls().hand_wheel, 0.0);
  click("full_bump");
  EXPECT_EQ(session.controls().bump_left, suspension.bump);
  EXPECT_EQ(session.controls().bump_right, suspension.bump);
  click("full_droop");
  EXPECT_EQ(session.controls().bump_left, -suspension.droop);
  click("ride_height");
  EXPECT_EQ(session.controls(), Controls{});
}

TEST_F(DeskTest, LeversMoveOneWheelOrBoth) {
  auto* left = part<Lever>("bump_left");
  press(left, left->knob());
  move(left, left->knob() - QPointF(0.0, 12.0));
  release(left, left->knob());
  EXPECT_GT(session.controls().bump_left, 0.0);
  EXPECT_EQ(session.controls().bump_right, 0.0);
  part<QAbstractButton>("linked")->click();
  QTest::keyClick(left, Qt::Key_Up);
  EXPECT_EQ(session.controls().bump_left, session.controls().bump_right);
  part<QAbstractButton>("linked")->click();
  QTest::keyClick(part<Lever>("bump_right"), Qt::Key_Home);
  EXPECT_NE(session.controls().bump_left, 0.0);
  EXPECT_EQ(session.controls().bump_right, 0.0);
  QTest::keyClick(left, Qt::Key_PageUp, Qt::ShiftModifier);
  EXPECT_EQ(session.controls().bump_right, session.project().front_axle->suspension.bump);
}

TEST_F(DeskTest, EachPedalHasItsLever) {
  const std::size_t count = session.posed().mechanism->pedals.size();
  ASSERT_GT(count, 0U);
  for (std::size_t i = 0; i < count; ++i) {
    auto* lever = part<Lever>(("pedal_" + std::to_string(i)).c_str());
    QTest::keyClick(lever, Qt::Key_PageDown);
    EXPECT_EQ(session.controls().pedals[i], 1.0);
    QTest::keyClick(lever, Qt::Key_PageUp);
    EXPECT_EQ(session.controls().pedals[i], 0.0);
  }
}

// The tender's cab shakes and its springs wind up; a truck without has no such lever.
TEST_F(DeskTest, LeversAreThereForWhatTheTruckHas) {
  EXPECT_TRUE(part<QWidget>("pedal_0")->isVisible());
  click("more");
  EXPECT_FALSE(part<QWidget>("pedal_0")->isVisible());
  const ControlReach reach = control_reach(*session.posed().mechanism, nullptr);
  ASSERT_GT(reach.wind_up, 0.0);
  ASSERT_GT(reach.most_shake_mm[2], 0.0);
  QTest::keyClick(part<Lever>("wind_up"), Qt::Key_PageUp);
  EXPECT_EQ(session.controls().wind_up, reach.wind_up);
  QTest::keyClick(part<Lever>("shake_2"), Qt::Key_PageUp);
  EXPECT_EQ(session.controls().cab_shake[2], reach.most_shake_mm[2]);
  settle();
  EXPECT_EQ(session.posed().pose.chassis_from_cab.shift_mm.z(),
            session.posed().mechanism->chassis_from_cab.shift_mm.z() + reach.most_shake_mm[2]);

  desk.resize(1568, desk.height());
  QApplication::processEvents();
  EXPECT_TRUE(part<QWidget>("pedal_0")->isVisible());
  EXPECT_TRUE(part<QWidget>("wind_up")->isVisible());
  EXPECT_LE(desk.minimumSizeHint().width(), 1480);

  Project calm = session.project();
  auto axle = std::make_shared<FrontAxleStation>(*calm.front_axle);
  axle->suspension.wind_up = 0.0;
  calm.front_axle = std::move(axle);
  auto cab = std::make_shared<CabStation>(*calm.cab);
  cab->shake = {};
  calm.cab = std::move(cab);
  session.edit("Calm", std::move(calm));
  settle();
  EXPECT_FALSE(part<QWidget>("wind_up")->isVisible());
  EXPECT_FALSE(part<QWidget>("more")->isVisible());
  EXPECT_TRUE(part<QWidget>("pedal_0")->isVisible());
}

TEST_F(DeskTest, PlayComesBackToTheStart) {
  click("full_bump");
  QTest::keyClick(part<HandWheelDial>("hand_wheel"), Qt::Key_Left);
  const Controls start = session.controls();
  part<QComboBox>("cycle")->setCurrentIndex(1);
  double least = 0.0;
  double most = 0.0;
  QObject::connect(&session, &Session::controls_changed, &desk, [&] {
    least = std::min(least, session.controls().bump_left);
    most = std::max(most, session.controls().bump_left);
  });
  click("play");
  EXPECT_TRUE(desk.playing());
  EXPECT_TRUE(QTest::qWaitFor([&] { return !desk.playing(); }, 60000));
  EXPECT_EQ(session.controls(), start);
  EXPECT_LT(least, -0.8 * session.project().front_axle->suspension.droop);
  EXPECT_GT(most, 0.8 * session.project().front_axle->suspension.bump);
}

TEST_F(DeskTest, StopHoldsAndAHandOnAnyControlStops) {
  click("play");
  ASSERT_TRUE(QTest::qWaitFor([&] { return session.controls().hand_wheel != 0.0; }, 60000));
  click("play");
  EXPECT_FALSE(desk.playing());
  EXPECT_NE(session.controls().hand_wheel, 0.0);
  click("play");
  EXPECT_TRUE(desk.playing());
  QTest::keyClick(part<Lever>("bump_left"), Qt::Key_Up);
  EXPECT_FALSE(desk.playing());
}

TEST_F(DeskTest, LessMotionPlaysNothing) {
  desk.set_reduced_motion(true);
  EXPECT_FALSE(part<QPushButton>("play")->isEnabled());
  desk.play(MotionCycle::both);
  EXPECT_FALSE(desk.playing());
}

TEST_F(DeskTest, TheWholeRoundStaysWithinReach) {
  const auto& locks = *session.judged().results.locks;
  const ControlReach reach = control_reach(*session.posed().mechanism, &locks);
  Controls start;
  start.hand_wheel = 0.3;
  double least = 1.0;
  double most = -1.0;
  for (int i = 0; i <= 1000; ++i) {
    const Controls now = along_cycle(MotionCycle::both, start, reach, i / 1000.0);
    EXPECT_EQ(now, held_within(reach, now));
    least = std::min(least, now.hand_wheel);
    most = std::max(most, now.hand_wheel);
  }
  EXPECT_NEAR(least, reach.full_right, 0.03);
  EXPECT_NEAR(most, reach.full_left, 0.03);
  EXPECT_EQ(along_cycle(MotionCycle::both, start, reach, 1.0), start);
}

TEST_F(DeskTest, WordsFollowWhoeverMovesTheTruck) {
  Controls controls;
  controls.hand_wheel = radians_from_degrees(151.0);
  session.set_controls(controls);
  settle();
  EXPECT_EQ(hand_wheel_words(controls.hand_wheel), "0.42 turn left");
  EXPECT_EQ(hand_wheel_words(-1.5 * kRadiansPerTurn), "1.50 turns right");
  EXPECT_EQ(hand_wheel_words(0.0), "straight");
  EXPECT_NEAR(part<HandWheelDial>("hand_wheel")->angle(), controls.hand_wheel, 1e-12);
  EXPECT_TRUE(part<QLabel>("numbers")->text().contains(
      QString::fromStdString(shown_bare(session.posed().pose.steering.left.steer, Unit::degree))));
}

TEST_F(DeskTest, EveryControlHasANameAndAValue) {
  part<QToolButton>("more")->click();
  for (QWidget* widget : desk.findChildren<QWidget*>()) {
    if (widget->focusPolicy() == Qt::NoFocus || !widget->isVisible()) continue;
    QAccessibleInterface* seen = QAccessible::queryAccessibleInterface(widget);
    ASSERT_NE(seen, nullptr);
    EXPECT_FALSE(seen->text(QAccessible::Name).isEmpty())
        << widget->metaObject()->className() << widget->objectName().toStdString();
    if (qobject_cast<QAbstractSlider*>(widget) != nullptr) {
      ASSERT_NE(seen->valueInterface(), nullptr);
      EXPECT_FALSE(seen->text(QAccessible::Description).isEmpty());
    }
  }
  auto* dial = part<HandWheelDial>("hand_wheel");
  QAccessible::queryAccessibleInterface(dial)->valueInterface()->setCurrentValue(9000);
  EXPECT_NEAR(degrees_from_radians(session.controls().hand_wheel), 90.0, 1e-9);
}

TEST_F(DeskTest, EveryControlSaysWhatItMeans) {
  int controls = 0;
  for (QWidget* widget : desk.findChildren<QWidget*>()) {
    if (widget->focusPolicy() == Qt::NoFocus || widget->objectName().startsWith("qt_")) continue;
    if (qobject_cast<QAbstractItemView*>(widget) != nullptr) continue;  // a choice's own list
    ++controls;
    const QString meaning = desk_meaning(widget->objectName());
    EXPECT_GT(meaning.size(), 20) << widget->metaObject()->className() << ' '
                                  << widget->objectName().toStdString();
    EXPECT_EQ(widget->toolTip(), meaning) << widget->objectName().toStdString();
  }
  EXPECT_GT(controls, 20);
}

TEST_F(DeskTest, TheFoldedRowGivesUpItsOuterButtonsFirst) {
  desk.set_folded(true);
  desk.resize(1248, 44);
  settle();
  EXPECT_TRUE(part<QWidget>("folded_full_bump")->isVisible());
  desk.resize(620, 44);
  settle();
  EXPECT_FALSE(part<QWidget>("folded_full_bump")->isVisible());
  EXPECT_TRUE(part<QWidget>("folded_full_left")->isVisible());
  EXPECT_TRUE(desk.rect().contains(part<QWidget>("folded_play")->geometry()));
  EXPECT_GT(part<QWidget>("folded_words")->width(), 100);
  desk.resize(1248, 44);
  settle();
  EXPECT_TRUE(part<QWidget>("folded_full_bump")->isVisible());
}

TEST_F(DeskTest, FoldsToOneRow) {
  const int whole = desk.sizeHint().height();
  click("fold");
  EXPECT_TRUE(desk.folded());
  EXPECT_LT(desk.sizeHint().height(), whole / 2);
  EXPECT_TRUE(part<QLabel>("folded_words")->text().contains("straight"));
  click("folded_full_bump");
  EXPECT_EQ(session.controls().bump_right, session.project().front_axle->suspension.bump);
  click("unfold");
  EXPECT_EQ(desk.sizeHint().height(), whole);
}

TEST_F(DeskTest, ATruckNotMeasuredYetHasNoWordsOfNumbers) {
  session.take(Project{}, {});
  settle();
  EXPECT_FALSE(part<QWidget>("bump_left")->isVisible());
  click("full_left");
  keep("desk-empty");
  for (QLabel* label : desk.findChildren<QLabel*>())
    EXPECT_FALSE(label->text().contains("nan", Qt::CaseInsensitive));
}

TEST_F(DeskTest, PicturesByDayAndNight) {
  Controls controls;
  controls.hand_wheel = 2.6;
  controls.bump_left = 40.0;
  controls.pedals[0] = 0.4;
  session.set_controls(controls);
  settle();
  use_theme(Theme::day);
  QApplication::processEvents();
  keep("desk-day");
  const QImage day = desk.grab().toImage();
  use_theme(Theme::night);
  ASSERT_EQ(desk.width(), 1248);
  part<QToolButton>("more")->click();
  ASSERT_TRUE(session.set_field("sheet.unit", "inch_fraction").empty());
  settle();
  keep("desk-night");
  EXPECT_EQ(desk.width(), 1248) << "it does not push its window wider";
  EXPECT_NE(desk.grab().toImage().pixelColor(20, 20), day.pixelColor(20, 20));
  EXPECT_LE(desk.minimumSizeHint().width(), 1248);
  desk.set_folded(true);
  desk.resize(1280, 44);
  settle();
  keep("desk-folded");
}

}  // namespace
}  // namespace tackbench::ui
