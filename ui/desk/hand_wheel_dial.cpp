#include "ui/desk/hand_wheel_dial.h"

#include <QKeyEvent>
#include <QMouseEvent>
#include <QPainter>
#include <QSignalBlocker>
#include <algorithm>
#include <cmath>

#include "core/basics/units.h"
#include "ui/look/palette.h"

namespace tackbench::ui {

namespace {

constexpr double kStep = 5.0 * kRadiansPerDegree;
constexpr double kLongStep = 45.0 * kRadiansPerDegree;

int counted(double angle) {
  return static_cast<int>(std::lround(degrees_from_radians(angle) * 100.0));
}

// Anticlockwise from the right, as the driver sees it.
double pointer_angle(const QPointF& at, const QPointF& middle) {
  return std::atan2(middle.y() - at.y(), at.x() - middle.x());
}

}  // namespace

HandWheelDial::HandWheelDial(QWidget* parent) : QAbstractSlider(parent) {
  setFocusPolicy(Qt::StrongFocus);
  setCursor(Qt::OpenHandCursor);
  // What an assistive tool sets.
  connect(this, &QAbstractSlider::valueChanged, this,
          [this](int value) { turn_to(radians_from_degrees(value / 100.0)); });
}

void HandWheelDial::set_ends(double full_right, double full_left) {
  full_right_ = full_right;
  full_left_ = full_left;
  const QSignalBlocker quiet(this);
  setRange(counted(full_right), counted(full_left));
  setSingleStep(counted(kStep));
  setPageStep(counted(kLongStep));
  update();
}

void HandWheelDial::set_angle(double angle) {
  angle_ = angle;
  if (!held_) hand_ = angle;
  const QSignalBlocker quiet(this);
  setValue(counted(angle));
  update();
}

void HandWheelDial::turn_to(double angle) {
  const double ended = std::clamp(angle, full_right_, full_left_);
  if (ended == angle_) return;
  set_angle(ended);
  Q_EMIT turned(ended);
}

void HandWheelDial::mousePressEvent(QMouseEvent* event) {
  if (event->button() != Qt::LeftButton) return;
  held_ = true;
  hand_ = angle_;
  last_ = pointer_angle(event->position(), QRectF(rect()).center());
  setCursor(Qt::ClosedHandCursor);
}

void HandWheelDial::mouseMoveEvent(QMouseEvent* event) {
  if (!held_) return;
  const double now = pointer_angle(event->position(), QRectF(rect()).center());
  hand_ += std::remainder(now - last_, kRadiansPerTurn);
  last_ = now;
  // A hand that went past the end must come back before the wheel leaves it, but not for ever.
  hand_ =
      std::clamp(hand_, full_right_ - kRadiansPerTurn / 2.0, full_left_ + kRadiansPerTurn / 2.0);
  turn_to(hand_);
}

void HandWheelDial::mouseReleaseEvent(QMouseEvent* event) {
  if (event->button() != Qt::LeftButton) return;
  held_ = false;
  hand_ = angle_;
  setCursor(Qt::OpenHandCursor);
}

void HandWheelDial::keyPressEvent(QKeyEvent* event) {
  const double step = event->modifiers() & Qt::ShiftModifier ? kLongStep : kStep;
  switch (event->key()) {
    case Qt::Key_Left:
    case Qt::Key_Up:
      return turn_to(angle_ + step);
    case Qt::Key_Right:
    case Qt::Key_Down:
      return turn_to(angle_ - step);
    case Qt::Key_PageUp:
      return turn_to(full_left_);
    case Qt::Key_PageDown:
      return turn_to(full_right_);
    case Qt::Key_Home:
      return turn_to(0.0);
    default:
      QAbstractSlider::keyPressEvent(event);
  }
}

void HandWheelDial::wheelEvent(QWheelEvent* event) {
  turn_to(angle_ + kStep * event->angleDelta().y() / 120.0);
  event->accept();
}

void HandWheelDial::paintEvent(QPaintEvent*) {
  const Palette& colours = tackbench::ui::palette();
  QPainter painter(this);
  painter.setRenderHint(QPainter::Antialiasing);
  const double outer = std::min(width(), height()) / 2.0 - 3.0;
  const double rim = outer - 9.0;
  painter.translate(QRectF(rect()).center());
  if (hasFocus()) {
    painter.setPen(QPen(colours.moves, 1.4, Qt::DotLine));
    painter.drawEllipse(QPointF(), outer, outer);
  }
  // How far it is turned, as an arc outside the rim; more than a turn goes round whole.
  const double shown = std::clamp(angle_, -kRadiansPerTurn, kRadiansPerTurn);
  painter.setPen(QPen(colours.moves, 3.0, Qt::SolidLine, Qt::FlatCap));
  const double arc = outer - 3.0;
  painter.drawArc(QRectF(-arc, -arc, 2.0 * arc, 2.0 * arc), 90 * 16,
                  static_cast<int>(std::lround(degrees_from_radians(shown) * 16.0)));

  painter.rotate(-degrees_from_radians(angle_));
  painter.setBrush(Qt::NoBrush);
  painter.setPen(QPen(isEnabled() ? colours.ink : colours.soft, 4.5));
  painter.drawEllipse(QPointF(), rim, rim);
  painter.setPen(QPen(isEnabled() ? colours.ink : colours.soft, 2.4));
  const double hub = rim * 0.2;
  for (const double spoke : {90.0, 210.0, 330.0}) {
    const double a = radians_from_degrees(spoke);
    const QPointF way(std::cos(a), std::sin(a));
    painter.drawLine(way * hub, way * (rim - 1.0));
  }
  painter.drawEllipse(QPointF(), hub, hub);
  // The mark that a fitter ties to the rim's top.
  painter.setPen(QPen(colours.moves, 6.0, Qt::SolidLine, Qt::FlatCap));
  painter.drawLine(QPointF(0.0, -rim - 3.0), QPointF(0.0, -rim + 3.0));
}

}  // namespace tackbench::ui
