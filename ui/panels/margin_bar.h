// A bar about a central tick, which is the limit: to the left what is short, to the right what is
// to spare.
#pragma once

#include <QWidget>
#include <optional>

#include "core/findings/finding.h"

namespace tackbench::ui {

class MarginBar : public QWidget {
  Q_OBJECT

 public:
  explicit MarginBar(QWidget* parent = nullptr);
  void show_margin(std::optional<double> share, Verdict verdict, bool stale);
  QSize sizeHint() const override { return {110, 14}; }

 protected:
  void paintEvent(QPaintEvent* event) override;

 private:
  std::optional<double> share_;
  Verdict verdict_ = Verdict::not_judged;
  bool stale_ = false;
};

}  // namespace tackbench::ui
