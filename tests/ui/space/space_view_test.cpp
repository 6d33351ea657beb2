// The hand in space: real events on the line drawing, which needs no display.
#include <QLabel>
#include <QPushButton>
#include <QTranslator>
#include <QWheelEvent>
#include <cmath>

#include "core/basics/units.h"
#include "core/scene/pick.h"
#include "tests/ui/space/open_space.h"
#include "ui/look/short_label.h"
#include "ui/space/opengl_probe.h"

namespace tackbench::ui {
namespace {

constexpr const char* kBall = "drag_link.knuckle_ball_mm";

Vec3 place_of_grip(const Session& session, const std::string& path) {
  const auto grip = grip_at(session.project(), path);
  EXPECT_TRUE(grip.has_value()) << path;
  return grip ? grip->at_mm : Vec3::Zero();
}

double pixels_between(const QPointF& a, const QPointF& b) {
  return std::hypot(a.x() - b.x(), a.y() - b.y());
}

class OtherWords : public QTranslator {
 public:
  QString translate(const char* context, const char*, const char*, int) const override {
    return QByteArray(context) == "OpenGlProbe" ? QStringLiteral("andere Worte") : QString();
  }
  bool isEmpty() const override { return false; }
};

// Probing is done once, but its words are in the language that is in use when they are asked for.
TEST(OpenGlProbe, SaysWhyInTheLanguageInUse) {
  if (why_no_opengl().isEmpty()) GTEST_SKIP() << "there is OpenGL";
  const QString before = why_no_opengl();
  OtherWords other;
  QCoreApplication::installTranslator(&other);
  EXPECT_EQ(why_no_opengl(), "andere Worte");
  QCoreApplication::removeTranslator(&other);
  EXPECT_EQ(why_no_opengl(), before);
}

TEST(SpaceView, SaysWhyItIsDrawnInLines) {
  OpenSpace open;
  EXPECT_FALSE(open.view.why_lines().isEmpty());
  const auto* why = open.view.findChild<QLabel*>("why lines");
  ASSERT_NE(why, nullptr);
  EXPECT_TRUE(why->isVisible());
  EXPECT_TRUE(why->text().contains(open.view.why_lines()));
}

TEST(SpaceView, DragOnNothingGoesRoundTheTruck) {
  OpenSpace open;
  const Camera before = open.view.camera();
  open.drag({4, 4}, {84, 44});
  const Camera after = open.view.camera();
  EXPECT_GT(std::abs(after.turn - before.turn), 0.1);
  EXPECT_GT(after.rise, before.rise + 0.05);
  EXPECT_EQ(after.target_mm, before.target_mm);
  EXPECT_NEAR(after.distance, before.distance, 1e-9);
  EXPECT_FALSE(open.session.can_undo());
}

TEST(SpaceView, ShiftOrMiddleButtonShifts) {
  for (const bool middle : {false, true}) {
    OpenSpace open;
    const Vec3 target = open.view.camera().target_mm;
    const QPointF before = *open.view.place_of(target);
    open.drag({4, 4}, {64, 34}, middle ? Qt::NoModifier : Qt::ShiftModifier,
              middle ? Qt::MiddleButton : Qt::LeftButton);
    const QPointF after = *open.view.place_of(target);
    EXPECT_NEAR(after.x() - before.x(), 60.0, 0.5);
    EXPECT_NEAR(after.y() - before.y(), 30.0, 0.5);
  }
}

TEST(SpaceView, WheelComesNearerAboutThePointer) {
  OpenSpace open;
  const double before = open.view.camera().distance;
  const QPointF at = open.view.picture().rect().center() + QPointF(90.0, -40.0);
  const Camera& camera = open.view.camera();
  const QSize size = open.view.picture().size();
  const PictureSize picture{static_cast<double>(size.width()), static_cast<double>(size.height())};
  const Vec3 under =
      *on_plane(camera.ray({at.x(), at.y()}, picture), camera.target_mm, camera.backward());
  QWheelEvent wheel(at, open.view.picture().mapToGlobal(at), {}, {0, 240}, Qt::NoButton, {},
                    Qt::NoScrollPhase, false);
  QApplication::sendEvent(&open.view.picture(), &wheel);
  EXPECT_LT(open.view.camera().distance, 0.8 * before);
  EXPECT_LT(pixels_between(*open.view.place_of(under), at), 0.01);
}

TEST(SpaceView, AClickChoosesThePartUnderIt) {
  OpenSpace open;
  for (const char* part : {"front_axle.tyre", "shapes.rails", "driver.seat_reference_mm"}) {
    const auto at = open.where_seen(part);
    ASSERT_TRUE(at) << part;
    open.press(*at);
    open.release(*at);
    EXPECT_EQ(open.session.selected(), part);
    EXPECT_EQ(open.view.shown().selected, part);
  }
  open.press({3, 3});
  open.release({3, 3});
  EXPECT_TRUE(open.session.selected().empty());
}

TEST(SpaceView, WhatIsChosenElsewhereLooksChosen) {
  OpenSpace open;
  const QImage before = open.picture();
  open.session.select("shapes.rails");
  EXPECT_NE(open.picture(), before);
}

TEST(SpaceView, APointIsDraggedInThePlaneFacingTheEye) {
  OpenSpace open;
  const Vec3 start = place_of_grip(open.session, kBall);
  const Vec3 facing = open.view.camera().backward();
  const QPoint from = open.at(kBall);
  const QPoint to = from + QPoint(30, -18);
  open.press(from);
  EXPECT_EQ(open.session.selected(), kBall);
  open.move(from + QPoint(10, -6));
  open.move(to);
  open.session.wait_until_fresh();
  EXPECT_TRUE(open.session.dragging());
  open.release(to);
  open.settle();
  const Vec3 moved = place_of_grip(open.session, kBall) - start;
  EXPECT_GT(moved.norm(), 20.0);
  EXPECT_LT(std::abs(moved.dot(facing)), 1.5);  // whole millimetres on each axis
  EXPECT_LT(pixels_between(*open.view.point_place(kBall), to), 2.0);
  ASSERT_TRUE(open.session.can_undo());
  open.session.undo();
  EXPECT_LT((place_of_grip(open.session, kBall) - start).norm(), 1e-9);
  EXPECT_FALSE(open.session.can_undo()) << "a drag is one step";
}

TEST(SpaceView, AHeldAxisMovesThatCoordinateAlone) {
  const std::array<Qt::Key, 3> keys{Qt::Key_X, Qt::Key_Y, Qt::Key_Z};
  for (Eigen::Index axis = 0; axis < 3; ++axis) {
    OpenSpace open;
    const Vec3 start = place_of_grip(open.session, kBall);
    const QPoint from = open.at(kBall);
    QTest::keyPress(&open.view, keys[static_cast<std::size_t>(axis)]);
    open.press(from);
    open.move(from + QPoint(12, -12));
    open.move(from + QPoint(35, -35));
    EXPECT_TRUE(open.view.shown().held_line.has_value());
    open.release(from + QPoint(35, -35));
    QTest::keyRelease(&open.view, keys[static_cast<std::size_t>(axis)]);
    const Vec3 moved = place_of_grip(open.session, kBall) - start;
    EXPECT_GT(std::abs(moved[axis]), 5.0) << axis;
    for (Eigen::Index other = 0; other < 3; ++other) {
      if (other != axis) {
        EXPECT_NEAR(moved[other], 0.0, 1e-9) << axis;
      }
    }
    EXPECT_FALSE(open.view.shown().held_line.has_value());
  }
}

TEST(SpaceView, EscapePutsADraggedPointBack) {
  OpenSpace open;
  const Vec3 start = place_of_grip(open.session, kBall);
  const QPoint from = open.at(kBall);
  open.press(from);
  open.move(from + QPoint(20, 20));
  EXPECT_GT((place_of_grip(open.session, kBall) - start).norm(), 1.0);
  QTest::keyClick(&open.view, Qt::Key_Escape);
  open.release(from + QPoint(20, 20));
  EXPECT_LT((place_of_grip(open.session, kBall) - start).norm(), 1e-9);
  EXPECT_FALSE(open.session.can_undo());
}

TEST(SpaceView, ArrowsWithAnAxisHeldMoveByAMillimetre) {
  OpenSpace open;
  open.session.select(kBall);
  const Vec3 start = place_of_grip(open.session, kBall);
  QTest::keyPress(&open.view, Qt::Key_Z);
  QTest::keyClick(&open.view, Qt::Key_Up);
  QTest::keyClick(&open.view, Qt::Key_Up);
  QTest::keyClick(&open.view, Qt::Key_Up, Qt::ShiftModifier);
  QTest::keyRelease(&open.view, Qt::Key_Z);
  EXPECT_LT((place_of_grip(open.session, kBall) - start - Vec3(0.0, 0.0, 12.0)).norm(), 1e-9);
  open.session.undo();
  EXPECT_LT((place_of_grip(open.session, kBall) - start).norm(), 1e-9);
}

TEST(SpaceView, KeysGoRoundThePointsAndTheViews) {
  OpenSpace open;
  QTest::keyClick(&open.view, Qt::Key_N);
  const std::string first = open.session.selected();
  EXPECT_FALSE(first.empty());
  QTest::keyClick(&open.view, Qt::Key_N);
  EXPECT_NE(open.session.selected(), first);
  QTest::keyClick(&open.view, Qt::Key_P);
  EXPECT_EQ(open.session.selected(), first);
  QTest::keyClick(&open.view, Qt::Key_1);
  EXPECT_LT((open.view.camera().backward() - Vec3::UnitY()).norm(), 1e-9);
  QTest::keyClick(&open.view, Qt::Key_2);
  EXPECT_LT((open.view.camera().backward() - Vec3::UnitX()).norm(), 1e-9);
  const double turn = open.view.camera().turn;
  QTest::keyClick(&open.view, Qt::Key_Right);
  EXPECT_NE(open.view.camera().turn, turn);
}

TEST(SpaceView, FollowingKeepsWhatIsChosenInTheMiddle) {
  OpenSpace open;
  open.view.set_following(true);
  open.session.select(kBall);
  const QPointF middle = QRectF(open.view.picture().rect()).center();
  EXPECT_LT(pixels_between(*open.view.point_place(kBall), middle), 1.0);
  open.session.select("front_axle.tyre");
  const auto tyre =
      bounds_of_part(*open.view.shown().scene, open.view.shown().motions, "front_axle.tyre");
  EXPECT_LT((open.view.camera().target_mm - tyre.middle()).norm(), 1e-6);
}

TEST(SpaceView, ControlsMoveTransformsAlone) {
  OpenSpace open;
  const int built = open.view.built();
  const QImage before = open.picture();
  Controls controls = open.session.controls();
  controls.hand_wheel = 3.0;
  open.session.set_controls(controls);
  open.settle();
  EXPECT_EQ(open.view.built(), built);
  EXPECT_NE(open.picture(), before);
}

TEST(SpaceView, HoldsStillWhileTheSheetIsDragged) {
  OpenSpace open;
  const int built = open.view.built();
  const auto grip = grip_at(open.session.project(), kBall);
  ASSERT_TRUE(grip);
  const Project start = open.session.project();
  open.session.begin_drag("Move");
  for (int i = 1; i <= 5; ++i) {
    open.session.drag_to(*with_grip_at(start, *grip, grip->at_mm + Vec3(0.0, 0.0, 2.0 * i)));
    open.session.wait_until_fresh();
  }
  EXPECT_EQ(open.view.built(), built);
  open.session.end_drag();
  open.settle();
  EXPECT_GT(open.view.built(), built);
  for (const SpacePoint& point : open.view.shown().points) {
    if (point.grip.path == kBall) {
      EXPECT_NEAR(point.grip.at_mm.z(), grip->at_mm.z() + 10.0, 1e-9);
    }
  }
}

TEST(SpaceView, AWanderingLineCanBePlayed) {
  OpenSpace open;
  ASSERT_TRUE(open.motion.wander.possible());
  EXPECT_EQ(open.motion.wander.ways(), 2);  // planted in the sample: free to wander two ways
  auto* play = open.view.findChild<QPushButton*>("wander");
  ASSERT_NE(play, nullptr);
  EXPECT_TRUE(play->isVisible());
  QTest::mouseClick(play, Qt::LeftButton);
  ASSERT_TRUE(open.motion.wander.playing());
  const auto& still = open.session.posed().pose.shaft_line;
  for (const double phase : {0.25, 1.25}) {
    open.motion.wander.set_phase(phase);
    const Pose led = open.motion.wander.pose();
    double most = 0.0;
    for (int i = 0; i < still.cross_count; ++i) {
      const auto k = static_cast<std::size_t>(i);
      most =
          std::max(most, (led.shaft_line.crosses[k].centre_mm - still.crosses[k].centre_mm).norm());
    }
    EXPECT_GT(most, 10.0);
    EXPECT_EQ(led.steering.drag_link.from_mm, open.session.posed().pose.steering.drag_link.from_mm);
  }
  QTest::mouseClick(play, Qt::LeftButton);
  EXPECT_FALSE(open.motion.wander.playing());
}

TEST(SpaceView, ALineThatIsHeldHasNothingToPlay) {
  OpenSpace open("tender-sorted");
  EXPECT_FALSE(open.motion.wander.possible());
  EXPECT_FALSE(open.view.findChild<QPushButton*>("wander")->isVisible());
  open.motion.wander.play(true);
  EXPECT_FALSE(open.motion.wander.playing());
}

TEST(SpaceView, SaysInWordsWhatItShows) {
  OpenSpace open;
  open.view.clearFocus();
  open.session.select(kBall);
  Controls controls;
  controls.hand_wheel = kRadiansPerTurn / 2.0;
  controls.pedals[0] = 0.25;
  open.session.set_controls(controls);
  open.settle();
  open.view.look(StandardView::front);
  const auto says = [&](const char* words) {
    EXPECT_TRUE(open.view.accessibleDescription().contains(words))
        << words << " not in: " << open.view.accessibleDescription().toStdString();
  };
  says("X 80.0  Y 582.0  Z -262.0  drag-link ball on the knuckle");
  says("Hand wheel 0.50 turn left");
  says("Brake 25 %");
  says("seen from ahead");
  open.session.select("front_axle.tyre");
  open.view.look(StandardView::left);
  says("chosen: ");
  EXPECT_FALSE(open.view.accessibleDescription().contains("front_axle"));
  open.session.select({});
  open.view.look(StandardView::front_left_above);
  says("No point chosen");
  says("seen from ahead, the left, above");
}

TEST(SpaceView, AControlUnderTheHandSaysHowItIsTaken) {
  OpenSpace open;
  const auto tyre = open.where_seen("front_axle.tyre");
  ASSERT_TRUE(tyre);
  QMouseEvent over(QEvent::MouseMove, *tyre, open.view.picture().mapToGlobal(*tyre), Qt::NoButton,
                   Qt::NoButton, {});
  QApplication::sendEvent(&open.view.touched(), &over);
  EXPECT_EQ(open.view.picture().cursor().shape(), Qt::OpenHandCursor);
  const auto labels = open.view.findChildren<ShortLabel*>();
  EXPECT_TRUE(std::any_of(labels.begin(), labels.end(), [](const ShortLabel* label) {
    return label->whole_text().contains("steer");
  }));
}

TEST(SpaceView, EveryControlHasAName) {
  OpenSpace open;
  EXPECT_FALSE(open.view.accessibleName().isEmpty());
  for (const QAbstractButton* button : open.view.findChildren<QAbstractButton*>())
    EXPECT_FALSE(button->accessibleName().isEmpty()) << button->text().toStdString();
}

TEST(SpaceView, AProjectWithoutATruckIsAnEmptyPicture) {
  OpenSpace open("");
  EXPECT_TRUE(open.view.shown().scene->bodies.empty());
  QTest::keyClick(&open.view, Qt::Key_N);
  open.view.fit();
  open.drag({20, 20}, {90, 60});
  EXPECT_FALSE(open.picture().isNull());
}

}  // namespace
}  // namespace tackbench::ui
