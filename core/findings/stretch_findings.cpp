#include <algorithm>
#include <cmath>

#include "core/basics/wording.h"
#include "core/findings/build_finding.h"
#include "core/findings/builders.h"
#include "core/findings/limits.h"

namespace tackbench {

namespace {

// Closed and open length are two limits of one pair: the end that is worse off is judged, and of
// two that fare alike the one with less to spare.
bool least_is_worse(const StretchResult& result) {
  if (!result.greatest_allowed) return true;
  if (!result.least_allowed) return false;
  return result.least - *result.least_allowed <= *result.greatest_allowed - result.greatest;
}

std::string finding_name(const StretchPair& pair, std::size_t index) {
  return "stretch." + name_part(pair.name, index);
}

bool rides(const StretchPair& pair, RidesOn body) {
  return pair.from.rides_on == body || pair.to.rides_on == body;
}

// What is not measured of the bodies that carry the pair; empty when all of it is.
std::vector<std::string> missing_bodies(const Project& project, const StretchPair& pair) {
  const bool on_knuckle = rides(pair, RidesOn::left_knuckle) || rides(pair, RidesOn::right_knuckle);
  std::vector<std::string> missing;
  if (rides(pair, RidesOn::cab) && !project.cab) missing.emplace_back("cab");
  if ((on_knuckle || rides(pair, RidesOn::axle)) && !project.front_axle)
    missing.emplace_back("front_axle");
  if (on_knuckle && !project.steering_box) missing.emplace_back("steering_box");
  if (on_knuckle && project.steering_box && !project.steering_box->left_turns_arm)
    missing.emplace_back("steering_box.left_turns_arm");
  if (on_knuckle && !project.drag_link) missing.emplace_back("drag_link");
  return missing;
}

Finding waiting(const Mechanism& mechanism, const StretchPair& pair, std::size_t index) {
  const std::vector<std::string> missing = missing_bodies(mechanism.project, pair);
  const std::string name = spoken(pair.name, say("word.stretch_pair"), index);
  return not_yet(finding_name(pair, index), Station::shapes,
                 missing.empty() ? say("not_judged.stretch_not_posed", {{"name", name}})
                                 : say("not_judged.stretch_waits",
                                       {{"name", name}, {"members", listed(missing)}}));
}

Finding stretch(const Mechanism& mechanism, const StretchResult& result) {
  const std::size_t index = result.pair;
  const StretchPair& pair = mechanism.project.shapes->stretch_pairs[index];
  const ShownFor show(mechanism.project);
  Quantity least = quantity("least_distance", result.least, Unit::millimetre);
  Quantity greatest = quantity("greatest_distance", result.greatest, Unit::millimetre);
  const bool by_least = least_is_worse(result);
  std::vector<Quantity> numbers{by_least ? least : greatest, by_least ? greatest : least,
                                quantity("distance_as_drawn", result.as_drawn, Unit::millimetre)};
  Finding finding = judged(finding_name(pair, index), Station::shapes, std::move(numbers),
                           limit_from(mechanism.project, "stretch",
                                      {result.least_allowed, result.greatest_allowed,
                                       say("source.maker_sheet"), Standing::maker}),
                           show.lengths());
  if (!result.locks_known) leave_open(finding, say("not_judged.stretch_locks"));
  finding.worst_at = by_least ? result.least_at : result.greatest_at;
  finding.sentence =
      say("stretch", {{"name", capitalised(spoken(result.name, say("word.stretch_pair"), index))},
                      {"least", show.mm(result.least)},
                      {"greatest", show.mm(result.greatest)},
                      {"drawn", show.mm(result.as_drawn)}});
  finding.trace.formula = "distance between the two points, each carried by its own body";
  finding.trace.source = say("source.distance");
  finding.trace.steps = {
      step("as_drawn", "straight ahead at ride height",
           {quantity("distance_as_drawn", result.as_drawn, Unit::millimetre)}),
      step("least_over_motion", "searched over hand wheel, bumps and cab shake",
           {quantity("least_distance", result.least, Unit::millimetre),
            quantity("hand_wheel", result.least_at.hand_wheel, Unit::degree),
            quantity("bump_left", result.least_at.bump_left, Unit::millimetre),
            quantity("bump_right", result.least_at.bump_right, Unit::millimetre)}),
      step("greatest_over_motion", "searched over hand wheel, bumps and cab shake",
           {quantity("greatest_distance", result.greatest, Unit::millimetre),
            quantity("hand_wheel", result.greatest_at.hand_wheel, Unit::degree),
            quantity("bump_left", result.greatest_at.bump_left, Unit::millimetre),
            quantity("bump_right", result.greatest_at.bump_right, Unit::millimetre)})};
  return finding;
}

}  // namespace

void add_stretch_findings(const Mechanism& mechanism, const std::vector<StretchResult>& results,
                          Findings& findings) {
  if (!mechanism.project.shapes) return;
  const std::vector<StretchPair>& pairs = mechanism.project.shapes->stretch_pairs;
  for (std::size_t i = 0; i < pairs.size(); ++i) {
    const auto found = std::find_if(results.begin(), results.end(),
                                    [i](const StretchResult& each) { return each.pair == i; });
    const bool known =
        found != results.end() && missing_bodies(mechanism.project, pairs[i]).empty();
    findings.push_back(known ? stretch(mechanism, *found) : waiting(mechanism, pairs[i], i));
  }
}

}  // namespace tackbench
