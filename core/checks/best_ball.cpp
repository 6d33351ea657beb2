#include "core/checks/best_ball.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <utility>

#include "core/basics/golden_section.h"
#include "core/checks/link_ends.h"

namespace tackbench {

namespace {

class HeightSearch {
 public:
  HeightSearch(const Mechanism& mechanism, Vec3 ball_mm, int rows_each_side)
      : steering_(*mechanism.steering),
        path_(*mechanism.suspension),
        at_ride_(chassis_from_axle(path_, AxlePose{})),
        ball_mm_(std::move(ball_mm)) {
    const Suspension& suspension = mechanism.project.front_axle->suspension;
    const int rows = std::max(1, rows_each_side);
    for (int i = 1; i <= rows; ++i) {
      add_heave(-suspension.droop * i / rows);
      add_heave(suspension.bump * i / rows);
    }
  }

  // Largest |change of mean steer| over the heaves; not finite when a pose does not close.
  double need(double higher);
  double best_height();

 private:
  void add_heave(double heave) {
    const AxleAnswer axle = axle_pose(path_, heave, heave, 0.0);
    if (axle.closes) placements_.push_back(chassis_from_axle(path_, axle.pose));
  }
  Steering variant(double higher) const {
    return steering_held_at(steering_, at_ride_, ball_mm_ + Vec3(0.0, 0.0, higher));
  }
  std::optional<double> mean_steer(const Steering& held, const Placement<Chassis, Axle>& at) {
    if (solve_steering(held, at, 0.0, pose_) != Outcome::solved) return std::nullopt;
    return 0.5 * (pose_.left.steer + pose_.right.steer);
  }

  const Steering& steering_;
  const SuspensionPath& path_;
  Placement<Chassis, Axle> at_ride_;
  Vec3 ball_mm_;
  std::vector<Placement<Chassis, Axle>> placements_;
  SteeringPose pose_;
};

constexpr double kNever = std::numeric_limits<double>::infinity();

double HeightSearch::need(double higher) {
  const Steering held = variant(higher);
  const std::optional<double> straight = mean_steer(held, at_ride_);
  if (!straight) return kNever;
  double greatest = 0.0;
  for (const Placement<Chassis, Axle>& placement : placements_) {
    const std::optional<double> steer = mean_steer(held, placement);
    if (!steer) return kNever;
    greatest = std::max(greatest, std::abs(*steer - *straight));
  }
  return greatest;
}

// A coarse look for the valley, then golden section inside it.
double HeightSearch::best_height() {
  constexpr double kReach = 300.0;     // mm
  constexpr double kStep = 20.0;       // mm
  constexpr double kTolerance = 0.05;  // mm
  double best = 0.0;
  double least = need(0.0);
  for (double higher = -kReach; higher <= kReach; higher += kStep) {
    const double here = need(higher);
    if (here < least) {
      least = here;
      best = higher;
    }
  }
  return lowest_place([this](double higher) { return need(higher); }, best - kStep, best + kStep,
                      kTolerance);
}

}  // namespace

Steering steering_held_at(const Steering& steering, const Placement<Chassis, Axle>& axle_at_ride,
                          const Vec3& ball_mm) {
  Steering held = steering;
  held.relays.clear();
  held.arm = crank_through(ball_mm - Vec3::UnitX(), Vec3::UnitY(), ball_mm);
  const Vec3 ball_axle = (axle_at_ride.inverse() * Point<Chassis>{ball_mm}).mm;
  const Vec3 road_ball = steering.drag_link.driven.ball(steering.straight_swivel);
  held.drag_link = loop_as_drawn(steering.drag_link.driven, (road_ball - ball_axle).norm(),
                                 ball_axle, steering.straight_swivel);
  return held;
}

std::optional<BestBall> best_chassis_side_ball(const Mechanism& mechanism, int rows_each_side) {
  if (!mechanism.steering || !mechanism.suspension) return std::nullopt;
  const Steering& steering = *mechanism.steering;
  const std::optional<Vec3> ball = drag_link_hand_ball(steering, steering.straight_arm);
  if (!ball) return std::nullopt;
  HeightSearch search(mechanism, *ball, rows_each_side);
  if (!std::isfinite(search.need(0.0))) return std::nullopt;
  const double higher = search.best_height();
  BestBall best;
  best.as_drawn_mm = *ball;
  best.best_mm = *ball + Vec3(0.0, 0.0, higher);
  best.greatest = search.need(higher);
  return best;
}

}  // namespace tackbench
