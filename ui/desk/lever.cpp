#include "ui/desk/lever.h"

#include <QKeyEvent>
#include <QMouseEvent>
#include <QPainter>
#include <QSignalBlocker>
#include <algorithm>
#include <cmath>

#include "ui/look/palette.h"

namespace tackbench::ui {

namespace {

constexpr double kKnobHeight = 12.0;
constexpr double kKnobWidth = 26.0;
constexpr double kGateRoom = 52.0;

}  // namespace

Lever::Lever(const QString& name, std::function<QString(double)> words, QWidget* parent)
    : QAbstractSlider(parent), name_(name), words_(std::move(words)) {
  setOrientation(Qt::Vertical);
  setFocusPolicy(Qt::StrongFocus);
  setAccessibleName(name);
  setAccessibleDescription(words_(0.0));
  setToolTip(name);
  // What an assistive tool sets.
  connect(this, &QAbstractSlider::valueChanged, this, [this](int value) {
    if (value != counted(place_)) move_to(least_ + (most_ - least_) * value / 1000.0, false);
  });
}

void Lever::set_ends(double least, double most, double step) {
  least_ = least;
  most_ = most;
  step_ = step;
  const QSignalBlocker quiet(this);
  setRange(0, 1000);
  setEnabled(most > least);
  set_place(place_);
}

void Lever::set_place(double place) {
  place_ = place;
  const QSignalBlocker quiet(this);
  setValue(counted(place));
  setAccessibleDescription(words_(place));
  update();
}

int Lever::counted(double place) const {
  return most_ > least_
             ? static_cast<int>(std::lround(1000.0 * (place - least_) / (most_ - least_)))
             : 0;
}

void Lever::move_to(double place, bool shift) {
  const double ended = std::clamp(place, least_, most_);
  if (ended == place_) return;
  set_place(ended);
  Q_EMIT moved(ended, shift);
}

QSize Lever::sizeHint() const {
  const QFontMetrics text(font());
  const int wide = std::max({text.horizontalAdvance(name_), text.horizontalAdvance(words_(most_)),
                             text.horizontalAdvance(words_(least_)), 44});
  return {std::min(wide, 120) + 5, 2 * text.height() + static_cast<int>(kGateRoom) + 12};
}

QRectF Lever::gate() const {
  const double text = QFontMetrics(font()).height();
  const double above = text + 3.0 + kKnobHeight / 2.0;
  return {width() / 2.0 - 2.0, above, 4.0, height() - above - text - 3.0 - kKnobHeight / 2.0};
}

double Lever::height_of(double place) const {
  const QRectF way = gate();
  const double share =
      most_ > least_ ? std::clamp((place - least_) / (most_ - least_), 0.0, 1.0) : 0.0;
  return pressed_down_ ? way.top() + share * way.height() : way.bottom() - share * way.height();
}

QPointF Lever::knob() const {
  return {width() / 2.0, height_of(place_)};
}

void Lever::mousePressEvent(QMouseEvent* event) {
  if (event->button() != Qt::LeftButton) return;
  hand_offset_ = event->position().y() - knob().y();
  if (std::abs(hand_offset_) <= kKnobHeight / 2.0 + 3.0) return;
  hand_offset_ = 0.0;  // beside the knob: it comes to the hand
  mouseMoveEvent(event);
}

void Lever::mouseMoveEvent(QMouseEvent* event) {
  if (!(event->buttons() & Qt::LeftButton)) return;
  const QRectF way = gate();
  if (way.height() < 1.0) return;
  const double at = event->position().y() - hand_offset_;
  const double share =
      pressed_down_ ? (at - way.top()) / way.height() : (way.bottom() - at) / way.height();
  double place = least_ + std::clamp(share, 0.0, 1.0) * (most_ - least_);
  // Comes to rest at nought when the hand is within a pixel or two of it.
  if (std::abs(height_of(0.0) - at) < 2.0 && least_ <= 0.0 && most_ >= 0.0) place = 0.0;
  move_to(place, event->modifiers() & Qt::ShiftModifier);
}

void Lever::mouseDoubleClickEvent(QMouseEvent* event) {
  move_to(0.0, event->modifiers() & Qt::ShiftModifier);
}

void Lever::keyPressEvent(QKeyEvent* event) {
  const bool shift = event->modifiers() & Qt::ShiftModifier;
  const double up = pressed_down_ ? -step_ : step_;
  switch (event->key()) {
    case Qt::Key_Up:
    case Qt::Key_Right:
      return move_to(place_ + up, shift);
    case Qt::Key_Down:
    case Qt::Key_Left:
      return move_to(place_ - up, shift);
    case Qt::Key_PageUp:
      return move_to(pressed_down_ ? least_ : most_, shift);
    case Qt::Key_PageDown:
      return move_to(pressed_down_ ? most_ : least_, shift);
    case Qt::Key_Home:
      return move_to(0.0, shift);
    default:
      QAbstractSlider::keyPressEvent(event);
  }
}

void Lever::wheelEvent(QWheelEvent* event) {
  const double notches = event->angleDelta().y() / 120.0;
  move_to(place_ + (pressed_down_ ? -step_ : step_) * notches,
          event->modifiers() & Qt::ShiftModifier);
  event->accept();
}

void Lever::changeEvent(QEvent* event) {
  if (event->type() == QEvent::FontChange) updateGeometry();
  QAbstractSlider::changeEvent(event);
}

void Lever::paintEvent(QPaintEvent*) {
  const Palette& colours = tackbench::ui::palette();
  QPainter painter(this);
  painter.setRenderHint(QPainter::Antialiasing);
  const QFontMetrics text(font());
  painter.setPen(colours.soft);
  painter.drawText(QRect(0, 0, width(), text.height()), Qt::AlignCenter,
                   text.elidedText(name_, Qt::ElideMiddle, width()));

  const QRectF way = gate();
  painter.setPen(Qt::NoPen);
  painter.setBrush(colours.hair);
  painter.drawRoundedRect(way, 2.0, 2.0);
  painter.setPen(QPen(colours.soft, 1.0));
  const double nought = height_of(0.0);
  painter.drawLine(QPointF(way.center().x() - 10.0, nought),
                   QPointF(way.center().x() + 10.0, nought));

  const bool moved = isEnabled() && place_ != 0.0;
  if (isEnabled()) {
    painter.setPen(QPen(moved ? colours.moves : colours.ink, hasFocus() ? 2.6 : 1.6));
    painter.setBrush(colours.card);
    const QPointF at = knob();
    painter.drawRoundedRect(
        QRectF(at.x() - kKnobWidth / 2.0, at.y() - kKnobHeight / 2.0, kKnobWidth, kKnobHeight), 3.0,
        3.0);
    if (hasFocus()) painter.drawLine(QPointF(at.x() - 6.0, at.y()), QPointF(at.x() + 6.0, at.y()));
  }
  painter.setPen(isEnabled() ? colours.ink : colours.soft);
  painter.drawText(QRect(0, height() - text.height(), width(), text.height()), Qt::AlignCenter,
                   isEnabled() ? words_(place_) : tr("none"));
}

}  // namespace tackbench::ui
