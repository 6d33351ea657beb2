// Between a tree of the current format and a project, without the checks across fields.
#pragma once

#include <nlohmann/json_fwd.hpp>

#include "core/project-file/fault_list.h"
#include "core/project/project.h"

namespace tackbench {

// `tree` is the file's object without its format version; faults of single fields go to `faults`.
Project project_from_tree(const nlohmann::ordered_json& tree, FaultList& faults);

}  // namespace tackbench
