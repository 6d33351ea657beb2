// Steering box, arm, relays, links, steering arms and tie rod.
#include <Eigen/Geometry>
#include <algorithm>
#include <cmath>

#include "core/scene/scene_maker.h"

namespace tackbench {

namespace {

// Sizes of what is drawn but not measured, mm.
constexpr double kArmBoss = 34.0;

Vec3 foot_on_axis(const Vec3& point, const Vec3& axis, const Vec3& ball) {
  return point + axis.dot(ball - point) * axis;
}

void add_box(SceneMaker& maker, const SteeringBoxStation& box_station) {
  const Vec3 along = box_station.input_axis.along;
  BoxPlace place;
  place.axes.col(0) = along;
  place.axes.col(1) = square_to(along, box_station.output_axis.along);
  place.axes.col(2) = along.cross(place.axes.col(1));
  const Vec3 output =
      place.axes.transpose() * (box_station.output_point.mm - box_station.input_end.mm);
  // The housing holds both shafts and stops short of the arm.
  const double begin = std::min(42.0, output.x() - 75.0);
  const double top = std::clamp(output.y() - 0.5 * kUsualLeverThickness - 6.0, 18.0, 55.0);
  const Vec3 least(begin, top - 105.0, std::min(0.0, output.z()) - 52.0);
  const Vec3 greatest(std::max(output.x() + 68.0, begin + 150.0), top,
                      std::max(0.0, output.z()) + 52.0);
  place.centre = box_station.input_end.mm + place.axes * (0.5 * (least + greatest));
  const Vec3 out = box_station.output_axis.along;
  const Vec3 sector = box_station.output_point.mm;
  const double inside = std::max(40.0, output.y() - top);
  maker.add(RidesBody{}, "steering_box", SceneRole::fixed, [&](Detail detail) {
    Mesh mesh = box(place, greatest - least, 20.0);
    append(mesh, cylinder(sector - inside * out, sector - 0.5 * kUsualLeverThickness * out, 36.0,
                          detail));
    append(mesh, cone(box_station.input_end.mm + (begin - 22.0) * along,
                      box_station.input_end.mm + (begin + 2.0) * along, 22.0, 30.0, detail));
    return mesh;
  });
  maker.add(TurnsWithBoxInput{}, "steering_box.input_end_mm", SceneRole::moving,
            [&](Detail detail) {
              return cylinder(box_station.input_end.mm,
                              box_station.input_end.mm + std::max(begin, 8.0) * along,
                              0.5 * box_station.input.diameter, detail);
            });
}

// A lever from the axis through `foot` to the eye over `ball`, with its boss on the axis.
Mesh lever_to_ball(const Vec3& foot, const Vec3& axis, const Vec3& ball, const Vec3& stud,
                   Detail detail) {
  const Vec3 eye = ball + kUsualStudReach * stud;
  const Vec3 root = foot_on_axis(foot, axis, eye);
  Mesh mesh =
      lever(root, eye, axis, kArmBoss, 0.5 * kUsualLeverWidth, kUsualLeverThickness, detail);
  append(mesh, ball_stud(ball, stud, detail));
  return mesh;
}

void add_arm(SceneMaker& maker, const Steering& steering) {
  const Crank& arm = steering.arm;
  const Vec3 ball = arm.ball(0.0);
  const SteeringBoxStation& station = *maker.project.steering_box;
  const Vec3 axis = station.output_axis.along;
  // Out of its housing into the arm; with relays the first link's stud is not given.
  const Vec3 stud = steering.relays.empty() ? steering.arm_stud : Vec3(-axis);
  maker.add(RidesBody{Body::arm, 0}, "steering_box.arm", SceneRole::moving, [&](Detail detail) {
    Mesh mesh = lever_to_ball(arm.foot, arm.axis, ball, stud, detail);
    const Vec3 eye_foot = foot_on_axis(arm.foot, arm.axis, ball + kUsualStudReach * stud);
    const double half = 0.5 * kUsualLeverThickness;
    // Output shaft and nut, on both sides of the lever.
    append(mesh, cylinder(station.output_point.mm - half * axis, eye_foot + (half + 14.0) * axis,
                          20.0, detail));
    return mesh;
  });
}

// Ball to ball: housings about the balls, shanks with their jam nuts, the tube between.
Mesh link_mesh(const Vec3& from, const Vec3& to, const Vec3& from_stud, const Vec3& to_stud,
               const LinkSizes& look, Detail detail) {
  const Vec3 step = to - from;
  const double length = step.norm();
  if (length < 1.0) return {};
  const Vec3 along = step / length;
  const double most = 0.42 * length;
  const Vec3 first = from + std::min(look.from_shank, most) * along;
  const Vec3 last = to - std::min(look.to_shank, most) * along;
  Mesh mesh = ball_housing(from, from_stud, detail);
  append(mesh, ball_housing(to, to_stud, detail));
  append(mesh, cylinder(from + 16.0 * along, first, look.shank_radius, detail));
  append(mesh, cylinder(last, to - 16.0 * along, look.shank_radius, detail));
  append(mesh, cylinder(first - 11.0 * along, first, 1.55 * look.shank_radius, Detail::coarse));
  append(mesh, cylinder(last, last + 11.0 * along, 1.55 * look.shank_radius, Detail::coarse));
  if (look.bend_offset < 1.0) {
    append(mesh, cylinder(first, last, look.radius, detail));
    return mesh;
  }
  // Which way a cranked tube is cranked is not measured: drawn upward.
  const Vec3 middle = 0.5 * (first + last) + look.bend_offset * square_to(along, Vec3::UnitZ());
  append(mesh, cable({first, middle, last}, look.radius, detail));
  return mesh;
}

ScenePlace rides(Body body, int index, const Vec3& drawn_mm) {
  return {ScenePlace::Carrier::body, drawn_mm, body, index, 0};
}

void add_relays(SceneMaker& maker, const Steering& steering) {
  Vec3 hand_ball = steering.arm.ball(0.0);
  Body hand_body = Body::arm;
  int hand_index = 0;
  for (std::size_t i = 0; i < steering.relays.size(); ++i) {
    const int index = static_cast<int>(i);
    const RelayStage& relay = steering.relays[i];
    const Vec3& axis = relay.output.axis;
    const Vec3 input = relay.from_arm.driven.ball(0.0);
    const Vec3 output = relay.output.ball(0.0);
    const bool last = i + 1 == steering.relays.size();
    const Vec3 output_stud = last ? steering.arm_stud : axis;
    const std::string part = item_path("steering_box.relays", i);
    maker.add(RidesBody{Body::relay, index}, part, SceneRole::moving, [&](Detail detail) {
      Mesh mesh = lever_to_ball(relay.output.foot, axis, input, axis, detail);
      append(mesh, lever_to_ball(relay.output.foot, axis, output, output_stud, detail));
      const Vec3 low = foot_on_axis(relay.output.foot, axis, input + kUsualStudReach * axis);
      const Vec3 high =
          foot_on_axis(relay.output.foot, axis, output + kUsualStudReach * output_stud);
      const bool in_order = axis.dot(high - low) >= 0.0;
      append(mesh, cylinder((in_order ? low : high) - 30.0 * axis,
                            (in_order ? high : low) + 30.0 * axis, 24.0, detail));
      return mesh;
    });
    const Vec3 stud = i == 0 ? Vec3(-maker.project.steering_box->output_axis.along) : axis;
    const Vec3 along = (input - hand_ball).normalized();
    const Vec3 end = hand_ball + relay.from_arm.length * along;
    maker.add(Reaches{rides(hand_body, hand_index, hand_ball), rides(Body::relay, index, input)},
              part, SceneRole::moving, [&](Detail detail) {
                return link_mesh(hand_ball, end, stud, axis, LinkSizes{}, detail);
              });
    hand_ball = output;
    hand_body = Body::relay;
    hand_index = index;
  }
}

void add_drag_link(SceneMaker& maker, const Steering& steering, const Vec3& origin_mm) {
  const bool plain = steering.relays.empty();
  const Vec3 from = plain ? steering.arm.ball(0.0) : steering.relays.back().output.ball(0.0);
  const Vec3 ball = origin_mm + steering.drag_link.driven.ball(0.0);
  const Body knuckle = knuckle_of(steering.driven_side);
  const Vec3 along = (ball - from).normalized();
  // The real link's length, which may differ from the drawn distance of the balls.
  const Vec3 to = from + steering.drag_link.length * along;
  const Vec3 from_stud = square_to(along, steering.arm_stud);
  const Vec3 to_stud = turned(from_stud, along, steering.stud_clocking);
  const LinkSizes look = drag_link_sizes(*maker.project.drag_link);
  const int index = plain ? 0 : static_cast<int>(steering.relays.size()) - 1;
  maker.add(
      SpinsOnStuds{rides(plain ? Body::arm : Body::relay, index, from), rides(knuckle, 0, ball)},
      "drag_link", SceneRole::moving,
      [&](Detail detail) { return link_mesh(from, to, from_stud, to_stud, look, detail); });
  const KnuckleBody& driven = steering.driven();
  maker.add(RidesBody{knuckle, 0}, "drag_link.knuckle_ball_mm", SceneRole::moving,
            [&](Detail detail) {
              return lever_to_ball(origin_mm + driven.kingpin_point_mm, driven.tie_rod_arm.axis,
                                   ball, steering.knuckle_stud, detail);
            });
}

void add_tie_rod(SceneMaker& maker, const Steering& steering, const Vec3& origin_mm) {
  const auto ball_of = [&](const KnuckleBody& knuckle) -> Vec3 {
    return origin_mm + knuckle.tie_rod_arm.ball(0.0);
  };
  for (const KnuckleBody* knuckle : {&steering.left, &steering.right}) {
    const bool left = knuckle->side == Side::left;
    maker.add(RidesBody{knuckle_of(knuckle->side), 0},
              left ? "front_axle.left_knuckle.tie_rod_ball_mm"
                   : "front_axle.right_knuckle.tie_rod_ball_mm",
              SceneRole::moving, [&](Detail detail) {
                return lever_to_ball(origin_mm + knuckle->kingpin_point_mm,
                                     knuckle->tie_rod_arm.axis, ball_of(*knuckle),
                                     knuckle->tie_rod_arm.axis, detail);
              });
  }
  const Vec3 from = ball_of(steering.left);
  const Vec3 ball = ball_of(steering.right);
  const Vec3 along = (ball - from).normalized();
  const Vec3 to = from + steering.tie_rod.length * along;
  maker.add(Reaches{rides(Body::left_knuckle, 0, from), rides(Body::right_knuckle, 0, ball)},
            "front_axle.tie_rod_length_mm", SceneRole::moving, [&](Detail detail) {
              return link_mesh(from, to, steering.left.tie_rod_arm.axis,
                               steering.right.tie_rod_arm.axis, LinkSizes{}, detail);
            });
}

}  // namespace

Mesh ball_housing(const Vec3& ball, const Vec3& stud, Detail detail) {
  return turned_solid(ball, stud,
                      {{-24.0, 0.0},
                       {-24.0, 12.0},
                       {-16.0, 20.0, true},
                       {8.0, 20.0, true},
                       {18.0, 14.0},
                       {18.0, 0.0}},
                      false, sides_of_circle(detail, 26.0));
}

Mesh ball_stud(const Vec3& ball, const Vec3& stud, Detail detail) {
  Mesh mesh = cone(ball + 10.0 * stud, ball + (kUsualStudReach + 12.0) * stud, 12.0, 9.0, detail);
  append(mesh, cylinder(ball + (kUsualStudReach + 12.0) * stud,
                        ball + (kUsualStudReach + 26.0) * stud, 15.0, Detail::coarse));
  return mesh;
}

void add_steering(SceneMaker& maker) {
  if (maker.project.steering_box) add_box(maker, *maker.project.steering_box);
  if (!maker.mechanism.steering || !maker.mechanism.suspension) return;
  const Steering& steering = *maker.mechanism.steering;
  const Vec3& origin_mm = maker.mechanism.suspension->origin_mm;
  add_arm(maker, steering);
  add_relays(maker, steering);
  add_drag_link(maker, steering, origin_mm);
  add_tie_rod(maker, steering, origin_mm);
}

}  // namespace tackbench
