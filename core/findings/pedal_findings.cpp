#include <algorithm>
#include <cmath>

#include "core/basics/wording.h"
#include "core/findings/build_finding.h"
#include "core/findings/builders.h"
#include "core/findings/finding_words.h"
#include "core/findings/limits.h"

namespace tackbench {

namespace {

// One pedal with what its findings share.
struct At {
  const Mechanism& mechanism;
  const PedalLinkage& linkage;
  const PedalResult& result;
  std::size_t index;
  ShownFor show;
  std::string part;         // in finding names
  std::string spoken_name;  // for people

  std::string name(const char* what) const { return "pedal." + part + "." + what; }
  // A member of this pedal, as in files.
  std::string member(const char* what) const {
    return "pedals.pedals[" + std::to_string(index) + "]." + what;
  }
  // The pedal pressed to a turn from rest, rad.
  Controls pressed(double angle) const {
    Controls controls;
    const double full = linkage.pedal.full_travel;
    if (index < controls.pedals.size() && full > 0.0) controls.pedals[index] = angle / full;
    return controls;
  }
};

constexpr const char* kFloorMember = "driver.floor_height_mm";

// The verdict waits for what may still change it.
void wait_for(Finding& finding, const std::vector<std::string>& reasons) {
  if (reasons.empty()) return;
  finding.verdict = Verdict::not_judged;
  finding.why_not_judged.clear();
  for (const std::string& reason : reasons)
    finding.why_not_judged += (finding.why_not_judged.empty() ? "" : "; ") + reason;
}

std::string floor_wanted() {
  return say("not_judged.floor", {{"member", kFloorMember}});
}

std::string free_play_wanted(const At& at) {
  return say("not_judged.free_play", {{"member", at.member("rod.free_play_mm")}});
}

// Its number is greater than the true one while the free play is not measured.
std::vector<Quantity> free_play_input(const At& at) {
  const auto& free_play = at.linkage.pedal.rod->free_play;
  if (!free_play) return {};
  return {quantity("free_play", *free_play, Unit::millimetre)};
}

// What cannot be said of a pedal whose rod is not measured, by the name it would have.
void add_waiting_for_rod(const At& at, Findings& findings) {
  const PedalUse use = at.result.use;
  const bool brake = use == PedalUse::brake;  // the others may work by a cable
  const std::string part = brake ? say("word.push_rod") : say("word.push_rod_or_cable");
  const std::string member =
      brake ? at.member("rod") : listed_or({at.member("rod"), at.member("cable")});
  const auto wait = [&](const char* what, const char* key) {
    findings.push_back(not_yet(
        at.name(what), Station::pedals,
        say("not_judged.no_rod",
            {{"pedal", at.spoken_name}, {"what", say(key)}, {"part", part}, {"member", member}})));
  };
  if (brake) wait("full_stroke", "pedal_part.stroke");
  if (use == PedalUse::clutch) wait("release_stroke", "pedal_part.stroke");
  if (!brake) wait("over_run", "pedal_part.over_run");
  wait("ratio", "pedal_part.ratio");
  if (use != PedalUse::accelerator) wait("free_play", "pedal_part.free_play");
  wait("rod_swing", "pedal_part.rod_swing");
}

std::string end_words(PedalEndKind kind) {
  switch (kind) {
    case PedalEndKind::own_stop:
      return say("pedal_end.own_stop");
    case PedalEndKind::floor:
      return say("pedal_end.floor");
    case PedalEndKind::over_centre:
      return say("pedal_end.over_centre");
    case PedalEndKind::rod_cannot_follow:
      return say("pedal_end.rod_cannot_follow");
  }
  return {};
}

// Rod end along the cylinder's axis by the length of the rod, at one turn of the pedal.
std::vector<TraceStep> rod_steps(const At& at, double angle) {
  const PedalPose pose = pose_pedal(at.linkage, angle);
  std::vector<Quantity> pins{quantity("pedal_turn", angle, Unit::degree)};
  for (Quantity& part : point_numbers("rod_pin", pose.rod_pin_mm)) pins.push_back(std::move(part));
  std::vector<TraceStep> steps{
      step("pedal_pin", "pin turned about the pedal's pivot by the pedal's turn", std::move(pins))};
  if (at.linkage.bell_cranks.empty()) {
    const SliderLoop& slider = at.linkage.slider;
    const Vec3 apart = pose.rod_pin_mm - slider.start;
    const double along = slider.along.dot(apart);
    const double across = (apart - along * slider.along).norm();
    steps.push_back(step(
        "rod_slide",
        "d = pin - cylinder pin at rest; along = d . axis; across = |d - along axis|; travel "
        "= along +/- sqrt(rod^2 - across^2)",
        {quantity("along", along, Unit::millimetre), quantity("across", across, Unit::millimetre),
         quantity("rod_length", slider.length, Unit::millimetre),
         quantity("rod_travel", pose.rod_travel, Unit::millimetre)}));
  } else {
    steps.push_back(step("rod_through_bell_cranks", "each bell-crank's loop, then the last rod",
                         {quantity("rod_travel", pose.rod_travel, Unit::millimetre)}));
  }
  return steps;
}

// Name of the finding about the stroke that the foot has to reach.
std::string stroke_name(const At& at) {
  return at.name(at.result.use == PedalUse::brake ? "full_stroke" : "release_stroke");
}

// What stands between a stroke that looks long enough and "within".
std::vector<std::string> stroke_doubts(const At& at, const Finding& finding) {
  std::vector<std::string> doubts;
  if (finding.verdict == Verdict::past || finding.verdict == Verdict::not_judged) return doubts;
  if (!at.result.floor_known) doubts.push_back(floor_wanted());
  if (!at.linkage.pedal.rod->free_play) doubts.push_back(free_play_wanted(at));
  return doubts;
}

// Says what the geometry gives; who chose another limit than the stroke that a clutch wants is told
// both. A brake's full stroke is no matter of choice.
std::string stroke_sentence(const At& at, const Finding& finding) {
  const PedalResult& result = at.result;
  const bool brake = result.use == PedalUse::brake;
  WordingFields fields{{"pedal", capitalised(at.spoken_name)},
                       {"end", end_words(result.ends.front().kind)},
                       {"reached", at.show.mm(result.stroke_reached)}};
  if (!result.stroke_wanted) return say("pedal.stroke_unknown", fields);
  const double wanted = *result.stroke_wanted;
  fields.emplace_back("wanted", at.show.mm(wanted));
  const Limit& limit = *finding.limit;
  if (limit.least != wanted || limit.most || limit.least_inner || limit.most_inner) {
    fields.emplace_back("limit", limit.words);
    return say("pedal.clutch_chosen", fields);
  }
  if (result.stroke_reached < wanted)
    return brake ? say("pedal.brake_short", fields) : say("pedal.clutch_short", fields);
  return brake ? say("pedal.brake_reaches", fields) : say("pedal.clutch_reaches", fields);
}

void add_stroke(const At& at, Findings& findings) {
  const PedalResult& result = at.result;
  if (result.ends.empty()) return;
  const PedalEnd& end = result.ends.front();
  Finding finding = judged(
      stroke_name(at), Station::pedals,
      {quantity("stroke_reached", result.stroke_reached, Unit::millimetre),
       quantity("stroke_wanted", result.stroke_wanted.value_or(std::nan("")), Unit::millimetre),
       quantity("pad_travel", end.pad_travel, Unit::millimetre),
       quantity("pedal_turn", end.angle, Unit::degree)},
      limit_from(at.mechanism.project,
                 result.use == PedalUse::brake ? "pedal.full_stroke" : "pedal.release_stroke",
                 {result.stroke_wanted, std::nullopt, say("source.maker_sheet"), Standing::maker}),
      at.show.lengths());
  if (!result.stroke_wanted) finding.numbers.erase(finding.numbers.begin() + 1);
  finding.worst_at = at.pressed(end.angle);
  finding.sentence = stroke_sentence(at, finding);
  const std::vector<std::string> doubts = stroke_doubts(at, finding);
  wait_for(finding, doubts);
  for (const std::string& doubt : doubts) finding.sentence += " " + capitalised(doubt) + ".";
  finding.trace.formula =
      "piston stroke = rod travel - free play, at the first thing that ends "
      "the pedal's travel";
  finding.trace.source = say("source.full_stroke");
  finding.trace.inputs = free_play_input(at);
  for (const PedalEnd& each : result.ends)
    finding.trace.steps.push_back(
        {end_words(each.kind),
         "",
         {quantity("pedal_turn", each.angle, Unit::degree),
          quantity("pad_travel", each.pad_travel, Unit::millimetre),
          quantity("piston_stroke", each.piston_stroke, Unit::millimetre)}});
  for (TraceStep& each : rod_steps(at, end.angle)) finding.trace.steps.push_back(std::move(each));
  finding.trace.steps.push_back(
      step("piston_stroke", "rod travel - free play",
           {quantity("stroke_reached", result.stroke_reached, Unit::millimetre)}));
  findings.push_back(std::move(finding));
}

// A clutch or other cylinder must not be driven beyond its own stroke.
void add_over_run(const At& at, Findings& findings) {
  const auto& rod = at.linkage.pedal.rod;
  if (at.result.use == PedalUse::brake || at.result.ends.empty()) return;
  const PedalEnd& end = at.result.ends.front();
  Finding finding = judged(
      at.name("over_run"), Station::pedals,
      {quantity("piston_stroke", end.piston_stroke, Unit::millimetre)},
      limit_from(at.mechanism.project, "pedal.over_run",
                 {std::nullopt, rod->full_stroke, say("source.maker_sheet"), Standing::maker}),
      at.show.lengths());
  finding.worst_at = at.pressed(end.angle);
  finding.sentence = say("pedal.over_run", {{"pedal", capitalised(at.spoken_name)},
                                            {"stroke", at.show.mm(end.piston_stroke)}});
  // Without its free play the piston's stroke is the most that it can be.
  if (finding.verdict == Verdict::past && !rod->free_play)
    wait_for(finding, {free_play_wanted(at)});
  finding.trace.formula = "piston stroke = rod travel - free play";
  finding.trace.source = say("source.maker_sheet");
  finding.trace.inputs = free_play_input(at);
  finding.trace.steps = rod_steps(at, end.angle);
  finding.trace.steps.push_back(
      step("piston_stroke", "rod travel - free play",
           {quantity("piston_stroke", end.piston_stroke, Unit::millimetre)}));
  findings.push_back(std::move(finding));
}

void add_ratio(const At& at, Findings& findings) {
  const PedalResult& result = at.result;
  const auto& rod = at.linkage.pedal.rod;
  const char* limit_name = "pedal.ratio";
  if (result.use == PedalUse::brake)
    limit_name = rod->booster_gain ? "pedal.brake.ratio_assisted" : "pedal.brake.ratio_manual";
  const double worst = result.ratio_worst.value_or(std::nan(""));
  std::vector<Quantity> numbers{quantity("pedal_ratio", worst, Unit::number)};
  const auto add = [&](const char* name, const std::optional<double>& ratio) {
    if (ratio) numbers.push_back(quantity(name, *ratio, Unit::number));
  };
  add("ratio_rest", result.ratio_rest);
  add("ratio_middle", result.ratio_middle);
  add("ratio_full", result.ratio_full);
  Limit limit = limit_for(at.mechanism.project, limit_name);
  const bool pulls = worst < 0.0;
  if (pulls) {
    // Whatever ratio is wanted, pressing has to push the piston.
    limit.least = 0.0;
    limit.most.reset();
    limit.least_inner.reset();
    limit.most_inner.reset();
    limit.source = say("source.push_rod_pushes");
    limit.standing = Standing::computed;
  }
  Finding finding = judged(at.name("ratio"), Station::pedals, std::move(numbers), std::move(limit),
                           at.show.lengths());
  finding.worst_at = at.pressed(result.ratio_worst_at);
  const auto words = [&](const std::optional<double>& ratio) {
    return at.show.text(ratio.value_or(std::nan("")), Unit::number);
  };
  finding.sentence =
      say(pulls ? "pedal.pulls" : "pedal.ratio", {{"pedal", capitalised(at.spoken_name)},
                                                  {"rest", words(result.ratio_rest)},
                                                  {"middle", words(result.ratio_middle)},
                                                  {"full", words(result.ratio_full)}});
  finding.trace.formula =
      "ratio = pad travel / rod travel along the cylinder's axis = |dpad/dt| / "
      "|drod/dt|";
  finding.trace.source = say("source.pedal_ratio");
  finding.trace.inputs = {quantity("pad_radius", result.pad_arc_radius, Unit::millimetre)};
  for (const PedalRow& row : result.rows) {
    if (row.angle > result.ends.front().angle) break;
    finding.trace.steps.push_back(step("pedal_row",
                                       "pad travel = turn x pad radius; rod travel by the slider",
                                       {quantity("pedal_turn", row.angle, Unit::degree),
                                        quantity("pad_travel", row.pad_travel, Unit::millimetre),
                                        quantity("rod_travel", row.rod_travel, Unit::millimetre),
                                        quantity("pedal_ratio", row.ratio, Unit::number)}));
  }
  findings.push_back(std::move(finding));
}

void add_free_play(const At& at, Findings& findings) {
  const auto& free_play = at.linkage.pedal.rod->free_play;
  if (!free_play) {
    findings.push_back(not_yet(at.name("free_play"), Station::pedals, free_play_wanted(at)));
    return;
  }
  const std::optional<double>& at_pad = at.result.pad_free_travel;
  std::vector<Quantity> numbers{quantity("free_play", *free_play, Unit::millimetre)};
  if (at_pad) numbers.push_back(quantity("pad_free_travel", *at_pad, Unit::millimetre));
  Finding finding = judged(at.name("free_play"), Station::pedals, std::move(numbers),
                           limit_for(at.mechanism.project, "pedal.free_play"), at.show.lengths());
  finding.worst_at = at.pressed(0.0);
  finding.sentence = say(at_pad ? "pedal.free_play" : "pedal.free_play_never",
                         {{"pedal", capitalised(at.spoken_name)},
                          {"play", at.show.mm(*free_play)},
                          {"pad", at.show.mm(at_pad.value_or(0.0))}});
  finding.trace.formula =
      "pad travel = turn at which the rod has moved by the free play x pad radius";
  finding.trace.source = say("source.geometry");
  finding.trace.inputs = {quantity("free_play", *free_play, Unit::millimetre),
                          quantity("pad_radius", at.result.pad_arc_radius, Unit::millimetre)};
  if (at_pad)
    finding.trace.steps = rod_steps(at, *at_pad / at.result.pad_arc_radius);
  else
    finding.trace.steps = rod_steps(at, 0.0);
  findings.push_back(std::move(finding));
}

void add_rod_swing(const At& at, Findings& findings) {
  const auto& rod = at.linkage.pedal.rod;
  double worst_angle = 0.0;
  double worst = -1.0;
  for (const PedalRow& row : at.result.rows) {
    if (row.rod_swing <= worst) continue;
    worst = row.rod_swing;
    worst_angle = row.angle;
  }
  Finding finding = judged(
      at.name("rod_swing"), Station::pedals,
      {quantity("rod_swing", at.result.greatest_rod_swing, Unit::degree)},
      limit_from(at.mechanism.project, "pedal.rod_swing",
                 {std::nullopt, rod->swing_limit, say("source.maker_sheet"), Standing::maker}),
      at.show.lengths());
  finding.worst_at = at.pressed(worst_angle);
  finding.sentence =
      say("pedal.rod_swing", {{"pedal", capitalised(at.spoken_name)},
                              {"swing", at.show.degrees(at.result.greatest_rod_swing)}});
  finding.trace.formula = "swing = asin(across / rod length)";
  finding.trace.source = say("source.rod_swing");
  finding.trace.steps = rod_steps(at, worst_angle);
  finding.trace.steps.push_back(
      step("rod_swing", "asin(across / rod length)",
           {quantity("rod_swing", at.result.greatest_rod_swing, Unit::degree)}));
  findings.push_back(std::move(finding));
}

void add_floor_gap(const At& at, Findings& findings) {
  if (!at.result.floor_known) {
    findings.push_back(not_yet(at.name("floor_gap"), Station::pedals, floor_wanted()));
    return;
  }
  const double angle = at.result.angle_at_wanted.value_or(at.linkage.pedal.full_travel);
  Finding finding = judged(at.name("floor_gap"), Station::pedals,
                           {quantity("pad_over_floor", at.result.pad_over_floor, Unit::millimetre)},
                           limit_for(at.mechanism.project, "pedal.floor_gap"), at.show.lengths());
  finding.worst_at = at.pressed(angle);
  const WordingFields fields{{"pedal", capitalised(at.spoken_name)},
                             {"gap", at.show.mm(std::abs(at.result.pad_over_floor))},
                             {"turn", at.show.degrees(angle)}};
  finding.sentence = at.result.pad_over_floor >= 0.0 ? say("pedal.floor_gap", fields)
                                                     : say("pedal.under_floor", fields);
  // One fault, two findings: the floor that ends the stroke is the one below the pad.
  const bool ends_on_floor =
      !at.result.ends.empty() && at.result.ends.front().kind == PedalEndKind::floor;
  if (ends_on_floor && at.linkage.pedal.rod && at.result.use != PedalUse::accelerator)
    finding.sentence += " " + say("see", {{"title", finding_words(stroke_name(at)).title}});
  const PedalPose pose = pose_pedal(at.linkage, angle);
  finding.trace.formula = "gap = height of the pad's lowest edge - height of the floor";
  finding.trace.source = say("source.geometry");
  finding.trace.inputs = {
      quantity("pedal_turn", angle, Unit::degree),
      quantity("floor_height", at.mechanism.project.driver->floor_height, Unit::millimetre)};
  finding.trace.steps = {
      step("pad_centre", "pad centre turned about the pivot",
           point_numbers("pad_centre", pose.pad_centre_mm)),
      step("pad_over_floor", "lowest edge of the turned pad - floor",
           {quantity("pad_over_floor", at.result.pad_over_floor, Unit::millimetre)})};
  findings.push_back(std::move(finding));
}

}  // namespace

void add_pedal_findings(const Mechanism& mechanism, const std::vector<PedalResult>& results,
                        Findings& findings) {
  const std::size_t count = std::min(results.size(), mechanism.pedals.size());
  for (std::size_t i = 0; i < count; ++i) {
    const At at{mechanism,
                mechanism.pedals[i],
                results[i],
                i,
                ShownFor(mechanism.project),
                name_part(results[i].name, i),
                spoken(results[i].name, say("word.pedal"), i)};
    if (at.linkage.pedal.rod) {
      if (at.result.use != PedalUse::accelerator) add_stroke(at, findings);
      add_over_run(at, findings);
      add_ratio(at, findings);
      if (at.result.use != PedalUse::accelerator) add_free_play(at, findings);
      add_rod_swing(at, findings);
    } else if (at.result.use == PedalUse::brake || !at.linkage.pedal.cable) {
      add_waiting_for_rod(at, findings);
    }
    add_floor_gap(at, findings);
  }
}

}  // namespace tackbench
