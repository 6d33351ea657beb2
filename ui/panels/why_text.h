// How a finding came, to be read beside it: formula, source, inputs, steps, result, limit, caution.
#pragma once

#include <QString>

#include "core/basics/shown_number.h"
#include "core/findings/finding.h"

namespace tackbench::ui {

// Simple HTML, every text of the project escaped.
QString why_text(const Finding& finding, ShownUnit lengths);

}  // namespace tackbench::ui
