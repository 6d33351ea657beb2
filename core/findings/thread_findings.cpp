// Can the drag link's tube be threaded for its ends, and does enough of it stay outside the thread?
#include "core/basics/wording.h"
#include "core/checks/metric_thread.h"
#include "core/findings/build_finding.h"
#include "core/findings/builders.h"
#include "core/findings/limits.h"

namespace tackbench {

namespace {

struct ThreadedEnd {
  const Mechanism& mechanism;
  const LinkTube& tube;
  const Thread& thread;
  std::string part;  // of the finding's name
  std::string words;
};

Finding bore(const ThreadedEnd& end) {
  const ShownFor show(end.mechanism.project);
  const double drawn = end.tube.outside_diameter - 2.0 * end.tube.wall;
  const double most = largest_tapping_bore(end.thread);
  const std::vector<Quantity> numbers{quantity("bore_spare", most - drawn, Unit::millimetre),
                                      quantity("tube_bore", drawn, Unit::millimetre),
                                      quantity("largest_tapping_bore", most, Unit::millimetre)};
  Finding finding = judged("link.tube_bore." + end.part, Station::drag_link, numbers,
                           limit_for(end.mechanism.project, "link.tube_bore"), show.lengths());
  const WordingFields fields{{"end", end.words},
                             {"bore", show.mm(drawn)},
                             {"thread", designation(end.thread)},
                             {"most", show.mm(most)}};
  finding.sentence = say(most >= drawn ? "link.tube_bore" : "link.tube_bore_too_large", fields);
  finding.trace.formula =
      "bore = outside diameter - 2 wall; at most the thread's inner diameter with its tolerance: "
      "d - 1.082532 P + 0.23 P^0.7";
  finding.trace.source = say("source.thread_bore");
  finding.trace.inputs = {
      quantity("tube_outside_diameter", end.tube.outside_diameter, Unit::millimetre),
      quantity("tube_wall", end.tube.wall, Unit::millimetre),
      quantity("thread_diameter", end.thread.diameter, Unit::millimetre),
      quantity("thread_pitch", end.thread.pitch, Unit::millimetre)};
  finding.trace.steps = {step("bore_spare", "largest tapping bore - bore", numbers)};
  return finding;
}

Finding wall(const ThreadedEnd& end) {
  const ShownFor show(end.mechanism.project);
  const double outside = end.tube.outside_diameter;
  const double major = end.thread.diameter;
  const double left = outside > major ? kPi / 4.0 * (outside * outside - major * major) : 0.0;
  const double shank = stress_area(end.thread);
  const std::vector<Quantity> numbers{
      quantity("area_share", left / shank, Unit::number),
      quantity("wall_outside_thread", 0.5 * (outside - major), Unit::millimetre)};
  Finding finding = judged("link.tube_wall." + end.part, Station::drag_link, numbers,
                           limit_for(end.mechanism.project, "link.tube_wall"), show.lengths());
  finding.sentence = say("link.tube_wall", {{"end", end.words},
                                            {"wall", show.mm(0.5 * (outside - major))},
                                            {"thread", designation(end.thread)},
                                            {"share", show.text(left / shank, Unit::number)}});
  finding.trace.formula =
      "pi/4 (outside^2 - thread^2) over the shank's stress area pi/4 (d - 0.938194 P)^2";
  finding.trace.source = say("source.stress_area");
  finding.trace.inputs = {quantity("tube_outside_diameter", outside, Unit::millimetre),
                          quantity("thread_diameter", major, Unit::millimetre),
                          quantity("thread_pitch", end.thread.pitch, Unit::millimetre)};
  finding.trace.steps = {step("area_share", "area left outside the thread / stress area", numbers)};
  return finding;
}

}  // namespace

void add_thread_findings(const Mechanism& mechanism, Findings& findings) {
  if (!mechanism.project.drag_link) return;
  const DragLinkStation& link = *mechanism.project.drag_link;
  const auto add = [&](const LinkEnd& end, const char* part, const std::string& words) {
    if (!link.tube || !end.thread) {
      const std::string member =
          link.tube ? "drag_link." + std::string(part) + ".thread" : std::string("drag_link.tube");
      for (const char* name : {"link.tube_bore.", "link.tube_wall."})
        findings.push_back(
            not_yet(std::string(name) + part, Station::drag_link,
                    say("not_judged.no_tube_thread", {{"end", words}, {"member", member}})));
      return;
    }
    const ThreadedEnd threaded{mechanism, *link.tube, *end.thread, part, words};
    findings.push_back(bore(threaded));
    findings.push_back(wall(threaded));
  };
  add(link.arm_end, "arm_end", say("word.arm_end"));
  add(link.knuckle_end, "knuckle_end", say("word.knuckle_end"));
}

}  // namespace tackbench
