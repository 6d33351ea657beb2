#include "core/checks/link_travel.h"

#include <algorithm>
#include <cmath>
#include <vector>

#include "core/basics/golden_section.h"
#include "core/basics/root.h"
#include "core/basics/units.h"
#include "core/checks/link_ends.h"
#include "core/checks/stud_clocking.h"

namespace tackbench {

namespace {

constexpr int kStepsEachSide = 12;
constexpr double kArmTolerance = 1e-7;  // rad

struct Corner {
  Controls controls;
  Placement<Chassis, Axle> chassis_from_axle;
};

// One number to be kept small; the effective angle counts as its negative leverage.
enum class Use { arm_end, knuckle_end, leverage };
constexpr Use kUses[] = {Use::arm_end, Use::knuckle_end, Use::leverage};

// The greatest of one number so far, and the arm angles to both sides of it.
struct Peak {
  double value = 0.0;
  int corner = -1;  // -1: at ride height, from the lock's rows
  double arm = 0.0;
  double arm_before = 0.0;
  double arm_after = 0.0;
};

class TravelSearch {
 public:
  TravelSearch(const Mechanism& mechanism, const LockResult& locks)
      : mechanism_(mechanism),
        locks_(locks),
        steering_(*mechanism.steering),
        drag_link_(*mechanism.project.drag_link),
        pose_(blank_pose(mechanism).steering) {}

  LinkTravel run();

 private:
  struct Sample {
    double arm = 0.0;
    double use[3] = {};
  };

  void add_corner(double bump_left, double bump_right);
  void add_corners();
  void start_from_rows();
  bool closes(int corner, double arm);
  double use(Use what);
  void sweep(int corner, const LockSide& lock);
  void sample(double arm);
  void sample_edge(int corner, double before, double open);
  void look_for_peaks(int corner);
  void refine(Use what);
  WorstOfLink worst(Use what) const;

  Peak& peak(Use what) { return peaks_[static_cast<std::size_t>(what)]; }
  const Peak& peak(Use what) const { return peaks_[static_cast<std::size_t>(what)]; }

