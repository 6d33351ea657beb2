// What the hand on the sheet is at: one thing at a time, so that nothing of one outlives it in the
// next.
#pragma once

#include <QPointF>
#include <QString>
#include <optional>
#include <utility>
#include <variant>
#include <vector>

#include "ui/motion/control_in_hand.h"
#include "ui/sheet/grip_drag.h"
#include "ui/sheet/grip_layer.h"

namespace tackbench::ui {

class SheetHand {
 public:
  struct Idle {};
  struct Pressed {  // on a point, a control or the paper; nothing has moved yet
    QPointF at;
    std::optional<GripHit> grip;
    std::optional<ControlInHand> control;
    SheetView view = SheetView::side;
  };
  struct DragsPoint {
    GripDrag drag;
    ViewPoint offset;  // of the point from the pointer, view mm
  };
  struct NudgesPoint {
    GripDrag drag;
    ViewPoint so_far;  // by arrow keys since the first of them, view mm
  };
  struct MovesControl {
    ControlInHand control;
    SheetView view = SheetView::side;
  };
  struct Pans {};
  using Work = std::variant<Idle, Pressed, DragsPoint, NudgesPoint, MovesControl, Pans>;

  void take(Work work) { work_ = std::move(work); }
  // Idle, with nothing left of what it held.
  void let_go() { *this = SheetHand(); }

  // What it is at; null when it is something else.
  template <class What>
  What* at() {
    return std::get_if<What>(&work_);
  }
  template <class What>
  const What* at() const {
    return std::get_if<What>(&work_);
  }
  bool idle() const { return at<Idle>() != nullptr; }
  // Of the point that is dragged or nudged; null without one.
  const GripDrag* drag() const;

  // Keeps what a step says about itself; the project to go on to, none where the point cannot go.
  std::optional<Project> take_step(DragStep step);
  // Where the point may go.
  const Path& path() const { return path_; }
  void show_path(Path path) { path_ = std::move(path); }
  const std::vector<SnapGuide>& guides() const { return guides_; }
  // Why the point cannot go there; empty when it can.
  const QString& refused() const { return refused_; }

 private:
  Work work_;
  Path path_;
  std::vector<SnapGuide> guides_;
  QString refused_;
};

}  // namespace tackbench::ui
