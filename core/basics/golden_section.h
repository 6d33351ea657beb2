// Golden-section search for the lowest place of a function with one valley.
#pragma once

namespace tackbench {

// Where f is least in [low, high], to `tolerance` on the argument (positive, well above rounding):
// f falls to its lowest place and rises from there; on a flat bottom, some place of it. The search
// ends early, at the place just tried, with the first value that is `enough`.
template <class Function, class Enough>
double lowest_place(Function&& f, double low, double high, double tolerance, Enough&& enough) {
  constexpr double kGolden = 0.6180339887498949;  // (sqrt(5) - 1) / 2
  double left = high - kGolden * (high - low);
  double right = low + kGolden * (high - low);
  double f_left = f(left);
  if (enough(f_left)) return left;
  double f_right = f(right);
  if (enough(f_right)) return right;
  while (high - low > tolerance) {
    if (f_left < f_right) {
      high = right;
      right = left;
      f_right = f_left;
      left = high - kGolden * (high - low);
      f_left = f(left);
      if (enough(f_left)) return left;
    } else {
      low = left;
      left = right;
      f_left = f_right;
      right = low + kGolden * (high - low);
      f_right = f(right);
      if (enough(f_right)) return right;
    }
  }
  return 0.5 * (low + high);
}

// The whole search.
template <class Function>
double lowest_place(Function&& f, double low, double high, double tolerance) {
  return lowest_place(f, low, high, tolerance, [](double) { return false; });
}

}  // namespace tackbench
