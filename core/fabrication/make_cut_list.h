// From a project's mechanism and its checks' results to the cut list.
#pragma once

#include "core/fabrication/cut_list.h"
#include "core/findings/all_findings.h"

namespace tackbench {

// Everything is listed for the truck with the drag link that the list orders. What cannot be listed
// yet stands in `waiting` with the reason; findings past their limit stand at the list's head.
CutList make_cut_list(const Mechanism& mechanism, const CheckResults& results,
                      const std::vector<Finding>& findings);

}  // namespace tackbench
