// One line of text that is shortened in the middle where there is no room; whole in its tip and
// when spoken.
#pragma once

#include <QLabel>

namespace tackbench::ui {

class ShortLabel : public QLabel {
  Q_OBJECT

 public:
  explicit ShortLabel(const QString& text = {}, QWidget* parent = nullptr);
  void show_text(const QString& text);
  const QString& whole_text() const { return whole_; }
  QSize minimumSizeHint() const override;

 protected:
  void paintEvent(QPaintEvent* event) override;

 private:
  QString whole_;
};

}  // namespace tackbench::ui
