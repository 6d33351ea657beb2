// Ball-stud swing at both ends of the drag link. Both housings share the link's one spin and their
// set clocking; the spin that makes the worse use least is the one reported.
#include <algorithm>
#include <cmath>

#include "core/basics/units.h"
#include "core/mechanism/solve.h"

namespace tackbench {

namespace {

// A stud against the link: `tilt` = sine of the stud out of the link's cross plane, `across` = its
// cosine, the part in that plane.
struct StudAgainstLink {
  double tilt;
  double across;

  // Angle between stud and housing axis when the housing is spun by `spin` from the stud's own
  // direction in the cross plane.
  double swing(double spin) const {
    const double cosine = across * std::cos(spin);
    const double sideways = across * std::sin(spin);
    return std::atan2(std::sqrt(tilt * tilt + sideways * sideways), cosine);
  }
  // d swing / d spin.
  double swing_rate(double spin) const {
    const double cosine = across * std::cos(spin);
    const double sine = std::sqrt(std::max(1e-30, 1.0 - cosine * cosine));
    return across * std::sin(spin) / sine;
  }
  // Largest spin either way that keeps the swing within the limit; negative when none does.
  double spin_within(double limit) const {
    const double needed = std::cos(limit);
    if (across <= needed) return -1.0;
    return std::acos(std::clamp(needed / across, -1.0, 1.0));
  }
};

// Spin between 0 (best at the arm end) and `apart` (best at the knuckle end), both in [0, pi], at
// which the larger of swing / limit is least: the arm's use rises, the knuckle's falls in between.
double least_worst_spin(const StudAgainstLink& arm, const StudAgainstLink& knuckle, double apart,
                        double arm_limit, double knuckle_limit) {
  if (knuckle.swing(apart) / knuckle_limit <= arm.swing(0.0) / arm_limit) return 0.0;
  if (arm.swing(apart) / arm_limit <= knuckle.swing(0.0) / knuckle_limit) return apart;
  // Equal limits have a closed form; it starts Newton for unequal ones.
  double spin = std::clamp(
      std::atan2(arm.across - knuckle.across * std::cos(apart), knuckle.across * std::sin(apart)),
      0.0, apart);
  if (arm_limit == knuckle_limit) return spin;
  constexpr int kMostSteps = 60;
  constexpr double kEnough = 1e-13;
  double low = 0.0;
  double high = apart;
  for (int step = 0; step < kMostSteps; ++step) {
    const double difference =
        arm.swing(spin) / arm_limit - knuckle.swing(apart - spin) / knuckle_limit;
    (difference > 0.0 ? high : low) = spin;
    const double rate =
        arm.swing_rate(spin) / arm_limit + knuckle.swing_rate(apart - spin) / knuckle_limit;
    double next = rate != 0.0 ? spin - difference / rate : 0.5 * (low + high);
    if (!(next > low && next < high)) next = 0.5 * (low + high);
    if (std::abs(next - spin) < kEnough) return next;
    spin = next;
  }
  return spin;
}

}  // namespace

BallSwing ball_swing(const Steering& steering, const SteeringPose& pose,
                     std::optional<double> arm_limit, std::optional<double> knuckle_limit) {
  const Vec3& link = pose.drag_link.along;
  const bool on_relay = !steering.relays.empty();
  const Vec3& lever_axis = on_relay ? steering.relays.back().output.axis : steering.arm.axis;
  const double lever_angle = on_relay ? pose.relays.back().angle : pose.arm;
  const Vec3 arm_stud = turned(steering.arm_stud, lever_axis, lever_angle);
  const KnucklePose& driven = pose.knuckle(steering.driven_side);
  const Vec3 knuckle_stud = driven.chassis_from_knuckle.turn * steering.knuckle_stud;

  const Vec3 first = square_to(link, arm_stud);
  const Vec3 second = link.cross(first);
  const auto against = [&link](const Vec3& stud) {
    const double tilt = link.dot(stud);
    return StudAgainstLink{std::abs(tilt), std::sqrt(std::max(0.0, 1.0 - tilt * tilt))};
  };
  const StudAgainstLink arm = against(arm_stud);
  const StudAgainstLink knuckle = against(knuckle_stud);

  BallSwing swing;
  swing.natural_clocking = std::atan2(knuckle_stud.dot(second), knuckle_stud.dot(first));
  const double best_knuckle = wrapped(swing.natural_clocking - steering.stud_clocking);
  const bool limits_known = arm_limit && knuckle_limit;
  const double magnitude =
      least_worst_spin(arm, knuckle, std::abs(best_knuckle), limits_known ? *arm_limit : 1.0,
                       limits_known ? *knuckle_limit : 1.0);
  swing.spin = std::copysign(magnitude, best_knuckle);
  swing.arm_end = arm.swing(swing.spin);
  swing.knuckle_end = knuckle.swing(swing.spin - best_knuckle);
  swing.least_arm_end = arm.swing(0.0);
  swing.least_knuckle_end = knuckle.swing(0.0);
  if (limits_known) {
    const double arm_free = arm.spin_within(*arm_limit);
    const double knuckle_free = knuckle.spin_within(*knuckle_limit);
    if (arm_free >= 0.0 && knuckle_free >= 0.0) {
      const double low = std::max(-arm_free, best_knuckle - knuckle_free);
      const double high = std::min(arm_free, best_knuckle + knuckle_free);
      swing.spin_free = std::max(0.0, high - low);
    }
  }
  return swing;
}

}  // namespace tackbench
