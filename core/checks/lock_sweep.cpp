#include "core/checks/lock_sweep.h"

#include <algorithm>
#include <cmath>

#include "core/basics/golden_section.h"
#include "core/basics/root.h"
#include "core/checks/first_toggle.h"
#include "core/checks/link_ends.h"

namespace tackbench {

namespace {

const int kSteps = static_cast<int>(std::ceil(kLockSweepEnd / kLockSweepStep - 1e-9));
constexpr double kArmTolerance = 1e-9;  // rad; some 1e-6 degrees of hand wheel

// A function of the pose that turns from negative to positive where its event happens.
struct Watch {
  LockHit hit;
  bool knuckle_end = false;  // ball stud: which end
  Side wheel = Side::left;   // outer joint
  double limit = 0.0;        // of the swing or joint angle, rad
  int link = 0;              // toggle: counted from hand to road
  double sign = 1.0;         // toggle: sign of the ratio over the link at straight
  bool found = false;
  double two_back = -1.0;  // values at the last three samples
  double last = -1.0;
  double now = -1.0;
};

// Ratio of the road-side lever's turn to the hand-side lever's turn over one link: zero where the
// link stands in line with its hand-side lever, without bound where with the road-side lever.
double ratio_over_link(const Steering& steering, const SteeringPose& pose, int link) {
  const auto rate_behind = [&](int levers) {
    const int relays = static_cast<int>(steering.relays.size());
    if (levers == 0) return 1.0;
    if (levers <= relays) return pose.relays[static_cast<std::size_t>(levers - 1)].rate;
    const Side driven = steering.driven_side;
    return pose.knuckle(levers == relays + 1 ? driven : other(driven)).swivel_rate;
  };
  const double hand_side = rate_behind(link);
  // A hand-side lever that itself stands still was reported by the link before.
  return hand_side == 0.0 ? 0.0 : rate_behind(link + 1) / hand_side;
}

class Sweep {
 public:
  Sweep(const LockSweepInput& input, SteeringPose& pose)
      : input_(input),
        steering_(*input.mechanism.steering),
        drag_link_(*input.mechanism.project.drag_link),
        outward_(side_sign(input.hand)),
        pose_(pose) {}

  LockSweep run();

 private:
  bool closes(double arm);
  const BallSwing& swing();
  double value(const Watch& watch);
  double value_at(const Watch& watch, double arm) { return closes(arm) ? value(watch) : 0.0; }

  void start_watches();
  void sample(double arm);
  void look(Watch& watch, double arm);
  void record(Watch& watch, double arm);
  void record_travel(LockEventKind kind, double output);

