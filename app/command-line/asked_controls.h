// The controls that a command is asked to look at, and how JSON tells them.
#pragma once

#include <string>

#include "app/command-line/commands.h"
#include "app/command-line/json_numbers.h"
#include "core/basics/result.h"
#include "core/mechanism/mechanism.h"

namespace tackbench::command_line {

// "brake".
std::string pedal_use(PedalUse use);

// Pedals by their name, or by their use where only one has it.
Result<Controls> asked_controls(const Mechanism& mechanism, const PoseSettings& settings);

Json controls_json(const Mechanism& mechanism, const Controls& controls);

}  // namespace tackbench::command_line
