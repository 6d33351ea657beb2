// Findings of the whole lock: turns, balance, ratio, and both sides' own.
#include <cmath>

#include "core/basics/wording.h"
#include "core/findings/build_finding.h"
#include "core/findings/builders.h"
#include "core/findings/limits.h"
#include "core/findings/lock_side_findings.h"

namespace tackbench {

namespace {

Trace turns_trace(const LockResult& result) {
  Trace trace;
  trace.source = say("source.turns");
  trace.inputs = {quantity("hand_wheel_left", result.left.turns * kRadiansPerTurn, Unit::degree),
                  quantity("hand_wheel_right", result.right.turns * kRadiansPerTurn, Unit::degree)};
  trace.steps = {step("turns", "hand-wheel angle from straight / 360",
                      {quantity("turns_left", result.left.turns * kRadiansPerTurn, Unit::turn),
                       quantity("turns_right", result.right.turns * kRadiansPerTurn, Unit::turn)})};
  return trace;
}

Finding turns_total(const Mechanism& mechanism, const LockResult& result) {
  const ShownFor show(mechanism.project);
  Finding finding =
      judged("lock.turns_total", Station::steering_box,
             {quantity("turns_total", result.turns_total * kRadiansPerTurn, Unit::turn),
              quantity("turns_left", result.left.turns * kRadiansPerTurn, Unit::turn),
              quantity("turns_right", result.right.turns * kRadiansPerTurn, Unit::turn)},
             limit_for(mechanism.project, "lock.turns_total"), show.lengths());
  finding.sentence = say("lock.turns_total", {{"total", show.turns(result.turns_total)},
                                              {"left", show.turns(result.left.turns)},
                                              {"right", show.turns(result.right.turns)}});
  finding.trace = turns_trace(result);
  finding.trace.formula = "turns lock to lock = turns left + turns right";
  finding.trace.steps.push_back(
      step("add", "left + right",
           {quantity("turns_total", result.turns_total * kRadiansPerTurn, Unit::turn)}));
  return finding;
}

Finding turns_difference(const Mechanism& mechanism, const LockResult& result) {
  const ShownFor show(mechanism.project);
  const double difference = result.turns_difference;
  Finding finding =
      judged("lock.turns_difference", Station::steering_box,
             {quantity("turns_difference", difference * kRadiansPerTurn, Unit::turn),
              quantity("turns_left", result.left.turns * kRadiansPerTurn, Unit::turn),
              quantity("turns_right", result.right.turns * kRadiansPerTurn, Unit::turn)},
             limit_for(mechanism.project, "lock.turns_difference"), show.lengths());
  finding.sentence = say("lock.turns_difference",
                         {{"difference", show.turns(std::abs(difference))},
                          {"side", side_word(difference > 0.0 ? Side::left : Side::right)}});
  finding.trace = turns_trace(result);
  finding.trace.formula = "difference = turns left - turns right";
  finding.trace.steps.push_back(
      step("subtract", "left - right",
           {quantity("turns_difference", difference * kRadiansPerTurn, Unit::turn)}));
  return finding;
}

Finding ratio(const Mechanism& mechanism, const LockResult& result) {
  const ShownFor show(mechanism.project);
  Finding finding =
      judged("lock.ratio", Station::steering_box,
             {quantity("ratio_on_centre", result.ratio_on_centre, Unit::number),
              quantity("ratio_left_end", result.left.overall_ratio_end, Unit::number),
              quantity("ratio_right_end", result.right.overall_ratio_end, Unit::number)},
             limit_for(mechanism.project, "lock.ratio"), show.lengths());
  finding.sentence =
      say("lock.ratio", {{"centre", show.text(result.ratio_on_centre, Unit::number)},
                         {"left", show.text(result.left.overall_ratio_end, Unit::number)},
                         {"right", show.text(result.right.overall_ratio_end, Unit::number)}});
  finding.trace.formula = "ratio = d hand wheel / d mean steer";
  finding.trace.source = say("source.chain_rule");
  const Pose pose = solved_pose(mechanism, Controls{});
  finding.trace.inputs = {
      quantity("arm_rate", pose.arm_rate, Unit::number),
      quantity("steer_rate_left", pose.steering.left.steer_rate, Unit::number),
      quantity("steer_rate_right", pose.steering.right.steer_rate, Unit::number)};
  finding.trace.steps = {step("ratio", "1 / (d arm / d hand wheel x mean of the steer rates)",
                              {quantity("ratio_on_centre", result.ratio_on_centre, Unit::number)})};
  return finding;
}

// What only a maker knows and would end a lock: without it the order of the ends is not whole.
void add_missing_ratings(const Mechanism& mechanism, Findings& findings) {
  const auto unknown_swing = [&](const LinkEnd& end, const char* name, const std::string& words,
                                 const char* member) {
    if (end.swing_limit) return;
    findings.push_back(
        not_yet(name, Station::drag_link,
                say("not_judged.no_swing_limit", {{"end", words}, {"member", member}})));
  };
  const DragLinkStation& link = *mechanism.project.drag_link;
  unknown_swing(link.arm_end, "lock.ball_stud.arm_end", hand_end_word(mechanism),
                "drag_link.arm_end.swing_limit_deg");
  unknown_swing(link.knuckle_end, "lock.ball_stud.knuckle_end", say("word.knuckle_end"),
                "drag_link.knuckle_end.swing_limit_deg");
  const FrontAxleStation& axle = *mechanism.project.front_axle;
  if (axle.driven && !axle.outer_joint_limit)
    findings.push_back(not_yet(
        "lock.outer_joint", Station::front_axle,
        say("not_judged.no_outer_joint_limit", {{"member", "front_axle.outer_joint_limit_deg"}})));
}

}  // namespace

void add_lock_findings(const Mechanism& mechanism, const LockResult& result, Findings& findings) {
  if (result.left.found && result.right.found) {
    findings.push_back(turns_total(mechanism, result));
    findings.push_back(turns_difference(mechanism, result));
  } else {
    const Side open = result.left.found ? Side::right : Side::left;
    for (const char* name : {"lock.turns_total", "lock.turns_difference"})
      findings.push_back(not_yet(name, Station::steering_box,
                                 say("not_judged.no_lock_end", {{"side", side_word(open)}})));
  }
  findings.push_back(ratio(mechanism, result));
  add_missing_ratings(mechanism, findings);
  add_lock_side_findings(mechanism, result, result.left, findings);
  add_lock_side_findings(mechanism, result, result.right, findings);
}

}  // namespace tackbench
