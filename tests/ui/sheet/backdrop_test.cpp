// Photographs behind the views.
#include <QFile>
#include <QImage>
#include <QPainter>
#include <QSignalSpy>
#include <QTemporaryDir>
#include <cmath>

#include "core/basics/units.h"
#include "tests/ui/sheet/open_sheet.h"
#include "ui/look/palette.h"
#include "ui/sheet/backdrop_layer.h"
#include "ui/sheet/backdrop_panel.h"
#include "ui/sheet/backdrop_placing.h"

namespace tackbench::ui {
namespace {

// The tender saved in a folder of its own, with a photograph beside it.
class WithPhotograph {
 public:
  WithPhotograph() {
    QImage picture(400, 300, QImage::Format_RGB32);
    picture.fill(Qt::green);
    picture.save(folder.filePath("shed.png"));
    EXPECT_TRUE(sheet.session.save(folder.filePath("tender.tack").toStdString()).empty());
    panel()->set_view(SheetView::side);
    panel()->add(folder.filePath("shed.png").toStdString());
    sheet.settle();
  }
  BackdropPanel* panel() { return sheet.card.findChild<BackdropPanel*>(); }
  const Backdrop& backdrop() const { return sheet.session.project().sheet->backdrops.at(0); }

  QTemporaryDir folder;
  OpenSheet sheet;
};

TEST(Backdrop, LiesBehindItsView) {
  WithPhotograph with;
  EXPECT_EQ(with.backdrop().file.path, "shed.png");
  EXPECT_EQ(with.backdrop().file.sha256.size(), 64U);
  EXPECT_EQ(with.sheet.session.undo_name(), "Add a photograph");
  // 2 m wide about the datum: half strength green over the paper just above the rails.
  const QPoint inside =
      with.sheet.card.place_in(SheetView::side, Vec3(-700.0, 0.0, 680.0)).toPoint();
  // Read away from the window's thread: it comes a moment later.
  EXPECT_TRUE(QTest::qWaitFor([&] {
    const QColor there = with.sheet.card.grab().toImage().pixelColor(inside);
    return there.green() > there.red() + 60;
  }));
  with.sheet.session.undo();
  with.sheet.settle();
  const QColor gone = with.sheet.card.grab().toImage().pixelColor(inside);
  EXPECT_LT(gone.green(), gone.red() + 20);
}

// The layer by itself, painting on a picture.
class Layer : public testing::Test {
 protected:
  QColor painted() {
    QImage paper(600, 400, QImage::Format_RGB32);
    paper.fill(Qt::white);
    QPainter painter(&paper);
    layer.paint(painter, settings, folder.path().toStdString(), scene, transform, day_palette());
    painter.end();
    const ViewPoint at = scene.on_sheet(SheetView::side, backdrop().first_point);
    return paper.pixelColor((transform.to_screen(at) + QPointF(20, 0)).toPoint());
  }
  Backdrop& backdrop() { return settings.backdrops.at(0); }
  void SetUp() override {
    transform.fit({-1000, -1000}, {1000, 1000}, QRectF(0, 0, 600, 400));
    Backdrop one;
    one.file.path = "shed.png";
    one.view = SheetView::side;
    one.fade = 1.0;
    one.first_pixel = Vec3(0, 100, 0);
    one.second_pixel = Vec3(4000, 100, 0);
    one.known_distance = 1500.0;
    settings.backdrops.push_back(one);
  }
  void write(const QSize& size, const QColor& colour) {
    QImage picture(size, QImage::Format_RGB32);
    picture.fill(colour);
    ASSERT_TRUE(picture.save(folder.filePath("shed.png")));
  }
  bool turns(const QColor& colour) {
    return QTest::qWaitFor([&] { return painted() == colour; });
  }

