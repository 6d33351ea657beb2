// A touch pad and a touch screen on the sheet.
#include <QNativeGestureEvent>
#include <QPointingDevice>
#include <QWheelEvent>

#include "tests/ui/sheet/open_sheet.h"

namespace tackbench::ui {
namespace {

const QPointingDevice& pad() {
  static const QPointingDevice device(
      "pad", 1, QInputDevice::DeviceType::TouchPad, QPointingDevice::PointerType::Finger,
      QInputDevice::Capability::Position | QInputDevice::Capability::PixelScroll, 2, 1);
  return device;
}

void pinch(SheetCard& card, Qt::NativeGestureType kind, const QPointF& at, double value) {
  const QPointF on_screen = card.mapToGlobal(at);
  QNativeGestureEvent event(kind, &pad(), 2, at, at, on_screen, value, {});
  QApplication::sendEvent(&card, &event);
}

void two_fingers(SheetCard& card, const QPoint& pixels, Qt::ScrollPhase phase,
                 Qt::KeyboardModifiers held = {}) {
  const QPointF at(300.0, 200.0);
  QWheelEvent event(at, card.mapToGlobal(at), pixels, pixels * 8, Qt::NoButton, held, phase, false,
                    Qt::MouseEventNotSynthesized, &pad());
  QApplication::sendEvent(&card, &event);
}

TEST(SheetCardPad, APinchZoomsAboutTheFingers) {
  OpenSheet sheet;
  const QPointF at(420.0, 260.0);
  const ViewPoint under = sheet.card.transform().to_sheet(at);
  const double scale = sheet.card.transform().scale();
  pinch(sheet.card, Qt::BeginNativeGesture, at, 0.0);
  for (int i = 0; i < 5; ++i) pinch(sheet.card, Qt::ZoomNativeGesture, at, 0.1);
  pinch(sheet.card, Qt::EndNativeGesture, at, 0.0);
  // Each event says by how much more: 1.1 to the fifth.
  EXPECT_NEAR(sheet.card.transform().scale(), scale * 1.61051, 1e-6 * scale);
  EXPECT_NEAR(sheet.card.transform().to_sheet(at).x, under.x, 1e-6);
  EXPECT_NEAR(sheet.card.transform().to_sheet(at).y, under.y, 1e-6);
  pinch(sheet.card, Qt::ZoomNativeGesture, at, -0.2);
  EXPECT_LT(sheet.card.transform().scale(), scale * 1.61051);
  // A pinch keeps its zoom when the sheet is made larger.
  const double pinched = sheet.card.transform().scale();
  sheet.card.resize(1100, 700);
  sheet.settle();
  EXPECT_EQ(sheet.card.transform().scale(), pinched);
}

TEST(SheetCardPad, TwoFingersPanPixelByPixel) {
  OpenSheet sheet;
  const double scale = sheet.card.transform().scale();
  const QPointF place = sheet.card.place_in(SheetView::side, Vec3::Zero());
  two_fingers(sheet.card, {}, Qt::ScrollBegin);
  two_fingers(sheet.card, {7, -12}, Qt::ScrollUpdate);
  two_fingers(sheet.card, {30, 5}, Qt::ScrollUpdate);
  two_fingers(sheet.card, {3, 1}, Qt::ScrollMomentum);
  two_fingers(sheet.card, {}, Qt::ScrollEnd);
  const QPointF now = sheet.card.place_in(SheetView::side, Vec3::Zero());
  EXPECT_NEAR(now.x() - place.x(), 40.0, 1e-9);
  EXPECT_NEAR(now.y() - place.y(), -6.0, 1e-9);
  EXPECT_EQ(sheet.card.transform().scale(), scale);
  EXPECT_FALSE(sheet.session.can_undo());
  // With Ctrl held they zoom.
  two_fingers(sheet.card, {0, 30}, Qt::ScrollUpdate, Qt::ControlModifier);
  EXPECT_GT(sheet.card.transform().scale(), scale);
}

TEST(SheetCardPad, FingersLaidDownChangeNothing) {
  OpenSheet sheet;
  const SheetTransform before = sheet.card.transform();
  two_fingers(sheet.card, {}, Qt::ScrollBegin);
  two_fingers(sheet.card, {}, Qt::ScrollEnd);
  EXPECT_EQ(sheet.card.transform(), before);
  // Nobody has moved the paper: it is fitted anew in a larger window.
  sheet.card.resize(1300, 900);
  sheet.settle();
  EXPECT_GT(sheet.card.transform().scale(), before.scale());
}

TEST(SheetCardPad, TwoFingersOnAScreenZoomAndShift) {
  OpenSheet sheet;
  static QPointingDevice* screen = QTest::createTouchDevice();
  const std::string before = sheet.session.project().name;
  const double scale = sheet.card.transform().scale();
  QPoint left(300, 300);
  QPoint right(500, 300);
  QTest::touchEvent(&sheet.card, screen).press(0, left).press(1, right);
  for (int i = 0; i < 10; ++i) {
    left += QPoint(-10, 2);
    right += QPoint(10, 2);
    QTest::touchEvent(&sheet.card, screen).move(0, left).move(1, right);
  }
  QTest::touchEvent(&sheet.card, screen).release(0, left).release(1, right);
  sheet.settle();
  EXPECT_GT(sheet.card.transform().scale(), 1.3 * scale);
  EXPECT_LT(sheet.card.transform().scale(), 2.1 * scale);  // 200 pixels became 400
  EXPECT_FALSE(sheet.session.can_undo());
}

}  // namespace
}  // namespace tackbench::ui
