// Numbers as people type them: "314.5", "12-3/8 in", "1.2 m", "812 - 40", "1' 2-3/8\"".
#pragma once

#include <string_view>

#include "core/basics/result.h"
#include "core/basics/shown_number.h"
#include "core/basics/units.h"

namespace tackbench {

// The inside value (mm, rad, N ...) of a typed number of the kind `unit`.
//
// One number or a sum of numbers with + and -. A number is whole, decimal (point, or a comma that
// cannot be read as a thousand's mark) or a fraction, alone or behind a whole number ("12-3/8",
// "12 3/8"). Behind it may stand a unit of the same kind: mm, cm, m, in, ", ft, '; deg, rad,
// turns; N, kN; Nm; kg, t; %; MPa; N/mm. Without any unit it counts as screens show it: lengths in
// `lengths`, angles in degrees. A unit behind the last number alone counts for all of them;
// otherwise each has to carry its own. A leading "~" (a shown number that was rounded) is passed
// over.
//
// Faults say what is wrong and what to give; `place` is empty.
Result<double> entered_number(std::string_view text, Unit unit,
                              ShownUnit lengths = ShownUnit::millimetre);

}  // namespace tackbench
