// Findings as JSON text with stable member names that carry their units.
#pragma once

#include <string>
#include <vector>

#include "core/findings/finding.h"

namespace tackbench {

// {"findings": [...], "past": n, "close": n, "not_judged": n, "within": n, "unknown_members":
// [...], "not_checked": [...], "cautions": [...]}; two blanks of indent, a line break at the end.
// Members of one finding: name, station, verdict, sentence, numbers {<name><unit suffix>: value},
// judged (the member of `numbers` that is judged), limit {name,
// least/most/least_inner/most_inner<unit suffix>, standing, chosen, source,
// words}, worst_at
// {hand_wheel_deg, bump_left_mm, ...}, why_not_judged, caution. `unknown_members`: member paths of
// the file that are not used (unknown_member_places).
std::string findings_json(const std::vector<Finding>& findings,
                          const std::vector<std::string>& unknown_members = {});

// One finding with its trace: {..., "trace": {formula, source, inputs {}, steps [{words, formula,
// results {}}]}}.
std::string finding_json(const Finding& finding);

}  // namespace tackbench
