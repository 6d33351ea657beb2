// Opens a project for a command: reads the file, applies --set, compiles the mechanism.
#pragma once

#include <optional>

#include "app/command-line/commands.h"
#include "core/basics/result.h"
#include "core/mechanism/mechanism.h"

namespace tackbench::command_line {

Result<Project> open_project(const Opening& opening);
Result<Mechanism> open_mechanism(const Opening& opening);

// Says every fault where the user looks for it and returns kBadInput.
int refuse(const Problems& problems, bool json);

}  // namespace tackbench::command_line
