// Steering box, arm, relays, links, steering arms and tie rod.
#include <algorithm>
#include <array>
#include <cmath>

#include "core/drawing/truck_parts.h"

namespace tackbench {

namespace {

// Sizes of what is drawn but not measured.
constexpr double kBallRadius = 21.0;
constexpr double kArmBoss = 36.0;
constexpr double kArmThickness = 13.0;  // half
constexpr double kPlainLink = 16.0;     // radius of a link without a measured tube
constexpr double kSteeringArmRoot = 30.0;
constexpr double kOutputShaft = 24.0;
constexpr double kInputShaft = 13.0;

Vec3 foot_on_axis(const Vec3& point, const Vec3& axis, const Vec3& ball) {
  return point + axis.dot(ball - point) * axis;
}

bool steering_closes(const TruckAtPose& truck) {
  if (!truck.mechanism.steering) return true;
  switch (truck.pose.outcome) {
    case Outcome::relay_does_not_close:
    case Outcome::drag_link_does_not_close:
    case Outcome::tie_rod_does_not_close:
      return false;
    default:
      return true;
  }
}

struct LinkLook {
  double radius = kPlainLink;
  double from_shank = 0.0;  // from ball to the tube's end
  double to_shank = 0.0;
  double shank_radius = 11.0;
  double bend_offset = 0.0;
};

LinkLook drag_link_look(const DragLinkStation& link) {
  LinkLook look;
  if (link.tube) look.radius = link.tube->outside_diameter / 2.0;
  const auto free_shank = [](const LinkEnd& end) {
    return std::max(0.0, end.shank_length.value_or(0.0) - end.thread_engagement.value_or(0.0));
  };
  look.from_shank = free_shank(link.arm_end);
  look.to_shank = free_shank(link.knuckle_end);
  if (link.arm_end.thread) look.shank_radius = link.arm_end.thread->diameter / 2.0;
  look.bend_offset = link.bend_offset;
  return look;
}

void draw_link(const Vec3& from, const Vec3& to, const LinkLook& look, bool closes,
               std::string_view part, TruckPen& pen) {
  const Vec3 between = to - from;
  const double length = between.norm();
  if (!(length > 1.0)) return;
  if (!closes) {
    // It cannot be where it is drawn: only the line of its balls.
    pen.path({from, to}, Ink::ghost, part);
    return;
  }
  const Vec3 along = between / length;
  const double most = 0.45 * length;
  const Vec3 first = from + std::min(look.from_shank, most) * along;
  const Vec3 last = to - std::min(look.to_shank, most) * along;
  if (look.from_shank > 1.0) pen.rod(from, first, look.shank_radius, Ink::link, part);
  if (look.to_shank > 1.0) pen.rod(last, to, look.shank_radius, Ink::link, part);
  if (std::abs(look.bend_offset) < 1.0) {
    pen.rod(first, last, look.radius, Ink::link, part);
  } else {
    // A cranked tube; which way it is cranked is not measured: drawn upward.
    const Vec3 middle =
        0.5 * (first + last) + std::abs(look.bend_offset) * square_to(along, Vec3::UnitZ());
    pen.rod(first, middle, look.radius, Ink::link, part);
    pen.rod(middle, last, look.radius, Ink::link, part);
  }
  pen.path({from, to}, Ink::centre, part);
}

void draw_ball(const Vec3& centre, std::string_view part, TruckPen& pen) {
  pen.sphere(centre, kBallRadius, Ink::link, part);
  pen.symbol(JointSymbol::ball, centre, Vec3::UnitX(), Ink::link, part);
}

Vec3 arm_ball(const TruckAtPose& truck) {
  return moved(truck.arm, arm_ball_at_centre(*truck.project.steering_box).mm);
}

void draw_pitman_arm(const TruckAtPose& truck, TruckPen& pen) {
  const SteeringBoxStation& box = *truck.project.steering_box;
  const Vec3 axis = box.output_axis.along;
  const Vec3 root = box.output_point.mm;
  const Vec3 ball = arm_ball(truck);
  pen.lever(root, kArmBoss, ball, 0.6 * kArmBoss, axis, kArmThickness, Ink::arm,
            "steering_box.arm");
  const Vec3 half = 1.4 * kArmThickness * axis;
  pen.rod(root - half, root + half, kOutputShaft, Ink::arm, "steering_box.arm");
}

void draw_relay_body(const TruckAtPose& truck, std::size_t index, TruckPen& pen) {
  const Relay& relay = truck.project.steering_box->relays[index];
  const std::string part = item("steering_box.relays", index);
  const auto motion =
      moved_from_drawn(truck.mechanism, truck.pose, Body::relay, static_cast<int>(index));
  const Vec3& axis = relay.axis.along;
  const std::array balls{moved(motion, relay.input_ball.mm), moved(motion, relay.output_ball.mm)};
  for (const Vec3& ball : balls) {
    pen.lever(foot_on_axis(relay.pivot.mm, axis, ball), kArmBoss, ball, 0.6 * kArmBoss, axis,
              kArmThickness, Ink::arm, part);
  }
  const double from =
      std::min(axis.dot(balls[0] - relay.pivot.mm), axis.dot(balls[1] - relay.pivot.mm));
  const double to =
      std::max(axis.dot(balls[0] - relay.pivot.mm), axis.dot(balls[1] - relay.pivot.mm));
  pen.rod(relay.pivot.mm + (std::min(from, 0.0) - 30.0) * axis,
          relay.pivot.mm + (std::max(to, 0.0) + 30.0) * axis, 0.75 * kArmBoss, Ink::arm,
          part + ".pivot_mm");
  draw_ball(balls[0], part + ".input_ball_mm", pen);
  pen.symbol(JointSymbol::pivot, relay.pivot.mm, axis, Ink::fixed, part + ".pivot_mm");
}

// From the arm, through the relays, to the knuckle.
void draw_link_chain(const TruckAtPose& truck, TruckPen& pen) {
  const bool closes = steering_closes(truck);
  std::optional<Vec3> hand;
  std::string hand_part = "steering_box.arm";
  if (truck.project.steering_box) {
    hand = arm_ball(truck);
    const auto& relays = truck.project.steering_box->relays;
    for (std::size_t i = 0; i < relays.size(); ++i) {
      const auto motion =
          moved_from_drawn(truck.mechanism, truck.pose, Body::relay, static_cast<int>(i));
      draw_link(*hand, moved(motion, relays[i].input_ball.mm), LinkLook{}, closes,
                item("steering_box.relays", i), pen);
      draw_relay_body(truck, i, pen);
      draw_ball(*hand, hand_part, pen);
      hand = moved(motion, relays[i].output_ball.mm);
      hand_part = item("steering_box.relays", i) + ".output_ball_mm";
    }
  }
  if (!truck.project.drag_link) {
    if (hand) draw_ball(*hand, hand_part, pen);
    return;
  }
  const DragLinkStation& link = *truck.project.drag_link;
  const Vec3 knuckle_ball = moved(truck.knuckle(link.knuckle), link.knuckle_ball.mm);
  if (hand) {
    draw_link(*hand, knuckle_ball, drag_link_look(link), closes, "drag_link", pen);
    draw_ball(*hand, hand_part, pen);
  }
  draw_ball(knuckle_ball, "drag_link.knuckle_ball_mm", pen);
}

// Lever from the kingpin to a ball that the knuckle carries.
void draw_steering_arm(const TruckAtPose& truck, Side side, const Vec3& drawn_ball,
                       std::string_view part, TruckPen& pen) {
  const KnuckleSide knuckle = knuckle_side(*truck.project.front_axle, side);
  const Vec3 drawn_axis = kingpin_axis(knuckle, side).along;
  const Vec3 drawn_foot = foot_on_axis(knuckle.kingpin_point.mm, drawn_axis, drawn_ball);
  const auto& motion = truck.knuckle(side);
  const Vec3 foot = moved(motion, drawn_foot);
  const Vec3 ball = moved(motion, drawn_ball);
  if ((ball - foot).norm() < 5.0) return;
  pen.lever(foot, kSteeringArmRoot, ball, 0.6 * kSteeringArmRoot, motion.turn * drawn_axis,
            kArmThickness, Ink::arm, part);
}

const char* tie_rod_ball_part(Side side) {
  return side == Side::left ? "front_axle.left_knuckle.tie_rod_ball_mm"
                            : "front_axle.right_knuckle.tie_rod_ball_mm";
}

}  // namespace

void draw_steering_box(const TruckAtPose& truck, TruckPen& pen) {
  if (!truck.project.steering_box) return;
  const SteeringBoxStation& box = *truck.project.steering_box;
  // Own axes: along the input, out along the output as far as that is square to it, and across.
  Placement<Chassis, Chassis> own;
  const Vec3 along = box.input_axis.along;
  const Vec3 out = square_to(along, box.output_axis.along);
  own.turn << along, out, along.cross(out);
  own.shift_mm = box.input_end.mm;
  const Vec3 output = own.turn.transpose() * (box.output_point.mm - box.input_end.mm);
  // The housing holds both shafts and stops short of the arm.
  const double begin = std::min(42.0, output.x() - 75.0);
  const double top = std::clamp(output.y() - kArmThickness - 6.0, 18.0, 55.0);
  const Vec3 least(begin, top - 105.0, std::min(0.0, output.z()) - 52.0);
  const Vec3 greatest(std::max(output.x() + 68.0, begin + 150.0), top,
                      std::max(0.0, output.z()) + 52.0);
  const char* const part = "steering_box";
  const Vec3 axis = box.output_axis.along;
  const auto output_shaft = [&] {
    const double inside = std::max(40.0, output.y() - top);
    pen.rod(box.output_point.mm - inside * axis, box.output_point.mm, 1.5 * kOutputShaft,
            Ink::fixed, part);
  };
  // What points to the eye comes last.
  const bool output_near = pen.towards_eye(axis) > 0.0;
  if (!output_near) output_shaft();
  pen.block(own, least, greatest, Ink::fixed, part);
  pen.rod(box.input_end.mm, box.input_end.mm + std::max(begin, 8.0) * along, kInputShaft,
          Ink::fixed, "steering_box.input_end_mm");
  if (output_near) output_shaft();
  if (pen.towards_eye(axis) < 0.99 && pen.towards_eye(axis) > -0.99)
    pen.path({box.output_point.mm - 110.0 * axis, box.output_point.mm + 60.0 * axis}, Ink::centre,
             "steering_box.output_point_mm");
}

void draw_tie_rod(const TruckAtPose& truck, TruckPen& pen) {
  if (!truck.project.front_axle) return;
  std::array<Vec3, 2> balls;
  for (const Side side : {Side::left, Side::right}) {
    const Vec3 drawn = knuckle_side(*truck.project.front_axle, side).tie_rod_ball.mm;
    balls[side == Side::left ? 0 : 1] = moved(truck.knuckle(side), drawn);
    draw_steering_arm(truck, side, drawn, tie_rod_ball_part(side), pen);
  }
  const LinkLook look{.from_shank = 60.0, .to_shank = 60.0};
  draw_link(balls[0], balls[1], look, steering_closes(truck), "front_axle.tie_rod_length_mm", pen);
  for (const Side side : {Side::right, Side::left})
    draw_ball(balls[side == Side::left ? 0 : 1], tie_rod_ball_part(side), pen);
}

void draw_links_and_arms(const TruckAtPose& truck, TruckPen& pen) {
  if (truck.project.drag_link && truck.project.front_axle) {
    const DragLinkStation& link = *truck.project.drag_link;
    draw_steering_arm(truck, link.knuckle, link.knuckle_ball.mm, "drag_link.knuckle_ball_mm", pen);
  }
  if (truck.project.steering_box) draw_pitman_arm(truck, pen);
  draw_link_chain(truck, pen);
}

}  // namespace tackbench
