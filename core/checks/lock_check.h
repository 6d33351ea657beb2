// Lock check: turn from straight to each side until the first thing ends it, and on past it to list
// what comes next. The order and the margins are the answer. Events are bracketed by a sweep and
// located by root finding to 0.001 degrees of hand wheel or better.
#pragma once

#include <string>
#include <vector>

#include "core/checks/turning.h"
#include "core/mechanism/solve.h"

namespace tackbench {

enum class LockEventKind {
  axle_stop,    // the bolt meets its pad
  assist_cut,   // the assist lets go; it does not end the lock
  box_end,      // the box reaches the end of its travel
  ball_stud,    // a drag-link end has used up its swing
  outer_joint,  // a driven axle's outer joint reaches its angle
  toggle,       // a link end stands in line with its lever: the loop cannot close further
};

struct LockEvent {
  LockEventKind kind = LockEventKind::axle_stop;
  std::string name;          // the stop's name, "arm end", "left wheel", "drag link at the arm";
                             // empty when one of a kind
  bool ends = true;          // false: it does not end a lock (assist cut; a bolt missing its pad)
  double hand_wheel = 0.0;   // from straight, positive on the side turned to, rad
  double arm = 0.0;          // from the box's centre, left positive, rad
  double inner_steer = 0.0;  // of the wheel on the side steered to, positive that way, rad
  double outer_steer = 0.0;
  double driven_swivel = 0.0;  // rad, left positive
};

// How a lock stop meets its pad: signed gap = (centre of the bolt's rounded tip - pad) along the
// pad's normal - tip radius.
struct StopContact {
  std::string name;
  Side knuckle = Side::left;
  double swivel = 0.0;      // of its knuckle at contact, left positive, rad
  double off_centre = 0.0;  // contact from the pad's centre in its face, mm
  double off_square = 0.0;  // bolt from the pad's normal, rad
  bool inside_pad = false;
  double degrees_per_mm = 0.0;  // inner steer lost per mm that the bolt is screwed out, rad per mm
  double gap_straight = 0.0;    // signed gap with the wheels straight, mm
};

// Bolt length change that puts the stop at a wanted inner steer angle.
struct StopSetting {
  std::string stop;
  double wanted_inner_steer = 0.0;  // rad
  double screw_out = 0.0;           // positive = bolt longer, mm
  bool within_adjustment = false;
};

struct LockSide {
  Side side = Side::left;         // to which the hand wheel is turned
  Side steers = Side::left;       // to which the road wheels go; the other side for a reversed box
  bool found = false;             // some event ends this lock
  std::vector<LockEvent> events;  // in order of hand-wheel turn; the first that ends it is `end`
  std::size_t end = 0;            // index of the event that ends the lock
  double turns = 0.0;             // hand-wheel turns from straight to the end
  double inner_steer = 0.0;       // at the end, positive, rad
  double outer_steer = 0.0;
  std::optional<StopContact> stop;           // of the axle stop that acts on this lock
  std::optional<StopSetting> wanted;         // for the wanted steer angle, when one is given
  std::optional<StopSetting> before_others;  // stop set to act `margin` before anything else
  double least_effective_angle = 0.0;        // over this lock up to its end, any link end, rad
  std::string least_effective_at;            // "drag link at the knuckle"
  double overall_ratio_end = 0.0;            // d hand wheel / d mean steer at the end
};

// One row of the sweep over the lock.
struct LockRow {
  double hand_wheel = 0.0;  // left positive, rad
  double arm = 0.0;
  double steer_left = 0.0;  // left positive, rad
  double steer_right = 0.0;
  double swivel_left = 0.0;
  double swivel_right = 0.0;
  double ratio = 0.0;              // d hand wheel / d mean steer
  double ackermann_percent = 0.0;  // fraction (1 = 100 %); 0 near straight where it has no meaning
  bool ackermann_known = false;
  double swing_arm_end = 0.0;
  double swing_knuckle_end = 0.0;
  double least_leverage = 1.0;  // smallest sine of effective angles over all link ends
};

struct LockResult {
  LockSide left;
  LockSide right;
  double turns_total = 0.0;
  double turns_difference = 0.0;    // left minus right, turns
  double ratio_on_centre = 0.0;     // d hand wheel / d mean steer
  double swing_used_arm_end = 0.0;  // greatest over the rows, rad
  double swing_used_knuckle_end = 0.0;
  double best_stud_clocking = 0.0;      // that would use least over both locks, rad
  double swing_at_best_clocking = 0.0;  // greatest of both ends then, rad
  // From full right to full left. A side whose lock a ball stud ends runs on to the next event that
  // would end it, so that rows and swing used show what the studs would need.
  std::vector<LockRow> rows;
  std::optional<TurningCircles> circles_left;  // hand wheel left, at the lock's end
  std::optional<TurningCircles> circles_right;
};

struct LockSettings {
  double margin_before_others = 0.0;  // stop wanted this inner steer before anything else, rad
  int rows_each_side = 24;
  AxlePose axle;  // ride height by default
};

// Empty when the steering is not compiled or has no straight pose.
std::optional<LockResult> check_locks(const Mechanism& mechanism, const LockSettings& settings);

// "axle_stop" ...
const char* lock_event_name(LockEventKind kind);

}  // namespace tackbench
