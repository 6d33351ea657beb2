// Drag link: the loop from arm or last relay to the driven knuckle, both ways round, its studs, and
// hand-wheel zero.
#include <fmt/core.h>

#include "core/mechanism/compile_parts.h"
#include "core/mechanism/solve.h"

namespace tackbench {

namespace {

// Road-to-hand loops: each lever held by the link on its road side, from the last relay up to the
// arm.
void compile_road_to_hand(const Vec3& knuckle_ball_mm, Steering& steering) {
  Vec3 road_ball = knuckle_ball_mm;
  double link_length = steering.drag_link.length;
  for (auto relay = steering.relays.rbegin(); relay != steering.relays.rend(); ++relay) {
    relay->from_road = loop_as_drawn(relay->output, link_length, road_ball);
    road_ball = relay->from_arm.driven.ball(0.0);
    link_length = relay->from_arm.length;
  }
  steering.arm_from_road = loop_as_drawn(steering.arm, link_length, road_ball);
}

void compile_studs(const DragLinkStation& link, const Placement<Chassis, Axle>& axle_at_ride,
                   Steering& steering) {
  if (link.arm_end.stud_axis) steering.arm_stud = link.arm_end.stud_axis->normalized();
  const Vec3& kingpin = steering.drag_link.driven.axis;
  steering.knuckle_stud =
      link.knuckle_end.stud_axis
          ? Vec3(axle_at_ride.turn.transpose() * link.knuckle_end.stud_axis->normalized())
          : kingpin;
}

}  // namespace

void compile_drag_link(const DragLinkStation& link, const Placement<Chassis, Axle>& axle_at_ride,
                       Steering& steering, Problems& problems) {
  const Vec3 hand_ball =
      steering.relays.empty() ? steering.arm.ball(0.0) : steering.relays.back().output.ball(0.0);
  const Placement<Axle, Chassis> axle_from_chassis = axle_at_ride.inverse();
  const Vec3 hand_ball_axle = (axle_from_chassis * Point<Chassis>{hand_ball}).mm;
  const Vec3 knuckle_ball_axle = (axle_from_chassis * link.knuckle_ball).mm;
  const KnuckleBody& driven = steering.driven();
  const Crank steering_arm =
      crank_through(driven.kingpin_point_mm, driven.tie_rod_arm.axis, knuckle_ball_axle);
  constexpr double kLeast = 1.0;  // mm
  if (steering_arm.radius < kLeast) {
    problems.push_back({"", "drag_link.knuckle_ball_mm", "the ball lies on the kingpin axis",
                        "move it off the axis"});
  }
  steering.drag_link_drawn = (link.knuckle_ball.mm - hand_ball).norm();
  if (steering.drag_link_drawn < kLeast) {
    problems.push_back({"", "drag_link.knuckle_ball_mm",
                        "the drag link has no length: both balls are in one place",
                        "move one of them"});
  }
  if (!problems.empty()) return;
  const double length = link.given_length.value_or(steering.drag_link_drawn);
  steering.drag_link = loop_as_drawn(steering_arm, length, hand_ball_axle);
  compile_road_to_hand(link.knuckle_ball.mm, steering);
  compile_studs(link, axle_at_ride, steering);

  const std::optional<double> swivel = straight_swivel(steering, axle_at_ride);
  const std::optional<double> arm =
      swivel ? arm_from_swivel(steering, axle_at_ride, *swivel) : std::nullopt;
  if (!arm) {
    problems.push_back(
        {"", link.given_length ? "drag_link.given_length_mm" : "front_axle.tie_rod_length_mm",
         fmt::format("with a drag link of {:.1f} mm the wheels cannot be set straight", length),
         fmt::format("give a length nearer to the drawn {:.1f} mm", steering.drag_link_drawn)});
    return;
  }
  steering.straight_swivel = *swivel;
  steering.straight_arm = *arm;
  steering.straight_input = steering.box.input_from_output(*arm);

  SteeringPose straight;
  straight.relays.resize(steering.relays.size());
  const Outcome outcome = solve_steering(steering, axle_at_ride, *arm, straight);
  steering.stud_clocking_given = link.stud_clocking.has_value();
  steering.stud_clocking = link.stud_clocking.value_or(
      outcome == Outcome::solved ? ball_swing(steering, straight, {}, {}).natural_clocking : 0.0);
}

}  // namespace tackbench
