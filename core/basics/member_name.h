// Names of numbers in JSON output.
#pragma once

#include <string>

#include "core/basics/units.h"

namespace tackbench {

// Name and unit suffix, the unit said once: "steer_left_deg", "turns".
inline std::string member_name(const std::string& name, Unit unit) {
  const std::string suffix = member_suffix(unit);
  return "_" + name == suffix ? name : name + suffix;
}

}  // namespace tackbench
