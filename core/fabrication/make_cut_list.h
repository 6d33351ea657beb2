// From a project's mechanism and its checks' results to the cut list.
#pragma once

#include "core/fabrication/cut_list.h"
#include "core/findings/all_findings.h"

namespace tackbench {

// What cannot be listed yet stands in `waiting` with the reason.
CutList make_cut_list(const Mechanism& mechanism, const CheckResults& results);

}  // namespace tackbench
