#include "core/checks/shaft_clocking.h"

#include <Eigen/Geometry>
#include <algorithm>
#include <array>
#include <cmath>
#include <utility>

#include "core/basics/units.h"

namespace tackbench {
namespace {

using Offsets = std::vector<double>;  // one a shaft of the project, rad

constexpr double kRipples = 1e-9;  // a bend below this hands on an even speed, rad

// Half a turn of a fork is the same fork: into (-pi/2, pi/2].
double fork_wrapped(double angle) {
  return 0.5 * wrapped(2.0 * angle);
}

bool ripples(const DrawnCross& cross) {
  return cross.geometry.turning == JointTurning::cross && cross.angle > kRipples;
}

// The speed of the line as a function of its fork offsets alone, stripped for search.
class RippleOfOffsets {
 public:
  explicit RippleOfOffsets(const ShaftLine& line) : line_(&line) {
    for (std::size_t i = 0; i < line.crosses.size(); ++i) {
      const UniversalJoint& joint = line.crosses[i].geometry;
      cos_bend_.push_back(joint.turning == JointTurning::cross ? joint.cos_bend : 1.0);
      if (i + 1 == line.crosses.size()) break;
      // Undo the drawn offset: only the geometry's own angle stays.
      const PinAngle drawn = pin_angle(-line.spans[i].fork_offset);
      to_next_.push_back(line.spans[i].to_next + drawn);
    }
    for (int i = 0; i < kSamples; ++i) {
      starts_[static_cast<std::size_t>(i)] =
          line.crosses[0].in_at_zero + pin_angle(-kPi * i / kSamples);
    }
  }

  struct Unevenness {
    double variance;  // of the rate about 1
    double ripple;    // (most - least), extremes by parabola
  };

  Unevenness operator()(const Offsets& offsets) const {
    std::array<PinAngle, kMostCrosses> links;
    for (std::size_t i = 0; i < to_next_.size(); ++i) {
      const DrawnSpan& span = line_->spans[i];
      const double offset =
          span.shaft < 0 ? span.fork_offset : offsets[static_cast<std::size_t>(span.shaft)];
      links[i] = to_next_[i] + pin_angle(offset);
    }
    std::array<double, kSamples> rates{};
    double variance = 0.0;
    for (std::size_t i = 0; i < rates.size(); ++i) {
      rates[i] = rate(starts_[i], links);
      variance += (rates[i] - 1.0) * (rates[i] - 1.0);
    }
    const auto [least, most] = std::minmax_element(rates.begin(), rates.end());
    return {variance / kSamples, extreme(rates, most) - extreme(rates, least)};
  }

 private:
  static constexpr int kSamples = 24;

  double rate(PinAngle pin, const std::array<PinAngle, kMostCrosses>& links) const {
    double product = 1.0;
    for (std::size_t i = 0; i < cos_bend_.size(); ++i) {
      const double c = cos_bend_[i];
      const double square = pin.cosine * pin.cosine + c * c * pin.sine * pin.sine;
      product *= c / square;
      if (i + 1 == cos_bend_.size()) break;
      const double scale = 1.0 / std::sqrt(square);
      pin = PinAngle{pin.cosine * scale, c * pin.sine * scale} + links[i];
    }
    return product;
  }

  // Peak of the parabola through a sample and its neighbours (the rate repeats every half turn).
  static double extreme(const std::array<double, kSamples>& rates, const double* at) {
    const auto i = static_cast<std::size_t>(at - rates.data());
    const double before = rates[(i + kSamples - 1) % kSamples];
    const double after = rates[(i + 1) % kSamples];
    const double curve = before - 2.0 * *at + after;
    if (std::abs(curve) < 1e-15) return *at;
    const double slope = 0.5 * (after - before);
    return *at - 0.5 * slope * slope / curve;
  }

