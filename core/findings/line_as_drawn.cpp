#include "core/findings/line_as_drawn.h"

#include "core/basics/wording.h"
#include "core/checks/shaft_check.h"
#include "core/findings/shaft_words.h"

namespace tackbench {

namespace {

// Joints with a cross that lengths and supports do not hold, each once.
std::vector<std::string> loose_joints(const ShaftWords& words) {
  std::vector<std::string> loose;
  int last = -1;
  for (const DrawnCross& cross : words.mechanism.shaft_line->crosses) {
    if (cross.held || cross.joint == last) continue;
    last = cross.joint;
    loose.push_back(words.joint(cross.joint));
  }
  return loose;
}

}  // namespace

std::optional<std::string> why_not_built_so(const Mechanism& mechanism) {
  const ShaftWords words(mechanism);
  const ShaftLine& line = *mechanism.shaft_line;
  std::vector<std::string> beside;
  const Limit eyes = words.limit("shaft.support_off_line");
  for (const DrawnSupport& support : line.supports) {
    if (judge(support.off_line, eyes) != Verdict::past) continue;
    const int shaft = line.spans[static_cast<std::size_t>(support.span)].shaft;
    beside.push_back(say("place.eye_beside", {{"support", words.support(support.support)},
                                              {"off", words.show.mm(support.off_line)},
                                              {"shaft", words.shaft(shaft)}}));
  }
  const Limit ends = words.limit("shaft.end_off_axis");
  for (const EndInYoke& end : ends_in_yokes(line)) {
    if (judge(end.off_axis, ends) != Verdict::past) continue;
    beside.push_back(
        say("place.joint_beside", {{"joint", words.joint(end.joint)},
                                   {"off", words.show.mm(end.off_axis)},
                                   {"end", say(end.at_box ? "word.box_end" : "word.column_end")}}));
  }
  if (beside.empty()) return std::nullopt;
  return say("not_judged.not_built_so", {{"beside", listed(beside)}});
}

std::optional<std::string> why_not_as_drawn(const Mechanism& mechanism,
                                            const WanderingShaft& wandering) {
  if (std::optional<std::string> beside = why_not_built_so(mechanism)) return beside;
  if (wandering.free_ways == 0) return std::nullopt;
  if (wandering.in_line) return say("not_judged.line_in_line");
  std::vector<std::string> loose = loose_joints(ShaftWords(mechanism));
  if (loose.empty()) loose.push_back(say("word.hand_wheel"));
  return say("not_judged.one_of_many", {{"joints", listed(loose)}});
}

}  // namespace tackbench
