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

Finding stretch(const Mechanism& mechanism, const StretchResult& result, std::size_t index) {
  const ShownFor show(mechanism.project);
  Quantity least = quantity("least_distance", result.least, Unit::millimetre);
  Quantity greatest = quantity("greatest_distance", result.greatest, Unit::millimetre);
  const bool by_least = least_is_worse(result);
  std::vector<Quantity> numbers{by_least ? least : greatest, by_least ? greatest : least,
                                quantity("distance_as_drawn", result.as_drawn, Unit::millimetre)};
  Finding finding =
      judged("stretch." + name_part(result.name, index), Station::shapes, std::move(numbers),
             limit_from(mechanism.project, "stretch",
                        {result.least_allowed, result.greatest_allowed, say("source.maker_sheet"),
                         Standing::maker}),
             show.lengths());
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
  for (std::size_t i = 0; i < results.size(); ++i)
    findings.push_back(stretch(mechanism, results[i], i));
}

}  // namespace tackbench