  const LockSweepInput& input_;
  const Steering& steering_;
  const DragLinkStation& drag_link_;
  double outward_;
  SteeringPose& pose_;
  std::optional<BallSwing> swing_;  // of pose_
  std::vector<Watch> watches_;
  LockSweep result_;
  double arm_two_back_ = 0.0;
  double arm_last_ = 0.0;
  int samples_ = 0;
};

bool Sweep::closes(double arm) {
  swing_.reset();
  return solve_steering(steering_, input_.chassis_from_axle, arm, pose_) == Outcome::solved;
}

const BallSwing& Sweep::swing() {
  if (!swing_)
    swing_ = ball_swing(steering_, pose_, drag_link_.arm_end.swing_limit,
                        drag_link_.knuckle_end.swing_limit);
  return *swing_;
}

double Sweep::value(const Watch& watch) {
  switch (watch.hit.kind) {
    case LockEventKind::axle_stop: {
      const AxleStop& stop = input_.stops[static_cast<std::size_t>(watch.hit.stop)];
      return -stop.gap(pose_.knuckle(stop.knuckle).swivel);
    }
    case LockEventKind::ball_stud:
      return (watch.knuckle_end ? swing().knuckle_end : swing().arm_end) - watch.limit;
    case LockEventKind::outer_joint:
      return angle_between(input_.chassis_from_axle.turn * Vec3::UnitY(),
                           pose_.knuckle(watch.wheel).spindle) -
             watch.limit;
    case LockEventKind::toggle:
      return -watch.sign * ratio_over_link(steering_, pose_, watch.link);
    case LockEventKind::assist_cut:
    case LockEventKind::box_end:
      break;  // their arm angles are given
  }
  return -1.0;
}

// The pose is straight when this is called.
void Sweep::start_watches() {
  const auto watch = [this](LockEventKind kind, std::string name) -> Watch& {
    Watch& added = watches_.emplace_back();
    added.hit.kind = kind;
    added.hit.name = std::move(name);
    return added;
  };
  for (std::size_t i = 0; i < input_.stops.size(); ++i) {
    if (input_.stops[i].lock != input_.steers) continue;
    watch(LockEventKind::axle_stop, input_.stops[i].name).hit.stop = static_cast<int>(i);
  }
  if (drag_link_.arm_end.swing_limit)
    watch(LockEventKind::ball_stud, "arm end").limit = *drag_link_.arm_end.swing_limit;
  if (drag_link_.knuckle_end.swing_limit) {
    Watch& knuckle_end = watch(LockEventKind::ball_stud, "knuckle end");
    knuckle_end.limit = *drag_link_.knuckle_end.swing_limit;
    knuckle_end.knuckle_end = true;
  }
  const FrontAxleStation& axle = *input_.mechanism.project.front_axle;
  if (axle.driven && axle.outer_joint_limit) {
    for (const Side side : {Side::left, Side::right}) {
      Watch& joint =
          watch(LockEventKind::outer_joint, side == Side::left ? "left wheel" : "right wheel");
      joint.wheel = side;
      joint.limit = *axle.outer_joint_limit;
    }
  }
  const int links = static_cast<int>(steering_.relays.size()) + 2;
  for (int link = 0; link < links; ++link) {
    Watch& toggle = watch(LockEventKind::toggle, link_end_name(steering_, {link, false}));
    toggle.link = link;
    toggle.sign = ratio_over_link(steering_, pose_, link) < 0.0 ? -1.0 : 1.0;
  }
}

void Sweep::record(Watch& watch, double arm) {
  watch.found = true;
  watch.hit.arm = arm;
  if (watch.hit.kind == LockEventKind::axle_stop && closes(arm)) {
    const AxleStop& stop = input_.stops[static_cast<std::size_t>(watch.hit.stop)];
    watch.hit.ends = stop.off_centre(pose_.knuckle(stop.knuckle).swivel) <= stop.pad_radius;
  }
  result_.hits.push_back(watch.hit);
}

// Looks for the watch's event between the last samples; `arm` is the newest.
void Sweep::look(Watch& watch, double arm) {
  if (samples_ == 0) {
    if (watch.now >= 0.0) record(watch, arm);
    return;
  }
  const auto f = [&](double at) { return value_at(watch, at); };
  if (watch.now >= 0.0) {
    const std::optional<Root> root = find_root(f, arm_last_, arm, kArmTolerance);
    record(watch, root ? root->at : arm);
    return;
  }
  if (samples_ < 2 || watch.last < watch.two_back || watch.last < watch.now) return;
  // A peak below zero at the samples may rise above it between them. Near a peak a function that
  // bends downward stays under its own chords prolonged by a step; allow twice that.
  const double steepest = watch.last - std::min(watch.two_back, watch.now);
  if (watch.last + 2.0 * steepest < 0.0) return;
  constexpr double kPeakTolerance = 2e-5 * kRadiansPerDegree;
  const double above = lowest_place([&f](double at) { return -f(at); },
                                    std::min(arm_two_back_, arm), std::max(arm_two_back_, arm),
                                    kPeakTolerance, [](double below) { return below <= 0.0; });
  if (f(above) < 0.0) return;
  const std::optional<Root> root = find_root(f, arm_two_back_, above, kArmTolerance);
  record(watch, root ? root->at : above);
}

// The pose is solved at `arm`.
void Sweep::sample(double arm) {
  // All values before any closer look, which moves the pose.
  for (Watch& watch : watches_) {
    if (watch.found) continue;
    watch.two_back = watch.last;
    watch.last = watch.now;
    watch.now = value(watch);
  }
  for (Watch& watch : watches_)
    if (!watch.found) look(watch, arm);
  arm_two_back_ = arm_last_;
  arm_last_ = arm;
  ++samples_;
}

void Sweep::record_travel(LockEventKind kind, double output) {
  const double outermost = outward_ * result_.last_arm;
  const double from_centre = std::max(output, outward_ * steering_.straight_arm);
  if (from_centre > outermost) return;  // the linkage does not get there
  LockHit hit;
  hit.kind = kind;
  hit.arm = outward_ * from_centre;
  hit.ends = kind == LockEventKind::box_end;
  result_.hits.push_back(hit);
}

LockSweep Sweep::run() {
  const double start = steering_.straight_arm;
  result_.last_arm = start;
  if (!closes(start)) return std::move(result_);
  const std::optional<FirstToggle> toggle =
      first_toggle({steering_, input_.chassis_from_axle, outward_, kLockSweepStep, kSteps}, pose_);
  closes(start);
  start_watches();
  sample(start);
  for (int step = 1; step <= kSteps; ++step) {
    const double arm = start + outward_ * kLockSweepStep * step;
    if (toggle && outward_ * arm >= outward_ * toggle->arm) break;
    result_.last_arm = arm;
    if (closes(arm)) sample(arm);
  }
  if (toggle) {
    crowd_towards(result_.last_arm, toggle->arm, [this](double arm) {
      if (closes(arm)) sample(arm);
    });
    result_.last_arm = toggle->arm;
    LockHit hit;
    hit.kind = LockEventKind::toggle;
    hit.name = link_end_name(steering_, {toggle->link, true});
    hit.arm = toggle->arm;
    result_.hits.push_back(std::move(hit));
  }
  const bool left = input_.hand == Side::left;
  record_travel(LockEventKind::box_end, left ? steering_.travel_left : steering_.travel_right);
  const std::optional<double>& cut = left ? steering_.assist_cut_left : steering_.assist_cut_right;
  if (cut) record_travel(LockEventKind::assist_cut, *cut);
  std::stable_sort(
      result_.hits.begin(), result_.hits.end(),
      [this](const LockHit& a, const LockHit& b) { return outward_ * a.arm < outward_ * b.arm; });
  return std::move(result_);
}

}  // namespace

LockSweep sweep_lock(const LockSweepInput& input, SteeringPose& pose) {
  return Sweep(input, pose).run();
}

}  // namespace tackbench
