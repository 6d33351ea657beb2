// Members of a file that this version does not know: kept and written back, but not used.
#pragma once

#include <string>
#include <vector>

#include "core/project/project.h"

namespace tackbench {

// Their member paths in file order: "front_axle.colour".
std::vector<std::string> unknown_member_places(const Project& project);

}  // namespace tackbench
