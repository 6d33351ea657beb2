// The cut list, always current, in readable blocks with its cautions at the head.
#pragma once

#include <QLabel>
#include <QPushButton>
#include <QTextBrowser>
#include <QWidget>
#include <filesystem>

#include "core/basics/result.h"
#include "ui/session/calm_refresh.h"
#include "ui/session/session.h"

namespace tackbench::ui {

class CutListPanel : public QWidget {
  Q_OBJECT

 public:
  explicit CutListPanel(Session& session, QWidget* parent = nullptr);

  // Waits for the checks first: what is saved is never from before an edit. Faults are shown too.
  Result<std::vector<std::filesystem::path>> save_into(const std::filesystem::path& folder);
  QString shown_text() const { return text_->toPlainText(); }
  QString state_words() const { return state_->text(); }
  QPushButton& save_button() const { return *save_; }

 Q_SIGNALS:
  void saved(const QString& folder);

 protected:
  void showEvent(QShowEvent* event) override;
  void changeEvent(QEvent* event) override;

 private:
  void refresh();
  void ask_and_save();

  Session& session_;
  QLabel* state_ = nullptr;
  QPushButton* save_ = nullptr;
  QTextBrowser* text_ = nullptr;
  CalmRefresh* calm_ = nullptr;
};

}  // namespace tackbench::ui
