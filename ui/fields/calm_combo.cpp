#include "ui/fields/calm_combo.h"

#include <QAbstractItemView>
#include <QPainter>
#include <QWheelEvent>

#include "ui/look/palette.h"

namespace tackbench::ui {

CalmCombo::CalmCombo(QWidget* parent) : QComboBox(parent) {
  setFocusPolicy(Qt::StrongFocus);
  setSizeAdjustPolicy(QComboBox::AdjustToMinimumContentsLengthWithIcon);
  setMinimumContentsLength(6);
}

void CalmCombo::set_name(const QString& name) {
  setAccessibleName(name);
  view()->setAccessibleName(name);
}

void CalmCombo::paintEvent(QPaintEvent* event) {
  QComboBox::paintEvent(event);
  QPainter painter(this);
  painter.setRenderHint(QPainter::Antialiasing);
  painter.setPen(QPen(ui::palette().soft, 1.5, Qt::SolidLine, Qt::RoundCap, Qt::RoundJoin));
  const double x = width() - 12.0;
  const double y = height() / 2.0;
  const QPointF arrow[] = {{x - 3.5, y - 1.5}, {x, y + 2.0}, {x + 3.5, y - 1.5}};
  painter.drawPolyline(arrow, 3);
}

void CalmCombo::wheelEvent(QWheelEvent* event) {
  if (hasFocus()) {
    QComboBox::wheelEvent(event);
  } else {
    event->ignore();
  }
}

void CalmCombo::focusInEvent(QFocusEvent* event) {
  QComboBox::focusInEvent(event);
  Q_EMIT entered();
}

}  // namespace tackbench::ui
