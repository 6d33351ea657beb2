#include "ui/motion/hand_steps.h"

#include <cmath>

#include "core/basics/units.h"

namespace tackbench::ui {

bool is_drag(const QPointF& press, const QPointF& now) {
  constexpr double kStartOfDrag = 4.0;  // pixels
  return std::hypot(now.x() - press.x(), now.y() - press.y()) >= kStartOfDrag;
}

double unit_step(ShownUnit unit) {
  return unit == ShownUnit::millimetre ? 1.0 : kMillimetresPerInch / 16.0;
}

double nudge_step(ShownUnit unit, Qt::KeyboardModifiers held) {
  double step = unit_step(unit);
  if (held.testFlag(Qt::ShiftModifier)) step *= 10.0;
  if (held.testFlag(Qt::ControlModifier)) step /= 10.0;
  return step;
}

bool keeps_line(Qt::KeyboardModifiers held) {
  return held.testFlag(Qt::ShiftModifier) || held.testFlag(Qt::AltModifier);
}

ViewKey view_key(int key) {
  switch (key) {
    case Qt::Key_Plus:
    case Qt::Key_Equal:
      return ViewKey::nearer;
    case Qt::Key_Minus:
      return ViewKey::farther;
    case Qt::Key_Home:
    case Qt::Key_F:
      return ViewKey::fit;
    case Qt::Key_N:
    case Qt::Key_BracketRight:
      return ViewKey::next_point;
    case Qt::Key_P:
    case Qt::Key_BracketLeft:
      return ViewKey::point_before;
    default:
      return ViewKey::none;
  }
}

}  // namespace tackbench::ui
