// A choice that the mouse wheel changes only when it has the keyboard: scrolling a sheet must not
// edit it.
#pragma once

#include <QComboBox>

namespace tackbench::ui {

class CalmCombo : public QComboBox {
  Q_OBJECT

 public:
  explicit CalmCombo(QWidget* parent = nullptr);
  // Spoken for the choice and for its open list.
  void set_name(const QString& name);

 Q_SIGNALS:
  void entered();  // it got the keyboard

 protected:
  void paintEvent(QPaintEvent* event) override;
  void wheelEvent(QWheelEvent* event) override;
  void focusInEvent(QFocusEvent* event) override;
};

}  // namespace tackbench::ui
