#include "ui/session/undo_steps.h"

#include <utility>

#include "core/project-file/project_file.h"

namespace tackbench::ui {

bool same_project(const Project& a, const Project& b) {
  return a.cab == b.cab && a.column == b.column && a.shaft_line == b.shaft_line &&
         a.steering_box == b.steering_box && a.drag_link == b.drag_link &&
         a.front_axle == b.front_axle && a.pedals == b.pedals && a.driver == b.driver &&
         a.shapes == b.shapes && a.measurements == b.measurements && a.sheet == b.sheet &&
         a.limits == b.limits && a.name == b.name && a.notes == b.notes && a.unknown == b.unknown;
}

bool equal_project(const Project& a, const Project& b) {
  return same_project(a, b) || project_text(a) == project_text(b);
}

void UndoSteps::clear() {
  steps_.clear();
  next_ = 0;
}

void UndoSteps::add(UndoStep step) {
  steps_.erase(steps_.begin() + static_cast<std::ptrdiff_t>(next_), steps_.end());
  steps_.push_back(std::move(step));
  next_ = steps_.size();
}

}  // namespace tackbench::ui
