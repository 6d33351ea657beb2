// A heading that folds what lies below it: a small arrow, words shortened in the middle, and lesser
// words at its end.
#pragma once

#include <QAbstractButton>

namespace tackbench::ui {

class FoldButton : public QAbstractButton {
  Q_OBJECT

 public:
  explicit FoldButton(const QString& words, QWidget* parent = nullptr);
  void show_lesser(const QString& words);
  void show_fault(bool fault);
  QSize sizeHint() const override;
  QSize minimumSizeHint() const override;

 protected:
  void paintEvent(QPaintEvent* event) override;

 private:
  QString lesser_;
  bool fault_ = false;
};

}  // namespace tackbench::ui
