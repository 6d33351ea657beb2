// Undo without end: each step keeps the project before and after it, which share all stations that
// did not change.
#pragma once

#include <QString>
#include <vector>

#include "core/project/project.h"

namespace tackbench::ui {

struct UndoStep {
  QString name;  // "Move drag-link ball on the knuckle"
  Project before;
  Project after;
};

// Same stations (as pointers), name and notes: nothing was changed in between.
bool same_project(const Project& a, const Project& b);
// Same text of the document, whoever made it.
bool equal_project(const Project& a, const Project& b);

class UndoSteps {
 public:
  void clear();
  // Drops what could be redone.
  void add(UndoStep step);
  bool can_undo() const { return next_ > 0; }
  bool can_redo() const { return next_ < steps_.size(); }
  QString undo_name() const { return can_undo() ? steps_[next_ - 1].name : QString(); }
  QString redo_name() const { return can_redo() ? steps_[next_].name : QString(); }
  const UndoStep& step_back() { return steps_[--next_]; }
  const UndoStep& step_forward() { return steps_[next_++]; }
  std::size_t size() const { return steps_.size(); }

 private:
  std::vector<UndoStep> steps_;
  std::size_t next_ = 0;  // the step that redo would do
};

}  // namespace tackbench::ui
