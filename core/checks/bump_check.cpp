#include "core/checks/bump_check.h"

#include <algorithm>
#include <cmath>

#include "core/basics/units.h"
#include "core/checks/best_ball.h"

namespace tackbench {

namespace {

// Controls of one motion at a place on it.
struct AxleMotion {
  BumpMotion motion;
  const SuspensionPath& path;

  AxleAnswer at(double place) const {
    switch (motion) {
      case BumpMotion::heave:
        return axle_pose(path, place, place, 0.0);
      case BumpMotion::roll: {
        const double rise = path.half_track * std::sin(place);
        return axle_pose(path, rise, -rise, 0.0);
      }
      case BumpMotion::wind_up:
        return axle_pose(path, 0.0, 0.0, place);
    }
    return axle_pose(path, 0.0, 0.0, 0.0);
  }
};

double mean_steer(const SteeringPose& pose) {
  return 0.5 * (pose.left.steer + pose.right.steer);
}

class CurveMaker {
 public:
  CurveMaker(const Mechanism& mechanism, const BumpSettings& settings)
      : mechanism_(mechanism),
        settings_(settings),
        steering_(*mechanism.steering),
        arm_(arm_from_hand_wheel(mechanism, settings.hand_wheel)),
        pose_(blank_pose(mechanism).steering) {
    at_ride_.relays.resize(pose_.relays.size());
    usable_ = solve_steering(steering_, chassis_from_axle(*mechanism.suspension, AxlePose{}), arm_,
                             at_ride_) == Outcome::solved;
  }

  bool usable() const { return usable_; }
  BumpCurve curve(BumpMotion motion, double low, double high);

 private:
  BumpRow row(const AxleMotion& motion, double place);
  std::optional<double> kickback(const Placement<Chassis, Axle>& placement);
  std::optional<double> rate(const AxleMotion& motion, double half_step);
  double last_followed(const AxleMotion& motion, double followed, double lost);
  template <class Number>
  void find_greatest(const BumpCurve& curve, Number number, double& greatest, double& at);

