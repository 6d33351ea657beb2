// Angle from its sine and cosine.
#pragma once

#include <cmath>

namespace tackbench {

// Angle whose sine and cosine are in this proportion, in (-pi, pi]: atan2, in half its time within
// a right angle of zero, where most angles here lie.
inline double angle_of(double sine, double cosine) {
  return cosine > 0.0 ? std::atan(sine / cosine) : std::atan2(sine, cosine);
}

}  // namespace tackbench
