// Where on the truck a finding is to be looked for.
#pragma once

#include <string>
#include <vector>

#include "core/findings/finding.h"
#include "core/project/project.h"

namespace tackbench::ui {

// Paths of the grips that the finding is about, the one in its middle first; empty for a finding
// about no one place.
std::vector<std::string> finding_places(const Project& project, const Finding& finding);

}  // namespace tackbench::ui
