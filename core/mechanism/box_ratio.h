// Steering box: output angle from input angle, both from the box's centre, left positive, rad.
#pragma once

#include <vector>

#include "core/project/steering_box.h"

namespace tackbench {

// Constant ratio, or the integral of 1/ratio over a table linear between rows and held beyond.
class BoxRatio {
 public:
  explicit BoxRatio(double constant_ratio = 1.0);
  explicit BoxRatio(const std::vector<RatioRow>& rows);  // rising inputs, at least one row

  double output_from_input(double input) const;
  double input_from_output(double output) const;
  // Input turn per output turn at that input.
  double ratio_at(double input) const;

 private:
  std::vector<RatioRow> rows_;
  std::vector<double> outputs_;  // at each row
};

}  // namespace tackbench
