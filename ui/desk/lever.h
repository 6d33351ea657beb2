// An upright lever in its gate: a name above, the value in words below.
#pragma once

#include <QAbstractSlider>
#include <functional>

namespace tackbench::ui {

// Places in the inside unit of what it moves (mm, rad, share). The slider's whole number counts
// thousandths of the way.
class Lever : public QAbstractSlider {
  Q_OBJECT

 public:
  // `name` is shown above the gate and spoken; `words` says a place to people.
  Lever(const QString& name, std::function<QString(double)> words, QWidget* parent = nullptr);

  // `step`: of an arrow key, in the inside unit. A lever that has no way to go is disabled.
  void set_ends(double least, double most, double step);
  // Shows the place without telling anybody.
  void set_place(double place);
  double place() const { return place_; }
  double least() const { return least_; }
  double most() const { return most_; }
  // Upside down: pressed goes down, like a pedal.
  void set_pressed_down(bool down) { pressed_down_ = down; }
  // Where the knob's middle stands, in this widget.
  QPointF knob() const;

  QSize sizeHint() const override;
  QSize minimumSizeHint() const override { return sizeHint(); }

 Q_SIGNALS:
  void moved(double place, bool shift);  // by hand; whether Shift was held

 protected:
  void paintEvent(QPaintEvent* event) override;
  void mousePressEvent(QMouseEvent* event) override;
  void mouseMoveEvent(QMouseEvent* event) override;
  void mouseDoubleClickEvent(QMouseEvent* event) override;
  void keyPressEvent(QKeyEvent* event) override;
  void wheelEvent(QWheelEvent* event) override;
  void changeEvent(QEvent* event) override;

 private:
  void move_to(double place, bool shift);
  QRectF gate() const;
  double height_of(double place) const;
  int counted(double place) const;

  QString name_;
  std::function<QString(double)> words_;
  double place_ = 0.0;
  double least_ = 0.0;
  double most_ = 0.0;
  double step_ = 1.0;
  double hand_offset_ = 0.0;  // pointer below the knob's middle when taken
  bool pressed_down_ = false;
};

}  // namespace tackbench::ui
