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

}  // namespace

void add_link_findings(const Mechanism& mechanism, const LinkResult& result, Findings& findings) {
  const DragLinkStation& link = *mechanism.project.drag_link;
  findings.push_back(centring(mechanism, result));
  findings.push_back(length(mechanism, result));
  findings.push_back(engagement(mechanism, link.arm_end, "arm_end", hand_end_word(mechanism)));
  findings.push_back(
      engagement(mechanism, link.knuckle_end, "knuckle_end", say("word.knuckle_end")));
}

}  // namespace tackbench
