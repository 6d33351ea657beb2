#include "ui/sheet/sheet_hand.h"

#include <QCoreApplication>

namespace tackbench::ui {

const GripDrag* SheetHand::drag() const {
  if (const auto* drags = at<DragsPoint>()) return &drags->drag;
  if (const auto* nudges = at<NudgesPoint>()) return &nudges->drag;
  return nullptr;
}

std::optional<Project> SheetHand::take_step(DragStep step) {
  path_ = std::move(step.path);
  guides_ = std::move(step.guides);
  refused_.clear();
  if (step.end_on)
    refused_ = QCoreApplication::translate("SheetHand",
                                           "its line is seen end on here: drag it in another view");
  if (step.after) return std::move(step.after).value();
  const Problem& problem = step.after.problems().front();
  refused_ = QString::fromStdString(problem.found + "; " + problem.wanted);
  return std::nullopt;
}

}  // namespace tackbench::ui