  const ShaftLine* line_;
  std::vector<double> cos_bend_;
  std::vector<PinAngle> to_next_;
  std::array<PinAngle, kSamples> starts_;
};

// Tries a step each way in every shaft of `free` and keeps what is better than `best`.
template <class Function>
bool explore(const Function& f, const std::vector<std::size_t>& free, double step, Offsets& at,
             double& best) {
  bool better = false;
  for (const std::size_t shaft : free) {
    for (const double move : {step, -step}) {
      Offsets tried = at;
      tried[shaft] += move;
      const double value = f(tried);
      if (value < best) {
        best = value;
        at = std::move(tried);
        better = true;
      }
    }
  }
  return better;
}

// Pattern search over the shafts in `free`: explore around, go on along what the exploring moved as
// far as that is better, halve the step when nothing is. Going on matters: a shaft beside a joint
// with hardly any bend makes a long flat valley across the axes, in which single steps would creep
// for half a minute. Source: Hooke and Jeeves, "Direct Search" Solution of Numerical and
// Statistical Problems, J. ACM 8 (1961).
template <class Function>
void pattern_search(const Function& f, const std::vector<std::size_t>& free, double step,
                    double finest, Offsets& at) {
  double best = f(at);
  while (step > finest) {
    const Offsets before = at;
    if (!explore(f, free, step, at, best)) {
      step *= 0.5;
      continue;
    }
    for (double along = 1.0;; along *= 2.0) {
      Offsets tried = at;
      for (const std::size_t shaft : free) tried[shaft] += along * (at[shaft] - before[shaft]);
      const double value = f(tried);
      if (value >= best) break;
      best = value;
      at = std::move(tried);
    }
  }
}

double change(const Offsets& a, const Offsets& b) {
  double sum = 0.0;
  for (std::size_t i = 0; i < a.size(); ++i) {
    const double turn = fork_wrapped(a[i] - b[i]);
    sum += turn * turn;
  }
  return sum;
}

// Of several ways to clock, the least ripple; among those as good to 0.02 %, the one nearest to the
// drawing.
class Best {
 public:
  explicit Best(Offsets drawn) : drawn_(std::move(drawn)) {}
  void offer(const Offsets& offsets, double ripple) {
    constexpr double kAsGood = 2e-4;
    const double turn = change(offsets, drawn_);
    const bool better = ripple < ripple_ - kAsGood || (ripple < ripple_ + kAsGood && turn < turn_);
    if (!any_ || better) {
      any_ = true;
      offsets_ = offsets;
      ripple_ = ripple;
      turn_ = turn;
    }
  }
  const Offsets& offsets() const { return offsets_; }

