#include "core/checks/stretch_check.h"

#include <algorithm>
#include <array>
#include <cmath>

#include "core/basics/units.h"

namespace tackbench {

namespace {

// The controls that a pair can feel, each as one coordinate with its range.
enum Coordinate { hand_wheel, heave, roll, wind_up, shake_x, shake_y, shake_z, coordinate_count };
using Place = std::array<double, coordinate_count>;

struct Ranges {
  Place low{};
  Place high{};
  std::array<int, coordinate_count> nodes{};  // of the seeding grid; 1 = held
};

bool rides(const StretchPair& pair, RidesOn body) {
  return pair.from.rides_on == body || pair.to.rides_on == body;
}

class PairSearch {
 public:
  PairSearch(const Mechanism& mechanism, const StretchPair& pair,
             const std::optional<LockResult>& locks)
      : mechanism_(mechanism),
        pair_(pair),
        pose_(blank_pose(mechanism)),
        origin_mm_(mechanism.suspension ? mechanism.suspension->origin_mm : Vec3::Zero()),
        half_track_(mechanism.suspension ? mechanism.suspension->half_track : 0.0) {
    set_ranges(locks);
  }

  std::optional<StretchResult> run();

 private:
  void set_ranges(const std::optional<LockResult>& locks);
  void set_range(Coordinate coordinate, double low, double high, int nodes);
  Controls controls_at(const Place& place) const;
  Vec3 in_chassis(const AnchoredPoint& point) const;
  std::optional<double> distance(const Place& place);
  double refine(Place& place, double sign);