  QTemporaryDir folder;
  SheetSettings settings;
  SheetScene scene;
  SheetTransform transform;
  BackdropLayer layer;
};

TEST_F(Layer, ReadsAwayFromThePaintingAndKeepsASmallerCopy) {
  write({4000, 200}, Qt::green);
  EXPECT_EQ(painted(), QColor(Qt::white));
  EXPECT_EQ(layer.kept_bytes(), 0);
  EXPECT_TRUE(turns(Qt::green));
  EXPECT_GT(layer.kept_bytes(), 0);
  EXPECT_LT(layer.kept_bytes(), 4000 * 200 * 4);
}

TEST_F(Layer, LooksAgainAtAFileThatChanged) {
  ASSERT_TRUE(QFile(folder.filePath("shed.png")).open(QIODevice::WriteOnly));
  QSignalSpy arrived(&layer, &BackdropLayer::arrived);
  painted();
  ASSERT_TRUE(arrived.wait());
  write({4000, 200}, Qt::green);
  EXPECT_TRUE(turns(Qt::green)) << "a file that could not be read is looked at again";
  write({4000, 200}, Qt::blue);
  EXPECT_TRUE(turns(Qt::blue));
  EXPECT_EQ(layer.kept(), 1U);
}

TEST_F(Layer, KeepsNothingThatTheProjectDoesNotHave) {
  write({4000, 200}, Qt::green);
  ASSERT_TRUE(turns(Qt::green));
  EXPECT_EQ(layer.kept(), 1U);
  settings.backdrops.front().file.path = "absent.png";
  painted();
  EXPECT_EQ(layer.kept(), 0U);
  EXPECT_EQ(layer.kept_bytes(), 0);
}

TEST(Backdrop, IsPlacedByTwoPointsAndWhereTheFirstLies) {
  WithPhotograph with;
  OpenSheet& sheet = with.sheet;
  const auto on_screen = [&](const QPointF& pixel) {
    SheetScene scene;
    scene.show(sheet.session.posed(), Projection::first_angle, false);
    return backdrop_to_screen(with.backdrop(), scene, sheet.card.transform()).map(pixel);
  };
  // A metre stick from pixel (100, 150) to pixel (300, 150), its end on the hand wheel's centre.
  Backdrop metre = with.backdrop();
  metre.known_distance = 1000.0;
  with.panel()->replace("Set", 0, metre);
  sheet.settle();
  const QPoint first = on_screen({100, 150}).toPoint();
  const QPoint second = on_screen({300, 150}).toPoint();
  Q_EMIT with.panel()->points_wanted(0);
  QTest::mouseClick(&sheet.card, Qt::LeftButton, {}, first);
  QTest::mouseClick(&sheet.card, Qt::LeftButton, {}, second);
  const std::string wheel = "column.hand_wheel_centre_mm";
  QTest::mouseClick(&sheet.card, Qt::LeftButton, {}, sheet.at(wheel, SheetView::side));
  const Backdrop placed = with.backdrop();
  const double pixel_mm = 1.0 / (sheet.card.transform().scale() * 2.5) + 1e-9;
  EXPECT_NEAR(placed.first_pixel.x(), 100.0, 0.5 * pixel_mm + 1.0);
  EXPECT_NEAR(placed.second_pixel.x(), 300.0, 0.5 * pixel_mm + 1.0);
  EXPECT_LT((placed.first_point - grip_at(sheet.session.project(), wheel)->at_mm).norm(), 1e-6);
  EXPECT_NEAR(backdrop_scale(placed), 5.0, 0.1);  // mm a pixel: 1000 over 200
  EXPECT_EQ(sheet.session.undo_name(), "Place the photograph");
}

TEST(Backdrop, PointsLieTheirKnownDistanceApart) {
  Backdrop backdrop;
  backdrop.view = SheetView::front;
  backdrop.first_pixel = Vec3(120, 80, 0);
  backdrop.second_pixel = Vec3(420, 480, 0);  // 500 pixels, 3 : 4 : 5
  backdrop.known_distance = 1250.0;
  backdrop.first_point = Vec3(0, 300, 200);
  backdrop.level_angle = radians_from_degrees(11.0);
  SheetTransform transform;
  transform.fit({-1000, -1000}, {1000, 1000}, QRectF(0, 0, 900, 700));
  const SheetScene scene;
  const QTransform to_screen = backdrop_to_screen(backdrop, scene, transform);
  const QPointF a = to_screen.map(QPointF(120, 80));
  const QPointF b = to_screen.map(QPointF(420, 480));
  EXPECT_NEAR(std::hypot((b - a).x(), (b - a).y()) / transform.scale(), 1250.0, 1e-6);
  const QPointF wanted = transform.to_screen(scene.on_sheet(SheetView::front, Vec3(0, 300, 200)));
  EXPECT_NEAR(a.x(), wanted.x(), 1e-9);
  EXPECT_NEAR(a.y(), wanted.y(), 1e-9);
}

TEST(Backdrop, LevelLineBecomesLevel) {
  SheetTransform transform;
  transform.fit({-1000, -1000}, {1000, 1000}, QRectF(0, 0, 900, 700));
  const SheetScene scene;
  Backdrop backdrop;
  backdrop.second_pixel = Vec3(500, 0, 0);
  for (const QPointF to : {QPointF(300, 40), QPointF(300, -90), QPointF(-200, 33)}) {
    const Backdrop level = levelled(backdrop, {10, 10}, QPointF(10, 10) + to);
    const QTransform to_screen = backdrop_to_screen(level, scene, transform);
    const QPointF step = to_screen.map(QPointF(10, 10) + to) - to_screen.map(QPointF(10, 10));
    EXPECT_NEAR(step.y(), 0.0, 1e-9);
    EXPECT_GT(step.x() * to.x(), 0.0) << "the lesser way round";
  }
}

TEST(Backdrop, SaysWhyAPhotographCannotBeUsed) {
  const auto no_folder = new_backdrop("/a/b.png", "", SheetView::side, {100, 100});
  ASSERT_FALSE(no_folder);
  EXPECT_NE(no_folder.problems()[0].wanted.find("save it"), std::string::npos);
  const auto elsewhere = new_backdrop("/a/b.png", "/c/p.tack", SheetView::side, {100, 100});
  ASSERT_FALSE(elsewhere);
  EXPECT_NE(elsewhere.problems()[0].wanted.find("copy"), std::string::npos);
  const auto no_picture = new_backdrop("/c/b.png", "/c/p.tack", SheetView::side, {});
  ASSERT_FALSE(no_picture);
}

TEST(Backdrop, PanelHasNamesAndLocks) {
  WithPhotograph with;
  with.sheet.card.show_photographs(true);
  EXPECT_TRUE(with.sheet.card.photographs());
  auto* lock = with.panel()->findChild<QCheckBox*>();
  lock->click();
  EXPECT_TRUE(with.backdrop().locked);
  EXPECT_FALSE(with.panel()->findChild<QSlider*>()->isEnabled());
  with.sheet.session.undo();
  EXPECT_FALSE(with.backdrop().locked);
  EXPECT_TRUE(with.panel()->findChild<QSlider*>()->isEnabled());
  for (QWidget* control : with.sheet.card.findChildren<QWidget*>()) {
    if (control->focusPolicy() == Qt::NoFocus || control->objectName().startsWith("qt_")) continue;
    if (control->inherits("QComboBoxListView") || control->inherits("QComboBoxPrivateContainer"))
      continue;
    EXPECT_FALSE(control->accessibleName().isEmpty()) << control->metaObject()->className();
  }
  QTest::keyClick(with.panel(), Qt::Key_Escape);
  EXPECT_FALSE(with.sheet.card.photographs());
}

}  // namespace
}  // namespace tackbench::ui
