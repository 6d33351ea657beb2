// Numbers as people read them: the one place that turns an inside value (mm, rad) into text.
#pragma once

#include <string>

#include "core/basics/units.h"

namespace tackbench {

// The one switch of a project: how lengths are shown.
enum class ShownUnit { millimetre, inch_decimal, inch_fraction };

// "812.4 mm", from 5 m on "15753 mm"; "31.984 in", or fractions to 1/16: "12-3/8 in", with "~" in
// front where the sixteenth is rounded: "~12-3/8 in". Not finite: "not known".
std::string shown_length(double mm, ShownUnit unit = ShownUnit::millimetre);

// Any number with its unit: angles to 0.1 ("1.8 degrees"), turns to 0.01, percent and ratios to a
// sensible digit, lengths as above. Minus zero is shown as zero.
std::string shown(double inside, Unit unit, ShownUnit lengths = ShownUnit::millimetre);

// The same without its unit, for columns of a table.
std::string shown_bare(double inside, Unit unit, ShownUnit lengths = ShownUnit::millimetre);

// For following a calculation: six significant digits, in the unit shown ("43.1757 degrees").
std::string shown_exactly(double inside, Unit unit);

// What heads such a column: "mm", "in", "degrees", "turns", "%".
std::string unit_words(Unit unit, ShownUnit lengths = ShownUnit::millimetre);

}  // namespace tackbench
