// How widgets of the usual kinds look here: calm cards on the desk's colour, hair-line frames.
// Widgets take part by a dynamic property `look` (set with set_look):
//   "card"     a card with a hair-line frame        "heading"  15, strong
//   "soft"     lesser text, 11.5                    "title"    17, strong
//   "wrong"    words about a wrong entry            "link"     a button that reads as plain text
//   "fold"     a heading that folds what is below   "faded"    text of what is out of date
#pragma once

#include <QString>
#include <QWidget>

#include "ui/look/palette.h"

namespace tackbench::ui {

// Style sheet made from the palette's colours.
QString style_sheet(const Palette& palette);

// Gives the widget and all below it that look, and keeps it so when day and night change.
void dress(QWidget& widget);

void set_look(QWidget& widget, const char* look);

// `share` of `over` on `ground`: 0.1 is a faint tint.
QColor tint(const QColor& over, const QColor& ground, double share);

}  // namespace tackbench::ui
