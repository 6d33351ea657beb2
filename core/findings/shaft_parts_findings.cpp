#include "core/findings/shaft_parts_findings.h"

#include <cmath>

#include "core/basics/wording.h"
#include "core/findings/shaft_words.h"

namespace tackbench {

namespace {

Finding engagement(const ShaftWords& line, const SlipResult& result) {
  const std::string name = "shaft." + line.shaft_part(result.shaft) + ".engagement";
  const WordingFields fields{{"shaft", line.shaft(result.shaft)},
                             {"index", std::to_string(result.shaft)}};
  if (!result.least_engagement)
    return not_yet(name, Station::shaft_line, say("not_judged.no_engagement", fields));
  if (!(result.diameter > 0.0))
    return not_yet(name, Station::shaft_line, say("not_judged.no_slip_diameter", fields));
  const double share = *result.least_engagement / result.diameter;
  OwnValue own;
  if (!result.wanted_is_common_practice)
    own = {result.wanted_engagement / result.diameter, std::nullopt,
           say("source.engagement_wanted"), Standing::builder};
  Finding finding =
      line.judge(name,
                 {quantity("engagement_diameters", share, Unit::number),
                  quantity("least_engagement", *result.least_engagement, Unit::millimetre),
                  quantity("engagement_as_drawn", *result.engagement, Unit::millimetre)},
                 line.limit("shaft.engagement", own));
  finding.worst_at = at_cab_shake(result.longest_shake_mm);
  finding.sentence = say("shaft.engagement", {{"shaft", line.shaft(result.shaft)},
                                              {"least", line.show.mm(*result.least_engagement)},
                                              {"diameters", line.show.text(share, Unit::number)}});
  finding.trace.formula = "least overlap = overlap as drawn - greatest growth over the cab's shake";
  finding.trace.source = say("source.engagement");
  finding.trace.steps = {
      step("least_engagement", "as drawn - growth",
           {quantity("engagement_as_drawn", *result.engagement, Unit::millimetre),
            quantity("growth", result.longest_change, Unit::millimetre),
            quantity("least_engagement", *result.least_engagement, Unit::millimetre)}),
      step("divide", "least overlap / diameter",
           {quantity("slip_diameter", result.diameter, Unit::millimetre),
            quantity("engagement_diameters", share, Unit::number)})};
  return finding;
}

Finding slip_left(const ShaftWords& line, const SlipResult& result) {
  const std::string name = "shaft." + line.shaft_part(result.shaft) + ".slip_left";
  if (!result.least_slide_in)
    return not_yet(name, Station::shaft_line,
                   say("not_judged.no_slide_in", {{"shaft", line.shaft(result.shaft)},
                                                  {"index", std::to_string(result.shaft)}}));
  Finding finding = line.judge(name,
                               {quantity("slide_in_left", *result.least_slide_in, Unit::millimetre),
                                quantity("shortening", -result.shortest_change, Unit::millimetre)},
                               line.limit("shaft.slip_left"));
  finding.worst_at = at_cab_shake(result.shortest_shake_mm);
  finding.sentence = say("shaft.slip_left", {{"shaft", line.shaft(result.shaft)},
                                             {"left", line.show.mm(*result.least_slide_in)}});
  finding.trace.formula = "left = slide-in as drawn - greatest shortening over the cab's shake";
  finding.trace.source = say("source.geometry");
  finding.trace.steps = {
      step("slide_in_left", "as drawn - shortening",
           {quantity("shortening", -result.shortest_change, Unit::millimetre),
            quantity("slide_in_left", *result.least_slide_in, Unit::millimetre)})};
  return finding;
}

std::string end_stem(const EndInYoke& end) {
  return std::string("shaft.") + (end.at_box ? "box_end." : "column_end.");
}

std::string end_words(const EndInYoke& end) {
  return say(end.at_box ? "word.box_end" : "word.column_end");
}

Finding insertion(const ShaftWords& line, const EndInYoke& end) {
  Finding finding = line.judge(end_stem(end) + "insertion",
                               {quantity("clear_of_cross", end.clear, Unit::millimetre),
                                quantity("end_to_centre", end.distance, Unit::millimetre)},
                               line.limit("shaft.insertion"));
  finding.sentence =
      say("shaft.insertion", {{"end", end_words(end)},
                              {"joint", line.joint(end.joint)},
                              {"clear", line.show.mm(std::abs(end.clear))},
                              {"way", say(end.clear >= 0.0 ? "word.short_of" : "word.inside")}});
  finding.trace.formula = "clear = end face to joint centre along the shaft - yoke depth";
  finding.trace.source = say("source.geometry");
  finding.trace.inputs = {quantity("end_to_centre", end.distance, Unit::millimetre)};
  finding.trace.steps = {step("clear_of_cross", "end to centre - yoke depth",
                              {quantity("clear_of_cross", end.clear, Unit::millimetre)})};
  return finding;
}

// The clamp's bolt crosses the bore: a shaft that ends before it is held by nothing.
Finding grip(const ShaftWords& line, const EndInYoke& end) {
  const std::string name = end_stem(end) + "grip";
  if (!(end.grip_length > 0.0))
    return not_yet(name, Station::shaft_line,
                   say("not_judged.no_grip_length",
                       {{"joint", line.joint(end.joint)}, {"index", std::to_string(end.joint)}}));
  const double share = end.gripped / end.grip_length;
  const std::vector<Quantity> numbers{quantity("gripped_share", share, Unit::percent),
                                      quantity("gripped", end.gripped, Unit::millimetre),
                                      quantity("grip_length", end.grip_length, Unit::millimetre)};
  Finding finding = line.judge(name, numbers, line.limit("shaft.end_grip"));
  const WordingFields fields{{"end", end_words(end)},
                             {"joint", line.joint(end.joint)},
                             {"gripped", line.show.mm(end.gripped)},
                             {"grip", line.show.mm(end.grip_length)}};
  finding.sentence = say(end.gripped > 0.0 ? "shaft.end_grip" : "shaft.end_not_gripped", fields);
  finding.trace.formula =
      "gripped = grip length - clear of the cross, from none to the grip length";
  finding.trace.source = say("source.geometry");
  finding.trace.inputs = {quantity("clear_of_cross", end.clear, Unit::millimetre)};
  finding.trace.steps = {step("gripped", "gripped / grip length", numbers)};
  return finding;
}

Finding off_axis(const ShaftWords& line, const EndInYoke& end) {
  Finding finding =
      line.judge(end_stem(end) + "off_axis", {quantity("off_axis", end.off_axis, Unit::millimetre)},
                 line.limit("shaft.end_off_axis"));
  finding.sentence = say("shaft.end_off_axis", {{"end", end_words(end)},
                                                {"joint", capitalised(line.joint(end.joint))},
                                                {"off", line.show.mm(end.off_axis)}});
  finding.trace.formula = "distance of the joint's centre from the axis of column or box input";
  finding.trace.source = say("source.geometry");
  finding.trace.steps = {step("off_axis", "|to end - its part along the axis|",
                              {quantity("end_to_centre", end.distance, Unit::millimetre),
                               quantity("off_axis", end.off_axis, Unit::millimetre)})};
  return finding;
}

Finding swing(const ShaftWords& line, const SupportResult& result) {
  Finding finding = line.judge(
      "shaft.support." + line.support_part(result.support) + ".swing",
      {quantity("tilt", result.worst_tilt, Unit::degree)},
      line.limit("shaft.support_swing",
                 {std::nullopt, result.swing_limit, say("source.maker_sheet"), Standing::maker}));
  finding.worst_at = at_cab_shake(result.worst_shake_mm);
  finding.sentence = say("shaft.support_swing", {{"support", line.support(result.support)},
                                                 {"tilt", line.show.degrees(result.worst_tilt)}});
  finding.trace.formula = "tilt = angle between the shaft as drawn and with the cab shaken";
  finding.trace.source = say("source.geometry");
  finding.trace.steps = {step("worst_over_shake",
                              "the same with the cab at each corner of its shake",
                              {quantity("tilt", result.worst_tilt, Unit::degree)})};
  return finding;
}

Finding load(const ShaftWords& line, const CouplesResult& couples, const SupportLoad& result) {
  const std::string name = "shaft.support." + line.support_part(result.support) + ".load";
  const std::string support = line.support(result.support);
  if (!couples.torque_given)
    return not_yet(name, Station::shaft_line,
                   say("not_judged.no_rim_force", {{"support", support}}));
  if (!result.known)
    return not_yet(name, Station::shaft_line,
                   say("not_judged.load_by_statics", {{"support", support}}));
  Finding finding = line.judge(name, {quantity("support_load", result.sideways, Unit::newton)},
                               line.limit("shaft.support_load"));
  const WordingFields fields{{"support", support},
                             {"load", line.show.text(result.sideways, Unit::newton)},
                             {"torque", line.show.text(couples.torque, Unit::newton_metre)}};
  finding.sentence = say("shaft.support_load", fields);
  finding.trace.formula =
      "moments at every joint by T tan b and T sin b; the eye's force that keeps the line in "
      "balance";
  finding.trace.source = say("source.couples");
  finding.trace.inputs = {quantity("torque", couples.torque, Unit::newton_metre)};
  finding.trace.steps = {step("support_load", "greatest over a turn, by statics",
                              {quantity("support_load", result.sideways, Unit::newton)})};
  return finding;
}

}  // namespace

void add_slip_findings(const Mechanism& mechanism, const ShaftCheck& result, Findings& findings) {
  const ShaftWords line(mechanism);
  for (const SlipResult& each : result.slips) {
    findings.push_back(engagement(line, each));
    findings.push_back(slip_left(line, each));
  }
}

void add_end_findings(const Mechanism& mechanism, const ShaftCheck& result, Findings& findings) {
  const ShaftWords line(mechanism);
  for (const EndInYoke& each : result.ends) {
    findings.push_back(insertion(line, each));
    findings.push_back(grip(line, each));
    findings.push_back(off_axis(line, each));
  }
}

void add_off_line_findings(const Mechanism& mechanism, Findings& findings) {
  const ShaftWords line(mechanism);
  for (const DrawnSupport& support : mechanism.shaft_line->supports) {
    Finding finding =
        line.judge("shaft.support." + line.support_part(support.support) + ".off_line",
                   {quantity("off_line", support.off_line, Unit::millimetre)},
                   line.limit("shaft.support_off_line"));
    const int shaft = mechanism.shaft_line->spans[static_cast<std::size_t>(support.span)].shaft;
    finding.sentence = say("shaft.support_off_line", {{"support", line.support(support.support)},
                                                      {"off", line.show.mm(support.off_line)},
                                                      {"shaft", line.shaft(shaft)}});
    finding.trace.formula =
        "distance of the eye from the straight line between the joints of its shaft";
    finding.trace.source = say("source.geometry");
    finding.trace.inputs = joined(point_numbers("eye", support.eye_mm),
                                  point_numbers("eye_on_line", support.on_line_mm));
    finding.trace.steps = {step("off_line", "sqrt(dx^2 + dy^2 + dz^2)",
                                {quantity("off_line", support.off_line, Unit::millimetre)})};
    findings.push_back(std::move(finding));
  }
}

void add_support_findings(const Mechanism& mechanism, const ShaftCheck& result,
                          Findings& findings) {
  const ShaftWords line(mechanism);
  for (const SupportResult& each : result.supports) findings.push_back(swing(line, each));
  for (const SupportLoad& each : result.couples.supports)
    findings.push_back(load(line, result.couples, each));
}

}  // namespace tackbench
