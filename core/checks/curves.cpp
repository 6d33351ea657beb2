#include "core/checks/curves.h"

#include <algorithm>
#include <cmath>

#include "core/checks/link_ends.h"
#include "core/checks/turning.h"

namespace tackbench {

namespace {

std::vector<double> even_places(double least, double greatest, int places) {
  const int count = std::max(places, 2);
  std::vector<double> x(static_cast<std::size_t>(count));
  for (int i = 0; i < count; ++i)
    x[static_cast<std::size_t>(i)] = least + (greatest - least) * i / (count - 1);
  x.back() = greatest;
  return x;
}

Curve empty_curve(std::string words, Unit unit, const std::vector<double>& x) {
  Curve curve;
  curve.words = std::move(words);
  curve.unit = unit;
  curve.x = x;
  curve.y.resize(x.size());
  return curve;
}

void put(Curve& curve, std::size_t i, double value) {
  if (std::isfinite(value)) curve.y[i] = value;
}

// Whether the road wheels stand where the pose says; a pedal's trouble is not theirs.
bool steering_stands(Outcome outcome) {
  return outcome == Outcome::solved || outcome == Outcome::pedal_does_not_close;
}

// Visits the places from the one nearest nought outwards on both sides. `visit(i)` says why the
// truck cannot stand there, or nothing; then that side ends. The curves get the ends.
template <class Visit>
void go_outwards(std::vector<Curve>& curves, const std::vector<double>& x, Visit visit) {
  const auto nearest = std::min_element(
      x.begin(), x.end(), [](double a, double b) { return std::abs(a) < std::abs(b); });
  const auto middle = static_cast<int>(nearest - x.begin());
  const auto count = static_cast<int>(x.size());
  for (const int step : {1, -1}) {
    for (int i = step > 0 ? middle : middle - 1; i >= 0 && i < count; i += step) {
      const std::string why = visit(static_cast<std::size_t>(i));
      if (why.empty()) continue;
      const int last = i == middle ? i : i - step;
      for (Curve& curve : curves)
        curve.early_ends.push_back({x[static_cast<std::size_t>(last)], why});
      if (i == middle) return;  // nothing stands even there
      break;
    }
  }
}

bool can_steer(const Mechanism& mechanism) {
  return mechanism.steering && mechanism.suspension;
}

// Both wheels' steer changes from ride height, `controls_at(x)` giving the controls.
template <class ControlsAt>
std::vector<Curve> steer_change_curves(const Mechanism& mechanism, const std::vector<double>& x,
                                       ControlsAt controls_at) {
  std::vector<Curve> curves{empty_curve("left wheel", Unit::degree, x),
                            empty_curve("right wheel", Unit::degree, x)};
  Pose at_ride = blank_pose(mechanism);
  if (!steering_stands(solve(mechanism, Controls{}, at_ride))) {
    for (Curve& curve : curves) curve.early_ends = {{0.0, outcome_words(mechanism, at_ride)}};
    return curves;
  }
  Pose pose = blank_pose(mechanism);
  go_outwards(curves, x, [&](std::size_t i) -> std::string {
    if (!steering_stands(solve(mechanism, controls_at(x[i]), pose)))
      return outcome_words(mechanism, pose);
    put(curves[0], i, pose.steering.left.steer - at_ride.steering.left.steer);
    put(curves[1], i, pose.steering.right.steer - at_ride.steering.right.steer);
    return {};
  });
  return curves;
}

// The outer wheel for the inner one as it stands; signed like the steer.
double ackermann_wish(const SteeringPose& pose, double distance, double wheelbase) {
  const double mean = 0.5 * (pose.left.steer + pose.right.steer);
  return mean >= 0.0 ? ideal_outer_steer(pose.left.steer, distance, wheelbase)
                     : -ideal_outer_steer(-pose.right.steer, distance, wheelbase);
}

}  // namespace

std::optional<double> value_at(const Curve& curve, double x) {
  if (curve.x.empty() || x < curve.x.front() || x > curve.x.back()) return std::nullopt;
  const auto above = std::lower_bound(curve.x.begin(), curve.x.end(), x);
  const auto right = static_cast<std::size_t>(above - curve.x.begin());
  if (curve.x[right] == x || right == 0) return curve.y[right];
  const std::size_t left = right - 1;
  if (!curve.y[left] || !curve.y[right]) return std::nullopt;
  const double share = (x - curve.x[left]) / (curve.x[right] - curve.x[left]);
  return *curve.y[left] + share * (*curve.y[right] - *curve.y[left]);
}

std::vector<Curve> wheel_angle_curves(const Mechanism& mechanism, const ControlReach& reach,
                                      int places) {
  if (!can_steer(mechanism)) return {};
  const std::vector<double> x = even_places(reach.full_right, reach.full_left, places);
  std::vector<Curve> curves{empty_curve("left wheel", Unit::degree, x),
                            empty_curve("right wheel", Unit::degree, x)};
  const auto& wheelbase = mechanism.project.front_axle->road.wheelbase;
  if (wheelbase) {
    curves.push_back(empty_curve("outer wheel by Ackermann", Unit::degree, x));
    curves.back().wished = true;
  }
  const double distance = kingpin_distance(*mechanism.steering);
  Pose pose = blank_pose(mechanism);
  Controls controls;
  go_outwards(curves, x, [&](std::size_t i) -> std::string {
    controls.hand_wheel = x[i];
    if (!steering_stands(solve(mechanism, controls, pose))) return outcome_words(mechanism, pose);
    put(curves[0], i, pose.steering.left.steer);
    put(curves[1], i, pose.steering.right.steer);
    if (wheelbase) put(curves[2], i, ackermann_wish(pose.steering, distance, *wheelbase));
    return {};
  });
  return curves;
}

std::vector<Curve> effective_angle_curves(const Mechanism& mechanism, const ControlReach& reach,
                                          int places) {
  if (!can_steer(mechanism)) return {};
  const Steering& steering = *mechanism.steering;
  const std::vector<double> x = even_places(reach.full_right, reach.full_left, places);
  const int links = static_cast<int>(steering.relays.size()) + 2;
  std::vector<Curve> curves;
  for (int link = 0; link < links; ++link)
    for (const bool road_end : {false, true})
      curves.push_back(empty_curve(link_end_name(steering, {link, road_end}), Unit::degree, x));
  // The tie rod's road end is the follower's, wherever its left ball is.
  const bool left_follows = steering.driven_side == Side::right;
  Pose pose = blank_pose(mechanism);
  Controls controls;
  go_outwards(curves, x, [&](std::size_t i) -> std::string {
    controls.hand_wheel = x[i];
    if (!steering_stands(solve(mechanism, controls, pose))) return outcome_words(mechanism, pose);
    const auto note = [&](int link, const LinkPose& at, bool swapped) {
      const auto first = 2 * static_cast<std::size_t>(link);
      put(curves[first], i, effective_angle(swapped ? at.to_leverage : at.from_leverage));
      put(curves[first + 1], i, effective_angle(swapped ? at.from_leverage : at.to_leverage));
    };
    int link = 0;
    for (const RelayPose& relay : pose.steering.relays) note(link++, relay.link, false);
    note(link++, pose.steering.drag_link, false);
    note(link, pose.steering.tie_rod, left_follows);
    return {};
  });
  return curves;
}

std::vector<Curve> bump_steer_curves(const Mechanism& mechanism, const ControlReach& reach,
                                     int places) {
  if (!can_steer(mechanism)) return {};
  return steer_change_curves(mechanism, even_places(reach.full_droop, reach.full_bump, places),
                             [](double bump) {
                               Controls controls;
                               controls.bump_left = controls.bump_right = bump;
                               return controls;
                             });
}

Controls rolled(const Mechanism& mechanism, Controls controls, double roll) {
  if (!mechanism.suspension) return controls;
  const double rise = mechanism.suspension->half_track * std::sin(roll);
  controls.axle_pose.reset();
  controls.bump_left = rise;
  controls.bump_right = -rise;
  return controls;
}

std::vector<Curve> roll_steer_curves(const Mechanism& mechanism, const ControlReach& reach,
                                     int places) {
  if (!can_steer(mechanism)) return {};
  double most = mechanism.project.front_axle->suspension.roll;
  if (!(most > 0.0)) {
    const double rise = std::min(reach.full_bump, -reach.full_droop);
    most = std::asin(std::clamp(rise / mechanism.suspension->half_track, 0.0, 1.0));
  }
  return steer_change_curves(mechanism, even_places(-most, most, places),
                             [&](double roll) { return rolled(mechanism, Controls{}, roll); });
}

std::vector<Curve> shaft_ratio_curves(const Mechanism& mechanism, int places) {
  if (!mechanism.shaft_line) return {};
  const std::vector<double> x = even_places(-kPi, kPi, places);
  std::vector<Curve> curves{empty_curve("box input", Unit::number, x)};
  Pose pose = blank_pose(mechanism);
  go_outwards(curves, x, [&](std::size_t i) -> std::string {
    pose_shaft_line(*mechanism.shaft_line, mechanism.chassis_from_cab, x[i], pose.shaft_line);
    if (!pose.shaft_line.closes) {
      pose.outcome = Outcome::shaft_line_does_not_close;
      return outcome_words(mechanism, pose);
    }
    put(curves[0], i, pose.shaft_line.box_rate);
    return {};
  });
  return curves;
}

std::vector<Curve> pedal_ratio_curves(const Mechanism& mechanism, int pedal, int places) {
  if (pedal < 0 || pedal >= static_cast<int>(mechanism.pedals.size())) return {};
  const PedalLinkage& linkage = mechanism.pedals[static_cast<std::size_t>(pedal)];
  if (!linkage.has_rod) return {};
  const std::vector<double> x = even_places(0.0, linkage.pedal.full_travel, places);
  std::vector<Curve> curves{empty_curve(linkage.pedal.name, Unit::number, x)};
  Pose said = blank_pose(mechanism);
  said.outcome = Outcome::pedal_does_not_close;
  said.place = pedal;
  go_outwards(curves, x, [&](std::size_t i) -> std::string {
    const PedalPose pose = pose_pedal(linkage, x[i]);
    if (!pose.closes) return outcome_words(mechanism, said);
    if (std::abs(pose.ratio) < kMostPedalRatio) put(curves[0], i, pose.ratio);
    return {};
  });
  return curves;
}

}  // namespace tackbench
