#include "ui/space/drawn_canvas.h"

#include "ui/look/palette.h"

namespace tackbench::ui {

DrawnCanvas::DrawnCanvas(QWidget* parent) : QWidget(parent) {
  setMouseTracking(true);
  setAttribute(Qt::WA_OpaquePaintEvent);
}

void DrawnCanvas::show(const SpaceShown& shown) {
  shown_ = &shown;
  update();
}

void DrawnCanvas::paintEvent(QPaintEvent*) {
  QPainter painter(this);
  const Palette& colours = ui::palette();
  if (shown_ == nullptr) {
    painter.fillRect(rect(), colours.card);
    return;
  }
  drawing_.paint(painter, size(), devicePixelRatioF(), *shown_, colours);
}

}  // namespace tackbench::ui
