// Every finding of a project: runs the checks and judges their results.
#pragma once

#include <optional>
#include <vector>

#include "core/checks/bump_check.h"
#include "core/checks/link_check.h"
#include "core/checks/link_travel.h"
#include "core/checks/lock_check.h"
#include "core/checks/pedal_check.h"
#include "core/checks/push_back.h"
#include "core/checks/shaft_check.h"
#include "core/checks/stretch_check.h"
#include "core/checks/wandering_shaft.h"
#include "core/findings/finding.h"
#include "core/project/checked_reference.h"

namespace tackbench {

// The truck once it has the drag link that centres its box, which is the one to order.
struct AsOrdered {
  double stud_clocking = 0.0;  // about that link, arm housing to knuckle housing, rad
  std::optional<LockResult> locks;
  std::optional<LinkTravel> link_travel;
};

// The checks' results, kept so that the cut list and tables need not run them again.
struct CheckResults {
  std::optional<DirectionResult> direction;
  std::optional<LinkResult> link;
  std::optional<LockResult> locks;
  std::optional<LinkTravel> link_travel;
  std::optional<AsOrdered> as_ordered;  // empty when the link to order cannot be fitted
  std::optional<BumpResult> bump;
  std::optional<ShaftCheck> shaft;  // empty without a shaft line
  std::optional<WanderingShaft> wandering;
  std::optional<PushBack> push_back;  // empty also without a distance
  std::vector<PedalResult> pedals;
  std::vector<StretchResult> stretch;
};

CheckResults run_checks(const Mechanism& mechanism);

// Worst verdict first (past, close, not judged, within), then direction before all else and the
// rest in order of motion; stable.
std::vector<Finding> all_findings(const Mechanism& mechanism, const CheckResults& results,
                                  const std::vector<CheckedReference>& references = {});

// The finding of that name, or null.
const Finding* finding_named(const std::vector<Finding>& findings, const std::string& name);

}  // namespace tackbench
