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
  double rate(const AxleMotion& motion, double half_step);
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
  const std::optional<double> hand_wheel = kickback(placement);
  row.solved = hand_wheel.has_value();
  row.hand_wheel = hand_wheel.value_or(0.0);
  return row;
}

// d mean steer / d place at ride height, central difference.
double CurveMaker::rate(const AxleMotion& motion, double half_step) {
  const BumpRow up = row(motion, half_step);
  const BumpRow down = row(motion, -half_step);
  if (!up.solved || !down.solved || up.at == down.at) return 0.0;
  return 0.5 * (up.steer_left + up.steer_right - down.steer_left - down.steer_right) /
         (up.at - down.at);
}

double mean_change(const BumpRow& row) {
  return 0.5 * (row.steer_left + row.steer_right);
}

// Largest size over the rows; a parabola through its neighbours finds a peak between rows.
template <class Number>
void CurveMaker::find_greatest(const BumpCurve& curve, Number number, double& greatest,
                               double& at) {
  const std::vector<BumpRow>& rows = curve.rows;
  std::size_t largest = rows.size();
  for (std::size_t i = 0; i < rows.size(); ++i) {
    if (!rows[i].solved) continue;
    if (largest < rows.size() && std::abs(number(rows[i])) <= std::abs(number(rows[largest])))
      continue;
    largest = i;
  }
  if (largest == rows.size()) return;
  BumpRow best = rows[largest];
  const bool inside = largest > 0 && largest + 1 < rows.size() && rows[largest - 1].solved &&
                      rows[largest + 1].solved;
  if (inside && curve.motion != BumpMotion::roll) {
    const BumpRow& before = rows[largest - 1];
    const BumpRow& after = rows[largest + 1];
    const double curvature = number(before) - 2.0 * number(best) + number(after);
    if (curvature != 0.0) {
      const double shift = 0.5 * (number(before) - number(after)) / curvature;
      const BumpRow peak = row({curve.motion, *mechanism_.suspension},
                               best.at + std::clamp(shift, -1.0, 1.0) * (after.at - best.at));
      if (peak.solved && std::abs(number(peak)) > std::abs(number(best))) best = peak;
    }
  }
  greatest = number(best);
  at = best.at;
}

BumpCurve CurveMaker::curve(BumpMotion motion, double low, double high) {
  const AxleMotion along{motion, *mechanism_.suspension};
  BumpCurve curve;
  curve.motion = motion;
  const int each_side = std::max(1, settings_.rows_each_side);
  if (low < 0.0)
    for (int i = each_side; i > 0; --i) curve.rows.push_back(row(along, low * i / each_side));
  curve.rows.push_back(row(along, 0.0));
  if (high > 0.0)
    for (int i = 1; i <= each_side; ++i) curve.rows.push_back(row(along, high * i / each_side));

  constexpr double kHeaveStep = 0.5;   // mm
  constexpr double kRollStep = 0.001;  // rad
  if (motion == BumpMotion::heave) curve.rate_per_25 = 25.0 * rate(along, kHeaveStep);
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
