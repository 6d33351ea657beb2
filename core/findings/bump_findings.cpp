#include <cmath>

#include "core/basics/wording.h"
#include "core/findings/build_finding.h"
#include "core/findings/builders.h"
#include "core/findings/limits.h"
#include "core/findings/steering_trace.h"

namespace tackbench {

namespace {

// Controls for one row of a curve.
Controls controls_at(const Mechanism& mechanism, BumpMotion motion, double at) {
  Controls controls;
  switch (motion) {
    case BumpMotion::heave:
      controls.bump_left = at;
      controls.bump_right = at;
      break;
    case BumpMotion::roll: {
      const double rise = mechanism.suspension->half_track * std::sin(at);
      controls.bump_left = rise;
      controls.bump_right = -rise;
      break;
    }
    case BumpMotion::wind_up:
      controls.wind_up = at;
      break;
  }
  return controls;
}

// The axle's place there and the linkage solved in it, arm held.
std::vector<TraceStep> steps_at(const Mechanism& mechanism, const Controls& controls) {
  const Pose pose = solved_pose(mechanism, controls);
  const AxlePose& axle = pose.axle;
  std::vector<TraceStep> steps{step("axle_place",
                                    "the suspension's path at that rise, roll and wind-up",
                                    {quantity("bump_left", controls.bump_left, Unit::millimetre),
                                     quantity("bump_right", controls.bump_right, Unit::millimetre),
                                     quantity("axle_dx", axle.dx, Unit::millimetre),
                                     quantity("axle_dy", axle.dy, Unit::millimetre),
                                     quantity("axle_dz", axle.dz, Unit::millimetre),
                                     quantity("axle_roll", axle.roll, Unit::degree),
                                     quantity("axle_pitch", axle.pitch, Unit::degree),
                                     quantity("axle_yaw", axle.yaw, Unit::degree)})};
  append(steps, steering_steps(mechanism, mechanism.steering->straight_arm, axle));
  return steps;
}

Trace curve_trace(const Mechanism& mechanism, BumpMotion motion, double at, double greatest) {
  Trace trace;
  trace.formula =
      "change = mean steer with the axle moved and the hand wheel held - mean steer at "
      "ride height";
  trace.source = say("source.bump");
  trace.steps = steps_at(mechanism, controls_at(mechanism, motion, at));
  trace.steps.push_back(step("mean_steer", "(left + right) / 2, less the same at ride height (0)",
                             {quantity("steer_change", greatest, Unit::degree)}));
  return trace;
}

// The nearest rows on both sides of ride height, for the rate by hand.
Trace rate_trace(const Mechanism& mechanism, const BumpCurve& curve, double steer_rate) {
  Trace trace;
  trace.formula = "rate = change of mean steer over change of rise at ride height x 25";
  trace.source = say("source.bump");
  const BumpRow* below = nullptr;
  const BumpRow* above = nullptr;
  for (const BumpRow& row : curve.rows) {
    if (!row.solved) continue;
    if (row.at < -1e-9) below = &row;
    if (row.at > 1e-9 && !above) above = &row;
  }
  if (below && above) {
    for (const BumpRow* row : {below, above})
      trace.steps.push_back(step("bump_row", "the linkage solved there",
                                 {quantity("rise", row->at, Unit::millimetre),
                                  quantity("steer_left", row->steer_left, Unit::degree),
                                  quantity("steer_right", row->steer_right, Unit::degree)}));
    append(trace.steps, steps_at(mechanism, controls_at(mechanism, BumpMotion::heave, above->at)));
  }
  trace.steps.push_back(step("bump_rate", "slope of the curve at ride height x 25",
                             {quantity("bump_rate", steer_rate, Unit::degree_per_25_mm)}));
  return trace;
}

// A curve's own words: its finding, unit, and the ways to both sides of ride height.
struct CurveWords {
  std::string name;
  Unit unit;
  std::string way_down;
  std::string way_up;
};

// The linkage stops following inside the range, on the side nearer to ride height: past by the
// range that the project gives, whatever the rest of the curve says.
std::optional<Finding> stops_following(const Mechanism& mechanism, const BumpCurve& curve,
                                       const CurveWords& words) {
  if (!curve.follows_down_to && !curve.follows_up_to) return std::nullopt;
  const bool up = curve.follows_up_to &&
                  (!curve.follows_down_to || *curve.follows_up_to <= -*curve.follows_down_to);
  const double to = up ? *curve.follows_up_to : *curve.follows_down_to;
  const double wanted = std::abs(up ? curve.high : curve.low);
  const ShownFor show(mechanism.project);
  Limit limit;
  limit.name = words.name;
  limit.unit = words.unit;
  limit.least = wanted;
  limit.source = say("source.axle_range");
  limit.standing = Standing::builder;
  Finding finding = judged(words.name, Station::front_axle,
                           {quantity("followed", std::abs(to), words.unit),
                            quantity("steer_change", curve.greatest, Unit::degree)},
                           std::move(limit), show.lengths());
  finding.worst_at = controls_at(mechanism, curve.motion, to);
  finding.sentence = say("bump.stops_following", {{"to", show.text(std::abs(to), words.unit)},
                                                  {"way", up ? words.way_up : words.way_down},
                                                  {"wanted", show.text(wanted, words.unit)}});
  finding.trace.formula = "the farthest place from ride height to which axle and links still close";
  finding.trace.source = say("source.loop");
  finding.trace.steps = steps_at(mechanism, *finding.worst_at);
  finding.trace.steps.push_back(step("followed", "nothing closes a hair further",
                                     {quantity("followed", std::abs(to), words.unit)}));
  return finding;
}

Finding rate(const Mechanism& mechanism, const BumpResult& result) {
  if (!result.heave.rate_per_25)
    return not_yet("bump.rate", Station::front_axle, say("not_judged.bump_rate"));
  const double steer_rate = *result.heave.rate_per_25;
  const ShownFor show(mechanism.project);
  Finding finding = judged("bump.rate", Station::front_axle,
                           {quantity("bump_rate", steer_rate, Unit::degree_per_25_mm)},
                           limit_for(mechanism.project, "bump.rate"), show.lengths());
  finding.worst_at = Controls{};
  const std::string way = side_word(steer_rate >= 0.0 ? Side::left : Side::right);
  finding.sentence =
      say("bump.rate",
          {{"rate", show.text(std::abs(steer_rate), Unit::degree_per_25_mm)}, {"side", way}});
  finding.trace = rate_trace(mechanism, result.heave, steer_rate);
  return finding;
}

Finding travel(const Mechanism& mechanism, const BumpResult& result) {
  const ShownFor show(mechanism.project);
  const BumpCurve& curve = result.heave;
  const std::optional<Finding> stops = stops_following(
      mechanism, curve, {"bump.travel", Unit::millimetre, say("word.droop"), say("word.bump")});
  if (stops) return *stops;
  std::vector<Quantity> numbers{quantity("steer_change", curve.greatest, Unit::degree),
                                quantity("rise", curve.greatest_at, Unit::millimetre)};
  if (result.best_ball) {
    numbers.push_back(quantity("best_ball_rise",
                               result.best_ball->best_mm.z() - result.best_ball->as_drawn_mm.z(),
                               Unit::millimetre));
    numbers.push_back(quantity("steer_change_at_best", result.best_ball->greatest, Unit::degree));
  }
  Finding finding = judged("bump.travel", Station::front_axle, std::move(numbers),
                           limit_for(mechanism.project, "bump.travel"), show.lengths());
  finding.worst_at = controls_at(mechanism, BumpMotion::heave, curve.greatest_at);
  finding.sentence = say(
      "bump.travel", {{"steer", show.degrees(std::abs(curve.greatest))},
                      {"side", side_word(curve.greatest >= 0.0 ? Side::left : Side::right)},
                      {"rise", show.mm(std::abs(curve.greatest_at))},
                      {"way", curve.greatest_at >= 0.0 ? say("word.bump") : say("word.droop")}});
  if (result.best_ball && finding.verdict != Verdict::within) {
    const double rise = result.best_ball->best_mm.z() - result.best_ball->as_drawn_mm.z();
    finding.sentence += " " + say("bump.best_ball",
                                  {{"change", show.mm(std::abs(rise))},
                                   {"way", rise >= 0.0 ? say("word.higher") : say("word.lower")},
                                   {"steer", show.degrees(std::abs(result.best_ball->greatest))}});
  }
  finding.trace = curve_trace(mechanism, BumpMotion::heave, curve.greatest_at, curve.greatest);
  return finding;
}

Finding roll(const Mechanism& mechanism, const BumpCurve& curve) {
  const ShownFor show(mechanism.project);
  const std::optional<Finding> stops = stops_following(
      mechanism, curve, {"bump.roll", Unit::degree, say("word.roll_right"), say("word.roll_left")});
  if (stops) return *stops;
  std::vector<Quantity> numbers{quantity("steer_change", curve.greatest, Unit::degree),
                                quantity("axle_roll", curve.greatest_at, Unit::degree)};
  if (curve.roll_rate) numbers.push_back(quantity("roll_rate", *curve.roll_rate, Unit::number));
  Finding finding = judged("bump.roll", Station::front_axle, std::move(numbers),
                           limit_for(mechanism.project, "bump.roll"), show.lengths());
  finding.worst_at = controls_at(mechanism, BumpMotion::roll, curve.greatest_at);
  finding.sentence =
      say("bump.roll", {{"steer", show.degrees(std::abs(curve.greatest))},
                        {"side", side_word(curve.greatest >= 0.0 ? Side::left : Side::right)},
                        {"roll", show.degrees(std::abs(curve.greatest_at))},
                        {"up", side_word(curve.greatest_at >= 0.0 ? Side::left : Side::right)}});
  finding.trace = curve_trace(mechanism, BumpMotion::roll, curve.greatest_at, curve.greatest);
  return finding;
}

Finding wind_up(const Mechanism& mechanism, const BumpCurve& curve) {
  const ShownFor show(mechanism.project);
  const std::optional<Finding> stops = stops_following(
      mechanism, curve, {"bump.wind_up", Unit::degree, say("word.wind_up"), say("word.wind_up")});
  if (stops) return *stops;
  Finding finding = judged("bump.wind_up", Station::front_axle,
                           {quantity("steer_change", curve.greatest, Unit::degree),
                            quantity("wind_up", curve.greatest_at, Unit::degree)},
                           limit_for(mechanism.project, "bump.wind_up"), show.lengths());
  finding.worst_at = controls_at(mechanism, BumpMotion::wind_up, curve.greatest_at);
  finding.sentence =
      say("bump.wind_up", {{"steer", show.degrees(std::abs(curve.greatest))},
                           {"side", side_word(curve.greatest >= 0.0 ? Side::left : Side::right)},
                           {"wind_up", show.degrees(curve.greatest_at)}});
  finding.trace = curve_trace(mechanism, BumpMotion::wind_up, curve.greatest_at, curve.greatest);
  return finding;
}

constexpr double kShownAsNone = 0.05 * kRadiansPerDegree;  // shown as 0.0 degrees

Finding kickback(const Mechanism& mechanism, const BumpCurve& curve) {
  if (!curve.kickback_everywhere)
    return not_yet("bump.kickback", Station::front_axle, say("not_judged.kickback"));
  const ShownFor show(mechanism.project);
  Finding finding = judged("bump.kickback", Station::front_axle,
                           {quantity("kickback", curve.kickback, Unit::degree),
                            quantity("rise", curve.kickback_at, Unit::millimetre)},
                           limit_for(mechanism.project, "bump.kickback"), show.lengths());
  finding.worst_at = controls_at(mechanism, BumpMotion::heave, curve.kickback_at);
  if (std::abs(curve.kickback) < kShownAsNone)
    finding.sentence = say("bump.no_kickback");
  else
    finding.sentence =
        say("bump.kickback",
            {{"turn", show.degrees(std::abs(curve.kickback))},
             {"side", side_word(curve.kickback >= 0.0 ? Side::left : Side::right)},
             {"rise", show.mm(std::abs(curve.kickback_at))},
             {"way", curve.kickback_at >= 0.0 ? say("word.bump") : say("word.droop")}});
  finding.trace.formula =
      "kickback = hand-wheel turn that holds the road wheels straight with the "
      "axle moved";
  finding.trace.source = say("source.bump");
  finding.trace.steps = steps_at(mechanism, *finding.worst_at);
  finding.trace.steps.push_back(step("kickback",
                                     "hand wheel turned until the mean steer is zero "
                                     "again",
                                     {quantity("kickback", curve.kickback, Unit::degree)}));
  return finding;
}

}  // namespace

void add_bump_findings(const Mechanism& mechanism, const BumpResult& result, Findings& findings) {
  findings.push_back(rate(mechanism, result));
  // Nothing given is no roll of 0 degrees, and no axle that stands still.
  const Suspension& given = mechanism.project.front_axle->suspension;
  const bool heaves = given.bump > 0.0 || given.droop > 0.0;
  findings.push_back(
      heaves ? travel(mechanism, result)
             : not_yet("bump.travel", Station::front_axle, say("bump.travel_not_given")));
  findings.push_back(given.roll > 0.0 && !result.roll.rows.empty()
                         ? roll(mechanism, result.roll)
                         : not_yet("bump.roll", Station::front_axle, say("bump.roll_not_given")));
  findings.push_back(
      given.wind_up > 0.0 && !result.wind_up.rows.empty()
          ? wind_up(mechanism, result.wind_up)
          : not_yet("bump.wind_up", Station::front_axle, say("bump.wind_up_not_given")));
  findings.push_back(
      heaves ? kickback(mechanism, result.heave)
             : not_yet("bump.kickback", Station::front_axle, say("bump.travel_not_given")));
}

}  // namespace tackbench
