#include "core/fabrication/drag_link_part.h"

#include <fmt/core.h>

#include <algorithm>
#include <cmath>

#include "core/basics/units.h"
#include "core/basics/wording.h"
#include "core/checks/metric_thread.h"

namespace tackbench {

namespace {

constexpr double kEngagementKept = 1.0;  // diameters, from memory: full strength of steel in steel
constexpr double kRunOutPitches = 2.0;   // common practice

void size_end(const LinkEndSize& size, const LinkTube& tube, double adjustment_share,
              LinkEndPart& part) {
  part.size = size;
  const Thread& thread = size.thread;
  part.free_length = size.shank_length - size.thread_engagement;
  part.thread_out = std::max(0.0, size.thread_engagement - kEngagementKept * thread.diameter);
  part.thread_in = std::clamp(part.free_length - size.lock_nut_thickness, 0.0, adjustment_share);
  part.thread_depth = size.thread_engagement + adjustment_share + kRunOutPitches * thread.pitch;
  part.wall_outside = 0.5 * (tube.outside_diameter - thread.diameter);
  part.area_outside = std::max(
      0.0, kPi / 4.0 *
               (tube.outside_diameter * tube.outside_diameter - thread.diameter * thread.diameter));
  part.bore_carries_thread =
      tube.outside_diameter - 2.0 * tube.wall <= largest_tapping_bore(thread);
}

// Turning the tube moves both ends at once: the end that runs out first ends it.
double both_ends(double at_arm, double at_knuckle, const DragLinkPart& part) {
  if (!part.opposite_hands) return at_arm + at_knuckle;
  const double arm_pitch = part.arm.size.thread.pitch;
  const double knuckle_pitch = part.knuckle.size.thread.pitch;
  const double turns = std::min(at_arm / arm_pitch, at_knuckle / knuckle_pitch);
  return turns * (arm_pitch + knuckle_pitch);
}

// Rim force to link force: torque at the rim times the box's greatest ratio over the arm's lever,
// the lever shortened by the least leverage met between the locks. No losses: a bound from above
// for the driver's hands alone.
std::optional<LinkForce> from_the_rim(const Mechanism& mechanism,
                                      const std::optional<LockResult>& locks) {
  const auto& forces = mechanism.project.drag_link->forces;
  if (!forces.two_handed_rim || !mechanism.project.column || !locks || locks->rows.empty())
    return std::nullopt;
  const SteeringBoxStation& box = *mechanism.project.steering_box;
  if (!box.relays.empty() || !(box.arm.length > 0.0)) return std::nullopt;
  double ratio = box.ratio_table.empty() ? box.ratio.value_or(0.0) : 0.0;
  for (const RatioRow& row : box.ratio_table) ratio = std::max(ratio, row.ratio);
  double leverage = 1.0;
  for (const LockRow& row : locks->rows) leverage = std::min(leverage, row.least_leverage);
  if (!(leverage > 0.0)) return std::nullopt;
  const double radius = 0.5 * mechanism.project.column->hand_wheel_diameter;
  LinkForce force;
  force.newtons = *forces.two_handed_rim * radius * ratio / (box.arm.length * leverage);
  force.name = "two-handed rim force";
  force.how = fmt::format(
      "{:.0f} N at {:.0f} mm radius x ratio {:.1f} / (arm {:.0f} mm x least leverage {:.2f}), no "
      "losses taken off",
      *forces.two_handed_rim, radius, ratio, box.arm.length, leverage);
  return force;
}

LinkForce greatest_force(const Mechanism& mechanism, const std::optional<LockResult>& locks) {
  const auto& forces = mechanism.project.drag_link->forces;
  LinkForce greatest;
  const auto take = [&greatest](double newtons, const char* name, const std::string& how) {
    if (greatest.newtons && *greatest.newtons >= newtons) return;
    greatest.newtons = newtons;
    greatest.name = name;
    greatest.how = how;
  };
  std::vector<std::string> not_given;
  if (forces.assist_limit) take(*forces.assist_limit, "assist limit", "");
  if (!forces.assist_limit) not_given.emplace_back("assist limit");
  if (const auto rim = from_the_rim(mechanism, locks))
    take(*rim->newtons, "two-handed rim force", rim->how);
  else
    not_given.emplace_back(forces.two_handed_rim ? "two-handed rim force (given at the rim, not "
                                                   "carried through to the link here)"
                                                 : "two-handed rim force");
  if (forces.kerb_strike) take(*forces.kerb_strike, "kerb strike", "");
  if (!forces.kerb_strike) not_given.emplace_back("kerb strike");
  greatest.not_given = not_given;
  return greatest;
}

}  // namespace

std::string hand_end_words(const DragLinkPart& part) {
  return say(part.from_relay ? "word.relay_end" : "word.arm_end");
}

double length_per_tube_turn(const DragLinkPart& part) {
  const double arm = part.arm.size.thread.pitch;
  const double knuckle = part.knuckle.size.thread.pitch;
  return part.opposite_hands ? arm + knuckle : std::abs(arm - knuckle);
}

namespace {

void size_part(const DragLinkStation& station, DragLinkPart& part) {
  const std::optional<LinkEndSize> arm = link_end_size(station.arm_end);
  const std::optional<LinkEndSize> knuckle = link_end_size(station.knuckle_end);
  if (!arm || !knuckle || !station.tube) return;
  part.sized = true;
  part.tube = *station.tube;
  part.opposite_hands = arm->thread.hand != knuckle->thread.hand;
  // With opposite hands the tube's turns share the adjustment by pitch; otherwise one end takes it
  // all, and either may be the one.
  const double both_pitches = arm->thread.pitch + knuckle->thread.pitch;
  const auto share = [&](const Thread& thread) {
    return part.opposite_hands ? station.adjustment * thread.pitch / both_pitches
                               : station.adjustment;
  };
  size_end(*arm, part.tube, share(arm->thread), part.arm);
  size_end(*knuckle, part.tube, share(knuckle->thread), part.knuckle);
  part.tube_length = part.ball_to_ball - part.arm.free_length - part.knuckle.free_length;
  part.longer = both_ends(part.arm.thread_out, part.knuckle.thread_out, part);
  part.shorter = both_ends(part.arm.thread_in, part.knuckle.thread_in, part);
}

}  // namespace

DragLinkPart drag_link_part(const Mechanism& mechanism, const LinkResult& link,
                            const std::optional<LockResult>& locks,
                            const std::optional<LinkTravel>& travel) {
  const DragLinkStation& station = *mechanism.project.drag_link;
  DragLinkPart part;
  part.ball_to_ball = link.centring_length;
  part.given_length = station.given_length;
  part.given_box_offset = link.input_offset;
  part.given_can_be_set = station.given_length && link.within_adjustment;
  part.bend_offset = station.bend_offset;
  part.adjustment_wanted = station.adjustment;
  part.arm.end = station.arm_end;
  part.knuckle.end = station.knuckle_end;
  size_part(station, part);

  part.clocking = wrapped(mechanism.steering->stud_clocking);
  part.clocking_given = mechanism.steering->stud_clocking_given;
  if (locks) {
    part.arm.swing_needed = locks->swing_used_arm_end;
    part.knuckle.swing_needed = locks->swing_used_knuckle_end;
    part.best_clocking = wrapped(locks->best_stud_clocking);
    part.swing_at_best = locks->swing_at_best_clocking;
  }
  if (travel) {
    part.arm.swing_needed = travel->swing_arm_end.value;
    part.knuckle.swing_needed = travel->swing_knuckle_end.value;
    part.arm.swing_over_travel = part.knuckle.swing_over_travel = travel->travel_given;
    part.best_clocking = wrapped(travel->best_stud_clocking);
    part.swing_at_best = travel->swing_at_best_clocking;
  }
  part.tolerance = station.tolerance;
  part.force = greatest_force(mechanism, locks);
  part.knuckle_side = station.knuckle;
  part.from_relay =
      mechanism.project.steering_box && !mechanism.project.steering_box->relays.empty();
  part.quantity = station.quantity;
  return part;
}

}  // namespace tackbench
