#include <cmath>

#include "core/basics/wording.h"
#include "core/findings/build_finding.h"
#include "core/findings/builders.h"
#include "core/findings/limits.h"
#include "core/mechanism/solve.h"

namespace tackbench {

namespace {

Trace direction_trace(const Mechanism& mechanism, const DirectionResult& result) {
  Trace trace;
  trace.formula = "steer per hand-wheel turn = (d arm / d hand wheel) x mean of (d steer / d arm)";
  trace.source = say("source.chain_rule");
  const Pose straight = solved_pose(mechanism, Controls{});
  if (straight.outcome != Outcome::solved) return trace;
  trace.inputs = {
      quantity("arm_rate", straight.arm_rate, Unit::number),
      quantity("steer_rate_left", straight.steering.left.steer_rate, Unit::number),
      quantity("steer_rate_right", straight.steering.right.steer_rate, Unit::number),
  };
  trace.steps = {
      step("mean_steer_rate", "(left + right) / 2",
           {quantity("mean_steer_rate",
                     0.5 * (straight.steering.left.steer_rate + straight.steering.right.steer_rate),
                     Unit::number)}),
      step("direction", "d arm / d hand wheel x mean rate; positive: left steers left",
           {quantity("steer_per_hand_wheel", result.steer_per_hand_wheel, Unit::number)}),
      step("steer_per_turn", "for 360 degrees of hand wheel, straight ahead",
           {quantity("steer_per_turn", kRadiansPerTurn * result.steer_per_hand_wheel,
                     Unit::degree)})};
  return trace;
}

std::string why_direction_is_unknown(const Mechanism& mechanism) {
  for (const MissingInput& missing : mechanism.missing)
    if (missing.place == "steering_box.left_turns_arm") return missing.words;
  return say("not_judged.steering_not_measured");
}

}  // namespace

void add_direction_finding(const Mechanism& mechanism, const std::optional<DirectionResult>& result,
                           Findings& findings) {
  if (!result) {
    Finding finding =
        not_yet("steering.direction", Station::steering_box, why_direction_is_unknown(mechanism));
    finding.sentence = say("direction.unknown", {{"why", finding.why_not_judged}});
    findings.push_back(std::move(finding));
    return;
  }
  const ShownFor show(mechanism.project);
  const double per_turn = kRadiansPerTurn * result->steer_per_hand_wheel;
  Finding finding =
      judged("steering.direction", Station::steering_box,
             {quantity("steer_per_turn", per_turn, Unit::degree),
              quantity("steer_per_hand_wheel", result->steer_per_hand_wheel, Unit::number)},
             limit_for(mechanism.project, "steering.direction"), show.lengths());
  finding.worst_at = Controls{};
  finding.sentence = result->left_steers_left
                         ? say("direction.left", {{"steer", show.degrees(per_turn)}})
                         : say("direction.reversed");
  finding.trace = direction_trace(mechanism, *result);
  findings.push_back(std::move(finding));
}

}  // namespace tackbench
