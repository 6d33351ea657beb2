// Curves as a table for a spreadsheet.
#pragma once

#include "ui/graphs/graph_choice.h"

namespace tackbench::ui {

// RFC 4180: a heading of the axis and the curves with their units, then one row a place; numbers
// with a point and nine digits, in the units that the graph shows; a gap is an empty cell.
QString curves_csv(const GraphAxis& across, const std::vector<Curve>& curves, ShownUnit lengths);

}  // namespace tackbench::ui
