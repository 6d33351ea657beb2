// Numbers on their way into JSON output.
#pragma once

#include <cmath>
#include <nlohmann/json.hpp>

#include "core/basics/frames.h"
#include "core/basics/units.h"

namespace tackbench::command_line {

using Json = nlohmann::ordered_json;

// To nine decimals, without minus zero: what lies below is rounding noise. JSON knows no infinity
// and no NaN: those become null.
inline Json json_number(double value) {
  constexpr double kDecimals = 1e9;
  constexpr double kTooLargeToRound = 1e6;
  if (!std::isfinite(value)) return nullptr;
  if (std::abs(value) > kTooLargeToRound) return value;
  const double tidy = std::round(value * kDecimals) / kDecimals;
  return tidy == 0.0 ? 0.0 : tidy;
}

inline Json json_degrees(double radians) {
  return json_number(degrees_from_radians(radians));
}

inline Json json_point(const Vec3& mm) {
  return Json::array({json_number(mm.x()), json_number(mm.y()), json_number(mm.z())});
}

}  // namespace tackbench::command_line
