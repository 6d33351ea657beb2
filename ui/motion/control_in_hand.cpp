#include "ui/motion/control_in_hand.h"

#include <Eigen/Geometry>
#include <algorithm>
#include <cmath>

#include "core/basics/units.h"
#include "core/checks/control_reach.h"
#include "core/mechanism/solve.h"
#include "core/scene/pick.h"

namespace tackbench::ui {

namespace {

constexpr double kLeastRate = 1e-3;
constexpr double kFarAway = 1e5;     // mm: the eye of a drawing without perspective
constexpr double kEdgeOn = 0.35;     // a rim seen flatter is taken by its near side
constexpr double kFromAbove = 0.3;   // seen flatter the ground says nothing of a turn
constexpr double kSeenToMove = 0.2;  // share of a movement that lies across the line of sight
constexpr double kSmallStep = 1e-3;  // mm or rad, of a slope on the picture

// A place of a knuckle's own frame (axle frame at swivel 0), where it stands.
Vec3 on_knuckle(const PosedTruck& truck, Side side, const Vec3& mm) {
  return (truck.pose.steering.knuckle(side).chassis_from_knuckle * Point<Knuckle>{mm}).mm;
}

const KnuckleBody& knuckle_body(const PosedTruck& truck, Side side) {
  const Steering& steering = *truck.mechanism->steering;
  return side == Side::left ? steering.left : steering.right;
}

Vec3 wheel_centre(const PosedTruck& truck, Side side) {
  return on_knuckle(truck, side, knuckle_body(truck, side).wheel_centre_mm);
}

ViewPoint step_between(const ViewPoint& from, const ViewPoint& to) {
  return {to.x - from.x, to.y - from.y};
}

double product(const ViewPoint& a, const ViewPoint& b) {
  return a.x * b.x + a.y * b.y;
}

// How a place that moves at `rate` a unit of its control goes on the picture, a unit.
ViewPoint slope(const HandView& view, const Vec3& place_mm, const Vec3& rate) {
  const ViewPoint step =
      step_between(view.place(place_mm), view.place(place_mm + kSmallStep * rate));
  return {step.x / kSmallStep, step.y / kSmallStep};
}

// Of a unit movement, what the eye sees of it.
double seen_share(const Vec3& rate, const Vec3& along) {
  return (rate - rate.dot(along) * along).norm();
}

// Units of the control for which a place goes with the hand.
double going_along(const HandView& view, const Vec3& place_mm, const Vec3& rate,
                   const ViewPoint& from, const ViewPoint& to) {
  const ViewPoint way = slope(view, place_mm, rate);
  const double squared = product(way, way);
  return squared > 0.0 ? product(step_between(from, to), way) / squared : 0.0;
}

// About an axis, from what the hand held in a plane square to it to what it holds.
double turn_about_axis(const HandView& view, const Vec3& centre, const Vec3& axis,
                       const ViewPoint& from, const ViewPoint& to) {
  const auto before = on_plane(view.ray(from), centre, axis);
  const auto after = on_plane(view.ray(to), centre, axis);
  if (!before || !after) return 0.0;
  const Vec3 first = *before - centre;
  const Vec3 second = *after - centre;
  return std::atan2(axis.dot(first.cross(second)), first.dot(second));
}

double hand_wheel_turn(const PosedTruck& truck, const HandView& view, const ViewPoint& from,
                       const ViewPoint& to) {
  const ColumnStation& column = *truck.mechanism->project.column;
  const auto& cab = truck.pose.chassis_from_cab;
  const Vec3 centre = (cab * column.hand_wheel_centre).mm;
  // Towards the driver, who sees a left turn go anticlockwise.
  const Vec3 to_driver = (centre - (cab * column.output_end).mm).normalized();
  const Vec3 to_eye = -view.ray(from).along;
  if (std::abs(to_driver.dot(to_eye)) > kEdgeOn)
    return turn_about_axis(view, centre, to_driver, from, to);
  const double radius = std::max(column.hand_wheel_diameter / 2.0, 1.0);
  const Vec3 near_rim = radius * (to_eye - to_eye.dot(to_driver) * to_driver).normalized();
  return going_along(view, centre + near_rim, to_driver.cross(near_rim), from, to);
}

// Movement of what is held, a radian of steer.
Vec3 steer_rate(const PosedTruck& truck, const ControlInHand& control, const Vec3& held) {
  const Vec3 kingpin =
      on_knuckle(truck, control.side, knuckle_body(truck, control.side).kingpin_point_mm);
  return Vec3::UnitZ().cross(held - kingpin);
}

double steer_turn(const PosedTruck& truck, const ControlInHand& control, const HandView& view,
                  const ViewPoint& from, const ViewPoint& to) {
  const KnucklePose& knuckle = truck.pose.steering.knuckle(control.side);
  const double rate = knuckle.steer_rate * truck.pose.arm_rate;
  if (std::abs(rate) < kLeastRate) return 0.0;
  const Vec3 held = on_knuckle(truck, control.side, control.on_knuckle_mm);
  if (std::abs(view.ray(from).along.z()) < kFromAbove)
    return going_along(view, held, steer_rate(truck, control, held), from, to) / rate;
  Vec3 centre = on_knuckle(truck, control.side, knuckle_body(truck, control.side).kingpin_point_mm);
  centre.z() = held.z();
  return turn_about_axis(view, centre, Vec3::UnitZ(), from, to) / rate;
}

void move_pedal(const PosedTruck& truck, const ControlInHand& control, const HandView& view,
                const ViewPoint& from, const ViewPoint& to, Controls& controls) {
  const auto index = static_cast<std::size_t>(control.pedal);
  const Mechanism& mechanism = *truck.mechanism;
  // Where the hand has already taken it: the shown pose may be a step behind.
  const Pose here = solved_pose(mechanism, controls);
  const PedalPose& pose = here.pedals[index];
  Controls pressed = controls;
  pressed.pedals[index] = controls.pedals[index] < 0.5 ? 1.0 : 0.0;
  // Pad travel for the whole control, along the arc between here and the far end.
  const Pose far_pose = solved_pose(mechanism, pressed);
  const double radius = (pose.pad_centre_mm - mechanism.pedals[index].pad.foot).norm();
  const double turn = far_pose.pedals[index].angle - pose.angle;
  const double travel = radius * turn / (pressed.pedals[index] - controls.pedals[index]);
  if (std::abs(travel) < 1.0) return;
  const auto& cab = truck.pose.chassis_from_cab;
  const Vec3 pad = (cab * Point<Cab>{pose.pad_centre_mm}).mm;
  const Vec3 way = cab.turn * pose.pad_direction;
  if (seen_share(way, view.ray(from).along) < kSeenToMove) return;
  controls.pedals[index] += going_along(view, pad, way, from, to) / travel;
}

// A station may go while a hand holds on to it.
bool is_there(const Mechanism& mechanism, const ControlInHand& control) {
  switch (control.kind) {
    case ControlKind::hand_wheel:
      return mechanism.project.column != nullptr;
    case ControlKind::road_wheel:
      return mechanism.steering.has_value();
    case ControlKind::pedal:
      return static_cast<std::size_t>(control.pedal) < mechanism.pedals.size();
  }
  return false;
}

}  // namespace

HandView hand_view(SheetView view) {
  return {[view](const Vec3& chassis_mm) { return seen(view, chassis_mm); },
          [view](const ViewPoint& at) {
            return SightRay{movement_of(view, at) + kFarAway * sight(view), -sight(view)};
          }};
}

std::optional<ControlInHand> control_at(const PosedTruck& truck, const std::string& part,
                                        const SightRay& ray, std::optional<Vec3> met_mm) {
  ControlInHand control;
  const Mechanism& mechanism = *truck.mechanism;
  if (part == "column.hand_wheel_centre_mm" && mechanism.project.column) return control;
  if (part == "front_axle.tyre" && mechanism.steering) {
    control.kind = ControlKind::road_wheel;
    const auto nearest = [&](const Vec3& place) -> Vec3 {
      return met_mm ? *met_mm : Vec3(ray.origin + ray.along.dot(place - ray.origin) * ray.along);
    };
    const auto away = [&](Side side) {
      const Vec3 centre = wheel_centre(truck, side);
      return (nearest(centre) - centre).norm();
    };
    control.side = away(Side::right) < away(Side::left) ? Side::right : Side::left;
    const Vec3 held = nearest(wheel_centre(truck, control.side));
    control.on_knuckle_mm =
        (truck.pose.steering.knuckle(control.side).chassis_from_knuckle.inverse() *
         Point<Chassis>{held})
            .mm;
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

WheelWay way_of_wheel(const PosedTruck& truck, const ControlInHand& control, const HandView& view,
                      const ViewPoint& from, const ViewPoint& to) {
  const Vec3 along = view.ray(from).along;
  const Vec3 held = on_knuckle(truck, control.side, control.on_knuckle_mm);
  const Vec3 turning = steer_rate(truck, control, held);
  const auto agreement = [&](const Vec3& rate) {
    const ViewPoint way = slope(view, held, rate);
    const double length = std::hypot(way.x, way.y);
    return length > 0.0 ? std::abs(product(step_between(from, to), way)) / length : 0.0;
  };
  const double radius = truck.mechanism->project.front_axle
                            ? 0.5 * truck.mechanism->project.front_axle->tyre.diameter
                            : 1.0;
  const bool rises = seen_share(Vec3::UnitZ(), along) > kSeenToMove;
  const bool steers = seen_share(turning, along) > 2.0 * kSeenToMove * radius;
  if (!rises || !steers) return rises ? WheelWay::rises : WheelWay::steers;
  return agreement(turning) > agreement(Vec3::UnitZ()) ? WheelWay::steers : WheelWay::rises;
}

Controls moved_by_hand(const PosedTruck& truck, const Controls& controls,
                       const ControlInHand& control, const HandView& view, const ViewPoint& from,
                       const ViewPoint& to) {
  Controls moved = controls;
  if (!is_there(*truck.mechanism, control)) return moved;
  switch (control.kind) {
    case ControlKind::hand_wheel:
      moved.hand_wheel += hand_wheel_turn(truck, view, from, to);
      break;
    case ControlKind::road_wheel:
      if (control.way == WheelWay::steers) {
        moved.hand_wheel += steer_turn(truck, control, view, from, to);
      } else {
        double& bump = control.side == Side::left ? moved.bump_left : moved.bump_right;
        const Vec3 held = on_knuckle(truck, control.side, control.on_knuckle_mm);
        bump += going_along(view, held, Vec3::UnitZ(), from, to);
      }
      break;
    case ControlKind::pedal:
      move_pedal(truck, control, view, from, to, moved);
      break;
  }
  return moved;
}

void move_control(Session& session, const ControlInHand& control, const HandView& view,
                  const ViewPoint& from, const ViewPoint& to) {
  // As last known while the checks are at work, like the motion desk.
  const auto& locks = session.judged().results.locks;
  const LockResult* known = locks ? &*locks : nullptr;
  session.set_controls(
      held_within(control_reach(*session.posed().mechanism, known),
                  moved_by_hand(session.posed(), session.controls(), control, view, from, to)));
}

}  // namespace tackbench::ui
