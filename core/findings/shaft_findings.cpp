// Findings of the shaft check: angles, ripple, clocking, lengths, shake, couples. Slips, ends and
// supports stand in shaft_parts_findings.cpp.
#include <algorithm>
#include <cmath>

#include "core/basics/wording.h"
#include "core/findings/builders.h"
#include "core/findings/line_as_drawn.h"
#include "core/findings/shaft_parts_findings.h"
#include "core/findings/shaft_words.h"

namespace tackbench {

namespace {

Finding joint_angle(const ShaftWords& line, const JointAngleResult& result) {
  Finding finding = line.judge(
      "shaft.joint." + line.joint_part(result.joint) + ".angle",
      {quantity("joint_angle", result.worst, Unit::degree),
       quantity("angle_as_drawn", result.as_drawn, Unit::degree)},
      line.limit("shaft.joint_angle",
                 {std::nullopt, result.limit, say("source.maker_sheet"), Standing::maker}));
  finding.worst_at = at_cab_shake(result.worst_shake_mm);
  finding.sentence = say("shaft.joint_angle", {{"joint", capitalised(line.joint(result.joint))},
                                               {"drawn", line.show.degrees(result.as_drawn)},
                                               {"worst", line.show.degrees(result.worst)}});
  if (!result.held && finding.verdict == Verdict::past)
    finding.caution = say("caution.joint_not_held");
  finding.trace.formula =
      "angle = acos(in . out), unit vectors along the two shafts from hand to "
      "road";
  finding.trace.source = say("source.geometry");
  ShaftLinePose pose;
  pose_shaft_line(*line.mechanism.shaft_line, line.mechanism.chassis_from_cab, 0.0, pose);
  for (int i = 0; i < pose.cross_count; ++i) {
    const CrossPose& cross = pose.crosses[std::size_t(i)];
    if (cross.joint != result.joint) continue;
    finding.trace.steps.push_back(step("cross_angle", "acos(in . out)",
                                       {quantity("in_x", cross.in_direction.x(), Unit::number),
                                        quantity("in_y", cross.in_direction.y(), Unit::number),
                                        quantity("in_z", cross.in_direction.z(), Unit::number),
                                        quantity("out_x", cross.out_direction.x(), Unit::number),
                                        quantity("out_y", cross.out_direction.y(), Unit::number),
                                        quantity("out_z", cross.out_direction.z(), Unit::number),
                                        quantity("cross_angle", cross.angle, Unit::degree)}));
  }
  finding.trace.steps.push_back(step("worst_over_shake",
                                     "the same with the cab at each corner of its shake",
                                     {quantity("joint_angle", result.worst, Unit::degree)}));
  return finding;
}

// Constant-velocity units hand on the turn as it comes.
bool ripples(const ShaftJoint& joint) {
  return joint.kind == JointKind::universal || joint.kind == JointKind::double_joint;
}

// One cross by the textbook's formula: t from the driving pin to the bend plane.
TraceStep cross_step(const ShaftWords& line, const CrossPose& cross) {
  const ShaftJoint& joint = line.station.joints[std::size_t(cross.joint)];
  if (!ripples(joint))
    return {line.joint(cross.joint),
            "constant speed: ratio 1",
            {quantity("cross_angle", cross.angle, Unit::degree),
             quantity("cross_ratio", cross.ratio, Unit::number)}};
  const Vec3 in_bend_plane = square_to(cross.in_direction, cross.out_direction);
  const double pin_turn =
      std::acos(std::clamp(std::abs(cross.in_pin.dot(in_bend_plane)), 0.0, 1.0));
  return {
      line.joint(cross.joint),
      "ratio = cos b / (1 - sin^2 b cos^2 t)",
      {quantity("cross_angle", cross.angle, Unit::degree),
       quantity("own_ripple", 1.0 / std::cos(cross.angle) - std::cos(cross.angle), Unit::percent),
       quantity("pin_turn", pin_turn, Unit::degree),
       quantity("cross_ratio", cross.ratio, Unit::number)}};
}

Finding ripple(const ShaftWords& line, const ShaftCheck& result) {
  const LineRipple& ripple = result.ripple;
  Finding finding =
      line.judge("shaft.ripple",
                 {quantity("ripple", ripple.ripple, Unit::percent),
                  quantity("least_rate", ripple.least_rate, Unit::number),
                  quantity("most_rate", ripple.most_rate, Unit::number),
                  quantity("ripple_ideal", result.clocking.ripple_ideal, Unit::percent)},
                 line.limit("shaft.ripple"));
  finding.worst_at = at_hand_wheel(ripple.most_at);
  finding.sentence =
      say("shaft.ripple", {{"ripple", line.show.text(ripple.ripple, Unit::percent)},
                           {"least", line.show.text(ripple.least_rate, Unit::number)},
                           {"most", line.show.text(ripple.most_rate, Unit::number)}});
  finding.trace.formula =
      "ripple = greatest - least speed ratio over a turn; each joint: b its angle, t its driving "
      "pin's turn from the bend plane, ratio = cos b / (1 - sin^2 b cos^2 t), ripple of the joint "
      "alone 1/cos b - cos b";
  finding.trace.source = say("source.universal_joint");
  ShaftLinePose pose;
  pose_shaft_line(*line.mechanism.shaft_line, line.mechanism.chassis_from_cab, ripple.most_at,
                  pose);
  double product = 1.0;
  for (int i = 0; i < pose.cross_count; ++i) {
    const CrossPose& cross = pose.crosses[std::size_t(i)];
    product *= cross.ratio;
    finding.trace.steps.push_back(cross_step(line, cross));
  }
  finding.trace.steps.push_back(step("product", "product of the joints' ratios there",
                                     {quantity("most_rate", product, Unit::number)}));
  finding.trace.steps.push_back(step("ripple", "(greatest - least) / mean; the mean is 1",
                                     {quantity("most_rate", ripple.most_rate, Unit::number),
                                      quantity("least_rate", ripple.least_rate, Unit::number),
                                      quantity("ripple", ripple.ripple, Unit::percent)}));
  return finding;
}

// Clockings half a turn apart are the same: 0 to a quarter turn.
double clocking_apart(double a, double b) {
  const double apart = std::abs(std::remainder(a - b, kPi));
  return apart;
}

// "upper to 0.0 degrees and lower to -80.0 degrees"; empty when all stand so already.
std::string clocking_settings(const ShaftWords& line, const ClockingResult& all) {
  constexpr double kAlike = 0.05 * kRadiansPerDegree;  // half of what is shown
  bool all_stand = true;
  std::vector<std::string> settings;
  for (const ShaftClocking& each : all.shafts) {
    if (!each.matters) continue;
    all_stand = all_stand && clocking_apart(each.as_drawn, each.nearest) < kAlike;
    settings.push_back(say("shaft.clocking_setting", {{"shaft", line.shaft(each.shaft)},
                                                      {"angle", line.show.degrees(each.nearest)}}));
  }
  return all_stand ? std::string() : listed(settings);
}

std::string clocking_words(const ShaftWords& line, const ClockingResult& all,
                           const ShaftClocking& result) {
  const auto shafts = std::count_if(all.shafts.begin(), all.shafts.end(),
                                    [](const ShaftClocking& each) { return each.matters; });
  const std::string settings = clocking_settings(line, all);
  const WordingFields fields{{"shaft", capitalised(line.shaft(result.shaft))},
                             {"drawn", line.show.degrees(result.as_drawn)},
                             {"settings", settings},
                             {"ripple", line.show.text(all.ripple_nearest, Unit::percent)}};
  std::string words = say(settings.empty() ? "shaft.clocking_stands"
                          : shafts > 1     ? "shaft.clocking_together"
                                           : "shaft.clocking_set",
                          fields);
  constexpr double kWorthSaying = 0.001;  // what is shown of a ripple
  if (all.ripple_nearest - all.ripple_ideal > kWorthSaying)
    words += " " + say("shaft.clocking_free",
                       {{"ripple", line.show.text(all.ripple_ideal, Unit::percent)}});
  return words;
}

Finding clocking_of(const ShaftWords& line, const ClockingResult& all,
                    const ShaftClocking& result) {
  const double off = clocking_apart(result.as_drawn, result.ideal);
  std::vector<Quantity> numbers{quantity("clocking_off", off, Unit::degree),
                                quantity("clocking_as_drawn", result.as_drawn, Unit::degree),
                                quantity("clocking_ideal", result.ideal, Unit::degree),
                                quantity("clocking_nearest", result.nearest, Unit::degree),
                                quantity("ripple_nearest", all.ripple_nearest, Unit::percent)};
  if (result.by == ClockingBy::teeth)
    numbers.push_back(quantity("clocking_step", result.step, Unit::degree));
  Finding finding = line.judge("shaft." + line.shaft_part(result.shaft) + ".clocking",
                               std::move(numbers), line.limit("shaft.clocking"));
  finding.sentence = clocking_words(line, all, result);
  if (result.by == ClockingBy::makers_cut) finding.caution = say("caution.double_d_cut");
  if (result.by == ClockingBy::not_known)
    finding.caution = say("caution.teeth_not_given", {{"index", std::to_string(result.shaft)}});
  finding.trace.source = say("source.clocking");
  if (all.closed_form) {
    finding.trace.formula =
        "two joints: aligned forks corrected by the twist between the bend "
        "planes";
    finding.trace.steps = {step("twist",
                                "from the first bend plane to the second, about the "
                                "shaft between",
                                {quantity("twist", all.twist, Unit::degree)})};
  } else {
    finding.trace.formula = "least ripple over the fork offsets of all shafts, searched";
  }
  finding.trace.steps.push_back(step("clocking", "drawn - ideal, half turns left out",
                                     {quantity("clocking_as_drawn", result.as_drawn, Unit::degree),
                                      quantity("clocking_ideal", result.ideal, Unit::degree),
                                      quantity("clocking_off", off, Unit::degree)}));
  return finding;
}

Finding length(const ShaftWords& line, const ShaftLengthResult& result) {
  const double spare = result.cut_length - result.grips;
  Finding finding =
      line.judge("shaft." + line.shaft_part(result.shaft) + ".length",
                 {quantity("length_spare", spare, Unit::millimetre),
                  quantity("centre_to_centre", result.centre_to_centre, Unit::millimetre),
                  quantity("cut_length", result.cut_length, Unit::millimetre),
                  quantity("grips", result.grips, Unit::millimetre)},
                 line.limit("shaft.length"));
  finding.sentence = say("shaft.length", {{"shaft", capitalised(line.shaft(result.shaft))},
                                          {"centres", line.show.mm(result.centre_to_centre)},
                                          {"cut", line.show.mm(result.cut_length)},
                                          {"grips", line.show.mm(result.grips)}});
  finding.trace.formula = "spare = centre to centre - both yoke depths - both grips";
  finding.trace.source = say("source.geometry");
  finding.trace.inputs = {quantity("centre_to_centre", result.centre_to_centre, Unit::millimetre)};
  finding.trace.steps = {step("cut_length", "centre to centre - both yoke depths",
                              {quantity("cut_length", result.cut_length, Unit::millimetre)}),
                         step("length_spare", "cut length - both grips",
                              {quantity("grips", result.grips, Unit::millimetre),
                               quantity("length_spare", spare, Unit::millimetre)})};
  return finding;
}

bool stands_still(const CabShake& shake) {
  return shake.forward == 0.0 && shake.rearward == 0.0 && shake.left == 0.0 && shake.right == 0.0 &&
         shake.up == 0.0 && shake.down == 0.0;
}

Finding shake_fit(const ShaftWords& line, const ShakeMisfit& misfit) {
  const std::vector<Quantity> numbers{quantity("places_that_bind", misfit.places, Unit::count),
                                      quantity("length_missing", misfit.worst, Unit::millimetre),
                                      quantity("places_that_fold", misfit.folds, Unit::count)};
  Finding finding = line.judge("shaft.shake_fit", numbers, line.limit("shaft.shake_fit"));
  finding.worst_at = at_cab_shake(misfit.worst_shake_mm);
  finding.sentence = misfit.places == 0
                         ? say("shaft.shake_fits")
                         : say("shaft.shake_binds", {{"places", shown(misfit.places, Unit::count)},
                                                     {"missing", line.show.mm(misfit.worst)}});
  if (misfit.folds > 0)
    finding.sentence +=
        " " + say("shaft.shake_folds", {{"places", shown(misfit.folds, Unit::count)}});
  finding.trace.formula =
      "at each corner, edge middle and face middle of the cab's shake the joints must keep the "
      "shafts' fixed lengths and bend less than a right angle";
  finding.trace.source = say("source.geometry");
  finding.trace.steps = {
      step("shake_fit", "places where they do not, and greatest length that is missing", numbers)};
  if (stands_still(line.mechanism.shaft_line->shake))
    leave_open(finding, say("not_judged.no_shake"));
  return finding;
}

Finding couple(const ShaftWords& line, const CouplesResult& result) {
  const auto worst = std::max_element(
      result.crosses.begin(), result.crosses.end(),
      [](const CrossCouple& a, const CrossCouple& b) { return a.hand_side < b.hand_side; });
  const Unit unit = result.torque_given ? Unit::newton_metre : Unit::number;
  Finding finding = line.judge("shaft.couple",
                               {quantity("couple_hand_side", worst->hand_side, unit),
                                quantity("couple_road_side", worst->road_side, unit),
                                quantity("couple_on_box", result.crosses.back().road_side, unit)},
                               line.limit("shaft.couple"));
  const WordingFields fields{{"joint", line.joint(worst->joint)},
                             {"couple", line.show.text(worst->hand_side, unit)},
                             {"box", line.show.text(result.crosses.back().road_side, unit)},
                             {"torque", line.show.text(result.torque, Unit::newton_metre)}};
  finding.sentence =
      result.torque_given ? say("shaft.couple", fields) : say("shaft.couple_each", fields);
  finding.trace.formula = "couple on the hand-side shaft T tan b, on the road-side shaft T sin b";
  finding.trace.source = say("source.couples");
  finding.trace.inputs = {quantity("torque", result.torque, unit)};
  for (const CrossCouple& cross : result.crosses)
    finding.trace.steps.push_back({line.joint(cross.joint),
                                   "T tan b, T sin b",
                                   {quantity("couple_hand_side", cross.hand_side, unit),
                                    quantity("couple_road_side", cross.road_side, unit)}});
  return finding;
}

}  // namespace

void add_shaft_findings(const Mechanism& mechanism, const ShaftCheck& result,
                        const WanderingShaft& wandering, Findings& findings) {
  const ShaftWords line(mechanism);
  if (line.station.joints.empty()) return;
  const std::optional<std::string> why = why_not_as_drawn(mechanism, wandering);
  const auto add = [&](Finding finding) {
    if (why) leave_open(finding, *why);
    findings.push_back(std::move(finding));
  };
  for (const JointAngleResult& each : result.joints) add(joint_angle(line, each));
  add(ripple(line, result));
  if (result.clocking.matters)
    for (const ShaftClocking& each : result.clocking.shafts)
      if (each.matters) add(clocking_of(line, result.clocking, each));
  // A shaft is as long as it is made, wherever it wanders.
  for (const ShaftLengthResult& each : result.lengths) findings.push_back(length(line, each));
  add_off_line_findings(mechanism, findings);
  Findings drawn;
  add_slip_findings(mechanism, result, drawn);
  add_support_findings(mechanism, result, drawn);
  for (Finding& each : drawn) add(std::move(each));
  add_end_findings(mechanism, result, findings);
  add(shake_fit(line, result.misfit));
  if (!result.couples.crosses.empty()) add(couple(line, result.couples));
}

void add_waiting_shaft_findings(const Mechanism& mechanism, Findings& findings) {
  const Project& project = mechanism.project;
  if (mechanism.shaft_line || !project.shaft_line || project.shaft_line->joints.empty()) return;
  std::vector<std::string> missing;
  if (!project.column) missing.emplace_back("column");
  if (!project.steering_box) missing.emplace_back("steering_box");
  const std::string why = say("not_judged.shaft_line_waits", {{"members", listed(missing)}});
  for (const char* name : {"shaft.wander", "shaft.ripple", "shaft.column_end.insertion",
                           "shaft.box_end.insertion", "shaft.shake_fit", "shaft.push_back"})
    findings.push_back(not_yet(name, Station::shaft_line, why));
}

}  // namespace tackbench
