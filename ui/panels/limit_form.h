// Choosing a limit of one's own for a finding: least and greatest value, the inner values from
// which it is close, and where they come from.
#pragma once

#include <QLabel>
#include <QLineEdit>
#include <QPushButton>
#include <QWidget>
#include <array>

#include "core/findings/finding.h"
#include "ui/session/session.h"

namespace tackbench::ui {

class LimitForm : public QWidget {
  Q_OBJECT

 public:
  LimitForm(Session& session, const Limit& limit, QWidget* parent = nullptr);

  QLineEdit& line(const char* member) const;
  QString wrong_words() const { return wrong_->isHidden() ? QString() : wrong_->text(); }
  void take();

 Q_SIGNALS:
  void done();

 protected:
  void keyPressEvent(QKeyEvent* event) override;
  void mousePressEvent(QMouseEvent* event) override;

 private:
  void show_wrong(const QString& words);
  std::optional<std::optional<double>> value_of(std::size_t index);

  Session& session_;
  Limit limit_;
  ShownUnit lengths_;  // what the numbers were written in; the window's may change meanwhile
  std::array<QLineEdit*, 4> values_{};
  QLineEdit* source_ = nullptr;
  QLabel* wrong_ = nullptr;
};

}  // namespace tackbench::ui
