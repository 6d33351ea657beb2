#include "core/drawing/truck_view.h"

#include <algorithm>
#include <cmath>

#include "core/drawing/truck_parts.h"

namespace tackbench {

namespace {

void widen(TruckView& view, const ViewPoint& point, double by) {
  view.least.x = std::min(view.least.x, point.x - by);
  view.least.y = std::min(view.least.y, point.y - by);
  view.greatest.x = std::max(view.greatest.x, point.x + by);
  view.greatest.y = std::max(view.greatest.y, point.y + by);
}

void measure(TruckView& view) {
  constexpr double kFar = 1e9;
  view.least = {kFar, kFar};
  view.greatest = {-kFar, -kFar};
  for (const DrawnLine& line : view.lines)
    for (const ViewPoint& point : line.through) widen(view, point, 0.0);
  for (const DrawnRound& round : view.rounds) widen(view, round.centre, round.radius);
  for (const DrawnSymbol& symbol : view.symbols) widen(view, symbol.at, 0.0);
  for (const DrawnWords& words : view.words) widen(view, words.at, 0.0);
  if (view.least.x > view.greatest.x) view.least = view.greatest = {};
}

}  // namespace

ViewPoint seen(SheetView view, const Vec3& chassis_mm) {
  switch (view) {
    case SheetView::side:
      return {-chassis_mm.x(), chassis_mm.z()};
    case SheetView::front:
      return {chassis_mm.y(), chassis_mm.z()};
    case SheetView::plan:
      return {-chassis_mm.x(), -chassis_mm.y()};
  }
  return {};
}

Vec3 movement_of(SheetView view, const ViewPoint& step) {
  switch (view) {
    case SheetView::side:
      return {-step.x, 0.0, step.y};
    case SheetView::front:
      return {0.0, step.x, step.y};
    case SheetView::plan:
      return {-step.x, -step.y, 0.0};
  }
  return Vec3::Zero();
}

Vec3 sight(SheetView view) {
  switch (view) {
    case SheetView::side:
      return Vec3::UnitY();
    case SheetView::front:
      return Vec3::UnitX();
    case SheetView::plan:
      return Vec3::UnitZ();
  }
  return Vec3::UnitZ();
}

TruckAtPose::TruckAtPose(const Mechanism& built, const Pose& posed)
    : mechanism(built),
      project(built.project),
      pose(posed),
      cab(moved_from_drawn(built, posed, Body::cab)),
      axle(moved_from_drawn(built, posed, Body::axle)),
      left_knuckle(moved_from_drawn(built, posed, Body::left_knuckle)),
      right_knuckle(moved_from_drawn(built, posed, Body::right_knuckle)),
      arm(moved_from_drawn(built, posed, Body::arm)) {}

const Placement<Chassis, Chassis>& TruckAtPose::body(RidesOn rides_on) const {
  static const Placement<Chassis, Chassis> kStill;
  switch (rides_on) {
    case RidesOn::chassis:
      return kStill;
    case RidesOn::cab:
      return cab;
    case RidesOn::axle:
      return axle;
    case RidesOn::left_knuckle:
      return left_knuckle;
    case RidesOn::right_knuckle:
      return right_knuckle;
  }
  return kStill;
}

Vec3 TruckAtPose::riding(RidesOn rides_on, const Vec3& mm) const {
  if (rides_on == RidesOn::cab) return in_cab(Point<Cab>{mm});
  return moved(body(rides_on), mm);
}

double TruckAtPose::hand_wheel() const {
  if (mechanism.shaft_line)
    return pose.shaft_line.cross_count > 0 ? pose.shaft_line.crosses[0].in_turn
                                           : pose.shaft_line.box_turn;
  if (mechanism.steering) return pose.box_input - mechanism.steering->straight_input;
  return 0.0;
}

TruckView truck_view(const Mechanism& mechanism, const Pose& pose, SheetView view) {
  TruckView drawn;
  drawn.view = view;
  drawn.lines.reserve(256);
  TruckPen pen(drawn, false);
  const TruckAtPose truck(mechanism, pose);

  draw_shapes(truck, pen);
  draw_rails(truck, pen);
  draw_suspension(truck, pen);
  draw_axle(truck, pen);
  draw_wheels(truck, pen);
  draw_driver(truck, pen);
  draw_stretch_pairs(truck, pen);
  draw_steering_box(truck, pen);
  draw_supports(truck, pen);
  draw_tie_rod(truck, pen);
  draw_links_and_arms(truck, pen);
  draw_pedals(truck, pen);
  draw_shafts(truck, pen);
  draw_column(truck, pen);
  draw_hand_wheel(truck, pen);

  measure(drawn);
  DrawnLine ground = ground_line(truck, drawn);
  if (!ground.through.empty()) {
    drawn.lines.insert(drawn.lines.begin(), std::move(ground));
    measure(drawn);
  }
  return drawn;
}

TruckView ghost_view(const Mechanism& mechanism, const Pose& pose, SheetView view) {
  TruckView drawn;
  drawn.view = view;
  drawn.lines.reserve(128);
  TruckPen pen(drawn, true);
  const TruckAtPose truck(mechanism, pose);
  draw_wheels(truck, pen);
  draw_stretch_pairs(truck, pen);
  draw_tie_rod(truck, pen);
  draw_links_and_arms(truck, pen);
  draw_pedals(truck, pen);
  draw_shafts(truck, pen);
  draw_hand_wheel(truck, pen);
  measure(drawn);
  return drawn;
}

}  // namespace tackbench
