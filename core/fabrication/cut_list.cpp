#include "core/fabrication/cut_list.h"

#include <fmt/core.h>

#include <algorithm>
#include <cmath>

namespace tackbench {

const CutDimension* dimension(const CutItem& item, const std::string& name) {
  const auto found =
      std::find_if(item.dimensions.begin(), item.dimensions.end(),
                   [&name](const CutDimension& candidate) { return candidate.name == name; });
  return found == item.dimensions.end() ? nullptr : &*found;
}

std::string value_text(const CutDimension& dimension) {
  if (!dimension.value) return dimension.text;
  const double shown = shown_from_inside(dimension.unit, *dimension.value);
  // "-0.0" reads like a mistake.
  const double step = std::pow(10.0, -dimension.decimals);
  return fmt::format("{:.{}f}", std::abs(shown) < 0.5 * step ? 0.0 : shown, dimension.decimals);
}

std::string tolerance_text(const CutDimension& dimension) {
  switch (dimension.tolerance_kind) {
    case ToleranceKind::none:
      return "";
    case ToleranceKind::plus_minus:
      return fmt::format("{:g}", shown_from_inside(dimension.unit, dimension.tolerance));
    case ToleranceKind::blank:
      return "blank until measured in";
  }
  return "";
}

}  // namespace tackbench
