#include "core/findings/lock_side_findings.h"

#include <cmath>

#include "core/basics/wording.h"
#include "core/findings/build_finding.h"
#include "core/findings/limits.h"
#include "core/findings/lock_trace.h"
#include "core/findings/lock_words.h"

namespace tackbench {

namespace {

// Everything about one lock that its findings share.
struct Lock {
  const Mechanism& mechanism;
  const LockSide& side;
  ShownFor show;
  std::optional<LockEvent> stop;
  std::optional<LockEvent> other;

  Lock(const Mechanism& compiled, const LockSide& lock)
      : mechanism(compiled),
        side(lock),
        show(compiled.project),
        stop(acting_stop(lock)),
        other(first_other_end(lock)) {}
  Lock(const Mechanism&&, const LockSide&) = delete;
};

WordingFields end_fields(const Lock& lock) {
  return {{"side", capitalised(side_word(lock.side.side))},
          {"steer", lock.show.degrees(lock.side.inner_steer)},
          {"turns", lock.show.turns(lock.side.turns)}};
}

Finding end_between_stop_and_other(const Lock& lock) {
  const double margin = lock.other->inner_steer - lock.stop->inner_steer;
  Finding finding =
      judged(lock_name(lock.side, "end"), Station::front_axle,
             {quantity("margin", margin, Unit::degree),
              quantity("inner_steer", lock.side.inner_steer, Unit::degree),
              quantity("outer_steer", lock.side.outer_steer, Unit::degree),
              quantity("turns", lock.side.turns * kRadiansPerTurn, Unit::turn)},
             limit_for(lock.mechanism.project, "lock.stop_first"), lock.show.lengths());
  WordingFields fields = end_fields(lock);
  fields.emplace_back("first", event_words(margin >= 0.0 ? *lock.stop : *lock.other));
  fields.emplace_back("next", event_words(margin >= 0.0 ? *lock.other : *lock.stop));
  fields.emplace_back("margin", lock.show.degrees(std::abs(margin)));
  finding.sentence = say("lock.ends_before", fields);
  finding.trace = margin_trace(lock.mechanism, lock.side, *lock.stop, *lock.other);
  return finding;
}

// A ball stud, an outer joint or a link over centre ends the lock and no stop acts at all. Whether
// a stop is given and never acts or none is given changes what to do, not the verdict.
Finding hard_end(const Lock& lock, const LockEvent& end) {
  Finding finding = judged(lock_name(lock.side, "end"), Station::front_axle,
                           {quantity("hard_ends", 1.0, Unit::count),
                            quantity("inner_steer", lock.side.inner_steer, Unit::degree),
                            quantity("outer_steer", lock.side.outer_steer, Unit::degree),
                            quantity("turns", lock.side.turns * kRadiansPerTurn, Unit::turn)},
                           limit_for(lock.mechanism.project, "lock.hard_end"), lock.show.lengths());
  WordingFields fields = end_fields(lock);
  fields.emplace_back("first", event_words(end));
  finding.sentence = any_stop_for(lock.mechanism, lock.side.steers)
                         ? say("lock.stop_never_acts", fields)
                         : say("lock.no_stop_given", fields);
  finding.trace.formula = event_formula(end.kind);
  finding.trace.source = say("source.lock_order");
  finding.trace.steps = event_steps(lock.mechanism, lock.side, end);
  return finding;
}

// Only one of stop and others is there, or neither.
Finding end_alone(const Lock& lock) {
  if (!lock.stop && lock.other && ends_hard(lock.other->kind)) return hard_end(lock, *lock.other);
  Finding finding =
      judged(lock_name(lock.side, "end"), Station::front_axle,
             {quantity("inner_steer", lock.side.inner_steer, Unit::degree),
              quantity("outer_steer", lock.side.outer_steer, Unit::degree),
              quantity("turns", lock.side.turns * kRadiansPerTurn, Unit::turn)},
             limit_for(lock.mechanism.project, "lock.stop_first"), lock.show.lengths());
  finding.why_not_judged.clear();
  WordingFields fields = end_fields(lock);
  const std::optional<LockEvent>& end = lock.stop ? lock.stop : lock.other;
  if (!end) {
    finding.verdict = Verdict::not_judged;
    finding.why_not_judged = say("not_judged.nothing_ends_lock");
    finding.sentence = say("lock.nothing_ends", fields);
    return finding;
  }
  fields.emplace_back("first", event_words(*end));
  if (lock.stop) {
    finding.verdict = Verdict::within;
    finding.sentence = say("lock.ends_on_stop_alone", fields);
  } else if (any_stop_for(lock.mechanism, lock.side.steers)) {
    finding.verdict = Verdict::past;
    finding.sentence = say("lock.stop_never_acts", fields);
  } else {
    finding.verdict = Verdict::not_judged;
    finding.why_not_judged = say("not_judged.no_axle_stop");
    finding.sentence = say("lock.no_stop_given", fields);
  }
  finding.trace.formula = event_formula(end->kind);
  finding.trace.source = say("source.lock_order");
  finding.trace.steps = event_steps(lock.mechanism, lock.side, *end);
  return finding;
}

const char* margin_name(LockEventKind kind) {
  switch (kind) {
    case LockEventKind::box_end:
      return "box_margin";
    case LockEventKind::ball_stud:
      return "ball_margin";
    case LockEventKind::outer_joint:
      return "joint_margin";
    case LockEventKind::toggle:
      return "toggle_margin";
    case LockEventKind::axle_stop:
    case LockEventKind::assist_cut:
      break;
  }
  return "margin";
}

// What comes after the first other end: judged by the same limit, one finding a kind.
void add_further_margins(const Lock& lock, Findings& findings) {
  if (!lock.other) return;
  for (const LockEventKind kind : {LockEventKind::box_end, LockEventKind::ball_stud,
                                   LockEventKind::outer_joint, LockEventKind::toggle}) {
    if (kind == lock.other->kind) continue;
    const std::optional<LockEvent> event = first_of(lock.side, kind);
    if (!event) continue;
    if (!lock.stop) {
      findings.push_back(
          not_yet(lock_name(lock.side, margin_name(kind)), Station::front_axle,
                  say("not_judged.no_stop_for_margin",
                      {{"what", event_words(*event)}, {"side", side_word(lock.side.side)}})));
      continue;
    }
    const double margin = event->inner_steer - lock.stop->inner_steer;
    Finding finding =
        judged(lock_name(lock.side, margin_name(kind)), Station::front_axle,
               {quantity("margin", margin, Unit::degree)},
               limit_for(lock.mechanism.project, "lock.stop_first"), lock.show.lengths());
    finding.worst_at = at_lock_end(lock.side);
    WordingFields fields{{"side", capitalised(side_word(lock.side.side))},
                         {"what", event_words(*event)},
                         {"margin", lock.show.degrees(std::abs(margin))}};
    finding.sentence =
        margin >= 0.0 ? say("lock.further_after", fields) : say("lock.further_before", fields);
    finding.trace = margin_trace(lock.mechanism, lock.side, *lock.stop, *event);
    findings.push_back(std::move(finding));
  }
}

void add_assist(const Lock& lock, Findings& findings) {
  const Steering& steering = *lock.mechanism.steering;
  const std::optional<double>& given =
      lock.side.side == Side::left ? steering.assist_cut_left : steering.assist_cut_right;
  const std::optional<LockEvent> cut = first_of(lock.side, LockEventKind::assist_cut);
  const std::optional<LockEvent> end = real_end(lock.side);
  const std::string name = lock_name(lock.side, "assist_margin");
  const std::string side = side_word(lock.side.side);
  if (!cut) {
    // A box that cuts no assist on either side is a box without assist.
    if (!given && (steering.assist_cut_left || steering.assist_cut_right))
      findings.push_back(not_yet(
          name, Station::steering_box,
          say("not_judged.no_assist_cut",
              {{"side", side},
               {"member", lock.side.side == Side::left ? "steering_box.assist_cut_left_deg"
                                                       : "steering_box.assist_cut_right_deg"}})));
    if (given)
      findings.push_back(not_yet(name, Station::steering_box,
                                 say("not_judged.assist_not_reached", {{"side", side}})));
    return;
  }
  if (!end) {
    findings.push_back(
        not_yet(name, Station::steering_box, say("not_judged.no_lock_end", {{"side", side}})));
    return;
  }
  const double margin = end->inner_steer - cut->inner_steer;
  Finding finding =
      judged(name, Station::steering_box, {quantity("margin", margin, Unit::degree)},
             limit_for(lock.mechanism.project, "lock.assist_margin"), lock.show.lengths());
  finding.worst_at = at_hand_wheel(side_sign(lock.side.side) * cut->hand_wheel);
  WordingFields fields{{"side", capitalised(side)},
                       {"end", event_words(*end)},
                       {"margin", lock.show.degrees(std::abs(margin))}};
  finding.sentence =
      margin >= 0.0 ? say("lock.assist_before", fields) : say("lock.assist_after", fields);
  finding.trace = margin_trace(lock.mechanism, lock.side, *cut, *end);
  findings.push_back(std::move(finding));
}

// Where the stop meets its pad, or the plane of a pad that it misses: not always the lock's end.
Controls at_contact(const Lock& lock, const StopContact& contact) {
  for (const LockEvent& event : lock.side.events)
    if (event.kind == LockEventKind::axle_stop && event.name == contact.name)
      return at_hand_wheel(side_sign(lock.side.side) * event.hand_wheel);
  return at_lock_end(lock.side);
}

void add_stop_contact(const Lock& lock, Findings& findings) {
  if (!lock.side.stop) {
    if (!any_stop_for(lock.mechanism, lock.side.steers)) return;  // its end asks for one
    for (const char* what : {"stop_square", "stop_on_pad"})
      findings.push_back(
          not_yet(lock_name(lock.side, what), Station::front_axle,
                  say("not_judged.stop_not_reached", {{"side", side_word(lock.side.side)}})));
    return;
  }
  const StopContact& contact = *lock.side.stop;
  const std::optional<AxleStop> stop = stop_named(lock.mechanism, lock.side.steers, contact.name);
  const std::string& name = contact.name;
  Finding square =
      judged(lock_name(lock.side, "stop_square"), Station::front_axle,
             {quantity("off_square", contact.off_square, Unit::degree),
              quantity("degrees_per_mm", contact.degrees_per_mm, Unit::degree_per_mm),
              quantity("gap_straight", contact.gap_straight, Unit::millimetre)},
             limit_for(lock.mechanism.project, "lock.stop_square"), lock.show.lengths());
  square.worst_at = at_contact(lock, contact);
  square.sentence =
      say("lock.stop_square",
          {{"name", name},
           {"angle", lock.show.degrees(contact.off_square)},
           {"rate", lock.show.text(std::abs(contact.degrees_per_mm), Unit::degree_per_mm)}});
  square.trace.formula = "angle between the bolt, turned with its knuckle, and the pad's normal";
  square.trace.source = say("source.lock_order");
  square.trace.inputs = {quantity("stop_swivel", contact.swivel, Unit::degree)};
  if (stop) square.trace.steps.push_back(stop_step(*stop, contact.swivel));
  square.trace.steps.push_back(step("off_square", "acos(-(bolt turned by the swivel) . pad normal)",
                                    {quantity("off_square", contact.off_square, Unit::degree)}));
  findings.push_back(std::move(square));

  std::optional<double> outline;
  if (stop) outline = stop->pad_radius;
  Finding on_pad =
      judged(lock_name(lock.side, "stop_on_pad"), Station::front_axle,
             {quantity("off_centre", contact.off_centre, Unit::millimetre)},
             limit_from(lock.mechanism.project, "lock.stop_on_pad",
                        {std::nullopt, outline, say("source.pad_outline"), Standing::computed}),
             lock.show.lengths());
  on_pad.worst_at = at_contact(lock, contact);
  on_pad.sentence =
      say("lock.stop_on_pad", {{"name", name}, {"distance", lock.show.mm(contact.off_centre)}});
  on_pad.trace.formula = "distance of the touching point from the pad's middle, in its face";
  on_pad.trace.source = say("source.pad_outline");
  on_pad.trace.inputs = {quantity("stop_swivel", contact.swivel, Unit::degree)};
  if (stop) on_pad.trace.steps.push_back(stop_step(*stop, contact.swivel));
  on_pad.trace.steps.push_back(
      step("off_centre", "|tip - pad middle| in the pad's face",
           {quantity("off_centre", contact.off_centre, Unit::millimetre)}));
  findings.push_back(std::move(on_pad));
}

void add_stop_bolt(const Lock& lock, Findings& findings) {
  if (!lock.side.wanted) {
    const FrontAxleStation& axle = *lock.mechanism.project.front_axle;
    const bool left = lock.side.steers == Side::left;
    const std::optional<double>& wanted = left ? axle.wanted_steer_left : axle.wanted_steer_right;
    if (!wanted && (axle.wanted_steer_left || axle.wanted_steer_right))
      findings.push_back(not_yet(lock_name(lock.side, "stop_bolt"), Station::front_axle,
                                 say("not_judged.no_wanted_steer",
                                     {{"side", side_word(lock.side.side)},
                                      {"member", left ? "front_axle.wanted_steer_left_deg"
                                                      : "front_axle.wanted_steer_right_deg"}})));
    if (wanted)
      findings.push_back(
          not_yet(lock_name(lock.side, "stop_bolt"), Station::front_axle,
                  any_stop_for(lock.mechanism, lock.side.steers)
                      ? say("not_judged.no_bolt_length", {{"steer", lock.show.degrees(*wanted)}})
                      : say("not_judged.no_axle_stop")));
    return;
  }
  const StopSetting& setting = *lock.side.wanted;
  const std::optional<AxleStop> stop = stop_named(lock.mechanism, lock.side.steers, setting.stop);
  OwnValue own;
  own.source = say("source.bolt_adjustment");
  own.standing = Standing::builder;
  if (stop) {
    own.least = -stop->bolt_adjustment;
    own.most = stop->bolt_adjustment;
  }
  Finding finding =
      judged(lock_name(lock.side, "stop_bolt"), Station::front_axle,
             {quantity("screw_out", setting.screw_out, Unit::millimetre),
              quantity("wanted_steer", setting.wanted_inner_steer, Unit::degree)},
             limit_from(lock.mechanism.project, "lock.stop_bolt", own), lock.show.lengths());
  finding.worst_at = at_lock_end(lock.side);
  finding.sentence =
      say("lock.stop_bolt", {{"name", setting.stop},
                             {"way", setting.screw_out >= 0.0 ? say("word.out") : say("word.in")},
                             {"change", lock.show.mm(std::abs(setting.screw_out))},
                             {"steer", lock.show.degrees(setting.wanted_inner_steer)}});
  finding.trace.formula = "bolt change = gap of the stop at the wanted steer angle, along the bolt";
  finding.trace.source = say("source.lock_order");
  finding.trace.inputs = {quantity("wanted_steer", setting.wanted_inner_steer, Unit::degree)};
  finding.trace.steps = {step("stop_bolt", "gap at the wanted angle / cosine off square",
                              {quantity("screw_out", setting.screw_out, Unit::millimetre)})};
  findings.push_back(std::move(finding));
}

}  // namespace

std::string lock_name(const LockSide& lock, const char* what) {
  return std::string(lock.side == Side::left ? "lock.left." : "lock.right.") + what;
}

Controls at_lock_end(const LockSide& lock) {
  return at_hand_wheel(side_sign(lock.side) * lock.turns * kRadiansPerTurn);
}

void add_lock_side_findings(const Mechanism& mechanism, const LockResult& result,
                            const LockSide& lock_side, Findings& findings) {
  const Lock lock(mechanism, lock_side);
  Finding end = lock.stop && lock.other ? end_between_stop_and_other(lock) : end_alone(lock);
  if (lock_side.found) end.worst_at = at_lock_end(lock_side);
  findings.push_back(std::move(end));
  add_further_margins(lock, findings);
  add_assist(lock, findings);
  add_stop_contact(lock, findings);
  add_stop_bolt(lock, findings);
  add_turning_findings(mechanism, result, lock_side, findings);
}

}  // namespace tackbench
