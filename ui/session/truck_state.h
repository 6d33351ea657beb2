// What background work gives back: plain values, shared and constant.
#pragma once

#include <memory>
#include <vector>

#include "core/findings/all_findings.h"
#include "core/mechanism/pose.h"
#include "core/runner/runner.h"

namespace tackbench::ui {

// The truck as it stands at one setting of the controls.
struct PosedTruck {
  Revision revision = 0;
  std::shared_ptr<const Mechanism> mechanism;  // never null
  Controls controls;
  Pose pose;
  Problems problems;  // why the project of that revision does not compile; then the mechanism is
                      // the last one that did
};

// What the checks say.
struct JudgedTruck {
  Revision revision = 0;
  std::shared_ptr<const Mechanism> mechanism;
  CheckResults results;
  std::vector<Finding> findings;  // as all_findings sorts them
};

}  // namespace tackbench::ui
