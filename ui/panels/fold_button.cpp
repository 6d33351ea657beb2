#include "ui/panels/fold_button.h"

#include <QPainter>
#include <QPainterPath>

#include "ui/look/palette.h"
#include "ui/look/style.h"
#include "ui/look/type.h"

namespace tackbench::ui {

namespace {

constexpr int kArrow = 16;
constexpr int kHeight = 26;

}  // namespace

FoldButton::FoldButton(const QString& words, QWidget* parent) : QAbstractButton(parent) {
  setCheckable(true);
  setText(words);
  setAccessibleName(words);
  setFocusPolicy(Qt::StrongFocus);
  setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Fixed);
  setAttribute(Qt::WA_Hover);
}

void FoldButton::show_lesser(const QString& words) {
  lesser_ = words;
  setAccessibleDescription(words);
  update();
}

void FoldButton::show_fault(bool fault) {
  if (fault_ == fault) return;
  fault_ = fault;
  update();
}

QSize FoldButton::sizeHint() const {
  return {160, kHeight};
}

QSize FoldButton::minimumSizeHint() const {
  return {60, kHeight};
}

void FoldButton::paintEvent(QPaintEvent*) {
  QPainter painter(this);
  painter.setRenderHint(QPainter::Antialiasing);
  const Palette& colours = ui::palette();
  if (underMouse()) painter.fillRect(rect(), tint(colours.ink, colours.card, 0.05));
  if (hasFocus()) {
    painter.setPen(QPen(colours.moves, 1.5));
    painter.drawRoundedRect(QRectF(rect()).adjusted(1, 1, -1, -1), 3, 3);
  }
  QPainterPath arrow;
  const double middle = height() / 2.0;
  if (isChecked()) {
    arrow.moveTo(4, middle - 2);
    arrow.lineTo(8, middle + 2);
    arrow.lineTo(12, middle - 2);
  } else {
    arrow.moveTo(6, middle - 4);
    arrow.lineTo(10, middle);
    arrow.lineTo(6, middle + 4);
  }
  painter.setPen(QPen(colours.soft, 1.5, Qt::SolidLine, Qt::RoundCap, Qt::RoundJoin));
  painter.drawPath(arrow);

  const QFont lesser_font = type_font(TypeSize::small);
  const QFont font = type_font(TypeSize::normal, true);
  const int room = width() - kArrow - 4;
  int lesser_width = lesser_.isEmpty() ? 0 : QFontMetrics(lesser_font).horizontalAdvance(lesser_);
  if (lesser_width > room / 2) lesser_width = 0;
  const QRect text_place(kArrow + 2, 0, room - (lesser_width > 0 ? lesser_width + 8 : 0), height());
  painter.setFont(font);
  painter.setPen(fault_ ? colours.past : colours.ink);
  const QString shown = shortened(text(), font, text_place.width());
  painter.drawText(text_place, Qt::AlignLeft | Qt::AlignVCenter, shown);
  setToolTip(shown == text() ? QString() : text());
  if (lesser_width == 0) return;
  painter.setFont(lesser_font);
  painter.setPen(colours.soft);
  painter.drawText(rect().adjusted(0, 0, -4, 0), Qt::AlignRight | Qt::AlignVCenter, lesser_);
}

}  // namespace tackbench::ui
