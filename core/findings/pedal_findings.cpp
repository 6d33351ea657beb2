#include <algorithm>
#include <cmath>

#include "core/basics/wording.h"
#include "core/findings/build_finding.h"
#include "core/findings/builders.h"
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
  // The pedal pressed to a turn from rest, rad.
  Controls pressed(double angle) const {
    Controls controls;
    const double full = linkage.pedal.full_travel;
    if (index < controls.pedals.size() && full > 0.0) controls.pedals[index] = angle / full;
    return controls;
  }
};

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

void add_stroke(const At& at, Findings& findings) {
  const PedalResult& result = at.result;
  if (result.ends.empty() || !at.linkage.pedal.rod) return;
  const bool brake = result.use == PedalUse::brake;
  const PedalEnd& end = result.ends.front();
  Finding finding = judged(
      at.name(brake ? "full_stroke" : "release_stroke"), Station::pedals,
      {quantity("stroke_reached", result.stroke_reached, Unit::millimetre),
       quantity("stroke_wanted", result.stroke_wanted.value_or(std::nan("")), Unit::millimetre),
       quantity("pad_travel", end.pad_travel, Unit::millimetre),
       quantity("pedal_turn", end.angle, Unit::degree)},
      limit_from(at.mechanism.project, "pedal.full_stroke",
                 {result.stroke_wanted, std::nullopt, say("source.maker_sheet"), Standing::maker}),
      at.show.lengths());
  if (!result.stroke_wanted) finding.numbers.erase(finding.numbers.begin() + 1);
  finding.worst_at = at.pressed(end.angle);
  const WordingFields fields{
      {"pedal", capitalised(at.spoken_name)},
      {"end", end_words(end.kind)},
      {"reached", at.show.mm(result.stroke_reached)},
      {"wanted", result.stroke_wanted ? at.show.mm(*result.stroke_wanted) : std::string()},
      {"short", result.stroke_wanted ? at.show.mm(*result.stroke_wanted - result.stroke_reached)
                                     : std::string()}};
  if (!result.stroke_wanted)
    finding.sentence = say("pedal.stroke_unknown", fields);
  else if (finding.verdict == Verdict::past)
    finding.sentence = brake ? say("pedal.brake_short", fields) : say("pedal.clutch_short", fields);
  else
    finding.sentence =
        brake ? say("pedal.brake_reaches", fields) : say("pedal.clutch_reaches", fields);
  finding.trace.formula =
      "piston stroke = rod travel - free play, at the first thing that ends "
      "the pedal's travel";
  finding.trace.source = say("source.full_stroke");
  finding.trace.inputs = {quantity("free_play", at.linkage.pedal.rod->free_play, Unit::millimetre)};
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
  if (at.result.use == PedalUse::brake || !rod || at.result.ends.empty()) return;
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
  finding.trace.formula = "piston stroke = rod travel - free play";
  finding.trace.source = say("source.maker_sheet");
  finding.trace.inputs = {quantity("free_play", rod->free_play, Unit::millimetre)};
  finding.trace.steps = rod_steps(at, end.angle);
  finding.trace.steps.push_back(
      step("piston_stroke", "rod travel - free play",
           {quantity("piston_stroke", end.piston_stroke, Unit::millimetre)}));
  findings.push_back(std::move(finding));
}

void add_ratio(const At& at, Findings& findings) {
  const PedalResult& result = at.result;
  const auto& rod = at.linkage.pedal.rod;
  if (!rod) return;
  const char* limit_name = "pedal.ratio";
  if (result.use == PedalUse::brake)
    limit_name = rod->booster_gain ? "pedal.brake.ratio_assisted" : "pedal.brake.ratio_manual";
  const double greatest = std::max({result.ratio_rest, result.ratio_middle, result.ratio_full});
  Finding finding = judged(at.name("ratio"), Station::pedals,
                           {quantity("pedal_ratio", greatest, Unit::number),
                            quantity("ratio_rest", result.ratio_rest, Unit::number),
                            quantity("ratio_middle", result.ratio_middle, Unit::number),
                            quantity("ratio_full", result.ratio_full, Unit::number)},
                           limit_for(at.mechanism.project, limit_name), at.show.lengths());
  finding.sentence =
      say("pedal.ratio", {{"pedal", capitalised(at.spoken_name)},
                          {"rest", at.show.text(result.ratio_rest, Unit::number)},
                          {"middle", at.show.text(result.ratio_middle, Unit::number)},
                          {"full", at.show.text(result.ratio_full, Unit::number)}});
  finding.trace.formula =
      "ratio = pad travel / rod travel along the cylinder's axis = |dpad/dt| / "
      "|drod/dt|";
  finding.trace.source = say("source.pedal_ratio");
  finding.trace.inputs = {quantity("pad_radius", result.pad_arc_radius, Unit::millimetre)};
  for (const PedalRow& row : result.rows)
    finding.trace.steps.push_back(step("pedal_row",
                                       "pad travel = turn x pad radius; rod travel by the slider",
                                       {quantity("pedal_turn", row.angle, Unit::degree),
                                        quantity("pad_travel", row.pad_travel, Unit::millimetre),
                                        quantity("rod_travel", row.rod_travel, Unit::millimetre),
                                        quantity("pedal_ratio", row.ratio, Unit::number)}));
  findings.push_back(std::move(finding));
}

void add_rod_swing(const At& at, Findings& findings) {
  const auto& rod = at.linkage.pedal.rod;
  if (!rod) return;
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
  if (!at.result.floor_known) return;
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
    if (at.result.use != PedalUse::accelerator) add_stroke(at, findings);
    add_over_run(at, findings);
    add_ratio(at, findings);
    add_rod_swing(at, findings);
    add_floor_gap(at, findings);
  }
}

}  // namespace tackbench
