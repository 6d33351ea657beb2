#include "core/checks/pedal_check.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <limits>

#include "core/basics/root.h"
#include "core/basics/units.h"

namespace tackbench {

namespace {

constexpr double kSearchEnd = 120.0 * kRadiansPerDegree;  // turn from rest looked over for ends
constexpr double kSearchStep = 1.0 * kRadiansPerDegree;
constexpr double kTolerance = 1e-9;  // rad

class PedalCheck {
 public:
  PedalCheck(const PedalLinkage& linkage, std::optional<double> floor_height)
      : linkage_(linkage), pedal_(linkage.pedal), floor_height_(floor_height) {
    set_pad_corners();
  }

  PedalResult run();

 private:
  void set_pad_corners();
  double rod_travel(double angle) const { return pose_pedal(linkage_, angle).rod_travel; }
  double piston_stroke(double angle) const;
  double rod_rate(double angle) const;
  double lowest_edge(double angle) const;
  template <class Function>
  std::optional<double> first_rise(Function&& f, double last) const;
  double last_following() const;
  void add_end(PedalEndKind kind, double angle);
  void find_ends();
  void fill_rows();
  void find_ratios();
  void judge_stroke();

  const PedalLinkage& linkage_;
  const Pedal& pedal_;
  std::optional<double> floor_height_;
  std::array<Vec3, 8> corners_;  // of the pad at rest, from the pivot, cab axes
  PedalResult result_;
};

// Pad: face `pad_angle` from vertical with its top forward, `pad_thickness` behind the face.
void PedalCheck::set_pad_corners() {
  const Vec3 up(std::sin(pedal_.pad_angle), 0.0, std::cos(pedal_.pad_angle));
  const Vec3 behind(std::cos(pedal_.pad_angle), 0.0, -std::sin(pedal_.pad_angle));
  std::size_t corner = 0;
  for (const double along : {-0.5, 0.5})
    for (const double across : {-0.5, 0.5})
      for (const double deep : {0.0, 1.0})
        corners_[corner++] =
            pedal_.pad_centre.mm - pedal_.pivot.mm + along * pedal_.pad_height * up +
            across * pedal_.pad_width * Vec3::UnitY() + deep * pedal_.pad_thickness * behind;
}

double PedalCheck::piston_stroke(double angle) const {
  if (!linkage_.has_rod || !pedal_.rod) return 0.0;
  return std::max(0.0, rod_travel(angle) - pedal_.rod->free_play.value_or(0.0));
}

// d rod travel / d angle; its zero is over centre, wherever between pedal and piston it lies.
double PedalCheck::rod_rate(double angle) const {
  constexpr double kHalfStep = 1e-5;
  return (rod_travel(angle + kHalfStep) - rod_travel(angle - kHalfStep)) / (2.0 * kHalfStep);
}

// Z of the pad's lowest corner, cab frame.
double PedalCheck::lowest_edge(double angle) const {
  double lowest = std::numeric_limits<double>::infinity();
  for (const Vec3& corner : corners_)
    lowest = std::min(lowest, turned(corner, linkage_.pad.axis, angle).z());
  return pedal_.pivot.mm.z() + lowest;
}

// First angle in [0, last] where f turns from negative to positive.
template <class Function>
std::optional<double> PedalCheck::first_rise(Function&& f, double last) const {
  double before = 0.0;
  if (f(before) >= 0.0) return before;
  while (before < last) {
    const double angle = std::min(before + kSearchStep, last);
    if (f(angle) >= 0.0) {
      const std::optional<Root> root = find_root(f, before, angle, kTolerance);
      return root ? root->at : angle;
    }
    before = angle;
  }
  return std::nullopt;
}

// Last angle up to the search's end at which the rod can follow.
double PedalCheck::last_following() const {
  double follows = 0.0;
  double angle = kSearchStep;
  for (; angle <= kSearchEnd; angle += kSearchStep) {
    if (!pose_pedal(linkage_, angle).closes) break;
    follows = angle;
  }
  if (angle > kSearchEnd) return kSearchEnd;
  while (angle - follows > kTolerance) {
    const double middle = 0.5 * (follows + angle);
    (pose_pedal(linkage_, middle).closes ? follows : angle) = middle;
  }
  return follows;
}

void PedalCheck::add_end(PedalEndKind kind, double angle) {
  result_.ends.push_back({kind, angle, result_.pad_arc_radius * angle, piston_stroke(angle)});
}

void PedalCheck::find_ends() {
  add_end(PedalEndKind::own_stop, pedal_.full_travel);
  if (linkage_.has_rod) {
    const double follows = last_following();
    if (follows < kSearchEnd) add_end(PedalEndKind::rod_cannot_follow, follows);
    constexpr double kInside = 2e-5;  // the rate looks a little to both sides
    const std::optional<double> over_centre =
        first_rise([this](double angle) { return -rod_rate(angle); }, follows - kInside);
    if (over_centre) add_end(PedalEndKind::over_centre, *over_centre);
  }
  if (floor_height_) {
    const std::optional<double> floor = first_rise(
        [this](double angle) { return *floor_height_ - lowest_edge(angle); }, kSearchEnd);
    if (floor) add_end(PedalEndKind::floor, *floor);
  }
  std::stable_sort(result_.ends.begin(), result_.ends.end(),
                   [](const PedalEnd& a, const PedalEnd& b) { return a.angle < b.angle; });
}

void PedalCheck::fill_rows() {
  constexpr int kRows = 20;
  for (int i = 0; i <= kRows; ++i) {
    const PedalPose pose = pose_pedal(linkage_, pedal_.full_travel * i / kRows);
    if (linkage_.has_rod && !pose.closes) break;
    PedalRow row;
    row.angle = pose.angle;
    row.pad_travel = result_.pad_arc_radius * pose.angle;
    row.rod_travel = pose.rod_travel;
    row.ratio = pose.ratio;
    row.rod_swing = pose.rod_swing;
    result_.greatest_rod_swing = std::max(result_.greatest_rod_swing, std::abs(row.rod_swing));
    result_.rows.push_back(row);
  }
  const auto push_angle = [this](double angle) {
    const Vec3 way = pose_pedal(linkage_, angle).pad_direction;
    return std::atan2(-way.z(), way.x());
  };
  result_.push_angle_rest = push_angle(0.0);
  result_.push_angle_full = push_angle(pedal_.full_travel);
}

void PedalCheck::find_ratios() {
  if (!linkage_.has_rod) return;
  const auto ratio = [this](double angle) -> std::optional<double> {
    const PedalPose pose = pose_pedal(linkage_, angle);
    return pose.closes ? std::optional<double>(pose.ratio) : std::nullopt;
  };
  result_.ratio_rest = ratio(0.0);
  result_.ratio_middle = ratio(0.5 * pedal_.full_travel);
  result_.ratio_full = ratio(pedal_.full_travel);

  const auto look_at = [this](double angle, double met) {
    std::optional<double>& worst = result_.ratio_worst;
    const bool worse = !worst || (*worst < 0.0 ? met < *worst : met < 0.0 || met > *worst);
    if (!worse) return;
    worst = met;
    result_.ratio_worst_at = angle;
  };
  const PedalEnd& first = result_.ends.front();
  for (const PedalRow& row : result_.rows)
    if (row.angle <= first.angle) look_at(row.angle, row.ratio);
  // The floor may stand between two rows. Over centre the ratio is without bound, by its meaning.
  if (first.kind == PedalEndKind::floor) {
    const std::optional<double> met = ratio(first.angle);
    if (met) look_at(first.angle, *met);
  }
}

void PedalCheck::judge_stroke() {
  result_.stroke_reached = result_.ends.front().piston_stroke;
  if (pedal_.rod && pedal_.use == PedalUse::brake) result_.stroke_wanted = pedal_.rod->full_stroke;
  if (pedal_.rod && pedal_.use == PedalUse::clutch)
    result_.stroke_wanted = pedal_.rod->release_stroke;
  if (result_.stroke_wanted && linkage_.has_rod) {
    const double wanted = *result_.stroke_wanted + pedal_.rod->free_play.value_or(0.0);
    result_.angle_at_wanted =
        first_rise([&](double angle) { return rod_travel(angle) - wanted; }, last_following());
  }
  if (linkage_.has_rod && pedal_.rod->free_play) {
    const std::optional<double> taken_up = first_rise(
        [&](double angle) { return rod_travel(angle) - *pedal_.rod->free_play; }, last_following());
    if (taken_up) result_.pad_free_travel = result_.pad_arc_radius * *taken_up;
  }
  result_.floor_known = floor_height_.has_value();
  if (result_.floor_known)
    result_.pad_over_floor =
        lowest_edge(result_.angle_at_wanted.value_or(pedal_.full_travel)) - *floor_height_;
}

PedalResult PedalCheck::run() {
  result_.name = pedal_.name;
  result_.use = pedal_.use;
  result_.pad_arc_radius = linkage_.pad.lever.norm();
  result_.pad_travel_full = result_.pad_arc_radius * pedal_.full_travel;
  find_ends();
  fill_rows();
  find_ratios();
  judge_stroke();
  return std::move(result_);
}

}  // namespace

std::vector<PedalResult> check_pedals(const Mechanism& mechanism) {
  std::optional<double> floor_height;
  if (mechanism.project.driver) floor_height = mechanism.project.driver->floor_height;
  std::vector<PedalResult> results;
  results.reserve(mechanism.pedals.size());
  for (const PedalLinkage& linkage : mechanism.pedals)
    results.push_back(PedalCheck(linkage, floor_height).run());
  return results;
}

}  // namespace tackbench
