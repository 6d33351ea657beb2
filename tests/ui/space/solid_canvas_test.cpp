// The picture by OpenGL. The line drawing is made by other means from the same scene: both have to
// show the same truck.
#include <QPainter>
#include <QScreen>
#include <cstdlib>

#include "tests/ui/space/open_space.h"
#include "ui/look/palette.h"
#include "ui/space/line_drawing.h"
#include "ui/space/loose_card.h"
#include "ui/space/opengl_probe.h"
#include "ui/space/solid_canvas.h"

namespace tackbench::ui {
namespace {

#define WANT_OPENGL()                                                 \
  if (!why_no_opengl().isEmpty()) {                                   \
    ASSERT_TRUE(qEnvironmentVariableIsEmpty("TACKBENCH_WANT_OPENGL")) \
        << why_no_opengl().toStdString();                             \
    GTEST_SKIP() << "no OpenGL: " << why_no_opengl().toStdString();   \
  }

template <class Done>
bool waited_for(const Done& done) {
  for (int i = 0; i < 400 && !done(); ++i) QTest::qWait(20);
  return done();
}

QImage taken(OpenSpace& open) {
  QImage picture;
  open.view.solids()->take_picture([&](const QImage& image) { picture = image; });
  EXPECT_TRUE(waited_for([&] { return !picture.isNull(); }));
  return picture.convertToFormat(QImage::Format_RGB32);
}

// Pictures until two in a row are alike: shaders, buffers and fine meshes are in.
QImage settled(OpenSpace& open) {
  EXPECT_TRUE(waited_for([&] { return !open.view.shown().coarse; }));
  QImage before = taken(open);
  for (int i = 0; i < 40; ++i) {
    QTest::qWait(50);
    QImage now = taken(open);
    if (now == before && i > 3) return now;
    before = std::move(now);
  }
  ADD_FAILURE() << "the picture does not come to rest";
  return before;
}

// Share of pixels whose greys are further apart than a line's own softness explains.
double share_apart(const QImage& a, const QImage& b) {
  int apart = 0;
  for (int y = 1; y < a.height() - 1; ++y) {
    for (int x = 1; x < a.width() - 1; ++x) {
      int least = 255;
      for (int dy = -1; dy <= 1; ++dy)
        for (int dx = -1; dx <= 1; ++dx)
          least = std::min(least, std::abs(qGray(a.pixel(x, y)) - qGray(b.pixel(x + dx, y + dy))));
      apart += least > 40 ? 1 : 0;
    }
  }
  return static_cast<double>(apart) / (a.width() * a.height());
}

TEST(SolidCanvas, ShowsWhatTheLineDrawingShows) {
  WANT_OPENGL();
  OpenSpace open;
  ASSERT_NE(open.view.solids(), nullptr);
  for (const StandardView view : {StandardView::front_left_above, StandardView::left}) {
    open.view.look(view);
    const QImage solid = settled(open);
    QImage lines(solid.size(), QImage::Format_RGB32);
    QPainter painter(&lines);
    LineDrawing().paint(painter, solid.size(), 1.0, open.view.shown(), palette());
    painter.end();
    EXPECT_LT(share_apart(lines, solid), 0.02);
    // That the measure sees a truck that stands elsewhere:
    EXPECT_GT(share_apart(lines, solid.mirrored(true, false)), 0.1);
  }
}

TEST(SolidCanvas, FollowsTheControlsAndTheChoice) {
  WANT_OPENGL();
  OpenSpace open;
  const QImage before = settled(open);
  Controls controls = open.session.controls();
  controls.hand_wheel = 5.0;
  open.session.set_controls(controls);
  open.settle();
  const QImage turned = settled(open);
  EXPECT_NE(turned, before);
  open.session.select("shapes.rails");
  EXPECT_NE(settled(open), turned);
  open.session.select({});
  open.session.set_controls({});
  open.settle();
  EXPECT_LT(share_apart(settled(open), before), 1e-3);
}

TEST(SolidCanvas, FollowsAnEditAndItsUndo) {
  WANT_OPENGL();
  OpenSpace open;
  const QImage before = settled(open);
  const auto grip = grip_at(open.session.project(), "column.hand_wheel_centre_mm");
  ASSERT_TRUE(grip);
  open.session.edit(
      "Move", *with_grip_at(open.session.project(), *grip, grip->at_mm + Vec3(150.0, 0.0, 120.0)));
  open.settle();
  const QImage after = settled(open);
  EXPECT_NE(after, before);
  open.session.undo();
  open.settle();
  open.view.fit();
  EXPECT_LT(share_apart(settled(open), before), 1e-3);
}

// What lay on it, a dialog for one, leaves no trace, though nothing in the scene has changed.
TEST(SolidCanvas, IsPaintedAgainWhenUncovered) {
  WANT_OPENGL();
  OpenSpace open;
  settled(open);
  const auto on_screen = [&] {
    const QPoint at = open.view.picture().mapToGlobal(QPoint(0, 0));
    return open.view.screen()
        ->grabWindow(0, at.x(), at.y(), open.view.picture().width(), open.view.picture().height())
        .toImage()
        .convertToFormat(QImage::Format_RGB32);
  };
  const QImage before = on_screen();
  QWidget cover(nullptr, Qt::BypassWindowManagerHint);
  cover.setGeometry(QRect(open.view.picture().mapToGlobal(QPoint(0, 0)), open.view.picture().size())
                        .adjusted(40, 40, -40, -40));
  cover.setStyleSheet("background: red");
  cover.show();
  const QPoint middle = before.rect().center();
  ASSERT_TRUE(waited_for([&] { return on_screen().pixel(middle) == qRgb(255, 0, 0); }));
  cover.hide();
  EXPECT_TRUE(waited_for([&] { return on_screen() == before; }));
}

// The window inside would cover it: the line drawing stands in while something lies over the
// card, the hand still takes what it shows, and the solids come back afterwards.
TEST(SolidCanvas, StaysBeneathWhatLiesOverIt) {
  WANT_OPENGL();
  Session session;
  ShownMotion motion(session);
  QWidget sheet;
  sheet.resize(900, 700);
  sheet.move(0, 0);
  QWidget over(&sheet);
  over.setAutoFillBackground(true);
  over.setPalette(QPalette(Qt::red));
  over.setGeometry(300, 200, 300, 200);
  over.hide();
  LooseCard card(session, motion, &sheet);
  card.set_place({0.2, 0.1, 0.7, 0.8});
  ASSERT_TRUE(session.open(sample_file("tender-as-first-tacked")).empty());
  sheet.show();
  session.wait_until_fresh();
  const auto red = [&] {
    const QImage screen = sheet.screen()->grabWindow(sheet.winId(), 310, 210, 280, 180).toImage();
    int count = 0;
    for (int y = 0; y < screen.height(); ++y)
      for (int x = 0; x < screen.width(); ++x)
        count += screen.pixelColor(x, y) == QColor(Qt::red) ? 1 : 0;
    return count;
  };
  QWidget* inside = card.view().solids()->findChild<QWidget*>();
  ASSERT_NE(inside, nullptr);
  QTest::qWait(300);
  EXPECT_TRUE(inside->isVisible());
  over.show();
  over.raise();
  EXPECT_TRUE(waited_for([&] { return red() == 280 * 180; }));
  EXPECT_FALSE(inside->isVisible());
  const Camera before = card.view().camera();
  QWidget& picture = card.view().picture();
  QTest::mousePress(&picture, Qt::LeftButton, {}, {4, 4});
  QMouseEvent move(QEvent::MouseMove, QPointF(60, 30), picture.mapToGlobal(QPointF(60, 30)),
                   Qt::NoButton, Qt::LeftButton, {});
  QApplication::sendEvent(&picture, &move);
  QTest::mouseRelease(&picture, Qt::LeftButton, {}, {60, 30});
  EXPECT_NE(card.view().camera().turn, before.turn);
  over.move(0, 600);
  over.resize(60, 60);
  EXPECT_TRUE(waited_for([&] { return inside->isVisible(); }));
}

TEST(SolidCanvas, ShowsSweptPlacesTranslucent) {
  WANT_OPENGL();
  OpenSpace open;
  const QImage before = settled(open);
  open.motion.swept.show(true);
  const QImage swept = settled(open);
  // Bluer where they are, and what lies behind reads through: hardly a pixel turns all blue.
  int bluer = 0;
  int all_blue = 0;
  for (int y = 0; y < swept.height(); ++y) {
    for (int x = 0; x < swept.width(); ++x) {
      const QColor was = before.pixelColor(x, y);
      const QColor is = swept.pixelColor(x, y);
      if (was == is) continue;
      bluer += is.blue() - is.red() > was.blue() - was.red() ? 1 : 0;
      all_blue += is == palette().moves && was != is ? 1 : 0;
    }
  }
  EXPECT_GT(bluer, swept.width() * swept.height() / 100);
  EXPECT_LT(all_blue, bluer / 20);
  open.motion.swept.show(false);
  EXPECT_LT(share_apart(settled(open), before), 1e-3);
}

}  // namespace
}  // namespace tackbench::ui
