#include "ui/sheet/control_drag.h"

#include <algorithm>
#include <cmath>

#include "core/basics/units.h"
#include "core/mechanism/solve.h"

namespace tackbench::ui {

namespace {

constexpr double kLeastRate = 1e-3;

// A place of a knuckle's own frame (axle frame at swivel 0), where it stands.
Vec3 on_knuckle(const PosedTruck& truck, Side side, const Vec3& mm) {
  return (truck.pose.steering.knuckle(side).chassis_from_knuckle * Point<Knuckle>{mm}).mm;
}

const KnuckleBody& knuckle_body(const PosedTruck& truck, Side side) {
  const Steering& steering = *truck.mechanism->steering;
  return side == Side::left ? steering.left : steering.right;
}

double turn_between(const ViewPoint& centre, const ViewPoint& from, const ViewPoint& to) {
  const double before = std::atan2(from.y - centre.y, from.x - centre.x);
  const double after = std::atan2(to.y - centre.y, to.x - centre.x);
  return wrapped(after - before);
}

double hand_wheel_turn(const PosedTruck& truck, const ControlInHand& control, const ViewPoint& from,
                       const ViewPoint& to) {
  const ColumnStation& column = *truck.mechanism->project.column;
  const auto& cab = truck.pose.chassis_from_cab;
  const Vec3 centre_mm = (cab * column.hand_wheel_centre).mm;
  // Towards the driver, who sees a left turn go anticlockwise.
  const Vec3 to_driver =
      ((cab * column.hand_wheel_centre).mm - (cab * column.output_end).mm).normalized();
  const double facing = to_driver.dot(sight(control.view));
  const ViewPoint centre = seen(control.view, centre_mm);
  if (std::abs(facing) > 0.35) return turn_between(centre, from, to) * std::copysign(1.0, facing);
  // Edge on: the near side of the rim goes with the hand.
  const ViewPoint way = seen(control.view, to_driver.cross(sight(control.view)));
  const double radius = std::max(column.hand_wheel_diameter / 2.0, 1.0);
  return ((to.x - from.x) * way.x + (to.y - from.y) * way.y) / radius;
}

double steer_turn(const PosedTruck& truck, const ControlInHand& control, const ViewPoint& from,
                  const ViewPoint& to) {
  const KnucklePose& knuckle = truck.pose.steering.knuckle(control.side);
  const double rate = knuckle.steer_rate * truck.pose.arm_rate;
  if (std::abs(rate) < kLeastRate) return 0.0;
  const ViewPoint centre =
      seen(SheetView::plan,
           on_knuckle(truck, control.side, knuckle_body(truck, control.side).kingpin_point_mm));
  // Anticlockwise from above is a left turn.
  return turn_between(centre, from, to) / rate;
}

void move_pedal(const PosedTruck& truck, const ControlInHand& control, const ViewPoint& from,
                const ViewPoint& to, Controls& controls) {
  const auto index = static_cast<std::size_t>(control.pedal);
  const Mechanism& mechanism = *truck.mechanism;
  const PedalPose& pose = truck.pose.pedals[index];
  Controls pressed = controls;
  pressed.pedals[index] = controls.pedals[index] < 0.5 ? 1.0 : 0.0;
  // Pad travel for the whole control, along the arc between here and the far end.
  const Pose far_pose = solved_pose(mechanism, pressed);
  const double radius = (pose.pad_centre_mm - mechanism.pedals[index].pad.foot).norm();
  const double turn = far_pose.pedals[index].angle - pose.angle;
  const double travel = radius * turn / (pressed.pedals[index] - controls.pedals[index]);
  if (std::abs(travel) < 1.0) return;
  const ViewPoint way = seen(control.view, truck.pose.chassis_from_cab.turn * pose.pad_direction);
  const double seen_squared = way.x * way.x + way.y * way.y;
  if (seen_squared < 0.02) return;
  const double along = ((to.x - from.x) * way.x + (to.y - from.y) * way.y) / seen_squared;
  controls.pedals[index] = std::clamp(controls.pedals[index] + along / travel, 0.0, 1.0);
}

}  // namespace

std::optional<ControlInHand> control_at(const PosedTruck& truck, const std::string& part,
                                        SheetView view, const ViewPoint& at) {
  ControlInHand control;
  control.view = view;
  const Mechanism& mechanism = *truck.mechanism;
  if (part == "column.hand_wheel_centre_mm" && mechanism.project.column) return control;
  if (part == "front_axle.tyre" && mechanism.steering) {
    control.kind = ControlKind::road_wheel;
    double least = 0.0;
    for (const Side side : {Side::left, Side::right}) {
      const ViewPoint centre =
          seen(view, on_knuckle(truck, side, knuckle_body(truck, side).wheel_centre_mm));
      const double away = std::hypot(at.x - centre.x, at.y - centre.y);
      if (side == Side::right && away >= least) continue;
      least = away;
      control.side = side;
    }
    return control;
  }
  for (std::size_t i = 0; i < mechanism.pedals.size(); ++i) {
    if (part != "pedals.pedals[" + std::to_string(i) + "].pad_centre_mm") continue;
    control.kind = ControlKind::pedal;
    control.pedal = static_cast<int>(i);
    return control;
  }
  return std::nullopt;
}

Controls moved_by_hand(const PosedTruck& truck, const Controls& controls,
                       const ControlInHand& control, const ViewPoint& from, const ViewPoint& to) {
  Controls moved = controls;
  switch (control.kind) {
    case ControlKind::hand_wheel:
      moved.hand_wheel += hand_wheel_turn(truck, control, from, to);
      break;
    case ControlKind::road_wheel:
      if (control.view == SheetView::plan) {
        moved.hand_wheel += steer_turn(truck, control, from, to);
      } else if (const auto& axle = truck.mechanism->project.front_axle) {
        double& bump = control.side == Side::left ? moved.bump_left : moved.bump_right;
        bump = std::clamp(bump + to.y - from.y, -axle->suspension.droop, axle->suspension.bump);
      }
      break;
    case ControlKind::pedal:
      move_pedal(truck, control, from, to, moved);
      break;
  }
  return moved;
}

}  // namespace tackbench::ui
