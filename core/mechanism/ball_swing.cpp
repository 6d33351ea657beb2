// Ball-stud swing at both ends of the drag link. Both housings share the link's one spin and their
// set clocking; the spin that makes the worse use least is the one reported.
#include <algorithm>
#include <cmath>

#include "core/basics/angle_of.h"
#include "core/basics/units.h"
#include "core/mechanism/solve.h"

namespace tackbench {

namespace {

// A stud against the link: `tilt` = sine of the stud out of the link's cross plane, `across` = its
// cosine, the part in that plane.
struct StudAgainstLink {
  double tilt;
  double across;

  struct Swing {
    double angle;
    double by_spin;  // derivative
  };
  // Angle between stud and housing axis when the housing is spun from the stud's own direction in
  // the cross plane; the spin by its cosine and sine.
  Swing swing(double cosine, double sine) const {
    const double sideways = across * sine;
    const double off_axis = std::sqrt(tilt * tilt + sideways * sideways);
    return {angle_of(off_axis, across * cosine), off_axis > 0.0 ? sideways / off_axis : 0.0};
  }
  double least_swing() const { return angle_of(tilt, across); }
  // Largest spin either way that keeps the swing within the limit; negative when none does.
  double spin_within(double limit) const {
    const double needed = std::cos(limit);
    if (across <= needed) return -1.0;
    return std::acos(std::clamp(needed / across, -1.0, 1.0));
  }
};

struct ChosenSpin {
  double spin = 0.0;
  double arm_end = 0.0;
  double knuckle_end = 0.0;
};

// Both studs, with the knuckle's best spin `apart` in [0, pi] from the arm's best spin 0.
struct TwoStuds {
  StudAgainstLink arm;
  StudAgainstLink knuckle;
  double apart;
  double apart_cosine;
  double apart_sine;

  // Equal limits: where the two cosines are equal, or the nearer end.
  ChosenSpin least_worst() const {
    const double sine_part = std::max(0.0, arm.across - knuckle.across * apart_cosine);
    const double cosine_part = knuckle.across * apart_sine;
    const double whole = std::sqrt(sine_part * sine_part + cosine_part * cosine_part);
    double spin = angle_of(sine_part, cosine_part);
    double cosine = whole > 0.0 ? cosine_part / whole : 1.0;
    double sine = whole > 0.0 ? sine_part / whole : 0.0;
    if (spin > apart) {
      spin = apart;
      cosine = apart_cosine;
      sine = apart_sine;
    }
    return {spin, arm.swing(cosine, sine).angle, at_knuckle(cosine, sine).angle};
  }

  // Spin at which the larger of swing / limit is least: between 0 and `apart` the arm's use rises
  // and the knuckle's falls, so they are equal there or one is the larger throughout.
  ChosenSpin least_worst(double arm_limit, double knuckle_limit) const {
    constexpr int kMostSteps = 60;
    constexpr double kLastStep = 3e-7;  // Newton: what remains is below 1e-13
    double low = 0.0;
    double high = apart;
    double spin = first_guess(arm_limit / knuckle_limit);
    ChosenSpin chosen;
    for (int step = 0; step < kMostSteps; ++step) {
      const double cosine = std::cos(spin);
      const double sine = std::sin(spin);
      const StudAgainstLink::Swing at_arm = arm.swing(cosine, sine);
      const StudAgainstLink::Swing opposite = at_knuckle(cosine, sine);
      const double difference = at_arm.angle / arm_limit - opposite.angle / knuckle_limit;
      chosen = {spin, at_arm.angle, opposite.angle};
      (difference > 0.0 ? high : low) = spin;
      if (!(high > low)) return chosen;  // held at one end
      const double slope = at_arm.by_spin / arm_limit + opposite.by_spin / knuckle_limit;
      double next = slope > 0.0 ? spin - difference / slope : 0.5 * (low + high);
      if (next <= low) next = step < 2 ? low : 0.5 * (low + high);
      if (next >= high) next = step < 2 ? high : 0.5 * (low + high);
      const double change = next - spin;
      if (std::abs(change) < kLastStep) {
        return {next, at_arm.angle + change * at_arm.by_spin,
                opposite.angle - change * opposite.by_spin};
      }
      spin = next;
    }
    return chosen;
  }

 private:
  StudAgainstLink::Swing at_knuckle(double cosine, double sine) const {
    return knuckle.swing(apart_cosine * cosine + apart_sine * sine,
                         apart_sine * cosine - apart_cosine * sine);
  }
  // From swing^2 = tilt^2 + spin^2, which holds for small angles.
  double first_guess(double limit_ratio) const {
    const double weight = limit_ratio * limit_ratio;
    const double b = weight * apart;
    const double c = arm.tilt * arm.tilt - weight * (knuckle.tilt * knuckle.tilt + apart * apart);
    const double root = std::sqrt(std::max(0.0, b * b - (1.0 - weight) * c));
    return b + root > 0.0 ? std::clamp(-c / (b + root), 0.0, apart) : 0.0;
  }
};

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
  swing.natural_clocking = angle_of(knuckle_stud.dot(second), knuckle_stud.dot(first));
  const double best_knuckle = wrapped(swing.natural_clocking - steering.stud_clocking);
  const bool limits_known = arm_limit && knuckle_limit;
  const double apart = std::abs(best_knuckle);
  const TwoStuds studs{arm, knuckle, apart, std::cos(apart), std::sin(apart)};
  const ChosenSpin chosen = limits_known && *arm_limit != *knuckle_limit
                                ? studs.least_worst(*arm_limit, *knuckle_limit)
                                : studs.least_worst();
  swing.spin = std::copysign(chosen.spin, best_knuckle);
  swing.arm_end = chosen.arm_end;
  swing.knuckle_end = chosen.knuckle_end;
  swing.least_arm_end = arm.least_swing();
  swing.least_knuckle_end = knuckle.least_swing();
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
