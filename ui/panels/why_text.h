// How a finding came, to be read beside it: formula, source, inputs, steps, result, limit, caution.
#pragma once

#include <QString>

#include "core/basics/shown_number.h"
#include "core/findings/finding.h"
#include "core/project/project.h"

namespace tackbench::ui {

// Simple HTML, every text of the project escaped; members and findings by their words.
QString why_text(const Project& project, const Finding& finding, ShownUnit lengths);

}  // namespace tackbench::ui
