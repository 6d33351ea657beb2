// New: a sample to look at, or a bare start after three questions.
#pragma once

#include <QDialog>
#include <optional>

#include "core/project/project.h"

class QCheckBox;
class QComboBox;
class QLineEdit;
class QListWidget;

namespace tackbench::ui {

class NewProjectDialog : public QDialog {
  Q_OBJECT

 public:
  explicit NewProjectDialog(QWidget* parent = nullptr);
  // What was chosen; empty when a sample could not be read.
  std::optional<Project> project() const;

 private:
  Project bare_start() const;

  QListWidget* from_;
  QWidget* questions_;
  QLineEdit* name_;
  QComboBox* drive_;
  QComboBox* box_;
  std::vector<QCheckBox*> moved_;
};

}  // namespace tackbench::ui
