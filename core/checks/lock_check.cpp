#include "core/checks/lock_check.h"

#include <algorithm>
#include <cmath>

#include "core/basics/root.h"
#include "core/basics/units.h"
#include "core/checks/link_ends.h"
#include "core/checks/lock_sweep.h"
#include "core/checks/stud_clocking.h"

namespace tackbench {

namespace {

class LockCheck {
 public:
  LockCheck(const Mechanism& mechanism, const LockSettings& settings)
      : mechanism_(mechanism),
        settings_(settings),
        steering_(*mechanism.steering),
        axle_(*mechanism.project.front_axle),
        chassis_from_axle_(chassis_from_axle(*mechanism.suspension, settings.axle)),
        stops_(axle_stops(axle_, steering_)),
        pose_(blank_pose(mechanism)),
        pivot_distance_(kingpin_distance(steering_)) {
    controls_.axle_pose = settings.axle;
  }

  std::optional<LockResult> run();

 private:
  SteeringPose& solved_at(double arm) {
    closes_ = solve_steering(steering_, chassis_from_axle_, arm, pose_.steering) == Outcome::solved;
    return pose_.steering;
  }
  double inner_steer(Side steers, const SteeringPose& pose) const {
    return side_sign(steers) * pose.knuckle(steers).steer;
  }

  LockSide lock_side(Side hand, Side steers);
  LockEvent event(const LockHit& hit, const LockSide& side);
  StopContact contact(const AxleStop& stop, double arm, Side steers);
  std::optional<StopSetting> setting(const AxleStop& stop, const LockSide& side,
                                     double wanted_inner_steer);
  void add_stop(LockSide& side, const LockSweep& sweep);
  void add_rows(const LockSide& side, int rows, bool with_straight);
  LockRow row();
  void finish(LockSide& side, std::size_t first_row, std::size_t end_row);
  void add_swing();
  std::optional<TurningCircles> circles(const LockSide& side);

