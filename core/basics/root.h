// Bracketed root finding for event times of the checks.
#pragma once

#include <algorithm>
#include <cmath>
#include <optional>

namespace tackbench {

struct Root {
  double at;        // where the sign changes, to `tolerance`
  double residual;  // function value there
};

// Root of a continuous f in [low, high] where f(low) and f(high) differ in sign (Illinois variant
// of regula falsi, bisection as safeguard). Empty when there is no sign change or a value is not
// finite. `tolerance` is on the argument.
template <class Function>
std::optional<Root> find_root(Function&& f, double low, double high, double tolerance) {
  double f_low = f(low);
  double f_high = f(high);
  if (!std::isfinite(f_low) || !std::isfinite(f_high)) return std::nullopt;
  if (f_low == 0.0) return Root{low, 0.0};
  if (f_high == 0.0) return Root{high, 0.0};
  if ((f_low > 0.0) == (f_high > 0.0)) return std::nullopt;
  constexpr int kMostSteps = 200;
  int side = 0;
  for (int step = 0; step < kMostSteps && std::abs(high - low) > tolerance; ++step) {
    const double secant = (f_high * low - f_low * high) / (f_high - f_low);
    const bool bisect =
        step % 3 == 2 || !(secant > std::min(low, high) && secant < std::max(low, high));
    const double middle = bisect ? 0.5 * (low + high) : secant;
    const double f_middle = f(middle);
    if (!std::isfinite(f_middle)) return std::nullopt;
    if (f_middle == 0.0) return Root{middle, 0.0};
    if ((f_middle > 0.0) == (f_high > 0.0)) {
      high = middle;
      f_high = f_middle;
      if (side == -1) f_low *= 0.5;
      side = -1;
    } else {
      low = middle;
      f_low = f_middle;
      if (side == 1) f_high *= 0.5;
      side = 1;
    }
  }
  const double at = 0.5 * (low + high);
  return Root{at, f(at)};
}

}  // namespace tackbench
