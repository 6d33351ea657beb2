// Ball-stud swing and effective angles over both locks and the axle's travel.
#include <algorithm>

#include "core/basics/wording.h"
#include "core/findings/build_finding.h"
#include "core/findings/builders.h"
#include "core/findings/limits.h"
#include "core/findings/steering_trace.h"

namespace tackbench {

namespace {

constexpr double kWorthSaying = 0.1 * kRadiansPerDegree;  // what is shown of an angle

// "at full bump", "with the left wheel up and the right one down" ...
std::string place_words(const Controls& at) {
  if (at.bump_left > at.bump_right) return say("place.left_wheel_up");
  if (at.bump_left < at.bump_right) return say("place.right_wheel_up");
  if (at.bump_left > 0.0) return say("place.full_bump");
  if (at.bump_left < 0.0) return say("place.full_droop");
  return say("place.ride_height");
}

// What the sentence has to add about the axle's travel.
std::string travel_words(const LinkTravel& travel) {
  if (!travel.travel_given) return " " + say("link.travel_not_given");
  if (travel.corners_out_of_reach > 0)
    return " " + say("link.corners_out_of_reach",
                     {{"count", std::to_string(travel.corners_out_of_reach)}});
  return {};
}

std::vector<Quantity> corner_numbers(const Controls& at) {
  return {quantity("hand_wheel", at.hand_wheel, Unit::degree),
          quantity("bump_left", at.bump_left, Unit::millimetre),
          quantity("bump_right", at.bump_right, Unit::millimetre)};
}

struct SwingCase {
  const char* name;
  const LinkEnd& end;
  std::string end_word;
  const WorstOfLink& worst;
  double at_ride_height;
};

Finding swing(const Mechanism& mechanism, const LinkTravel& travel, const SwingCase& at) {
  const ShownFor show(mechanism.project);
  const std::string name = std::string("link.swing.") + at.name;
  Finding finding = judged(
      name, Station::drag_link,
      {quantity("swing", at.worst.value, Unit::degree),
       quantity("swing_at_ride_height", at.at_ride_height, Unit::degree),
       quantity("swing_at_best_clocking", travel.swing_at_best_clocking, Unit::degree),
       quantity("best_stud_clocking", travel.best_stud_clocking, Unit::degree),
       quantity("stud_clocking", mechanism.steering->stud_clocking, Unit::degree)},
      limit_from(mechanism.project, name,
                 {std::nullopt, at.end.swing_limit, say("source.maker_sheet"), Standing::maker}),
      show.lengths());
  finding.worst_at = at.worst.at;
  finding.sentence = say("link.swing", {{"end", at.end_word},
                                        {"swing", show.degrees(at.worst.value)},
                                        {"place", place_words(at.worst.at)}}) +
                     travel_words(travel);
  const double worse = std::max(travel.swing_arm_end.value, travel.swing_knuckle_end.value);
  if (worse - travel.swing_at_best_clocking > kWorthSaying)
    finding.sentence +=
        " " + say("link.swing_clocking", {{"best", show.degrees(travel.swing_at_best_clocking)},
                                          {"clocking", show.degrees(travel.best_stud_clocking)}});
  if (at.end.kind == LinkEndKind::rod_end)
    finding.caution = say("caution.rod_end", {{"end", at.end_word}});
  const Pose pose = solved_pose(mechanism, *finding.worst_at);
  finding.trace.formula =
      "swing = angle between stud and housing axis, at the link's spin that leaves the worse of "
      "both ends least";
  finding.trace.source = say("source.swing");
  finding.trace.inputs = corner_numbers(at.worst.at);
  finding.trace.inputs.push_back(
      quantity("stud_clocking", mechanism.steering->stud_clocking, Unit::degree));
  for (Quantity& part : point_numbers("arm_ball", pose.steering.drag_link.from_mm))
    finding.trace.inputs.push_back(std::move(part));
  for (Quantity& part : point_numbers("knuckle_ball", pose.steering.drag_link.to_mm))
    finding.trace.inputs.push_back(std::move(part));
  finding.trace.steps = {
      step("least_swing", "90 degrees - angle between stud and link, whatever the spin",
           {quantity("least_arm_end", pose.ball_swing.least_arm_end, Unit::degree),
            quantity("least_knuckle_end", pose.ball_swing.least_knuckle_end, Unit::degree)}),
      step("best_spin", "the spin at which the greater use of both swings is least",
           {quantity("spin", pose.ball_swing.spin, Unit::degree),
            quantity("swing_arm_end", pose.ball_swing.arm_end, Unit::degree),
            quantity("swing_knuckle_end", pose.ball_swing.knuckle_end, Unit::degree)}),
      step("greatest_swing", "the greatest over both locks, at ride height and at each corner",
           {quantity("swing", at.worst.value, Unit::degree)})};
  return finding;
}

Finding least_effective_angle(const Mechanism& mechanism, const LockResult& locks,
                              const LinkTravel& travel) {
  const ShownFor show(mechanism.project);
  const WorstOfLink& worst = travel.effective_angle;
  Finding finding =
      judged("link.effective_angle", Station::drag_link,
             {quantity("effective_angle", worst.value, Unit::degree),
              quantity("effective_angle_left", locks.left.least_effective_angle, Unit::degree),
              quantity("effective_angle_right", locks.right.least_effective_angle, Unit::degree)},
             limit_for(mechanism.project, "link.effective_angle"), show.lengths());
  finding.worst_at = worst.at;
  const std::string place = place_words(worst.at);
  const Side side = worst.at.hand_wheel >= 0.0 ? Side::left : Side::right;
  finding.sentence = (travel.effective_at.empty()
                          ? say("link.open_loop", {{"place", place}})
                          : say("link.effective_angle", {{"angle", show.degrees(worst.value)},
                                                         {"where", travel.effective_at},
                                                         {"side", side_word(side)},
                                                         {"place", place}})) +
                     travel_words(travel);
  finding.trace.formula =
      "effective angle = asin |l . (k x u)|: l unit link, k the lever's axis, "
      "u unit lever; 90 best, 0 toggle";
  finding.trace.source = say("source.transmission_angle");
  finding.trace.inputs = corner_numbers(worst.at);
  const Pose pose = solved_pose(mechanism, worst.at);
  finding.trace.steps = hand_to_arm_steps(mechanism, worst.at.hand_wheel);
  append(finding.trace.steps,
         steering_steps(mechanism, arm_from_hand_wheel(mechanism, worst.at.hand_wheel), pose.axle));
  if (pose.outcome == Outcome::solved)
    finding.trace.steps.push_back(
        step("effective_angles", "asin of each |l . (k x u)|",
             {quantity("drag_link_at_hand", effective_angle(pose.steering.drag_link.from_leverage),
                       Unit::degree),
              quantity("drag_link_at_knuckle", effective_angle(pose.steering.drag_link.to_leverage),
                       Unit::degree),
              quantity("tie_rod_at_left", effective_angle(pose.steering.tie_rod.from_leverage),
                       Unit::degree),
              quantity("tie_rod_at_right", effective_angle(pose.steering.tie_rod.to_leverage),
                       Unit::degree)}));
  return finding;
}

}  // namespace

void add_link_travel_findings(const Mechanism& mechanism, const LockResult& locks,
                              const LinkTravel& travel, Findings& findings) {
  const DragLinkStation& link = *mechanism.project.drag_link;
  findings.push_back(swing(mechanism, travel,
                           {"arm_end", link.arm_end, hand_end_word(mechanism), travel.swing_arm_end,
                            locks.swing_used_arm_end}));
  findings.push_back(swing(mechanism, travel,
                           {"knuckle_end", link.knuckle_end, say("word.knuckle_end"),
                            travel.swing_knuckle_end, locks.swing_used_knuckle_end}));
  findings.push_back(least_effective_angle(mechanism, locks, travel));
}

}  // namespace tackbench
