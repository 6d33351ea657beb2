// The drawn hand wheel: turned with the mouse, the wheel or the arrow keys, as often round as its
// ends allow.
#pragma once

#include <QAbstractSlider>

namespace tackbench::ui {

// Angles in rad, left positive (anticlockwise for the driver). The slider's whole number counts
// hundredths of a degree.
class HandWheelDial : public QAbstractSlider {
  Q_OBJECT

 public:
  explicit HandWheelDial(QWidget* parent = nullptr);

  void set_ends(double full_right, double full_left);
  // Shows the angle without telling anybody.
  void set_angle(double angle);
  double angle() const { return angle_; }

  QSize sizeHint() const override { return {92, 92}; }
  QSize minimumSizeHint() const override { return {84, 84}; }

 Q_SIGNALS:
  void turned(double angle);  // by hand

 protected:
  void paintEvent(QPaintEvent* event) override;
  void mousePressEvent(QMouseEvent* event) override;
  void mouseMoveEvent(QMouseEvent* event) override;
  void mouseReleaseEvent(QMouseEvent* event) override;
  void keyPressEvent(QKeyEvent* event) override;
  void wheelEvent(QWheelEvent* event) override;

 private:
  void turn_to(double angle);

  double angle_ = 0.0;
  double full_right_ = 0.0;
  double full_left_ = 0.0;
  double hand_ = 0.0;  // where the hand would be, past an end as well
  double last_ = 0.0;  // of the pointer about the middle
  bool held_ = false;
};

}  // namespace tackbench::ui
