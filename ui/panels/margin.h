// How much of a limit is to spare, for a bar about a tick.
#pragma once

#include <optional>

#include "core/findings/finding.h"

namespace tackbench::ui {

// 0 at the limit, positive to spare, negative short; measured by the limit's own size (half the
// width of a range, otherwise its value, otherwise its inner value) and held to -1 .. 1. Empty
// where there is nothing to measure: no limit, no number, a question of yes or no.
std::optional<double> margin_share(const Finding& finding);

// Counts and directions are right or wrong, without a more or less.
bool is_yes_or_no(const Finding& finding);

}  // namespace tackbench::ui
