// When the shaft line as drawn is not the line that will be there: an eye or an end drawn beside
// its shaft, or a line that is free to wander and stands at one of many places. What is read off
// the drawing is then not judged.
#pragma once

#include <optional>
#include <string>

#include "core/checks/wandering_shaft.h"
#include "core/mechanism/mechanism.h"

namespace tackbench {

// Which eyes and ends stand beside their shafts by more than their limits. Empty when none does.
std::optional<std::string> why_not_built_so(const Mechanism& mechanism);
// The same, or else which joints nothing holds. Empty when the line is held as drawn.
std::optional<std::string> why_not_as_drawn(const Mechanism& mechanism,
                                            const WanderingShaft& wandering);

}  // namespace tackbench
