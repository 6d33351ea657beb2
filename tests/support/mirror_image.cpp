#include "tests/support/mirror_image.h"

#include <algorithm>
#include <memory>

namespace tackbench {

namespace {

template <class Frame>
void mirror(Point<Frame>& point) {
  point.mm = mirror_image(point.mm);
}
template <class Frame>
void mirror(Direction<Frame>& direction) {
  direction.along = mirror_image(direction.along);
}

TurnSense opposite(TurnSense sense) {
  return sense == TurnSense::clockwise ? TurnSense::anticlockwise : TurnSense::clockwise;
}

RidesOn mirrored_body(RidesOn body) {
  if (body == RidesOn::left_knuckle) return RidesOn::right_knuckle;
  if (body == RidesOn::right_knuckle) return RidesOn::left_knuckle;
  return body;
}

ShaftLineStation mirrored(ShaftLineStation line) {
  for (ShaftJoint& joint : line.joints) {
    joint.centre = mirror_image(joint.centre);
    joint.rides_on = mirrored_body(joint.rides_on);
  }
  for (Shaft& shaft : line.shafts) shaft.fork_offset = -shaft.fork_offset;
  for (ShaftSupport& support : line.supports) {
    support.eye = mirror_image(support.eye);
    support.base = mirror_image(support.base);
  }
  line.first_yoke_clocking = -line.first_yoke_clocking;
  return line;
}

// The sense of the output shaft for a left turn stays: mirroring swaps clockwise, and the mirrored
// truck's left turn is the first one's right turn.
SteeringBoxStation mirrored(SteeringBoxStation box) {
  mirror(box.input_end);
  mirror(box.input_axis);
  mirror(box.output_point);
  mirror(box.output_axis);
  std::reverse(box.ratio_table.begin(), box.ratio_table.end());
  for (RatioRow& row : box.ratio_table) row.input = -row.input;
  std::swap(box.travel_left, box.travel_right);
  std::swap(box.assist_cut_left, box.assist_cut_right);
  box.arm.clocking = -box.arm.clocking;
  for (Relay& relay : box.relays) {
    mirror(relay.pivot);
    mirror(relay.axis);
    mirror(relay.input_ball);
    mirror(relay.output_ball);
  }
  return box;
}

DragLinkStation mirrored(DragLinkStation link) {
  link.knuckle = other(link.knuckle);
  mirror(link.knuckle_ball);
  for (LinkEnd* end : {&link.arm_end, &link.knuckle_end}) {
    if (end->stud_axis) end->stud_axis = mirror_image(*end->stud_axis);
  }
  if (link.stud_clocking) link.stud_clocking = -*link.stud_clocking;
  return link;
}

KnuckleSide mirrored(KnuckleSide knuckle) {
  mirror(knuckle.kingpin_point);
  mirror(knuckle.tie_rod_ball);
  for (LockStop& stop : knuckle.stops) {
    stop.lock = other(stop.lock);
    mirror(stop.tip_centre);
    mirror(stop.pad_centre);
    stop.bolt_axis = mirror_image(stop.bolt_axis);
    stop.pad_normal = mirror_image(stop.pad_normal);
  }
  return knuckle;
}

FrontAxleStation mirrored(FrontAxleStation axle) {
  if (axle.right_knuckle) {
    const KnuckleSide left = axle.left_knuckle;
    axle.left_knuckle = mirrored(*axle.right_knuckle);
    axle.right_knuckle = mirrored(left);
  }
  if (axle.suspension.radius_arms) {
    mirror(axle.suspension.radius_arms->lateral_rod_axle);
    mirror(axle.suspension.radius_arms->lateral_rod_chassis);
  }
  for (Point<Chassis>& corner : axle.road.body_corners) mirror(corner);
  std::swap(axle.wanted_steer_left, axle.wanted_steer_right);
  return axle;
}

Pedal mirrored(Pedal pedal) {
  mirror(pedal.pivot);
  mirror(pedal.axis);
  pedal.pressed_turns = opposite(pedal.pressed_turns);
  mirror(pedal.pad_centre);
  for (Point<Cab>& point : pedal.arm_path) mirror(point);
  if (pedal.rod) {
    mirror(pedal.rod->pedal_pin);
    mirror(pedal.rod->cylinder_pin);
    mirror(pedal.rod->cylinder_axis);
    for (BellCrank& bell : pedal.rod->bell_cranks) {
      mirror(bell.pivot);
      mirror(bell.axis);
      mirror(bell.input_pin);
      mirror(bell.output_pin);
    }
  }
  return pedal;
}

}  // namespace

Vec3 mirror_image(const Vec3& v) {
  return {v.x(), -v.y(), v.z()};
}

Project mirror_image(const Project& project) {
  Project image;
  image.name = project.name;
  if (project.cab) {
    CabStation cab = *project.cab;
    cab.place = mirror_image(cab.place);
    std::swap(cab.shake.left, cab.shake.right);
    image.cab = std::make_shared<const CabStation>(cab);
  }
  if (project.column) {
    ColumnStation column = *project.column;
    mirror(column.hand_wheel_centre);
    mirror(column.output_end);
    image.column = std::make_shared<const ColumnStation>(column);
  }
  if (project.shaft_line) {
    image.shaft_line = std::make_shared<const ShaftLineStation>(mirrored(*project.shaft_line));
  }
  if (project.steering_box) {
    image.steering_box =
        std::make_shared<const SteeringBoxStation>(mirrored(*project.steering_box));
  }
  if (project.drag_link) {
    image.drag_link = std::make_shared<const DragLinkStation>(mirrored(*project.drag_link));
  }
  if (project.front_axle) {
    image.front_axle = std::make_shared<const FrontAxleStation>(mirrored(*project.front_axle));
  }
  if (project.pedals) {
    PedalsStation pedals;
    for (const Pedal& pedal : project.pedals->pedals) pedals.pedals.push_back(mirrored(pedal));
    image.pedals = std::make_shared<const PedalsStation>(pedals);
  }
  return image;
}

AxlePose mirror_image(const AxlePose& pose) {
  return {pose.dx, -pose.dy, pose.dz, -pose.roll, pose.pitch, -pose.yaw};
}

Controls mirror_image(const Controls& controls) {
  Controls image = controls;
  image.hand_wheel = -controls.hand_wheel;
  std::swap(image.bump_left, image.bump_right);
  image.cab_shake = mirror_image(controls.cab_shake);
  if (controls.axle_pose) image.axle_pose = mirror_image(*controls.axle_pose);
  return image;
}

}  // namespace tackbench
