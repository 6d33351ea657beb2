// Is the shaft line held?
#include <cmath>
#include <set>

#include "core/basics/wording.h"
#include "core/findings/build_finding.h"
#include "core/findings/builders.h"
#include "core/findings/limits.h"
#include "core/findings/line_as_drawn.h"

namespace tackbench {

namespace {

std::string joint_words(const ShaftLineStation& station, int index) {
  return spoken(station.joints[std::size_t(index)].name, say("word.joint"), std::size_t(index));
}
std::string shaft_words(const ShaftLineStation& station, int index) {
  return spoken(station.shafts[std::size_t(index)].name, say("word.shaft"), std::size_t(index));
}

// The joint whose cross has that index in ShaftLine::crosses.
int joint_of_cross(const Mechanism& mechanism, int cross) {
  ShaftLinePose pose;
  pose_shaft_line(*mechanism.shaft_line, mechanism.chassis_from_cab, 0.0, pose);
  return cross >= 0 && cross < pose.cross_count ? pose.crosses[std::size_t(cross)].joint : -1;
}

std::string most_words(const Mechanism& mechanism, const WanderingWay& way) {
  const int joint = joint_of_cross(mechanism, way.most_at_cross);
  if (joint < 0) return say("word.hand_wheel");
  return joint_words(mechanism.shaft_line->station, joint);
}

// "halfway along the upper shaft", "a quarter along ..."
std::vector<std::string> place_words(const ShaftLineStation& station,
                                     const std::vector<RodEndPlace>& places) {
  std::vector<std::string> words;
  for (const RodEndPlace& place : places) {
    const WordingFields fields{{"shaft", shaft_words(station, place.shaft)}};
    if (place.part < 0.4)
      words.push_back(say("place.quarter", fields));
    else if (place.part > 0.6)
      words.push_back(say("place.three_quarters", fields));
    else
      words.push_back(say("place.halfway", fields));
  }
  return words;
}

// "One rod end halfway along upper or halfway along lower holds it: either will do. ..."
std::string cure(const Mechanism& mechanism, const WanderingShaft& result) {
  const ShaftLineStation& station = mechanism.shaft_line->station;
  std::vector<std::string> cures;
  std::vector<std::string> useless;
  for (const SupportTrial& trial : result.trials) {
    if (trial.at_cross < 0 && trial.free_ways_left == 0)
      cures.push_back(say("place.halfway", {{"shaft", shaft_words(station, trial.shaft)}}));
    const int joint = joint_of_cross(mechanism, trial.at_cross);
    if (joint >= 0 && trial.free_ways_left >= result.free_ways) {
      std::string words = joint_words(station, joint);
      if (useless.empty() || useless.back() != words) useless.push_back(std::move(words));
    }
  }
  std::string sentence;
  if (!cures.empty())
    sentence = " " + say(cures.size() == 1 ? "shaft.wander_cure" : "shaft.wander_cure_either",
                         {{"places", listed_or(cures)}});
  else if (!result.rod_ends.empty())
    sentence =
        " " + say("shaft.wander_rod_ends",
                  {{"count", shown(static_cast<double>(result.rod_ends.size()), Unit::count)},
                   {"places", listed(place_words(station, result.rod_ends))}});
  else
    sentence = " " + say("shaft.wander_no_cure");
  if (!useless.empty())
    sentence += " " + say("shaft.wander_useless", {{"joints", listed_or(useless)}});
  return sentence;
}

// "Either shaft may move: upper or lower."
std::string movers(const Mechanism& mechanism, const WanderingShaft& result) {
  std::set<int> moving;
  for (const WanderingWay& way : result.ways) moving.insert(way.shafts.begin(), way.shafts.end());
  std::vector<std::string> shafts;
  shafts.reserve(moving.size());
  for (const int shaft : moving)
    shafts.push_back(shaft_words(mechanism.shaft_line->station, shaft));
  if (shafts.empty()) return {};
  const char* key = shafts.size() == 1   ? "shaft.wander_one_mover"
                    : shafts.size() == 2 ? "shaft.wander_either_mover"
                                         : "shaft.wander_any_mover";
  return " " + say(key, {{"shafts", listed_or(shafts)}});
}

Trace wander_trace(const Mechanism& mechanism, const WanderingShaft& result) {
  const ShaftLineStation& station = mechanism.shaft_line->station;
  int slips = 0;
  int doubles = 0;
  for (const Shaft& shaft : station.shafts) slips += shaft.slip != SlipKind::none ? 1 : 0;
  for (const ShaftJoint& joint : station.joints)
    doubles += joint.kind == JointKind::double_joint ? 1 : 0;
  int held = 0;
  for (const ShaftSupport& support : station.supports)
    held += (support.kind == SupportKind::bearing_block ? 4 : 2) + (support.collar ? 1 : 0);
  const int joints = static_cast<int>(station.joints.size());
  // Each rigid shaft has 5 unknowns without its spin, a slip one more; a cross takes 3.
  const int bodies = joints - 1 + doubles;
  const int unknowns = 5 * bodies + slips;
  const int taken = 3 * (joints + doubles) + held;
  Trace trace;
  trace.formula =
      "free ways - held twice = unknowns - equations, spin left out: a shaft has 5 "
      "unknowns, a slip adds 1; a joint takes 3, an eye 2, a bearing block 4, a "
      "collar 1 (two or more column bearings hold the column)";
  trace.source = say("source.wander");
  trace.inputs = {quantity("joints", joints, Unit::count), quantity("slips", slips, Unit::count),
                  quantity("middle_pieces", doubles, Unit::count),
                  quantity("equations_of_supports", held, Unit::count)};
  trace.steps = {
      step("unknowns", "5 x (joints - 1 + middle pieces) + slips",
           {quantity("unknowns", unknowns, Unit::count)}),
      step("equations", "3 x (joints + middle pieces) + supports",
           {quantity("equations", taken, Unit::count)}),
      step("count", "unknowns - equations", {quantity("count", unknowns - taken, Unit::count)}),
      step("rank",
           "free ways from the rank of the equations, which also sees special "
           "positions",
           {quantity("free_ways", result.free_ways, Unit::count),
            quantity("over_constraints", result.over_constraints, Unit::count)})};
  for (const WanderingWay& way : result.ways) {
    TraceStep moving = step("way", "the largest movement of the way is 1 mm", {});
    for (const Vec3& shift : way.cross_shift_mm)
      for (Quantity& part : point_numbers("cross_shift", shift))
        moving.results.push_back(std::move(part));
    trace.steps.push_back(std::move(moving));
  }
  return trace;
}

Finding wander(const Mechanism& mechanism, const WanderingShaft& result) {
  const ShownFor show(mechanism.project);
  Finding finding = judged("shaft.wander", Station::shaft_line,
                           {quantity("free_ways", result.free_ways, Unit::count),
                            quantity("over_constraints", result.over_constraints, Unit::count)},
                           limit_for(mechanism.project, "shaft.wander"), show.lengths());
  if (!result.rod_ends.empty())
    finding.numbers.push_back(
        quantity("rod_ends_wanted", static_cast<double>(result.rod_ends.size()), Unit::count));
  if (result.in_line) {
    finding.verdict = Verdict::not_judged;
    finding.why_not_judged = say("not_judged.in_line");
    finding.sentence = say("shaft.in_line");
  } else if (result.free_ways == 0) {
    finding.sentence = say("shaft.held");
  } else {
    finding.sentence =
        (result.free_ways == 1
             ? say("shaft.wanders_one_way", {{"most", most_words(mechanism, result.ways.front())}})
             : say("shaft.wanders", {{"ways", shown(result.free_ways, Unit::count)},
                                     {"most", most_words(mechanism, result.ways.front())}})) +
        movers(mechanism, result) + cure(mechanism, result);
  }
  // The count takes every eye on its shaft's line. One that is not there holds no shaft as drawn.
  if (const std::optional<std::string> why = why_not_built_so(mechanism)) {
    if (finding.verdict == Verdict::within) finding.sentence = say("shaft.held_if_in_line");
    finding.sentence += " " + capitalised(*why) + ".";
    if (!result.in_line) leave_open(finding, *why);
  }
  finding.trace = wander_trace(mechanism, result);
  return finding;
}

void add_over_held(const Mechanism& mechanism, const WanderingShaft& result, Findings& findings) {
  if (result.over.empty()) return;
  const ShownFor show(mechanism.project);
  double misfit = 0.0;
  std::vector<std::string> parts;
  for (const OverConstraint& over : result.over) {
    misfit = std::max(misfit, std::abs(over.misfit_as_drawn));
    if (!over.parts.empty()) parts.push_back(over.parts.front().words);
  }
  Finding finding = judged("shaft.over_held", Station::shaft_line,
                           {quantity("misfit", misfit, Unit::millimetre),
                            quantity("over_constraints", result.over_constraints, Unit::count)},
                           limit_for(mechanism.project, "shaft.over_held"), show.lengths());
  finding.sentence =
      say("shaft.over_held", {{"parts", listed(parts)}, {"misfit", show.mm(misfit)}});
  finding.trace = wander_trace(mechanism, result);
  findings.push_back(std::move(finding));
}

void add_play(const Mechanism& mechanism, const WanderingShaft& result, Findings& findings) {
  const ShownFor show(mechanism.project);
  const ShaftLineStation& station = mechanism.shaft_line->station;
  for (const SupportPlay& play : result.play) {
    const auto index = std::size_t(play.support);
    const ShaftSupport& support = station.supports[index];
    const int joint = joint_of_cross(mechanism, play.cross);
    Finding finding =
        judged("shaft.support." + name_part(support.name, index) + ".play", Station::shaft_line,
               {quantity("play_at_joint", play.worst_at_cross_mm, Unit::millimetre)},
               limit_for(mechanism.project, "shaft.support_play"), show.lengths());
    finding.sentence =
        say("shaft.support_play",
            {{"support", spoken(support.name, say("word.support"), index)},
             {"play", show.mm(play.worst_at_cross_mm)},
             {"joint", joint >= 0 ? joint_words(station, joint) : say("word.hand_wheel")}});
    finding.trace.formula = "the held line's movement for 1 mm at the eye, by the same equations";
    finding.trace.source = say("source.wander");
    finding.trace.steps = {
        step("play", "at the joint that moves most",
             {quantity("play_at_joint", play.worst_at_cross_mm, Unit::millimetre)})};
    findings.push_back(std::move(finding));
  }
}

}  // namespace

void add_wander_findings(const Mechanism& mechanism, const WanderingShaft& result,
                         Findings& findings) {
  if (mechanism.shaft_line->station.joints.empty()) return;
  findings.push_back(wander(mechanism, result));
  add_over_held(mechanism, result, findings);
  add_play(mechanism, result, findings);
}

}  // namespace tackbench
