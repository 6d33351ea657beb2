// What no single field can tell: names, references and fits across fields.
#pragma once

#include "core/basics/result.h"
#include "core/project/project.h"

namespace tackbench {

// Every fault across the fields of the project, each with its member path; empty when there is
// none. Single fields are taken to be in range: reader and with_field see to that.
Problems value_problems(const Project& project);

}  // namespace tackbench