  const Mechanism& mechanism_;
  const StretchPair& pair_;
  Pose pose_;
  Vec3 origin_mm_;
  double half_track_;
  bool needs_axle_ = false;
  bool needs_steering_ = false;
  bool locks_known_ = true;
  Ranges ranges_;
};

void PairSearch::set_range(Coordinate coordinate, double low, double high, int nodes) {
  ranges_.low[coordinate] = low;
  ranges_.high[coordinate] = high;
  ranges_.nodes[coordinate] = high > low ? nodes : 1;
}

void PairSearch::set_ranges(const std::optional<LockResult>& locks) {
  ranges_.nodes.fill(1);
  needs_steering_ = rides(pair_, RidesOn::left_knuckle) || rides(pair_, RidesOn::right_knuckle);
  needs_axle_ = needs_steering_ || rides(pair_, RidesOn::axle);
  locks_known_ = !needs_steering_ || locks.has_value();
  if (needs_steering_ && locks)
    set_range(hand_wheel, -locks->right.turns * kRadiansPerTurn,
              locks->left.turns * kRadiansPerTurn, 9);
  if (needs_axle_ && mechanism_.project.front_axle) {
    const Suspension& suspension = mechanism_.project.front_axle->suspension;
    set_range(heave, -suspension.droop, suspension.bump, 5);
    set_range(roll, -suspension.roll, suspension.roll, 3);
    set_range(wind_up, 0.0, suspension.wind_up, 2);
  }
  if (rides(pair_, RidesOn::cab) && mechanism_.project.cab) {
    // A distance is greatest at a corner of the shake; the least is left to the descent.
    const CabShake& shake = mechanism_.project.cab->shake;
    set_range(shake_x, -shake.rearward, shake.forward, 2);
    set_range(shake_y, -shake.right, shake.left, 2);
    set_range(shake_z, -shake.down, shake.up, 2);
  }
}

Controls PairSearch::controls_at(const Place& place) const {
  Controls controls;
  controls.hand_wheel = place[hand_wheel];
  const double rise = half_track_ * std::sin(place[roll]);
  // A wheel on its stop cannot go further.
  controls.bump_left = std::clamp(place[heave] + rise, ranges_.low[heave], ranges_.high[heave]);
  controls.bump_right = std::clamp(place[heave] - rise, ranges_.low[heave], ranges_.high[heave]);
  controls.wind_up = place[wind_up];
  controls.cab_shake = Vec3(place[shake_x], place[shake_y], place[shake_z]);
  return controls;
}

Vec3 PairSearch::in_chassis(const AnchoredPoint& point) const {
  switch (point.rides_on) {
    case RidesOn::chassis:
      return point.at;
    case RidesOn::cab:
      return (pose_.chassis_from_cab * Point<Cab>{point.at}).mm;
    case RidesOn::axle:
      return (pose_.chassis_from_axle * Point<Axle>{point.at - origin_mm_}).mm;
    case RidesOn::left_knuckle:
      return (pose_.steering.left.chassis_from_knuckle * Point<Knuckle>{point.at - origin_mm_}).mm;
    case RidesOn::right_knuckle:
      return (pose_.steering.right.chassis_from_knuckle * Point<Knuckle>{point.at - origin_mm_}).mm;
  }
  return point.at;
}

// Empty where the bodies that carry the pair cannot be posed.
std::optional<double> PairSearch::distance(const Place& place) {
  const Outcome outcome = solve(mechanism_, controls_at(place), pose_);
  const bool axle_posed = outcome != Outcome::suspension_does_not_close;
  const bool steering_posed = outcome == Outcome::solved ||
                              outcome == Outcome::shaft_line_does_not_close ||
                              outcome == Outcome::pedal_does_not_close;
  if (needs_steering_ ? !steering_posed : (needs_axle_ && !axle_posed)) return std::nullopt;
  return (in_chassis(pair_.from) - in_chassis(pair_.to)).norm();
}

// Coordinate descent from the best node: each coordinate is tried both ways with steps that halve
// until a step changes the distance by less than 0.01 mm. Returns the refined distance.
double PairSearch::refine(Place& place, double sign) {
  constexpr double kTolerance = 0.01;  // mm
  constexpr int kMostRounds = 60;
  double best = distance(place).value_or(0.0);
  Place step{};
  for (int c = 0; c < coordinate_count; ++c)
    if (ranges_.nodes[c] > 1) step[c] = (ranges_.high[c] - ranges_.low[c]) / (ranges_.nodes[c] - 1);
  for (int round = 0; round < kMostRounds; ++round) {
    bool moved = false;
    double greatest_change = 0.0;
    for (int c = 0; c < coordinate_count; ++c) {
      if (step[c] == 0.0) continue;
      for (const double way : {1.0, -1.0}) {
        Place tried = place;
        tried[c] = std::clamp(place[c] + way * step[c], ranges_.low[c], ranges_.high[c]);
        const std::optional<double> at = distance(tried);
        if (!at) continue;
        greatest_change = std::max(greatest_change, std::abs(*at - best));
        if (sign * *at > sign * best) {
          best = *at;
          place = tried;
          moved = true;
          break;
        }
      }
    }
    if (moved) continue;
    if (greatest_change < kTolerance) break;
    for (double& each : step) each *= 0.5;
  }
  return best;
}

std::optional<StretchResult> PairSearch::run() {
  const bool rides_on_missing =
      (needs_axle_ && !mechanism_.suspension) || (needs_steering_ && !mechanism_.steering);
  if (rides_on_missing) return std::nullopt;
  Place drawn{};
  const std::optional<double> as_drawn = distance(drawn);
  if (!as_drawn) return std::nullopt;

  StretchResult result;
  result.name = pair_.name;
  result.as_drawn = *as_drawn;
  result.locks_known = locks_known_;
  result.least_allowed = pair_.least;
  result.greatest_allowed = pair_.greatest;
  Place least = drawn;
  Place greatest = drawn;
  result.least = result.greatest = *as_drawn;
  std::array<int, coordinate_count> node{};
  for (;;) {
    Place place{};
    for (int c = 0; c < coordinate_count; ++c)
      if (ranges_.nodes[c] > 1)
        place[c] =
            ranges_.low[c] + (ranges_.high[c] - ranges_.low[c]) * node[c] / (ranges_.nodes[c] - 1);
    if (const std::optional<double> at = distance(place)) {
      if (*at < result.least) {
        result.least = *at;
        least = place;
      }
      if (*at > result.greatest) {
        result.greatest = *at;
        greatest = place;
      }
    }
    int c = 0;
    while (c < coordinate_count && ++node[c] == ranges_.nodes[c]) node[c++] = 0;
    if (c == coordinate_count) break;
  }
  result.least = refine(least, -1.0);
  result.greatest = refine(greatest, 1.0);
  result.least_at = controls_at(least);
  result.greatest_at = controls_at(greatest);
  return result;
}

}  // namespace

std::vector<StretchResult> check_stretch(const Mechanism& mechanism,
                                         const std::optional<LockResult>& locks) {
  std::vector<StretchResult> results;
  if (!mechanism.project.shapes) return results;
  const std::vector<StretchPair>& pairs = mechanism.project.shapes->stretch_pairs;
  for (std::size_t i = 0; i < pairs.size(); ++i) {
    std::optional<StretchResult> result = PairSearch(mechanism, pairs[i], locks).run();
    if (!result) continue;
    result->pair = i;
    results.push_back(std::move(*result));
  }
  return results;
}

}  // namespace tackbench
