// What happens when box and firewall are pushed back.
#include "core/basics/wording.h"
#include "core/findings/builders.h"
#include "core/findings/line_as_drawn.h"
#include "core/findings/shaft_words.h"

namespace tackbench {

namespace {

std::string member(const char* list, std::size_t index, const char* name) {
  return std::string("shaft_line.") + list + "[" + std::to_string(index) + "]." + name;
}

// Everything for which the push as followed is not what would happen.
std::vector<std::string> reasons(const ShaftWords& line, const PushBack& result,
                                 const WanderingShaft& wandering) {
  std::vector<std::string> all;
  const ShaftLineStation& station = line.station;
  if (const std::optional<std::string> why = why_not_as_drawn(line.mechanism, wandering))
    all.push_back(*why);
  if (!(station.push_back.value_or(0.0) > 0.0)) all.push_back(say("not_judged.no_push"));
  std::vector<std::string> members;
  for (std::size_t i = 0; i < station.joints.size(); ++i)
    if (!station.joints[i].angle_limit) members.push_back(member("joints", i, "angle_limit_deg"));
  if (!members.empty())
    all.push_back(say("not_judged.no_angle_limits", {{"members", listed(members)}}));
  if (result.limit_reached_at)
    all.push_back(say("not_judged.joint_limit_reached",
                      {{"pushed", line.show.mm(*result.limit_reached_at)}}));
  members.clear();
  for (std::size_t i = 0; i < station.shafts.size(); ++i)
    if (station.shafts[i].slip != SlipKind::none && !station.shafts[i].slide_in_left)
      members.push_back(member("shafts", i, "slide_in_left_mm"));
  if (!members.empty())
    all.push_back(say("not_judged.slide_unknown", {{"members", listed(members)}}));
  std::vector<std::string> closed;
  for (const int shaft : result.slides_closed)
    if (station.shafts[static_cast<std::size_t>(shaft)].slide_in_left)
      closed.push_back(line.shaft(shaft));
  if (!closed.empty()) all.push_back(say("not_judged.slip_closed", {{"shafts", listed(closed)}}));
  return all;
}

std::string joined_words(const std::vector<std::string>& parts) {
  std::string text;
  for (const std::string& part : parts) text += (text.empty() ? "" : "; ") + part;
  return text;
}

Trace push_trace(const PushBack& result) {
  Trace trace;
  trace.formula =
      "the chain followed in stages as box and firewall move rearward: slips "
      "close, joints fold, what is left drives the column";
  trace.source = say("source.geometry");
  for (const PushBackStep& stage : result.steps) {
    std::vector<Quantity> numbers{quantity("pushed", stage.pushed, Unit::millimetre),
                                  quantity("column_driven", stage.column_driven, Unit::millimetre)};
    for (const double used : stage.slide_used)
      numbers.push_back(quantity("slide_used", used, Unit::millimetre));
    trace.steps.push_back(step("push_stage", "lengths kept, slips closing", std::move(numbers)));
  }
  trace.steps.push_back(
      step("hand_wheel_rearward", "column driven - collapse, along -X",
           {quantity("collapse_used", result.collapse_used, Unit::millimetre),
            quantity("hand_wheel_rearward", result.hand_wheel_rearward, Unit::millimetre)}));
  return trace;
}

}  // namespace

void add_push_back_finding(const Mechanism& mechanism, const std::optional<PushBack>& result,
                           const WanderingShaft& wandering, Findings& findings) {
  if (mechanism.shaft_line->station.joints.empty()) return;
  const ShaftWords line(mechanism);
  if (!result) {
    findings.push_back(
        not_yet("shaft.push_back", Station::shaft_line, say("not_judged.no_push_back")));
    return;
  }
  Finding finding =
      line.judge("shaft.push_back",
                 {quantity("hand_wheel_rearward", result->hand_wheel_rearward, Unit::millimetre),
                  quantity("pushed", result->pushed, Unit::millimetre),
                  quantity("column_driven", result->column_driven, Unit::millimetre),
                  quantity("collapse_used", result->collapse_used, Unit::millimetre)},
                 line.limit("shaft.push_back"));
  finding.caution = say("caution.push_back");
  const WordingFields fields{{"pushed", line.show.mm(result->pushed)},
                             {"moves", line.show.mm(result->hand_wheel_rearward)},
                             {"driven", line.show.mm(result->column_driven)}};
  finding.sentence = say(result->whole_way ? "shaft.push_back" : "shaft.push_back_stuck", fields);
  if (!result->whole_way) {
    finding.verdict = Verdict::past;
    finding.why_not_judged.clear();
  }
  if (result->limit_reached_at)
    finding.numbers.push_back(
        quantity("joint_limit_reached_at", *result->limit_reached_at, Unit::millimetre));
  if (const std::vector<std::string> why = reasons(line, *result, wandering); !why.empty()) {
    leave_open(finding, joined_words(why));
    const bool past = finding.verdict == Verdict::past;
    finding.sentence += " " + say(past ? "shaft.push_back_even_so" : "shaft.push_back_open",
                                  {{"why", joined_words(why)}});
  }
  finding.trace = push_trace(*result);
  findings.push_back(std::move(finding));
}

}  // namespace tackbench
