// The scene as a hidden-line drawing by QPainter, for where there is no OpenGL.
#pragma once

#include <QWidget>

#include "ui/space/line_drawing.h"
#include "ui/space/space_canvas.h"

namespace tackbench::ui {

class DrawnCanvas : public QWidget, public SpaceCanvas {
  Q_OBJECT

 public:
  explicit DrawnCanvas(QWidget* parent = nullptr);

  QWidget& widget() override { return *this; }
  QObject& touched() override { return *this; }
  using QWidget::show;
  void show(const SpaceShown& shown) override;

 protected:
  void paintEvent(QPaintEvent* event) override;

 private:
  const SpaceShown* shown_ = nullptr;
  LineDrawing drawing_;
};

}  // namespace tackbench::ui
