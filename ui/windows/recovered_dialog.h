// After a crash: what was kept, compared with the file it belongs to. Nothing is taken or thrown
// away without a press of a button.
#pragma once

#include <QDialog>
#include <optional>

#include "core/project/project.h"
#include "ui/session/recovery.h"

class QLabel;
class QListWidget;
class QPushButton;

namespace tackbench::ui {

class RecoveredDialog : public QDialog {
  Q_OBJECT

 public:
  enum class Answer { later, take, discard };

  explicit RecoveredDialog(std::vector<LeftBehind> copies, QWidget* parent = nullptr);
  Answer answer() const { return answer_; }
  // Of the chosen copy.
  const std::optional<Project>& project() const { return project_; }
  const LeftBehind& chosen() const;
  QString difference_words() const;

 private:
  void choose(int row);

  std::vector<LeftBehind> copies_;
  QListWidget* list_;
  QLabel* differences_;
  QPushButton* take_;
  std::optional<Project> project_;
  Answer answer_ = Answer::later;
};

}  // namespace tackbench::ui
