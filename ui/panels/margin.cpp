#include "ui/panels/margin.h"

#include <algorithm>
#include <cmath>

namespace tackbench::ui {

namespace {

// Where a limit is zero and has no inner value, what counts as a full bar, inside units.
double usual_size(Unit unit) {
  switch (unit) {
    case Unit::millimetre:
      return 10.0;
    case Unit::degree:
      return radians_from_degrees(5.0);
    case Unit::turn:
      return kRadiansPerTurn / 2.0;
    case Unit::percent:
      return 0.1;
    default:
      return 1.0;
  }
}

double first_size(std::initializer_list<double> sizes, double otherwise) {
  constexpr double kNothing = 1e-9;
  for (const double size : sizes)
    if (std::abs(size) > kNothing) return std::abs(size);
  return otherwise;
}

}  // namespace

bool is_yes_or_no(const Finding& finding) {
  if (finding.name == "steering.direction") return true;
  return finding.limit && finding.limit->unit == Unit::count;
}

std::optional<double> margin_share(const Finding& finding) {
  if (!finding.limit || finding.numbers.empty() || is_yes_or_no(finding)) return std::nullopt;
  const Limit& limit = *finding.limit;
  const double value = finding.numbers.front().value;
  if (!std::isfinite(value) || (!limit.least && !limit.most)) return std::nullopt;
  const double usual = usual_size(limit.unit);
  double spare = 0.0;
  double size = usual;
  if (limit.least && limit.most) {
    spare = std::min(value - *limit.least, *limit.most - value);
    size = first_size({0.5 * (*limit.most - *limit.least), *limit.most}, usual);
  } else if (limit.least) {
    spare = value - *limit.least;
    size = first_size({*limit.least, limit.least_inner.value_or(0.0)}, usual);
  } else {
    spare = *limit.most - value;
    size = first_size({*limit.most, limit.most_inner.value_or(0.0)}, usual);
  }
  return std::clamp(spare / size, -1.0, 1.0);
}

}  // namespace tackbench::ui
