#include "core/checks/shaft_ripple.h"

#include <algorithm>
#include <cmath>

#include "core/basics/root.h"
#include "core/basics/units.h"

namespace tackbench {
namespace {

// The line comes back to the same pins after half a turn.
constexpr int kSamples = 180;
constexpr double kStep = kPi / kSamples;
constexpr double kAngleTolerance = 1e-10;  // rad

struct Sample {
  double lead;  // box input less hand wheel, rad
  double rate;
};

Sample sample_at(const ShaftLine& line, double hand_wheel) {
  ShaftLinePose pose;
  pose_shaft_line(line, line.cab_as_drawn, hand_wheel, pose);
  return {pose.box_turn - hand_wheel, pose.box_rate};
}

// Greatest value of sign * f near `middle`, within one step each way; by golden section, since the
// value at an extreme does not depend on its place to first order.
template <class Function>
double refined_extreme(const Function& f, double middle, double sign) {
  const double golden = 0.5 * (std::sqrt(5.0) - 1.0);
  double low = middle - kStep;
  double high = middle + kStep;
  double a = high - golden * (high - low);
  double b = low + golden * (high - low);
  double f_a = sign * f(a);
  double f_b = sign * f(b);
  while (high - low > 1e-7) {
    if (f_a > f_b) {
      high = b;
      b = a;
      f_b = f_a;
      a = high - golden * (high - low);
      f_a = sign * f(a);
    } else {
      low = a;
      a = b;
      f_a = f_b;
      b = low + golden * (high - low);
      f_b = sign * f(b);
    }
  }
  return 0.5 * (low + high);
}

}  // namespace

LineRipple line_ripple(const ShaftLine& line) {
  LineRipple ripple;
  if (!line.has_joints) return ripple;
  double mean_lead = 0.0;
  double least_rate = INFINITY;
  double most_rate = -INFINITY;
  double before = sample_at(line, -kStep).rate;
  double least_lead = INFINITY;
  double most_lead = -INFINITY;
  const auto rate_over_one = [&](double at) { return sample_at(line, at).rate - 1.0; };
  for (int i = 0; i < kSamples; ++i) {
    const double at = i * kStep;
    const Sample sample = sample_at(line, at);
    mean_lead += sample.lead / kSamples;
    if (sample.rate < least_rate) {
      least_rate = sample.rate;
      ripple.least_at = at;
    }
    if (sample.rate > most_rate) {
      most_rate = sample.rate;
      ripple.most_at = at;
    }
    // The lead turns back where the rate passes 1.
    double lead = sample.lead;
    if ((before > 1.0) != (sample.rate > 1.0)) {
      if (const auto root = find_root(rate_over_one, at - kStep, at, kAngleTolerance)) {
        lead = sample_at(line, root->at).lead;
      }
    }
    for (const double seen : {lead, sample.lead}) {
      least_lead = std::min(least_lead, seen);
      most_lead = std::max(most_lead, seen);
    }
    before = sample.rate;
  }
  const auto rate = [&](double at) { return sample_at(line, at).rate; };
  ripple.least_at = refined_extreme(rate, ripple.least_at, -1.0);
  ripple.most_at = refined_extreme(rate, ripple.most_at, 1.0);
  ripple.least_rate = rate(ripple.least_at);
  ripple.most_rate = rate(ripple.most_at);
  ripple.ripple = ripple.most_rate - ripple.least_rate;
  ripple.most_ahead = most_lead - mean_lead;
  ripple.most_behind = mean_lead - least_lead;
  return ripple;
}

LineRipple line_ripple_with(const ShaftLine& line, const std::vector<double>& fork_offsets) {
  return line_ripple(with_fork_offsets(line, fork_offsets));
}

}  // namespace tackbench
