// Arm, relays, links, steering arms and tie rod.
#include <algorithm>
#include <cmath>

#include "core/clearance/solids_maker.h"

namespace tackbench {

namespace {

Vec3 foot_on_axis(const Vec3& point, const Vec3& axis, const Vec3& place) {
  return point + axis.dot(place - point) * axis;
}

// A flat lever from the axis through `foot` to the eye over `ball`, and the stud between them.
void add_lever(SolidPart& part, const SolidBody& body, const Vec3& foot, const Vec3& axis,
               const Vec3& ball_mm, const Vec3& stud) {
  const Vec3 eye = ball_mm + kUsualStudReach * stud;
  const Vec3 root = foot_on_axis(foot, axis, eye);
  const Vec3 step = eye - root;
  const double length = step.norm();
  part.pieces.push_back({capsule(ball_mm, eye, kUsualStud), body, true});
  if (!(length > 1e-6)) return;
  const Vec3 past_eye = eye + 0.5 * kUsualLeverWidth / length * step;
  part.pieces.push_back({flat_bar(root, past_eye, axis, kUsualLeverThickness, kUsualLeverWidth,
                                  0.4 * kUsualLeverThickness),
                         body, true});
}

// Housings about the balls, shanks, the tube between.
void add_link(SolidPart& part, const SolidBody& body, const Vec3& from, const Vec3& to,
              const LinkSizes& sizes) {
  const Vec3 step = to - from;
  const double length = step.norm();
  if (!(length > 1.0)) return;
  const Vec3 along = step / length;
  const double most = 0.42 * length;
  const Vec3 first = from + std::min(sizes.from_shank, most) * along;
  const Vec3 last = to - std::min(sizes.to_shank, most) * along;
  part.pieces.push_back({ball(from, kUsualBall), body, true});
  part.pieces.push_back({ball(to, kUsualBall), body, true});
  part.pieces.push_back({capsule(from, first, sizes.shank_radius), body, true});
  part.pieces.push_back({capsule(last, to, sizes.shank_radius), body, true});
  if (sizes.bend_offset < 1.0) {
    part.pieces.push_back({rounded_cylinder(first, last, sizes.radius), body, !sizes.tube_given});
    return;
  }
  // Which way an offset tube is bent is not measured: as drawn, upward.
  const Vec3 middle = 0.5 * (first + last) + sizes.bend_offset * square_to(along, Vec3::UnitZ());
  part.pieces.push_back({capsule(first, middle, sizes.radius), body, true});
  part.pieces.push_back({capsule(middle, last, sizes.radius), body, true});
}

std::string relay_ball(std::size_t relay, const char* end) {
  return "relay " + std::to_string(relay) + ' ' + end;
}

void add_arm(SolidsMaker& maker, const Steering& steering) {
  const Vec3 axis = maker.project.steering_box->output_axis.along;
  const Vec3 stud = steering.relays.empty() ? steering.arm_stud : Vec3(-axis);
  SolidPart part{"pitman arm", "steering_box.arm", {}, {"arm ball"}};
  add_lever(part, rides(Body::arm), steering.arm.foot, steering.arm.axis, steering.arm.ball(0.0),
            stud);
  maker.add(std::move(part));
}

void add_relays(SolidsMaker& maker, const Steering& steering) {
  Vec3 hand_ball = steering.arm.ball(0.0);
  std::string hand_joint = "arm ball";
  for (std::size_t i = 0; i < steering.relays.size(); ++i) {
    const RelayStage& relay = steering.relays[i];
    const int index = static_cast<int>(i);
    const Vec3& axis = relay.output.axis;
    const Vec3 input = relay.from_arm.driven.ball(0.0);
    const Vec3 output = relay.output.ball(0.0);
    const Vec3 output_stud = i + 1 == steering.relays.size() ? steering.arm_stud : axis;
    const std::string name = relay.name.empty() ? "relay" : relay.name;
    SolidPart lever{name,
                    item_path("steering_box.relays", i),
                    {},
                    {relay_ball(i, "input"), relay_ball(i, "output")}};
    add_lever(lever, rides(Body::relay, index), relay.output.foot, axis, input, axis);
    add_lever(lever, rides(Body::relay, index), relay.output.foot, axis, output, output_stud);
    maker.add(std::move(lever));
    SolidPart link{"link to the " + name,
                   item_path("steering_box.relays", i),
                   {},
                   {hand_joint, relay_ball(i, "input")}};
    const Vec3 along = (input - hand_ball).normalized();
    add_link(link, {SolidBody::Kind::relay_link, Body::relay, index}, hand_ball,
             hand_ball + relay.from_arm.length * along, LinkSizes{});
    maker.add(std::move(link));
    hand_ball = output;
    hand_joint = relay_ball(i, "output");
  }
}

void add_drag_link(SolidsMaker& maker, const Steering& steering, const Vec3& origin_mm) {
  const bool plain = steering.relays.empty();
  const Vec3 from = plain ? steering.arm.ball(0.0) : steering.relays.back().output.ball(0.0);
  const Vec3 ball_mm = origin_mm + steering.drag_link.driven.ball(0.0);
  const Vec3 to = from + steering.drag_link.length * (ball_mm - from).normalized();
  SolidPart link{
      "drag link",
      "drag_link",
      {},
      {plain ? "arm ball" : relay_ball(steering.relays.size() - 1, "output"), "steering-arm ball"}};
  add_link(link, {SolidBody::Kind::drag_link, Body::chassis, 0}, from, to,
           drag_link_sizes(*maker.project.drag_link));
  maker.add(std::move(link));
  const KnuckleBody& driven = steering.driven();
  SolidPart arm{"steering arm",
                "drag_link.knuckle_ball_mm",
                {},
                {"steering-arm ball", side_word(driven.side) + " kingpin"}};
  add_lever(arm, rides(knuckle_body(driven.side)), origin_mm + driven.kingpin_point_mm,
            driven.tie_rod_arm.axis, ball_mm, steering.knuckle_stud);
  maker.add(std::move(arm));
}

void add_tie_rod(SolidsMaker& maker, const Steering& steering, const Vec3& origin_mm) {
  for (const KnuckleBody* knuckle : {&steering.left, &steering.right}) {
    const std::string side = side_word(knuckle->side);
    SolidPart arm{side + " tie-rod arm",
                  "front_axle." + side + "_knuckle.tie_rod_ball_mm",
                  {},
                  {side + " tie-rod ball", side + " kingpin"}};
    const Vec3& axis = knuckle->tie_rod_arm.axis;
    add_lever(arm, rides(knuckle_body(knuckle->side)), origin_mm + knuckle->kingpin_point_mm, axis,
              origin_mm + knuckle->tie_rod_arm.ball(0.0), axis);
    maker.add(std::move(arm));
  }
  const Vec3 from = origin_mm + steering.left.tie_rod_arm.ball(0.0);
  const Vec3 to = origin_mm + steering.right.tie_rod_arm.ball(0.0);
  SolidPart rod{
      "tie rod", "front_axle.tie_rod_length_mm", {}, {"left tie-rod ball", "right tie-rod ball"}};
  add_link(rod, {SolidBody::Kind::tie_rod, Body::axle, 0}, from,
           from + steering.tie_rod.length * (to - from).normalized(), LinkSizes{});
  maker.add(std::move(rod));
}

}  // namespace

void add_steering_solids(SolidsMaker& maker) {
  if (!maker.mechanism.steering || !maker.mechanism.suspension) return;
  const Steering& steering = *maker.mechanism.steering;
  const Vec3& origin_mm = maker.mechanism.suspension->origin_mm;
  add_arm(maker, steering);
  add_relays(maker, steering);
  add_drag_link(maker, steering, origin_mm);
  add_tie_rod(maker, steering, origin_mm);
}

}  // namespace tackbench