  const Mechanism& mechanism_;
  const LockSettings& settings_;
  const Steering& steering_;
  const FrontAxleStation& axle_;
  Placement<Chassis, Axle> chassis_from_axle_;
  std::vector<AxleStop> stops_;
  Pose pose_;
  Controls controls_;
  double pivot_distance_;
  double last_arm_left_ = 0.0;
  double last_arm_right_ = 0.0;
  bool closes_ = false;
  LockResult result_;
  std::vector<SteeringPose> row_poses_;
};

LockEvent LockCheck::event(const LockHit& hit, const LockSide& side) {
  const SteeringPose& at = solved_at(hit.arm);
  LockEvent event;
  event.kind = hit.kind;
  event.name = hit.name;
  event.ends = hit.ends;
  event.hand_wheel = side_sign(side.side) * hand_wheel_from_arm(mechanism_, hit.arm);
  event.arm = hit.arm;
  event.inner_steer = inner_steer(side.steers, at);
  event.outer_steer = side_sign(side.steers) * at.knuckle(other(side.steers)).steer;
  event.driven_swivel = at.knuckle(steering_.driven_side).swivel;
  return event;
}

StopContact LockCheck::contact(const AxleStop& stop, double arm, Side steers) {
  StopContact contact;
  contact.name = stop.name;
  contact.knuckle = stop.knuckle;
  contact.gap_straight = stop.gap(solved_at(steering_.straight_arm).knuckle(stop.knuckle).swivel);
  const SteeringPose& at = solved_at(arm);
  const KnucklePose& knuckle = at.knuckle(stop.knuckle);
  contact.swivel = knuckle.swivel;
  contact.off_centre = stop.off_centre(knuckle.swivel);
  contact.off_square = stop.off_square(knuckle.swivel);
  contact.inside_pad = contact.off_centre <= stop.pad_radius;
  // Gap held at zero: gap_rate dswivel = closing dlength.
  const double gap_rate = stop.gap_rate(knuckle.swivel);
  if (gap_rate != 0.0 && knuckle.swivel_rate != 0.0) {
    const double steer_per_swivel = at.knuckle(steers).steer_rate / knuckle.swivel_rate;
    contact.degrees_per_mm =
        -side_sign(steers) * steer_per_swivel * stop.closing_per_mm(knuckle.swivel) / gap_rate;
  }
  return contact;
}

// Exact: the swivel at the wanted steer, and the bolt length that brings the tip to the pad there.
std::optional<StopSetting> LockCheck::setting(const AxleStop& stop, const LockSide& side,
                                              double wanted_inner_steer) {
  constexpr double kArmTolerance = 1e-9;
  const double last = side.side == Side::left ? last_arm_left_ : last_arm_right_;
  const auto beyond = [&](double arm) {
    return inner_steer(side.steers, solved_at(arm)) - wanted_inner_steer;
  };
  // Steer may fall again past an over-centre arm: take the first crossing.
  constexpr int kSteps = 32;
  const double start = steering_.straight_arm;
  double near = start;
  bool short_of = beyond(near) < 0.0;
  for (int i = 1; i <= kSteps; ++i) {
    const double far = start + (last - start) * i / kSteps;
    const bool still_short = beyond(far) < 0.0;
    if (still_short == short_of) {
      near = far;
      continue;
    }
    const std::optional<Root> root = find_root(beyond, near, far, kArmTolerance);
    if (!root) return std::nullopt;
    const double swivel = solved_at(root->at).knuckle(stop.knuckle).swivel;
    const std::optional<double> screw_out = stop.screw_out_for(swivel);
    if (!screw_out) return std::nullopt;
    return StopSetting{stop.name, wanted_inner_steer, *screw_out,
                       std::abs(*screw_out) <= stop.bolt_adjustment};
  }
  return std::nullopt;
}

void LockCheck::add_stop(LockSide& side, const LockSweep& sweep) {
  // The stop that acts, else one that comes to its pad's plane but misses it, else one that names
  // this lock.
  const LockHit* hit = nullptr;
  for (const LockHit& each : sweep.hits) {
    if (each.kind != LockEventKind::axle_stop) continue;
    if (hit == nullptr || (each.ends && !hit->ends)) hit = &each;
  }
  const AxleStop* stop = nullptr;
  if (hit != nullptr) {
    stop = &stops_[static_cast<std::size_t>(hit->stop)];
    side.stop = contact(*stop, hit->arm, side.steers);
  } else {
    const auto named = std::find_if(stops_.begin(), stops_.end(),
                                    [&](const AxleStop& s) { return s.lock == side.steers; });
    if (named == stops_.end()) return;
    stop = &*named;
  }
  const std::optional<double>& wanted =
      side.steers == Side::left ? axle_.wanted_steer_left : axle_.wanted_steer_right;
  if (wanted) side.wanted = setting(*stop, side, *wanted);
  const auto first_other =
      std::find_if(side.events.begin(), side.events.end(), [](const LockEvent& e) {
        return e.kind != LockEventKind::axle_stop && e.kind != LockEventKind::assist_cut;
      });
  if (first_other != side.events.end())
    side.before_others =
        setting(*stop, side, first_other->inner_steer - settings_.margin_before_others);
}

LockSide LockCheck::lock_side(Side hand, Side steers) {
  LockSide side;
  side.side = hand;
  side.steers = steers;
  const LockSweep sweep =
      sweep_lock({mechanism_, chassis_from_axle_, stops_, hand, steers}, pose_.steering);
  (hand == Side::left ? last_arm_left_ : last_arm_right_) = sweep.last_arm;
  for (const LockHit& hit : sweep.hits) side.events.push_back(event(hit, side));
  const auto end = std::find_if(side.events.begin(), side.events.end(),
                                [](const LockEvent& each) { return each.ends; });
  side.found = end != side.events.end();
  if (side.found) {
    side.end = static_cast<std::size_t>(end - side.events.begin());
    side.turns = turns_from_radians(end->hand_wheel);
    side.inner_steer = end->inner_steer;
    side.outer_steer = end->outer_steer;
  }
  add_stop(side, sweep);
  return side;
}

// From pose_, solved in full.
LockRow LockCheck::row() {
  constexpr double kLeastSteer = 1.0 * kRadiansPerDegree;  // below it the percentage is noise
  const SteeringPose& at = pose_.steering;
  LockRow row;
  row.hand_wheel = controls_.hand_wheel;
  row.arm = at.arm;
  row.steer_left = at.left.steer;
  row.steer_right = at.right.steer;
  row.swivel_left = at.left.swivel;
  row.swivel_right = at.right.swivel;
  const double steer_rate = 0.5 * pose_.arm_rate * (at.left.steer_rate + at.right.steer_rate);
  row.ratio = steer_rate != 0.0 ? 1.0 / steer_rate : 0.0;
  const Side steers = at.left.steer + at.right.steer >= 0.0 ? Side::left : Side::right;
  const double inner = inner_steer(steers, at);
  if (axle_.road.wheelbase && inner > kLeastSteer) {
    const std::optional<double> fraction =
        ackermann_fraction(inner, side_sign(steers) * at.knuckle(other(steers)).steer,
                           pivot_distance_, *axle_.road.wheelbase);
    row.ackermann_known = fraction.has_value();
    row.ackermann_percent = fraction.value_or(0.0);
  }
  row.swing_arm_end = pose_.ball_swing.arm_end;
  row.swing_knuckle_end = pose_.ball_swing.knuckle_end;
  row.least_leverage = least_leverage(steering_, at).leverage;
  return row;
}

// `rows` steps from straight to the side's last row, appended from right to left.
void LockCheck::add_rows(const LockSide& side, int rows, bool with_straight) {
  const double last_arm = side.side == Side::left ? last_arm_left_ : last_arm_right_;
  const auto end = std::find_if(side.events.begin(), side.events.end(), [](const LockEvent& event) {
    return event.ends && event.kind != LockEventKind::ball_stud;
  });
  const double last = end != side.events.end() ? side_sign(side.side) * end->hand_wheel
                                               : hand_wheel_from_arm(mechanism_, last_arm);
  for (int i = 0; i <= rows; ++i) {
    const int outward = side.side == Side::left ? i : rows - i;
    if (outward == 0 && !with_straight) continue;
    controls_.hand_wheel = last * outward / rows;
    if (solve(mechanism_, controls_, pose_) != Outcome::solved) continue;
    result_.rows.push_back(row());
    row_poses_.push_back(pose_.steering);
  }
}

// Leverage over the side's rows up to its end, and what its end pose says.
void LockCheck::finish(LockSide& side, std::size_t first_row, std::size_t end_row) {
  LeastLeverage least;
  const auto look = [&](const SteeringPose& pose) {
    const LeastLeverage here = least_leverage(steering_, pose);
    if (here.leverage < least.leverage) least = here;
  };
  const double end = side.turns * kRadiansPerTurn;
  for (std::size_t i = first_row; i < end_row; ++i)
    if (!side.found || std::abs(result_.rows[i].hand_wheel) <= end) look(row_poses_[i]);
  if (side.found) {
    controls_.hand_wheel = side_sign(side.side) * end;
    if (solve(mechanism_, controls_, pose_) == Outcome::solved) {
      look(pose_.steering);
      side.overall_ratio_end = row().ratio;
    }
  }
  side.least_effective_angle = effective_angle(least.leverage);
  side.least_effective_at = link_end_name(steering_, least.at);
}

void LockCheck::add_swing() {
  for (const LockRow& row : result_.rows) {
    result_.swing_used_arm_end = std::max(result_.swing_used_arm_end, row.swing_arm_end);
    result_.swing_used_knuckle_end =
        std::max(result_.swing_used_knuckle_end, row.swing_knuckle_end);
  }
  const DragLinkStation& link = *mechanism_.project.drag_link;
  const std::optional<StudClocking> best = best_stud_clocking(
      steering_, row_poses_, link.arm_end.swing_limit, link.knuckle_end.swing_limit);
  if (!best) return;
  result_.best_stud_clocking = best->clocking;
  result_.swing_at_best_clocking = std::max(best->arm_end, best->knuckle_end);
}

std::optional<TurningCircles> LockCheck::circles(const LockSide& side) {
  if (!side.found || !axle_.road.wheelbase) return std::nullopt;
  const SteeringPose& at = solved_at(side.events[side.end].arm);
  if (!closes_) return std::nullopt;
  return turning_circles(mechanism_, at, side.steers, *axle_.road.wheelbase);
}

std::optional<LockResult> LockCheck::run() {
  if (solve(mechanism_, controls_, pose_) != Outcome::solved) return std::nullopt;
  result_.ratio_on_centre = row().ratio;
  const bool left_steers_left = result_.ratio_on_centre >= 0.0;
  result_.left = lock_side(Side::left, left_steers_left ? Side::left : Side::right);
  result_.right = lock_side(Side::right, left_steers_left ? Side::right : Side::left);
  result_.turns_total = result_.left.turns + result_.right.turns;
  result_.turns_difference = result_.left.turns - result_.right.turns;

  const int rows = std::max(1, settings_.rows_each_side);
  result_.rows.reserve(2 * static_cast<std::size_t>(rows) + 1);
  row_poses_.reserve(result_.rows.capacity());
  add_rows(result_.right, rows, false);
  const std::size_t straight = result_.rows.size();
  add_rows(result_.left, rows, true);
  const std::size_t all = result_.rows.size();
  finish(result_.right, 0, std::min(straight + 1, all));
  finish(result_.left, straight, all);
  add_swing();
  result_.circles_left = circles(result_.left);
  result_.circles_right = circles(result_.right);
  return std::move(result_);
}

}  // namespace

std::optional<LockResult> check_locks(const Mechanism& mechanism, const LockSettings& settings) {
  if (!mechanism.steering || !mechanism.suspension) return std::nullopt;
  return LockCheck(mechanism, settings).run();
}

const char* lock_event_name(LockEventKind kind) {
  switch (kind) {
    case LockEventKind::axle_stop:
      return "axle_stop";
    case LockEventKind::assist_cut:
      return "assist_cut";
    case LockEventKind::box_end:
      return "box_end";
    case LockEventKind::ball_stud:
      return "ball_stud";
    case LockEventKind::outer_joint:
      return "outer_joint";
    case LockEventKind::toggle:
      return "toggle";
  }
  return "unknown";
}

}  // namespace tackbench
