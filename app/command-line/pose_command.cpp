// pose FILE: where everything is for one setting of the controls.
#include <algorithm>
#include <numeric>

#include "app/command-line/asked_controls.h"
#include "app/command-line/json_numbers.h"
#include "app/command-line/opening.h"
#include "app/command-line/page.h"
#include "core/basics/shown_number.h"
#include "core/mechanism/solve.h"

namespace tackbench::command_line {

namespace {

Json link_json(const LinkPose& link) {
  return {{"length_mm", json_number((link.to_mm - link.from_mm).norm())},
          {"effective_angle_hand_end_deg", json_degrees(effective_angle(link.from_leverage))},
          {"effective_angle_road_end_deg", json_degrees(effective_angle(link.to_leverage))},
          {"closure", json_number(link.closure)}};
}

Json axle_json(const AxlePose& axle) {
  return {{"dx_mm", json_number(axle.dx)},         {"dy_mm", json_number(axle.dy)},
          {"dz_mm", json_number(axle.dz)},         {"roll_deg", json_degrees(axle.roll)},
          {"pitch_deg", json_degrees(axle.pitch)}, {"yaw_deg", json_degrees(axle.yaw)}};
}

void add_steering(const Mechanism& mechanism, const Pose& pose, Json& json) {
  const SteeringPose& steering = pose.steering;
  json["box_input_deg"] = json_degrees(pose.box_input);
  json["arm_deg"] = json_degrees(steering.arm);
  json["arm_per_hand_wheel"] = json_number(pose.arm_rate);
  json["beyond_box_travel"] = pose.beyond_box_travel;
  for (const Side side : {Side::left, Side::right}) {
    const std::string name = side == Side::left ? "left" : "right";
    const KnucklePose& knuckle = steering.knuckle(side);
    json["steer_" + name + "_deg"] = json_degrees(knuckle.steer);
    json["swivel_" + name + "_deg"] = json_degrees(knuckle.swivel);
    json["camber_" + name + "_deg"] = json_degrees(camber(knuckle, side));
    json["steer_" + name + "_per_hand_wheel"] = json_number(pose.arm_rate * knuckle.steer_rate);
    json["swivel_" + name + "_per_arm"] = json_number(knuckle.swivel_rate);
  }
  Json relays = Json::array();
  for (std::size_t i = 0; i < steering.relays.size(); ++i) {
    Json relay = {{"name", mechanism.steering->relays[i].name},
                  {"angle_deg", json_degrees(steering.relays[i].angle)},
                  {"per_arm", json_number(steering.relays[i].rate)}};
    relay["link"] = link_json(steering.relays[i].link);
    relays.push_back(relay);
  }
  json["relays"] = relays;
  Json drag_link = link_json(steering.drag_link);
  drag_link["swing_arm_end_deg"] = json_degrees(pose.ball_swing.arm_end);
  drag_link["swing_knuckle_end_deg"] = json_degrees(pose.ball_swing.knuckle_end);
  drag_link["spin_deg"] = json_degrees(pose.ball_swing.spin);
  drag_link["spin_free_deg"] = json_degrees(pose.ball_swing.spin_free);
  json["drag_link"] = drag_link;
  json["tie_rod"] = link_json(steering.tie_rod);
}

Json joints_json(const Mechanism& mechanism, const ShaftLinePose& line) {
  Json joints = Json::array();
  for (int i = 0; i < line.cross_count; ++i) {
    const CrossPose& cross = line.crosses[static_cast<std::size_t>(i)];
    const auto joint = static_cast<std::size_t>(cross.joint);
    joints.push_back({{"name", mechanism.shaft_line->station.joints[joint].name},
                      {"angle_deg", json_degrees(cross.angle)},
                      {"in_turn_deg", json_degrees(cross.in_turn)},
                      {"out_turn_deg", json_degrees(cross.out_turn)},
                      {"ratio", json_number(cross.ratio)},
                      {"held", cross.held}});
  }
  return joints;
}

Json pedals_json(const Mechanism& mechanism, const Pose& pose) {
  Json pedals = Json::array();
  for (std::size_t i = 0; i < mechanism.pedals.size(); ++i) {
    const PedalLinkage& linkage = mechanism.pedals[i];
    const PedalPose& pedal = pose.pedals[i];
    Json each = {{"name", linkage.pedal.name},
                 {"use", pedal_use(linkage.pedal.use)},
                 {"angle_deg", json_degrees(pedal.angle)}};
    if (linkage.has_rod) {
      each["rod_travel_mm"] = json_number(pedal.rod_travel);
      each["ratio"] = json_number(pedal.ratio);
      each["rod_swing_deg"] = json_degrees(pedal.rod_swing);
      each["effective_angle_deg"] = json_degrees(effective_angle(pedal.leverage));
    }
    pedals.push_back(each);
  }
  return pedals;
}

Json pose_json(const Mechanism& mechanism, const Controls& controls, const Pose& pose) {
  Json json;
  json["outcome"] = outcome_name(pose.outcome);
  json["outcome_words"] = outcome_words(mechanism, pose);
  json["controls"] = controls_json(mechanism, controls);
  if (mechanism.suspension) json["axle"] = axle_json(pose.axle);
  if (mechanism.shaft_line) {
    json["joints"] = joints_json(mechanism, pose.shaft_line);
    json["box_turn_deg"] = json_degrees(pose.shaft_line.box_turn);
    json["box_turn_per_hand_wheel"] = json_number(pose.shaft_line.box_rate);
  }
  if (mechanism.steering) add_steering(mechanism, pose, json);
  json["pedals"] = pedals_json(mechanism, pose);
  Json points = Json::object();
  for (const NamedPoint& point : named_points(mechanism, pose)) {
    points[point.name] = json_point(point.at_mm);
  }
  json["points"] = points;
  return json;
}

using Rows = std::vector<std::vector<std::string>>;

std::string degrees_text(double radians) {
  return shown(radians, Unit::degree);
}

void add_steering_rows(const Mechanism& mechanism, const Pose& pose, ShownUnit lengths,
                       Rows& rows) {
  const SteeringPose& steering = pose.steering;
  rows.push_back({"box input from its centre", degrees_text(pose.box_input)});
  rows.push_back({"arm from the box's centre", degrees_text(steering.arm)});
  for (const Side side : {Side::left, Side::right}) {
    const std::string name = side == Side::left ? "left wheel" : "right wheel";
    const KnucklePose& knuckle = steering.knuckle(side);
    rows.push_back({name + " steer", degrees_text(knuckle.steer)});
    rows.push_back({name + " swivel about its kingpin", degrees_text(knuckle.swivel)});
    rows.push_back({name + " camber", degrees_text(camber(knuckle, side))});
  }
  for (std::size_t i = 0; i < steering.relays.size(); ++i) {
    rows.push_back(
        {"relay " + mechanism.steering->relays[i].name, degrees_text(steering.relays[i].angle)});
  }
  const LinkPose& link = steering.drag_link;
  rows.push_back({"drag link, ball to ball",
                  shown((link.to_mm - link.from_mm).norm(), Unit::millimetre, lengths)});
  rows.push_back({"drag link to its hand-side lever (90 best, 0 toggle)",
                  degrees_text(effective_angle(link.from_leverage))});
  rows.push_back(
      {"drag link to the steering arm", degrees_text(effective_angle(link.to_leverage))});
  rows.push_back({"ball-stud swing, arm end", degrees_text(pose.ball_swing.arm_end)});
  rows.push_back({"ball-stud swing, knuckle end", degrees_text(pose.ball_swing.knuckle_end)});
}

std::string pose_text(const Mechanism& mechanism, const Controls& controls, const Pose& pose) {
  const auto& sheet = mechanism.project.sheet;
  const ShownUnit lengths = sheet ? sheet->unit : ShownUnit::millimetre;
  std::string text =
      mechanism.project.name + "\n" + wrapped_text(outcome_words(mechanism, pose), 0, 0) + "\n\n";
  Rows rows;
  rows.push_back({"hand wheel, left positive", degrees_text(controls.hand_wheel) + " (" +
                                                   shown(controls.hand_wheel, Unit::turn) + ")"});
  if (mechanism.shaft_line) {
    const ShaftLinePose& line = pose.shaft_line;
    for (int i = 0; i < line.cross_count; ++i) {
      const CrossPose& cross = line.crosses[static_cast<std::size_t>(i)];
      const auto joint = static_cast<std::size_t>(cross.joint);
      rows.push_back({"joint " + mechanism.shaft_line->station.joints[joint].name +
                          (cross.held ? "" : " (not held: near its drawn place)"),
                      degrees_text(cross.angle)});
    }
  }
  if (mechanism.steering) add_steering_rows(mechanism, pose, lengths, rows);
  for (std::size_t i = 0; i < mechanism.pedals.size(); ++i) {
    rows.push_back({"pedal " + mechanism.pedals[i].pedal.name, degrees_text(pose.pedals[i].angle)});
    if (!mechanism.pedals[i].has_rod) continue;
    rows.push_back(
        {"  its rod has travelled", shown(pose.pedals[i].rod_travel, Unit::millimetre, lengths)});
  }
  text += table_text(rows) + "\nPoints in the chassis frame (X forward, Y left, Z up), mm\n";
  Rows points = {{"point", "X", "Y", "Z"}};
  for (const NamedPoint& point : named_points(mechanism, pose)) {
    points.push_back({point.name, shown_bare(point.at_mm.x(), Unit::millimetre),
                      shown_bare(point.at_mm.y(), Unit::millimetre),
                      shown_bare(point.at_mm.z(), Unit::millimetre)});
  }
  return text + table_text(points);
}

}  // namespace

int pose_command(const Opening& opening, const PoseSettings& settings) {
  const Result<Mechanism> mechanism = open_mechanism(opening);
  if (!mechanism) return refuse(mechanism.problems(), opening.json);
  const Result<Controls> asked = asked_controls(*mechanism, settings);
  if (!asked) return refuse(asked.problems(), opening.json);
  const Controls& controls = *asked;
  const Pose pose = solved_pose(*mechanism, controls);
  print(opening.json ? pose_json(*mechanism, controls, pose).dump(2) + "\n"
                     : pose_text(*mechanism, controls, pose));
  return kDone;
}

}  // namespace tackbench::command_line
