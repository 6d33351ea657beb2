#include "core/checks/metric_thread.h"

#include <fmt/core.h>

#include <cmath>

#include "core/basics/units.h"

namespace tackbench {

double pitch_diameter(const Thread& thread) {
  return thread.diameter - 0.649519 * thread.pitch;
}

double inner_diameter(const Thread& thread) {
  return thread.diameter - 1.082532 * thread.pitch;
}

double core_diameter(const Thread& thread) {
  return thread.diameter - 1.226869 * thread.pitch;
}

double stress_area(const Thread& thread) {
  const double mean = 0.5 * (pitch_diameter(thread) + core_diameter(thread));
  return kPi / 4.0 * mean * mean;
}

double largest_tapping_bore(const Thread& thread) {
  return inner_diameter(thread) + 0.23 * std::pow(thread.pitch, 0.7);
}

std::string designation(const Thread& thread) {
  return fmt::format("M{:g}x{:g}{}", thread.diameter, thread.pitch,
                     thread.hand == ThreadHand::left ? "-LH" : "");
}

}  // namespace tackbench
