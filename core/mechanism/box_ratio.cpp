#include "core/mechanism/box_ratio.h"

#include <algorithm>
#include <cmath>

namespace tackbench {

namespace {

// log(1 + t) / t and (e^t - 1) / t, both 1 at t = 0.
double log1p_over(double t) {
  return t == 0.0 ? 1.0 : std::log1p(t) / t;
}
double expm1_over(double t) {
  return t == 0.0 ? 1.0 : std::expm1(t) / t;
}

}  // namespace

BoxRatio::BoxRatio(double constant_ratio) : stretches_{{{0.0, constant_ratio}, 0.0, 0.0}} {}

BoxRatio::BoxRatio(const std::vector<RatioRow>& rows) {
  stretches_.reserve(rows.size());
  for (std::size_t i = 0; i < rows.size(); ++i) {
    Stretch stretch{rows[i], 0.0, 0.0};
    if (i > 0) stretch.start_output = output_from_input(rows[i].input);
    if (i + 1 < rows.size()) {
      stretch.slope = (rows[i + 1].ratio - rows[i].ratio) / (rows[i + 1].input - rows[i].input);
    }
    stretches_.push_back(stretch);
  }
  const double at_centre = output_from_input(0.0);
  for (Stretch& stretch : stretches_) stretch.start_output -= at_centre;
}

double BoxRatio::output_from_input(double input) const {
  auto next = std::upper_bound(stretches_.begin(), stretches_.end(), input,
                               [](double at, const Stretch& s) { return at < s.start.input; });
  if (next == stretches_.begin()) {  // before the first row: its ratio is held
    return next->start_output + (input - next->start.input) / next->start.ratio;
  }
  const Stretch& stretch = *std::prev(next);
  const double turn = (input - stretch.start.input) / stretch.start.ratio;
  return stretch.start_output + turn * log1p_over(stretch.slope * turn);
}

double BoxRatio::input_from_output(double output) const {
  auto next = std::upper_bound(stretches_.begin(), stretches_.end(), output,
                               [](double at, const Stretch& s) { return at < s.start_output; });
  if (next == stretches_.begin()) {
    return next->start.input + (output - next->start_output) * next->start.ratio;
  }
  const Stretch& stretch = *std::prev(next);
  const double turn = output - stretch.start_output;
  return stretch.start.input + stretch.start.ratio * turn * expm1_over(stretch.slope * turn);
}

double BoxRatio::ratio_at(double input) const {
  auto next = std::upper_bound(stretches_.begin(), stretches_.end(), input,
                               [](double at, const Stretch& s) { return at < s.start.input; });
  if (next == stretches_.begin()) return next->start.ratio;
  const Stretch& stretch = *std::prev(next);
  return stretch.start.ratio + stretch.slope * (input - stretch.start.input);
}

}  // namespace tackbench
