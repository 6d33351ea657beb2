// Every finding of a project: runs the checks and judges their results.
#pragma once

#include <vector>

#include "core/checks/bump_check.h"
#include "core/checks/link_check.h"
#include "core/checks/lock_check.h"
#include "core/checks/pedal_check.h"
#include "core/checks/shaft_check.h"
#include "core/checks/stretch_check.h"
#include "core/findings/finding.h"

namespace tackbench {

// The checks' results, kept so that the cut list and tables need not run them again.
struct CheckResults {
  std::optional<DirectionResult> direction;
  std::optional<LinkResult> link;
  std::optional<LockResult> locks;
  std::optional<BumpResult> bump;
  std::optional<ShaftCheckResult> shaft;
  std::vector<PedalResult> pedals;
  std::vector<StretchResult> stretch;
};

CheckResults run_checks(const Mechanism& mechanism);

// Worst verdict first, then in order of motion; stable.
std::vector<Finding> all_findings(const Mechanism& mechanism, const CheckResults& results);

}  // namespace tackbench
