#include "core/project/cab.h"
#include "core/project/front_axle.h"
#include "core/project/grip_list.h"

namespace tackbench::grip_list {

Placement<Chassis, Cab> drawn_cab(const Project& project) {
  if (!project.cab) return {};
  return chassis_from_cab(*project.cab);
}

void add_column_grips(const Project& project, std::vector<Grip>& list) {
  if (!project.column) return;
  const auto cab = drawn_cab(project);
  const ColumnStation& column = *project.column;
  const Vec3 hand = (cab * column.hand_wheel_centre).mm;
  const Vec3 end = (cab * column.output_end).mm;
  const Vec3 along = end - hand;

  Grip wheel =
      grip("column.hand_wheel_centre_mm", "hand-wheel centre", Station::column, Body::cab, hand);
  give_line(wheel, along);
  list.push_back(wheel);
  for (std::size_t i = 0; i < column.bearings.size(); ++i) {
    const ColumnBearing& bearing = column.bearings[i];
    if (!(along.norm() > 1e-9)) break;
    Grip held =
        grip(item("column.bearings", i), "column bearing \"" + bearing.name + '"', Station::column,
             Body::cab, hand + along.normalized() * bearing.from_hand_wheel);
    give_line(held, along);
    held.freedom = GripFreedom::on_line;
    list.push_back(held);
  }
  Grip output =
      grip("column.output_end_mm", "lower end of the column", Station::column, Body::cab, end);
  give_line(output, along);
  list.push_back(output);
}

namespace {

Body joint_body(RidesOn rides_on) {
  return rides_on == RidesOn::cab ? Body::cab : Body::chassis;
}

Vec3 in_chassis(const Project& project, RidesOn rides_on, const Vec3& mm) {
  return rides_on == RidesOn::cab ? (drawn_cab(project) * Point<Cab>{mm}).mm : mm;
}

}  // namespace

void add_shaft_line_grips(const Project& project, std::vector<Grip>& list) {
  if (!project.shaft_line) return;
  const ShaftLineStation& line = *project.shaft_line;
  std::optional<Vec3> before;
  if (project.column) before = (drawn_cab(project) * project.column->hand_wheel_centre).mm;
  for (std::size_t i = 0; i < line.joints.size(); ++i) {
    const ShaftJoint& joint = line.joints[i];
    const Vec3 at = in_chassis(project, joint.rides_on, joint.centre);
    Grip centre = grip(item("shaft_line.joints", i) + ".centre_mm", "joint \"" + joint.name + '"',
                       Station::shaft_line, joint_body(joint.rides_on), at);
    if (before) give_line(centre, at - *before);
    list.push_back(centre);
    before = at;
  }
  for (std::size_t i = 0; i < line.supports.size(); ++i) {
    const ShaftSupport& support = line.supports[i];
    const Body body = joint_body(support.rides_on);
    Grip eye = grip(item("shaft_line.supports", i) + ".eye_mm", "support \"" + support.name + '"',
                    Station::shaft_line, body, in_chassis(project, support.rides_on, support.eye));
    const auto shaft = static_cast<std::size_t>(support.shaft);
    if (support.shaft >= 0 && shaft + 1 < line.joints.size()) {
      const ShaftJoint& from = line.joints[shaft];
      const ShaftJoint& to = line.joints[shaft + 1];
      give_line(eye, in_chassis(project, to.rides_on, to.centre) -
                         in_chassis(project, from.rides_on, from.centre));
      if (eye.has_along) eye.freedom = GripFreedom::on_line;
    }
    eye.moves_several = true;  // its bracket's foot comes along
    list.push_back(eye);
    list.push_back(grip(item("shaft_line.supports", i) + ".base_mm",
                        "foot of the support \"" + support.name + '"', Station::shaft_line, body,
                        in_chassis(project, support.rides_on, support.base)));
  }
}

void add_steering_box_grips(const Project& project, std::vector<Grip>& list) {
  if (!project.steering_box) return;
  const SteeringBoxStation& box = *project.steering_box;
  Grip whole = grip("steering_box", "steering box", Station::steering_box, Body::chassis,
                    (box.input_end.mm + box.output_point.mm) / 2.0);
  give_line(whole, box.input_axis.along);
  whole.moves_several = true;
  list.push_back(whole);
  Grip input = grip("steering_box.input_end_mm", "input end of the box", Station::steering_box,
                    Body::chassis, box.input_end.mm);
  give_line(input, box.input_axis.along);
  list.push_back(input);
  Grip output = grip("steering_box.output_point_mm", "output of the box", Station::steering_box,
                     Body::chassis, box.output_point.mm);
  give_line(output, box.output_axis.along);
  list.push_back(output);

  Grip ball = grip("steering_box.arm", "drag-link ball on the arm", Station::steering_box,
                   Body::arm, arm_ball_at_centre(box).mm);
  ball.freedom = GripFreedom::on_circle;
  ball.along = box.output_axis.along;
  ball.centre_mm = box.output_point.mm + box.arm.offset * box.output_axis.along;
  list.push_back(ball);
  for (std::size_t i = 0; i < box.relays.size(); ++i) {
    const Relay& relay = box.relays[i];
    const std::string path = item("steering_box.relays", i);
    const auto add = [&](const char* member, const std::string& words, const Vec3& at, Body body) {
      Grip made = grip(path + member, words + " of the relay \"" + relay.name + '"',
                       Station::steering_box, body, at);
      made.body_index = static_cast<int>(i);
      list.push_back(made);
    };
    add(".pivot_mm", "pivot", relay.pivot.mm, Body::chassis);
    add(".input_ball_mm", "input ball", relay.input_ball.mm, Body::relay);
    add(".output_ball_mm", "output ball", relay.output_ball.mm, Body::relay);
  }
}

void add_drag_link_grips(const Project& project, std::vector<Grip>& list) {
  if (!project.drag_link) return;
  const DragLinkStation& link = *project.drag_link;
  list.push_back(grip(
      "drag_link.knuckle_ball_mm", "drag-link ball on the knuckle", Station::drag_link,
      link.knuckle == Side::left ? Body::left_knuckle : Body::right_knuckle, link.knuckle_ball.mm));
}

}  // namespace tackbench::grip_list