 private:
  Offsets drawn_;
  Offsets offsets_;
  double ripple_ = 0.0;
  double turn_ = 0.0;
  bool any_ = false;
};

// Calls `take` with every combination of the given values for the shafts in `which`.
template <class Take>
void each_combination(const std::vector<std::size_t>& which,
                      const std::vector<std::vector<double>>& values, std::size_t depth,
                      Offsets& offsets, const Take& take) {
  if (depth == which.size()) {
    take(offsets);
    return;
  }
  for (const double value : values[depth]) {
    offsets[which[depth]] = value;
    each_combination(which, values, depth + 1, offsets, take);
  }
}

Offsets least_ripple(const RippleOfOffsets& unevenness, const std::vector<std::size_t>& free,
                     const Offsets& drawn) {
  constexpr int kGrid = 6;
  constexpr std::size_t kStarts = 6;
  const auto variance = [&](const Offsets& at) { return unevenness(at).variance; };
  const auto ripple = [&](const Offsets& at) { return unevenness(at).ripple; };

  std::vector<double> grid;
  grid.reserve(kGrid);
  for (int i = 0; i < kGrid; ++i) grid.push_back(-0.5 * kPi + kPi * i / kGrid);
  std::vector<std::pair<double, Offsets>> seeds;
  Offsets offsets = drawn;
  each_combination(free, std::vector<std::vector<double>>(free.size(), grid), 0, offsets,
                   [&](const Offsets& at) { seeds.emplace_back(variance(at), at); });
  std::sort(seeds.begin(), seeds.end());
  seeds.resize(std::min(seeds.size(), kStarts));
  seeds.emplace_back(variance(drawn), drawn);

  Best best(drawn);
  for (auto& [value, at] : seeds) {
    pattern_search(variance, free, radians_from_degrees(12.0), 1e-6, at);
    pattern_search(ripple, free, radians_from_degrees(1.0), 1e-7, at);
    best.offer(at, ripple(at));
  }
  return best.offsets();
}

ClockingBy clocked_by(const ShaftSection& section) {
  switch (section.kind) {
    case SectionKind::round:
      return ClockingBy::any;
    case SectionKind::spline:
      return section.teeth && *section.teeth > 0 ? ClockingBy::teeth : ClockingBy::not_known;
    case SectionKind::double_d:
      break;
  }
  return ClockingBy::makers_cut;
}

// Every different fork offset that whole teeth give; half a turn on is the same fork.
std::vector<double> tooth_offsets(int teeth) {
  std::vector<double> offsets;
  const int different = teeth % 2 == 0 ? teeth / 2 : teeth;
  offsets.reserve(static_cast<std::size_t>(different));
  for (int i = 0; i < different; ++i) {
    offsets.push_back(fork_wrapped(kRadiansPerTurn * i / teeth));
  }
  return offsets;
}

// The few values nearest to `wanted`.
std::vector<double> nearest_few(std::vector<double> offsets, double wanted, std::size_t few) {
  std::sort(offsets.begin(), offsets.end(), [&](double a, double b) {
    return std::abs(fork_wrapped(a - wanted)) < std::abs(fork_wrapped(b - wanted));
  });
  offsets.resize(std::min(offsets.size(), few));
  return offsets;
}

Offsets nearest_possible(const ShaftLine& line, const RippleOfOffsets& unevenness,
                         const ClockingResult& result, const Offsets& drawn, const Offsets& ideal) {
  constexpr std::size_t kFew = 4;
  std::vector<std::size_t> toothed;
  std::vector<std::vector<double>> values;
  std::vector<std::size_t> free;
  Offsets offsets = ideal;
  for (std::size_t i = 0; i < result.shafts.size(); ++i) {
    if (!result.shafts[i].matters || result.shafts[i].by == ClockingBy::makers_cut) {
      offsets[i] = drawn[i];
    } else if (result.shafts[i].by == ClockingBy::teeth) {
      toothed.push_back(i);
      values.push_back(tooth_offsets(*line.station.shafts[i].section.teeth));
    } else {
      free.push_back(i);
    }
  }
  if (!free.empty()) {
    for (std::size_t i = 0; i < toothed.size(); ++i) {
      values[i] = nearest_few(values[i], ideal[toothed[i]], kFew);
    }
  }
  const auto variance = [&](const Offsets& at) { return unevenness(at).variance; };
  Best best(drawn);
  each_combination(toothed, values, 0, offsets, [&](const Offsets& at) {
    Offsets tried = at;
    if (!free.empty()) pattern_search(variance, free, radians_from_degrees(12.0), 1e-6, tried);
    best.offer(tried, unevenness(tried).ripple);
  });
  return best.offsets();
}

}  // namespace

ClockingResult clocking(const ShaftLine& line) {
  ClockingResult result;
  Offsets drawn;
  for (std::size_t i = 0; i < line.station.shafts.size(); ++i) {
    const Shaft& shaft = line.station.shafts[i];
    ShaftClocking clocked;
    clocked.shaft = static_cast<int>(i);
    clocked.as_drawn = clocked.ideal = clocked.nearest = fork_wrapped(shaft.fork_offset);
    clocked.by = clocked_by(shaft.section);
    if (clocked.by == ClockingBy::teeth) clocked.step = kRadiansPerTurn / *shaft.section.teeth;
    if (clocked.by == ClockingBy::makers_cut) clocked.step = kPi;
    result.shafts.push_back(clocked);
    drawn.push_back(shaft.fork_offset);
  }
  if (!line.has_joints) return result;
  result.ripple_as_drawn = result.ripple_ideal = result.ripple_nearest = line_ripple(line).ripple;

  std::vector<std::size_t> bent;
  for (std::size_t i = 0; i < line.crosses.size(); ++i) {
    if (ripples(line.crosses[i])) bent.push_back(i);
  }
  std::vector<std::size_t> free;
  if (bent.size() >= 2) {
    for (std::size_t i = bent.front(); i < bent.back(); ++i) {
      if (line.spans[i].shaft < 0) continue;
      free.push_back(static_cast<std::size_t>(line.spans[i].shaft));
      result.shafts[free.back()].matters = true;
    }
  }
  if (free.empty()) return result;
  result.matters = true;

  const RippleOfOffsets unevenness(line);
  Offsets ideal = drawn;
  if (bent.size() == 2 && bent[1] == bent[0] + 1) {
    const UniversalJoint& first = line.crosses[bent[0]].geometry;
    const UniversalJoint& second = line.crosses[bent[1]].geometry;
    result.closed_form = true;
    result.twist = fork_wrapped(angle_about(first.out_direction, first.in_zero, second.in_zero));
    ideal[free[0]] = result.twist;
  } else {
    ideal = least_ripple(unevenness, free, drawn);
  }
  const Offsets nearest = nearest_possible(line, unevenness, result, drawn, ideal);
  for (std::size_t i = 0; i < result.shafts.size(); ++i) {
    result.shafts[i].ideal = fork_wrapped(ideal[i]);
    result.shafts[i].nearest = fork_wrapped(nearest[i]);
  }
  result.ripple_ideal = line_ripple_with(line, ideal).ripple;
  result.ripple_nearest = line_ripple_with(line, nearest).ripple;
  return result;
}

}  // namespace tackbench
