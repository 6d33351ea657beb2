// Steering box: output angle from input angle, both from the box's centre, left positive, rad.
#pragma once

#include <vector>

#include "core/project/steering_box.h"

namespace tackbench {

// Constant ratio, or a table of ratios linear between rows and held beyond them. The output turn is
// the integral of d input / ratio from the centre; with a linear ratio that is a logarithm, and its
// inverse an exponential, so both directions are exact.
class BoxRatio {
 public:
  explicit BoxRatio(double constant_ratio = 1.0);  // above 0
  // Rising inputs, at least one row, every ratio above 0.
  explicit BoxRatio(const std::vector<RatioRow>& rows);

  double output_from_input(double input) const;
  double input_from_output(double output) const;
  // Input turn per output turn at that input.
  double ratio_at(double input) const;

 private:
  // From one row to the next; the ratio is start.ratio + slope * (input - start.input).
  struct Stretch {
    RatioRow start;
    double slope = 0.0;         // of the ratio per rad of input
    double start_output = 0.0;  // rad
  };

  std::vector<Stretch> stretches_;  // by rising input; the last has slope 0 and no end
};

}  // namespace tackbench
