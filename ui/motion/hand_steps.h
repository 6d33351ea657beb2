// What a hand's steps mean in every drawing of the truck alike.
#pragma once

#include <QPointF>
#include <Qt>

#include "core/basics/shown_number.h"

namespace tackbench::ui {

// Far enough from the press to be a drag and no click.
bool is_drag(const QPointF& press, const QPointF& now);

// 1 mm or 1/16 in, mm: what a dragged point snaps to and an arrow key moves it by.
double unit_step(ShownUnit unit);
// Of an arrow key: ten units with shift, a tenth with control, mm.
double nudge_step(ShownUnit unit, Qt::KeyboardModifiers held);
// A free point keeps to the line that it has.
bool keeps_line(Qt::KeyboardModifiers held);

// What a key asks of a drawing; none for others.
enum class ViewKey { none, nearer, farther, fit, next_point, point_before };
ViewKey view_key(int key);

}  // namespace tackbench::ui