  const Mechanism& mechanism_;
  const LockResult& locks_;
  const Steering& steering_;
  const DragLinkStation& drag_link_;
  SteeringPose pose_;
  std::vector<Corner> corners_;
  std::vector<SteeringPose> poses_;  // every sample's, for the clocking
  std::vector<Sample> samples_;      // of one lock at one corner
  Peak peaks_[3];
  LinkTravel result_;
};

void TravelSearch::add_corner(double bump_left, double bump_right) {
  const AxleAnswer axle = axle_pose(*mechanism_.suspension, bump_left, bump_right, 0.0);
  if (!axle.closes) {
    ++result_.corners_out_of_reach;
    return;
  }
  Corner corner;
  corner.controls.bump_left = bump_left;
  corner.controls.bump_right = bump_right;
  corner.chassis_from_axle = axle.chassis_from_axle;
  corners_.push_back(corner);
}

void TravelSearch::add_corners() {
  const Suspension& given = mechanism_.project.front_axle->suspension;
  result_.travel_given = given.bump > 0.0 || given.droop > 0.0;
  if (!result_.travel_given) return;
  if (given.bump > 0.0) add_corner(given.bump, given.bump);
  if (given.droop > 0.0) add_corner(-given.droop, -given.droop);
  double up = given.bump;
  double down = given.droop;
  if (given.roll > 0.0) {
    const double rise = mechanism_.suspension->half_track * std::sin(given.roll);
    up = std::min(up, rise);
    down = std::min(down, rise);
  }
  add_corner(up, -down);
  add_corner(-down, up);
}

// Ride height was looked at closely by the lock check.
void TravelSearch::start_from_rows() {
  peak(Use::leverage).value = -1.0;
  for (const LockRow& row : locks_.rows) {
    const auto take = [&](Use what, double value) {
      if (value > peak(what).value) peak(what) = {value, -1, row.arm, row.arm, row.arm};
    };
    take(Use::arm_end, row.swing_arm_end);
    take(Use::knuckle_end, row.swing_knuckle_end);
    if (solve_steering(steering_, chassis_from_axle(*mechanism_.suspension, AxlePose{}), row.arm,
                       pose_) == Outcome::solved)
      poses_.push_back(pose_);
  }
  for (const LockSide* lock : {&locks_.right, &locks_.left}) {
    const double leverage = std::sin(lock->least_effective_angle);
    if (-leverage <= peak(Use::leverage).value) continue;
    double nearest = steering_.straight_arm;
    double least = 2.0;
    for (const LockRow& row : locks_.rows) {
      if (row.hand_wheel * side_sign(lock->side) < 0.0 || row.least_leverage >= least) continue;
      least = row.least_leverage;
      nearest = row.arm;
    }
    peak(Use::leverage) = {-leverage, -1, nearest, nearest, nearest};
    result_.effective_at = lock->least_effective_at;
  }
}

bool TravelSearch::closes(int corner, double arm) {
  return solve_steering(steering_, corners_[static_cast<std::size_t>(corner)].chassis_from_axle,
                        arm, pose_) == Outcome::solved;
}

// Of the pose as solved.
double TravelSearch::use(Use what) {
  if (what == Use::leverage) return -least_leverage(steering_, pose_).leverage;
  const BallSwing swing = ball_swing(steering_, pose_, drag_link_.arm_end.swing_limit,
                                     drag_link_.knuckle_end.swing_limit);
  return what == Use::arm_end ? swing.arm_end : swing.knuckle_end;
}

void TravelSearch::sample(double arm) {
  const BallSwing swing = ball_swing(steering_, pose_, drag_link_.arm_end.swing_limit,
                                     drag_link_.knuckle_end.swing_limit);
  samples_.push_back(
      {arm, {swing.arm_end, swing.knuckle_end, -least_leverage(steering_, pose_).leverage}});
  poses_.push_back(pose_);
}

// Driven swivel at which the axle stop or the outer joint ends the lock, whatever the axle does.
std::optional<double> swivel_at_end(const LockSide& lock) {
  for (const LockEvent& event : lock.events)
    if (event.ends &&
        (event.kind == LockEventKind::axle_stop || event.kind == LockEventKind::outer_joint))
      return event.driven_swivel;
  return std::nullopt;
}

// Samples the last place before a loop opens; `before` closes, `open` does not.
void TravelSearch::sample_edge(int corner, double before, double open) {
  while (std::abs(open - before) > kArmTolerance) {
    const double middle = 0.5 * (before + open);
    (closes(corner, middle) ? before : open) = middle;
  }
  if (closes(corner, before)) sample(before);
}

// From straight to the stop, the outer joint, the box's end or an open loop, whichever comes first.
void TravelSearch::sweep(int corner, const LockSide& lock) {
  const double outward = side_sign(lock.side);
  const double start = steering_.straight_arm;
  const double travel = lock.side == Side::left ? steering_.travel_left : -steering_.travel_right;
  const double last = outward * std::max(outward * travel, outward * start);
  const std::optional<double> last_swivel = swivel_at_end(lock);
  const double way = last_swivel && *last_swivel < steering_.straight_swivel ? -1.0 : 1.0;
  const auto beyond = [&](double arm) {
    return closes(corner, arm) ? way * (pose_.knuckle(steering_.driven_side).swivel - *last_swivel)
                               : 0.0;
  };

  samples_.clear();
  double before = start;
  for (int step = 0; step <= kStepsEachSide; ++step) {
    const double arm = start + (last - start) * step / kStepsEachSide;
    if (!closes(corner, arm)) {
      sample_edge(corner, before, arm);
      break;
    }
    const bool ends =
        last_swivel && way * (pose_.knuckle(steering_.driven_side).swivel - *last_swivel) >= 0.0;
    if (ends && step > 0) {
      const std::optional<Root> root = find_root(beyond, before, arm, kArmTolerance);
      const double end = root ? root->at : arm;
      if (closes(corner, end)) sample(end);
      break;
    }
    sample(arm);
    if (ends) break;  // the wheels stand there already
    before = arm;
  }
}

void TravelSearch::look_for_peaks(int corner) {
  for (const Use what : kUses) {
    for (std::size_t i = 0; i < samples_.size(); ++i) {
      const double value = samples_[i].use[static_cast<std::size_t>(what)];
      if (value <= peak(what).value) continue;
      const std::size_t after = std::min(i + 1, samples_.size() - 1);
      peak(what) = {value, corner, samples_[i].arm, samples_[i > 0 ? i - 1 : 0].arm,
                    samples_[after].arm};
    }
  }
}

void TravelSearch::refine(Use what) {
  constexpr double kTolerance = 0.01 * kRadiansPerDegree;
  Peak& at = peak(what);
  if (at.corner < 0) return;
  const auto missing = [&](double arm) { return closes(at.corner, arm) ? -use(what) : 1e9; };
  const double arm = lowest_place(missing, std::min(at.arm_before, at.arm_after),
                                  std::max(at.arm_before, at.arm_after), kTolerance);
  const double value = -missing(arm);
  if (value > at.value) {
    at.value = value;
    at.arm = arm;
  }
}

WorstOfLink TravelSearch::worst(Use what) const {
  const Peak& at = peak(what);
  WorstOfLink worst;
  worst.value = at.value;
  if (at.corner >= 0) worst.at = corners_[static_cast<std::size_t>(at.corner)].controls;
  worst.at.hand_wheel = hand_wheel_from_arm(mechanism_, at.arm);
  return worst;
}

LinkTravel TravelSearch::run() {
  start_from_rows();
  add_corners();
  for (int corner = 0; corner < static_cast<int>(corners_.size()); ++corner) {
    for (const LockSide* lock : {&locks_.right, &locks_.left}) {
      if (!closes(corner, steering_.straight_arm)) {
        peak(Use::leverage) = {0.0, corner, steering_.straight_arm, steering_.straight_arm,
                               steering_.straight_arm};
        continue;
      }
      sweep(corner, *lock);
      look_for_peaks(corner);
    }
  }
  for (const Use what : kUses) refine(what);

  result_.swing_arm_end = worst(Use::arm_end);
  result_.swing_knuckle_end = worst(Use::knuckle_end);
  result_.effective_angle = worst(Use::leverage);
  result_.effective_angle.value = effective_angle(-result_.effective_angle.value);
  const Peak& least = peak(Use::leverage);
  if (least.corner >= 0 && closes(least.corner, least.arm))
    result_.effective_at = link_end_name(steering_, least_leverage(steering_, pose_).at);
  const std::optional<StudClocking> best = best_stud_clocking(
      steering_, poses_, drag_link_.arm_end.swing_limit, drag_link_.knuckle_end.swing_limit);
  if (best) {
    result_.best_stud_clocking = best->clocking;
    result_.swing_at_best_clocking = std::max(best->arm_end, best->knuckle_end);
  }
  return std::move(result_);
}

}  // namespace

std::optional<LinkTravel> check_link_travel(const Mechanism& mechanism, const LockResult& locks) {
  if (!mechanism.steering || !mechanism.suspension) return std::nullopt;
  return TravelSearch(mechanism, locks).run();
}

}  // namespace tackbench
