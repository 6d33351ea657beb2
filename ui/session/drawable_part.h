// What of a project can be posed although the whole does not compile yet.
#pragma once

#include <optional>

#include "core/mechanism/mechanism.h"
#include "core/project/project.h"

namespace tackbench::ui {

// The project without the stations that its faults lie in, compiled; none when that does not
// compile either, or when a fault lies in no station.
std::optional<Mechanism> drawable_part(const Project& project);

// Whether every station of `part` is in `whole`.
bool has_stations_of(const Project& whole, const Project& part);

}  // namespace tackbench::ui
