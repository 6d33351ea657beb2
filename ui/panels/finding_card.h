// One finding on the job card: mark, sentence, margin about the limit, the limit in words; opened,
// also how it came and the choosing of a limit.
#pragma once

#include <QLabel>
#include <QPushButton>
#include <QVBoxLayout>
#include <QWidget>

#include "core/findings/finding.h"
#include "ui/look/verdict_mark.h"
#include "ui/panels/limit_form.h"
#include "ui/panels/margin_bar.h"
#include "ui/session/session.h"

namespace tackbench::ui {

class FindingCard : public QWidget {
  Q_OBJECT

 public:
  explicit FindingCard(Session& session, QWidget* parent = nullptr);

  void show_finding(const Finding& finding, bool stale);
  const std::string& name() const { return finding_.name; }
  const Finding& finding() const { return finding_; }
  void open(bool open);
  bool is_open() const { return why_ != nullptr && !why_->isHidden(); }
  bool stale() const { return stale_; }
  // A motion of what it is about can be shown, or is: offered while the card is open.
  void offer_motion(bool possible, bool playing);
  // The form for a limit of one's own; null while it is not open.
  LimitForm* limit_form() const { return form_; }
  QPushButton* limit_button() const { return limit_button_; }
  QString refusal() const { return refusal_ == nullptr ? QString() : refusal_->text(); }
  const QLabel& sentence() const { return *sentence_; }

 Q_SIGNALS:
  void chosen();
  void motion_wanted(bool on);

 protected:
  void paintEvent(QPaintEvent* event) override;
  void mousePressEvent(QMouseEvent* event) override;
  void keyPressEvent(QKeyEvent* event) override;

 private:
  void make_why();
  void show_why();
  void show_motion();
  void choose_limit();
  void close_form();

  Session& session_;
  Finding finding_;
  bool stale_ = false;
  VerdictMark* mark_;
  QLabel* sentence_;
  MarginBar* bar_;
  QLabel* limit_;
  QWidget* why_ = nullptr;
  QLabel* why_text_ = nullptr;
  QPushButton* limit_button_ = nullptr;
  QLabel* refusal_ = nullptr;
  QPushButton* motion_ = nullptr;
  bool motion_possible_ = false;
  bool motion_playing_ = false;
  LimitForm* form_ = nullptr;
};

}  // namespace tackbench::ui
