// Findings of the shaft line's slips, ends and supports, for add_shaft_findings.
#pragma once

#include "core/findings/builders.h"

namespace tackbench {

// "shaft.<name>.engagement", "shaft.<name>.slip_left"
void add_slip_findings(const Mechanism& mechanism, const ShaftCheck& result, Findings& findings);
// "shaft.<column_end or box_end>.insertion", ".grip", ".off_axis"
void add_end_findings(const Mechanism& mechanism, const ShaftCheck& result, Findings& findings);
// "shaft.support.<name>.off_line": is the line drawn through the eye?
void add_off_line_findings(const Mechanism& mechanism, Findings& findings);
// "shaft.support.<name>.swing", ".load"
void add_support_findings(const Mechanism& mechanism, const ShaftCheck& result, Findings& findings);

}  // namespace tackbench
