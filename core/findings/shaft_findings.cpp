// Findings of the shaft check: angles, ripple, clocking, slips, ends, supports, couples.
#include <algorithm>
#include <cmath>

#include "core/basics/wording.h"
#include "core/findings/build_finding.h"
#include "core/findings/builders.h"
#include "core/findings/limits.h"

namespace tackbench {

namespace {

struct Line {
  const Mechanism& mechanism;
  const ShaftLineStation& station;
  ShownFor show;

  explicit Line(const Mechanism& compiled)
      : mechanism(compiled), station(compiled.shaft_line->station), show(compiled.project) {}

  std::string joint(int index) const {
    return spoken(station.joints[std::size_t(index)].name, say("word.joint"), std::size_t(index));
  }
  std::string shaft(int index) const {
    return spoken(station.shafts[std::size_t(index)].name, say("word.shaft"), std::size_t(index));
  }
  std::string support(int index) const {
    return spoken(station.supports[std::size_t(index)].name, say("word.support"),
                  std::size_t(index));
  }
  std::string joint_part(int index) const {
    return name_part(station.joints[std::size_t(index)].name, std::size_t(index));
  }
  std::string shaft_part(int index) const {
    return name_part(station.shafts[std::size_t(index)].name, std::size_t(index));
  }
  std::string support_part(int index) const {
    return name_part(station.supports[std::size_t(index)].name, std::size_t(index));
  }
  Limit limit(const char* name) const { return limit_for(mechanism.project, name); }
  Limit limit(const char* name, const OwnValue& own) const {
    return limit_from(mechanism.project, name, own);
  }
  Finding judge(std::string name, std::vector<Quantity> numbers, Limit by) const {
    return judged(std::move(name), Station::shaft_line, std::move(numbers), std::move(by),
                  show.lengths());
  }
};

Finding joint_angle(const Line& line, const JointAngleResult& result) {
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
  if (!result.held) finding.caution = say("caution.joint_not_held");
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
TraceStep cross_step(const Line& line, const CrossPose& cross) {
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

Finding ripple(const Line& line, const ShaftCheck& result) {
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

Finding clocking_of(const Line& line, const ClockingResult& all, const ShaftClocking& result) {
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
  finding.sentence =
      say("shaft.clocking", {{"shaft", capitalised(line.shaft(result.shaft))},
                             {"drawn", line.show.degrees(result.as_drawn)},
                             {"ideal", line.show.degrees(result.ideal)},
                             {"nearest", line.show.degrees(result.nearest)},
                             {"ripple", line.show.text(all.ripple_nearest, Unit::percent)}});
  if (result.by == ClockingBy::makers_cut) finding.caution = say("caution.double_d_cut");
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

Finding length(const Line& line, const ShaftLengthResult& result) {
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

void add_slip(const Line& line, const SlipResult& result, Findings& findings) {
  const std::string shaft = line.shaft(result.shaft);
  const std::string stem = "shaft." + line.shaft_part(result.shaft);
  if (result.least_engagement && result.diameter > 0.0) {
    const double share = *result.least_engagement / result.diameter;
    OwnValue own;
    if (!result.wanted_is_common_practice)
      own = {result.wanted_engagement / result.diameter, std::nullopt,
             say("source.engagement_wanted"), Standing::builder};
    Finding finding =
        line.judge(stem + ".engagement",
                   {quantity("engagement_diameters", share, Unit::number),
                    quantity("least_engagement", *result.least_engagement, Unit::millimetre),
                    quantity("engagement_as_drawn", *result.engagement, Unit::millimetre)},
                   line.limit("shaft.engagement", own));
    finding.worst_at = at_cab_shake(result.longest_shake_mm);
    finding.sentence =
        say("shaft.engagement", {{"shaft", shaft},
                                 {"least", line.show.mm(*result.least_engagement)},
                                 {"diameters", line.show.text(share, Unit::number)}});
    finding.trace.formula =
        "least overlap = overlap as drawn - greatest growth over the cab's "
        "shake";
    finding.trace.source = say("source.engagement");
    finding.trace.steps = {
        step("least_engagement", "as drawn - growth",
             {quantity("engagement_as_drawn", *result.engagement, Unit::millimetre),
              quantity("growth", result.longest_change, Unit::millimetre),
              quantity("least_engagement", *result.least_engagement, Unit::millimetre)}),
        step("divide", "least overlap / diameter",
             {quantity("slip_diameter", result.diameter, Unit::millimetre),
              quantity("engagement_diameters", share, Unit::number)})};
    findings.push_back(std::move(finding));
  } else {
    findings.push_back(not_yet(stem + ".engagement", Station::shaft_line,
                               say("not_judged.no_engagement", {{"shaft", shaft}})));
  }
  if (!result.least_slide_in) return;
  Finding finding = line.judge(stem + ".slip_left",
                               {quantity("slide_in_left", *result.least_slide_in, Unit::millimetre),
                                quantity("shortening", -result.shortest_change, Unit::millimetre)},
                               line.limit("shaft.slip_left"));
  finding.worst_at = at_cab_shake(result.shortest_shake_mm);
  finding.sentence =
      say("shaft.slip_left", {{"shaft", shaft}, {"left", line.show.mm(*result.least_slide_in)}});
  finding.trace.formula = "left = slide-in as drawn - greatest shortening over the cab's shake";
  finding.trace.source = say("source.geometry");
  finding.trace.steps = {
      step("slide_in_left", "as drawn - shortening",
           {quantity("shortening", -result.shortest_change, Unit::millimetre),
            quantity("slide_in_left", *result.least_slide_in, Unit::millimetre)})};
  findings.push_back(std::move(finding));
}

Finding insertion(const Line& line, const EndInYoke& end) {
  Finding finding =
      line.judge(std::string("shaft.") + (end.at_box ? "box_end" : "column_end") + ".insertion",
                 {quantity("clear_of_cross", end.clear, Unit::millimetre),
                  quantity("gripped", end.gripped, Unit::millimetre),
                  quantity("grip_length", end.grip_length, Unit::millimetre),
                  quantity("off_axis", end.off_axis, Unit::millimetre)},
                 line.limit("shaft.insertion"));
  finding.sentence =
      say("shaft.insertion", {{"end", end.at_box ? say("word.box_end") : say("word.column_end")},
                              {"joint", line.joint(end.joint)},
                              {"clear", line.show.mm(std::abs(end.clear))},
                              {"way", end.clear >= 0.0 ? say("word.short_of") : say("word.inside")},
                              {"gripped", line.show.mm(end.gripped)},
                              {"grip", line.show.mm(end.grip_length)}});
  finding.trace.formula = "clear = end face to joint centre along the shaft - yoke depth";
  finding.trace.source = say("source.geometry");
  finding.trace.inputs = {quantity("end_to_centre", end.distance, Unit::millimetre)};
  finding.trace.steps = {step("clear_of_cross", "end to centre - yoke depth",
                              {quantity("clear_of_cross", end.clear, Unit::millimetre)})};
  return finding;
}

Finding support_swing(const Line& line, const SupportResult& result) {
  Finding finding = line.judge(
      "shaft.support." + line.support_part(result.support) + ".swing",
      {quantity("tilt", result.worst_tilt, Unit::degree),
       quantity("off_line", result.off_line, Unit::millimetre)},
      line.limit("shaft.support_swing",
                 {std::nullopt, result.swing_limit, say("source.maker_sheet"), Standing::maker}));
  finding.worst_at = at_cab_shake(result.worst_shake_mm);
  finding.sentence = say("shaft.support_swing", {{"support", line.support(result.support)},
                                                 {"tilt", line.show.degrees(result.worst_tilt)}});
  finding.trace.formula = "tilt = angle between the shaft as drawn and with the cab shaken";
  finding.trace.source = say("source.geometry");
  finding.trace.steps = {step("worst_over_shake",
                              "the same with the cab at each corner of its "
                              "shake",
                              {quantity("tilt", result.worst_tilt, Unit::degree)})};
  return finding;
}

Finding shake_fit(const Line& line, const ShakeMisfit& misfit) {
  Finding finding = line.judge("shaft.shake_fit",
                               {quantity("length_missing", misfit.worst, Unit::millimetre),
                                quantity("places_that_bind", misfit.places, Unit::count)},
                               line.limit("shaft.shake_fit"));
  finding.worst_at = at_cab_shake(misfit.worst_shake_mm);
  finding.sentence = misfit.places == 0
                         ? say("shaft.shake_fits")
                         : say("shaft.shake_binds", {{"missing", line.show.mm(misfit.worst)}});
  finding.trace.formula =
      "at each corner of the cab's shake the joints must keep the shafts' fixed "
      "lengths";
  finding.trace.source = say("source.geometry");
  finding.trace.steps = {step("shake_fit", "greatest length that is missing",
                              {quantity("length_missing", misfit.worst, Unit::millimetre)})};
  return finding;
}

void add_couples(const Line& line, const CouplesResult& result, Findings& findings) {
  if (result.crosses.empty()) return;
  const auto worst = std::max_element(
      result.crosses.begin(), result.crosses.end(),
      [](const CrossCouple& a, const CrossCouple& b) { return a.hand_side < b.hand_side; });
  const Unit unit = result.torque_given ? Unit::newton_metre : Unit::number;
  Finding finding = line.judge("shaft.couple",
                               {quantity("couple_hand_side", worst->hand_side, unit),
                                quantity("couple_road_side", worst->road_side, unit)},
                               line.limit("shaft.couple"));
  const WordingFields fields{{"joint", line.joint(worst->joint)},
                             {"couple", line.show.text(worst->hand_side, unit)},
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
  findings.push_back(std::move(finding));
}

}  // namespace

void add_shaft_findings(const Mechanism& mechanism, const ShaftCheck& result, Findings& findings) {
  const Line line(mechanism);
  if (line.station.joints.empty()) return;
  for (const JointAngleResult& each : result.joints) findings.push_back(joint_angle(line, each));
  findings.push_back(ripple(line, result));
  if (result.clocking.matters)
    for (const ShaftClocking& each : result.clocking.shafts)
      if (each.matters) findings.push_back(clocking_of(line, result.clocking, each));
  for (const ShaftLengthResult& each : result.lengths) findings.push_back(length(line, each));
  for (const SlipResult& each : result.slips) add_slip(line, each, findings);
  for (const EndInYoke& each : result.ends) findings.push_back(insertion(line, each));
  for (const SupportResult& each : result.supports) findings.push_back(support_swing(line, each));
  findings.push_back(shake_fit(line, result.misfit));
  add_couples(line, result.couples, findings);
}

}  // namespace tackbench