  const Mechanism& mechanism_;
  const BumpSettings& settings_;
  const Steering& steering_;
  double arm_;
  SteeringPose pose_;
  SteeringPose at_ride_;  // at ride height, the hand wheel held
  bool usable_ = false;
};

// Hand-wheel turn that keeps the mean steer of the road wheels as it was at ride height: Newton
// with the analytic rate, from the arm held.
std::optional<double> CurveMaker::kickback(const Placement<Chassis, Axle>& placement) {
  constexpr int kMostSteps = 30;
  constexpr double kEnough = 1e-12;
  constexpr double kLongestStep = 0.1;  // rad of arm
  const double wanted = mean_steer(at_ride_);
  double arm = arm_;
  for (int step = 0; step < kMostSteps; ++step) {
    if (solve_steering(steering_, placement, arm, pose_) != Outcome::solved) return std::nullopt;
    const double rate = 0.5 * (pose_.left.steer_rate + pose_.right.steer_rate);
    if (rate == 0.0) return std::nullopt;
    const double change =
        std::clamp((wanted - mean_steer(pose_)) / rate, -kLongestStep, kLongestStep);
    arm += change;
    if (std::abs(change) < kEnough)
      return hand_wheel_from_arm(mechanism_, arm) - settings_.hand_wheel;
  }
  return std::nullopt;
}

BumpRow CurveMaker::row(const AxleMotion& motion, double place) {
  BumpRow row;
  row.at = place;
  const AxleAnswer axle = motion.at(place);
  const Placement<Chassis, Axle> placement = chassis_from_axle(motion.path, axle.pose);
  if (motion.motion == BumpMotion::roll) row.at = axle.pose.roll;
  const Outcome outcome = solve_steering(steering_, placement, arm_, pose_);
  row.solved = axle.closes && outcome == Outcome::solved;
  if (!row.solved) return row;
  row.steer_left = pose_.left.steer - at_ride_.left.steer;
  row.steer_right = pose_.right.steer - at_ride_.right.steer;
  row.swivel_left = pose_.left.swivel - at_ride_.left.swivel;
  row.hand_wheel = kickback(placement);
  return row;
}

// d mean steer / d place at ride height, central difference.
std::optional<double> CurveMaker::rate(const AxleMotion& motion, double half_step) {
  const BumpRow up = row(motion, half_step);
  const BumpRow down = row(motion, -half_step);
  if (!up.solved || !down.solved || up.at == down.at) return std::nullopt;
  return 0.5 * (up.steer_left + up.steer_right - down.steer_left - down.steer_right) /
         (up.at - down.at);
}

// Between a place that the linkage follows and one that it does not: the last followed.
double CurveMaker::last_followed(const AxleMotion& motion, double followed, double lost) {
  constexpr double kEnough = 1e-6;  // mm or rad
  while (std::abs(lost - followed) > kEnough) {
    const double middle = 0.5 * (followed + lost);
    (row(motion, middle).solved ? followed : lost) = middle;
  }
  return followed;
}

std::optional<double> mean_change(const BumpRow& row) {
  if (!row.solved) return std::nullopt;
  return 0.5 * (row.steer_left + row.steer_right);
}

// Largest size over the rows; a parabola through its neighbours finds a peak between rows.
template <class Number>
void CurveMaker::find_greatest(const BumpCurve& curve, Number number, double& greatest,
                               double& at) {
  const std::vector<BumpRow>& rows = curve.rows;
  std::size_t largest = rows.size();
  for (std::size_t i = 0; i < rows.size(); ++i) {
    const std::optional<double> here = number(rows[i]);
    if (!here) continue;
    if (largest < rows.size() && std::abs(*here) <= std::abs(*number(rows[largest]))) continue;
    largest = i;
  }
  if (largest == rows.size()) return;
  greatest = *number(rows[largest]);
  at = rows[largest].at;
  const bool inside = largest > 0 && largest + 1 < rows.size();
  if (!inside || curve.motion == BumpMotion::roll) return;
  const std::optional<double> before = number(rows[largest - 1]);
  const std::optional<double> after = number(rows[largest + 1]);
  if (!before || !after) return;
  const double curvature = *before - 2.0 * greatest + *after;
  if (curvature == 0.0) return;
  const double shift = std::clamp(0.5 * (*before - *after) / curvature, -1.0, 1.0);
  const BumpRow peak =
      row({curve.motion, *mechanism_.suspension}, at + shift * (rows[largest + 1].at - at));
  const std::optional<double> there = number(peak);
  if (!there || std::abs(*there) <= std::abs(greatest)) return;
  greatest = *there;
  at = peak.at;
}

BumpCurve CurveMaker::curve(BumpMotion motion, double low, double high) {
  const AxleMotion along{motion, *mechanism_.suspension};
  BumpCurve curve;
  curve.motion = motion;
  curve.low = low;
  curve.high = high;
  const int each_side = std::max(1, settings_.rows_each_side);
  if (low < 0.0)
    for (int i = each_side; i > 0; --i) curve.rows.push_back(row(along, low * i / each_side));
  curve.rows.push_back(row(along, 0.0));
  if (high > 0.0)
    for (int i = 1; i <= each_side; ++i) curve.rows.push_back(row(along, high * i / each_side));

  const std::size_t ride = low < 0.0 ? static_cast<std::size_t>(each_side) : 0U;
  for (std::size_t i = 1; i <= ride && !curve.follows_down_to; ++i)
    if (!curve.rows[ride - i].solved)
      curve.follows_down_to = last_followed(along, low * static_cast<double>(i - 1) / each_side,
                                            low * static_cast<double>(i) / each_side);
  for (std::size_t i = 1; ride + i < curve.rows.size() && !curve.follows_up_to; ++i)
    if (!curve.rows[ride + i].solved)
      curve.follows_up_to = last_followed(along, high * static_cast<double>(i - 1) / each_side,
                                          high * static_cast<double>(i) / each_side);
  curve.kickback_everywhere =
      std::all_of(curve.rows.begin(), curve.rows.end(),
                  [](const BumpRow& each) { return each.hand_wheel.has_value(); });

  constexpr double kHeaveStep = 0.5;   // mm
  constexpr double kRollStep = 0.001;  // rad
  if (motion == BumpMotion::heave) {
    const std::optional<double> per_mm = rate(along, kHeaveStep);
    if (per_mm) curve.rate_per_25 = 25.0 * *per_mm;
  }
  if (motion == BumpMotion::roll) curve.roll_rate = rate(along, kRollStep);
  find_greatest(curve, mean_change, curve.greatest, curve.greatest_at);
  find_greatest(
      curve, [](const BumpRow& each) { return each.hand_wheel; }, curve.kickback,
      curve.kickback_at);
  return curve;
}

}  // namespace

std::optional<BumpResult> check_bump(const Mechanism& mechanism, const BumpSettings& settings) {
  if (!mechanism.steering || !mechanism.suspension) return std::nullopt;
  CurveMaker maker(mechanism, settings);
  if (!maker.usable()) return std::nullopt;
  const Suspension& suspension = mechanism.project.front_axle->suspension;
  BumpResult result;
  result.heave = maker.curve(BumpMotion::heave, -suspension.droop, suspension.bump);
  result.roll = maker.curve(BumpMotion::roll, -suspension.roll, suspension.roll);
  result.wind_up.motion = BumpMotion::wind_up;
  if (suspension.wind_up > 0.0)
    result.wind_up = maker.curve(BumpMotion::wind_up, 0.0, suspension.wind_up);
  result.best_ball = best_chassis_side_ball(mechanism, settings.rows_each_side);
  return result;
}

}  // namespace tackbench
