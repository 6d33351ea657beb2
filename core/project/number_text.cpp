#include "core/project/number_text.h"

#include <fmt/format.h>

#include <charconv>
#include <cmath>

namespace tackbench {

std::string number_text(double value) {
  if (value == 0.0) return "0";
  return fmt::format("{:.14g}", value);
}

std::optional<double> number_from_text(std::string_view text) {
  double value = 0.0;
  const char* end = text.data() + text.size();
  const auto [stop, error] = std::from_chars(text.data(), end, value);
  if (error != std::errc() || stop != end || !std::isfinite(value)) return std::nullopt;
  return value;
}

}  // namespace tackbench
