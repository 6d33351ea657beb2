#include <algorithm>
#include <cmath>

#include "core/basics/wording.h"
#include "core/findings/build_finding.h"
#include "core/findings/builders.h"
#include "core/findings/limits.h"
#include "core/findings/steering_trace.h"

namespace tackbench {

namespace {

Vec3 hand_ball_drawn(const Steering& steering) {
  return steering.relays.empty() ? steering.arm.ball(0.0) : steering.relays.back().output.ball(0.0);
}

Trace centring_trace(const Mechanism& mechanism, const LinkResult& result) {
  const Steering& steering = *mechanism.steering;
  Trace trace;
  trace.formula = "offset = box input with the wheels straight, from the box's own centre";
  trace.source = say("source.loop");
  trace.inputs = {quantity("link_length", result.real_length, Unit::millimetre),
                  quantity("driven_swivel", steering.straight_swivel, Unit::degree)};
  trace.steps.push_back(step("straight_arm",
                             "the arm angle at which the mean steer is zero: the loops below "
                             "give it back",
                             {quantity("arm", result.arm_offset, Unit::degree)}));
  append(trace.steps, steering_steps(mechanism, result.arm_offset));
  trace.steps.push_back(
      step("arm_to_input", "box input = arm x ratio (constant, or integrated over the table)",
           {quantity("box_ratio", steering.box.ratio_at(result.input_offset), Unit::number),
            quantity("input_offset", result.input_offset, Unit::degree)}));
  const Vec3 knuckle =
      steering.drag_link.driven.ball(steering.straight_swivel) + mechanism.suspension->origin_mm;
  std::vector<Quantity> balls = joined(point_numbers("arm_ball", hand_ball_drawn(steering)),
                                       point_numbers("knuckle_ball", knuckle));
  balls.push_back(quantity("centring_length", result.centring_length, Unit::millimetre));
  trace.steps.push_back(step("centring_length",
                             "distance of the balls, box at its centre and wheels straight: "
                             "sqrt(dx^2 + dy^2 + dz^2)",
                             std::move(balls)));
  return trace;
}

constexpr double kNothingShown = 0.05 * kRadiansPerDegree;  // shown as 0.0 degrees

Finding centring(const Mechanism& mechanism, const LinkResult& result) {
  const ShownFor show(mechanism.project);
  const double change = result.centring_length - result.real_length;
  Finding finding =
      judged("link.centring", Station::drag_link,
             {quantity("input_offset", result.input_offset, Unit::degree),
              quantity("arm_offset", result.arm_offset, Unit::degree),
              quantity("centring_length", result.centring_length, Unit::millimetre),
              quantity("length_change", change, Unit::millimetre),
              quantity("turns_lost", result.turns_lost * kRadiansPerTurn, Unit::turn),
              quantity("box_turns_left", result.box_turns_left * kRadiansPerTurn, Unit::turn),
              quantity("box_turns_right", result.box_turns_right * kRadiansPerTurn, Unit::turn)},
             limit_for(mechanism.project, "link.centring"), show.lengths());
  finding.worst_at = Controls{};
  if (finding.verdict == Verdict::within || std::abs(result.input_offset) < kNothingShown) {
    finding.sentence =
        say("link.centred", {{"offset", show.degrees(std::abs(result.input_offset))}});
  } else {
    finding.sentence =
        say("link.off_centre",
            {{"offset", show.degrees(std::abs(result.input_offset))},
             {"side", side_word(result.input_offset > 0.0 ? Side::left : Side::right)},
             {"difference", show.turns(std::abs(result.box_turns_left - result.box_turns_right))},
             {"length", show.mm(result.centring_length)},
             {"change", show.mm(std::abs(change))},
             {"way", change > 0.0 ? say("word.longer") : say("word.shorter")}});
  }
  finding.trace = centring_trace(mechanism, result);
  return finding;
}

Finding length(const Mechanism& mechanism, const LinkResult& result) {
  const ShownFor show(mechanism.project);
  const DragLinkStation& link = *mechanism.project.drag_link;
  const double change = result.centring_length - result.real_length;
  const double adjustment = link.adjustment;
  Finding finding = judged(
      "link.length", Station::drag_link,
      {quantity("length_change", change, Unit::millimetre),
       quantity("real_length", result.real_length, Unit::millimetre),
       quantity("drawn_length", result.drawn_length, Unit::millimetre),
       quantity("adjustment", adjustment, Unit::millimetre)},
      limit_from(mechanism.project, "link.length",
                 {-adjustment, adjustment, say("source.link_adjustment"), Standing::builder}),
      show.lengths());
  const WordingFields fields{{"length", show.mm(result.real_length)},
                             {"adjustment", show.mm(adjustment)},
                             {"centring", show.mm(result.centring_length)},
                             {"change", show.mm(std::abs(change))}};
  if (!link.given_length)
    finding.sentence = say("link.length_to_order", fields);
  else if (std::abs(change) > adjustment)
    finding.sentence = say("link.length_out_of_reach", fields);
  else
    finding.sentence = say("link.length_given", fields);
  // Where the project wants something else than the adjustment can do, both are told.
  const Limit& limit = *finding.limit;
  if (limit.least != -adjustment || limit.most != adjustment)
    finding.sentence += " " + say("link.length_chosen", {{"limit", limit.words}});
  const Vec3 hand = hand_ball_drawn(*mechanism.steering);
  finding.trace.formula =
      "length = sqrt(dx^2 + dy^2 + dz^2) between the balls, box at its centre "
      "and wheels straight";
  finding.trace.source = say("source.distance");
  finding.trace.inputs = point_numbers("arm_ball", hand);
  for (Quantity& part : point_numbers("knuckle_ball", link.knuckle_ball.mm))
    finding.trace.inputs.push_back(std::move(part));
  finding.trace.steps = {
      step("ball_to_ball", "dx, dy, dz", point_numbers("between", link.knuckle_ball.mm - hand)),
      step("drawn_length", "sqrt(dx^2 + dy^2 + dz^2)",
           {quantity("drawn_length", result.drawn_length, Unit::millimetre)}),
      step("length_change", "centring length - real length",
           {quantity("centring_length", result.centring_length, Unit::millimetre),
            quantity("real_length", result.real_length, Unit::millimetre),
            quantity("length_change", change, Unit::millimetre)})};
  return finding;
}

Finding engagement(const Mechanism& mechanism, const LinkEnd& end, const char* end_name,
                   const std::string& end_word) {
  const ShownFor show(mechanism.project);
  const std::string name = std::string("link.thread_engagement.") + end_name;
  if (!end.thread || !end.thread_engagement)
    return not_yet(name, Station::drag_link, say("not_judged.no_thread", {{"end", end_word}}));
  const double engaged = *end.thread_engagement;
  const double diameter = end.thread->diameter;
  const double share = diameter > 0.0 ? engaged / diameter : std::nan("");
  Finding finding = judged(name, Station::drag_link,
                           {quantity("engagement_diameters", share, Unit::number),
                            quantity("thread_engagement", engaged, Unit::millimetre),
                            quantity("thread_diameter", diameter, Unit::millimetre)},
                           limit_for(mechanism.project, "link.thread_engagement"), show.lengths());
  finding.sentence = say("link.thread_engagement", {{"end", end_word},
                                                    {"engagement", show.mm(engaged)},
                                                    {"diameters", show.text(share, Unit::number)}});
  finding.trace.formula = "engagement / thread diameter";
  finding.trace.source = say("source.engagement");
  finding.trace.inputs = {quantity("thread_engagement", engaged, Unit::millimetre),
                          quantity("thread_diameter", diameter, Unit::millimetre)};
  finding.trace.steps = {step("divide", "engagement / diameter",
                              {quantity("engagement_diameters", share, Unit::number)})};
  return finding;
}

// Hand-wheel turn of the row where `value` is greatest.
template <class Value>
double hand_wheel_of_greatest(const LockResult& result, Value value) {
  double at = 0.0;
  double greatest = -1e300;
  for (const LockRow& row : result.rows) {
    if (value(row) <= greatest) continue;
    greatest = value(row);
    at = row.hand_wheel;
  }
  return at;
}

constexpr double kWorthSaying = 0.1 * kRadiansPerDegree;  // what is shown of an angle

struct SwingCase {
  const char* name;
  const LinkEnd& end;
  std::string end_word;
  double used;
  double worst_at;
};

Finding swing(const Mechanism& mechanism, const LockResult& result, const SwingCase& at) {
  const ShownFor show(mechanism.project);
  const std::string name = std::string("link.swing.") + at.name;
  Finding finding = judged(
      name, Station::drag_link,
      {quantity("swing", at.used, Unit::degree),
       quantity("swing_at_best_clocking", result.swing_at_best_clocking, Unit::degree),
       quantity("best_stud_clocking", result.best_stud_clocking, Unit::degree),
       quantity("stud_clocking", mechanism.steering->stud_clocking, Unit::degree)},
      limit_from(mechanism.project, name,
                 {std::nullopt, at.end.swing_limit, say("source.maker_sheet"), Standing::maker}),
      show.lengths());
  finding.worst_at = at_hand_wheel(at.worst_at);
  finding.sentence = say("link.swing", {{"end", at.end_word}, {"swing", show.degrees(at.used)}});
  const double worse = std::max(result.swing_used_arm_end, result.swing_used_knuckle_end);
  if (worse - result.swing_at_best_clocking > kWorthSaying)
    finding.sentence +=
        " " + say("link.swing_clocking", {{"best", show.degrees(result.swing_at_best_clocking)},
                                          {"clocking", show.degrees(result.best_stud_clocking)}});
  if (at.end.kind == LinkEndKind::rod_end)
    finding.caution = say("caution.rod_end", {{"end", at.end_word}});
  const Pose pose = solved_pose(mechanism, *finding.worst_at);
  finding.trace.formula =
      "swing = angle between stud and housing axis, at the link's spin that leaves the worse of "
      "both ends least";
  finding.trace.source = say("source.swing");
  finding.trace.inputs = {
      quantity("hand_wheel", at.worst_at, Unit::degree),
      quantity("stud_clocking", mechanism.steering->stud_clocking, Unit::degree)};
  for (Quantity& part : point_numbers("arm_ball", pose.steering.drag_link.from_mm))
    finding.trace.inputs.push_back(std::move(part));
  for (Quantity& part : point_numbers("knuckle_ball", pose.steering.drag_link.to_mm))
    finding.trace.inputs.push_back(std::move(part));
  finding.trace.steps = {
      step("least_swing", "90 degrees - angle between stud and link, whatever the spin",
           {quantity("least_arm_end", pose.ball_swing.least_arm_end, Unit::degree),
            quantity("least_knuckle_end", pose.ball_swing.least_knuckle_end, Unit::degree)}),
      step("best_spin", "the spin at which the greater use of both swings is least",
           {quantity("spin", pose.ball_swing.spin, Unit::degree),
            quantity("swing_arm_end", pose.ball_swing.arm_end, Unit::degree),
            quantity("swing_knuckle_end", pose.ball_swing.knuckle_end, Unit::degree)}),
      step("greatest_swing", "the greatest over both locks",
           {quantity("swing", at.used, Unit::degree)})};
  return finding;
}

Finding least_effective_angle(const Mechanism& mechanism, const LockResult& result) {
  const ShownFor show(mechanism.project);
  const bool left_worse = result.left.least_effective_angle <= result.right.least_effective_angle;
  const LockSide& worse = left_worse ? result.left : result.right;
  const double at =
      hand_wheel_of_greatest(result, [](const LockRow& row) { return -row.least_leverage; });
  Finding finding =
      judged("link.effective_angle", Station::drag_link,
             {quantity("effective_angle", worse.least_effective_angle, Unit::degree),
              quantity("effective_angle_left", result.left.least_effective_angle, Unit::degree),
              quantity("effective_angle_right", result.right.least_effective_angle, Unit::degree)},
             limit_for(mechanism.project, "link.effective_angle"), show.lengths());
  finding.worst_at = at_hand_wheel(at);
  finding.sentence =
      say("link.effective_angle", {{"angle", show.degrees(worse.least_effective_angle)},
                                   {"where", worse.least_effective_at},
                                   {"side", side_word(worse.side)}});
  finding.trace.formula =
      "effective angle = asin |l . (k x u)|: l unit link, k the lever's axis, "
      "u unit lever; 90 best, 0 toggle";
  finding.trace.source = say("source.transmission_angle");
  finding.trace.inputs = {quantity("hand_wheel", at, Unit::degree)};
  finding.trace.steps = hand_to_arm_steps(mechanism, at);
  append(finding.trace.steps, steering_steps(mechanism, arm_from_hand_wheel(mechanism, at)));
  const Pose pose = solved_pose(mechanism, *finding.worst_at);
  if (pose.outcome == Outcome::solved)
    finding.trace.steps.push_back(
        step("effective_angles", "asin of each |l . (k x u)|",
             {quantity("drag_link_at_hand", effective_angle(pose.steering.drag_link.from_leverage),
                       Unit::degree),
              quantity("drag_link_at_knuckle", effective_angle(pose.steering.drag_link.to_leverage),
                       Unit::degree),
              quantity("tie_rod_at_left", effective_angle(pose.steering.tie_rod.from_leverage),
                       Unit::degree),
              quantity("tie_rod_at_right", effective_angle(pose.steering.tie_rod.to_leverage),
                       Unit::degree)}));
  return finding;
}

// The end that sits on the pitman arm, or on the last relay.
std::string hand_end_word(const Mechanism& mechanism) {
  const auto& box = mechanism.project.steering_box;
  return say(box && !box->relays.empty() ? "word.relay_end" : "word.arm_end");
}

}  // namespace

void add_link_findings(const Mechanism& mechanism, const LinkResult& result, Findings& findings) {
  const DragLinkStation& link = *mechanism.project.drag_link;
  findings.push_back(centring(mechanism, result));
  findings.push_back(length(mechanism, result));
  findings.push_back(engagement(mechanism, link.arm_end, "arm_end", hand_end_word(mechanism)));
  findings.push_back(
      engagement(mechanism, link.knuckle_end, "knuckle_end", say("word.knuckle_end")));
}

void add_link_lock_findings(const Mechanism& mechanism, const LockResult& result,
                            Findings& findings) {
  const DragLinkStation& link = *mechanism.project.drag_link;
  findings.push_back(swing(
      mechanism, result,
      {"arm_end", link.arm_end, hand_end_word(mechanism), result.swing_used_arm_end,
       hand_wheel_of_greatest(result, [](const LockRow& row) { return row.swing_arm_end; })}));
  findings.push_back(swing(
      mechanism, result,
      {"knuckle_end", link.knuckle_end, say("word.knuckle_end"), result.swing_used_knuckle_end,
       hand_wheel_of_greatest(result, [](const LockRow& row) { return row.swing_knuckle_end; })}));
  findings.push_back(least_effective_angle(mechanism, result));
}

}  // namespace tackbench
