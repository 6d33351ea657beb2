// Type of the window: the desktop's own font in four sizes and two weights, and a face with figures
// of equal width for columns of numbers.
#pragma once

#include <QFont>
#include <QString>

namespace tackbench::ui {

// 11.5, 13, 15 and 17 pixels where an inch has 96; with the desktop's scaling otherwise.
enum class TypeSize { small, normal, heading, title };

double pixels(TypeSize size);
QFont type_font(TypeSize size, bool strong = false);
// The same, or where the desktop's font has figures of unequal width, a face that has not.
QFont figure_font(TypeSize size, bool strong = false);
bool has_tabular_figures(const QFont& font);

// Long names are shortened in the middle.
QString shortened(const QString& text, const QFont& font, int width);

}  // namespace tackbench::ui
