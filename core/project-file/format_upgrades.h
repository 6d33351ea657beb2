// Brings the tree of an older format up to date, one step a version.
#pragma once

#include <nlohmann/json_fwd.hpp>

namespace tackbench {

// Changes a tree of format `from_version` (0 up to the current one less 1) into the current
// format. A step renames or recomputes members in place and leaves alone what it does not know;
// resources/file-format-changelog.md says in words what each step does.
void upgrade_tree(nlohmann::ordered_json& tree, int from_version);

}  // namespace tackbench
