// Names for a pose's points and outcome.
#include <cmath>

#include "core/basics/shown_number.h"
#include "core/basics/wording.h"
#include "core/mechanism/solve.h"

namespace tackbench {

namespace {

void add_steering_points(const Mechanism& mechanism, const Pose& pose,
                         std::vector<NamedPoint>& points) {
  const Steering& steering = *mechanism.steering;
  points.push_back({"arm_ball", pose.steering.arm_ball_mm});
  for (std::size_t i = 0; i < steering.relays.size(); ++i) {
    const std::string relay = "relay_" + std::to_string(i + 1);
    points.push_back({relay + "_input_ball", pose.steering.relays[i].input_ball_mm});
    points.push_back({relay + "_output_ball", pose.steering.relays[i].output_ball_mm});
  }
  points.push_back({"drag_link_from", pose.steering.drag_link.from_mm});
  points.push_back({"steering_arm_ball", pose.steering.drag_link.to_mm});
  points.push_back({"tie_rod_ball_left", pose.steering.tie_rod.from_mm});
  points.push_back({"tie_rod_ball_right", pose.steering.tie_rod.to_mm});
  for (const KnuckleBody* body : {&steering.left, &steering.right}) {
    const std::string side = body->side == Side::left ? "left" : "right";
    const KnucklePose& knuckle = pose.steering.knuckle(body->side);
    points.push_back({"wheel_centre_" + side,
                      (knuckle.chassis_from_knuckle * Point<Knuckle>{body->wheel_centre_mm}).mm});
    points.push_back(
        {"kingpin_" + side, (pose.chassis_from_axle * Point<Axle>{body->kingpin_point_mm}).mm});
  }
}

// No truck gets there: that comes before the numbers.
std::string beyond_travel_words(const Steering& steering, const Pose& pose) {
  const bool left = pose.steering.arm > 0.0;
  const double travel = left ? steering.travel_left : steering.travel_right;
  return say("pose.beyond_travel", {{"travel", shown(travel, Unit::degree)},
                                    {"arm", shown(std::abs(pose.steering.arm), Unit::degree)},
                                    {"side", left ? "left" : "right"}});
}

std::string solved_words(const Mechanism& mechanism, const Pose& pose) {
  const auto place = static_cast<std::size_t>(pose.place);
  switch (pose.outcome) {
    case Outcome::solved:
      return pose.beyond_box_travel ? say("pose.solved_beyond") : "Solved.";
    case Outcome::not_compiled:
      return "The steering is not measured yet.";
    case Outcome::relay_does_not_close:
      return "The link to relay \"" + mechanism.steering->relays[place].name +
             "\" is too short or too long to join its balls here.";
    case Outcome::drag_link_does_not_close:
      return "The drag link is too short or too long to join its balls here.";
    case Outcome::tie_rod_does_not_close:
      return "The tie rod is too short or too long to join its balls here.";
    case Outcome::suspension_does_not_close:
      return "The suspension cannot reach this bump.";
    case Outcome::shaft_line_does_not_close:
      return "The shaft line cannot keep its lengths with the cab here.";
    case Outcome::pedal_does_not_close:
      return "The rod of pedal \"" + mechanism.pedals[place].pedal.name +
             "\" cannot follow it here.";
  }
  return "";
}

}  // namespace

std::vector<NamedPoint> named_points(const Mechanism& mechanism, const Pose& pose) {
  std::vector<NamedPoint> points;
  if (mechanism.project.column) {
    const ColumnStation& column = *mechanism.project.column;
    points.push_back({"hand_wheel_centre", (pose.chassis_from_cab * column.hand_wheel_centre).mm});
    points.push_back({"column_end", (pose.chassis_from_cab * column.output_end).mm});
  }
  if (mechanism.shaft_line) {
    for (int i = 0; i < pose.shaft_line.cross_count; ++i) {
      points.push_back({"joint_" + std::to_string(i + 1),
                        pose.shaft_line.crosses[static_cast<std::size_t>(i)].centre_mm});
    }
    points.push_back({"box_input_end", mechanism.shaft_line->box_input_end.mm});
  }
  if (mechanism.steering) add_steering_points(mechanism, pose, points);
  for (std::size_t i = 0; i < mechanism.pedals.size(); ++i) {
    const std::string& name = mechanism.pedals[i].pedal.name;
    const PedalPose& pedal = pose.pedals[i];
    points.push_back({name + "_pad", (pose.chassis_from_cab * Point<Cab>{pedal.pad_centre_mm}).mm});
    if (!mechanism.pedals[i].has_rod) continue;
    points.push_back(
        {name + "_rod_pin", (pose.chassis_from_cab * Point<Cab>{pedal.rod_pin_mm}).mm});
    points.push_back(
        {name + "_cylinder_pin", (pose.chassis_from_cab * Point<Cab>{pedal.cylinder_pin_mm}).mm});
  }
  return points;
}

const char* outcome_name(Outcome outcome) {
  switch (outcome) {
    case Outcome::solved:
      return "solved";
    case Outcome::not_compiled:
      return "not_compiled";
    case Outcome::relay_does_not_close:
      return "relay_does_not_close";
    case Outcome::drag_link_does_not_close:
      return "drag_link_does_not_close";
    case Outcome::tie_rod_does_not_close:
      return "tie_rod_does_not_close";
    case Outcome::suspension_does_not_close:
      return "suspension_does_not_close";
    case Outcome::shaft_line_does_not_close:
      return "shaft_line_does_not_close";
    case Outcome::pedal_does_not_close:
      return "pedal_does_not_close";
  }
  return "unknown";
}

std::string outcome_words(const Mechanism& mechanism, const Pose& pose) {
  std::string words = solved_words(mechanism, pose);
  if (!pose.beyond_box_travel) return words;
  return beyond_travel_words(*mechanism.steering, pose) + " " + words;
}

}  // namespace tackbench
