#include "ui/look/short_label.h"

#include <QPainter>

#include "ui/look/type.h"

namespace tackbench::ui {

ShortLabel::ShortLabel(const QString& text, QWidget* parent) : QLabel(parent) {
  setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Fixed);
  show_text(text);
}

void ShortLabel::show_text(const QString& text) {
  whole_ = text;
  setText(text);
  setAccessibleName(text);
}

QSize ShortLabel::minimumSizeHint() const {
  return {fontMetrics().horizontalAdvance(QStringLiteral("mm\u2026mm")),
          QLabel::minimumSizeHint().height()};
}

void ShortLabel::paintEvent(QPaintEvent*) {
  QPainter painter(this);
  const QString shown = shortened(whole_, font(), contentsRect().width());
  setToolTip(shown == whole_ ? QString() : whole_);
  painter.setPen(QLabel::palette().color(foregroundRole()));
  painter.drawText(contentsRect(), Qt::AlignLeft | Qt::AlignVCenter, shown);
}

}  // namespace tackbench::ui
