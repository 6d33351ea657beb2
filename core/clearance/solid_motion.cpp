// Where each body of a solid goes.
#include <Eigen/Geometry>
#include <cmath>

#include "core/clearance/truck_solids.h"
#include "core/mechanism/body_motion.h"

namespace tackbench {

namespace {

using Motion = Placement<Chassis, Chassis>;

// First axis along `along` (unit), second nearest to `across`.
Motion frame(const Vec3& origin, const Vec3& along, const Vec3& across) {
  Motion made;
  made.shift_mm = origin;
  made.turn.col(0) = along;
  made.turn.col(1) = square_to(along, across);
  made.turn.col(2) = along.cross(made.turn.col(1));
  return made;
}

Motion between(const Motion& drawn, const Motion& posed) {
  return posed * drawn.inverse();
}

Vec3 direction(const Vec3& from, const Vec3& to) {
  const Vec3 step = to - from;
  const double length = step.norm();
  return length > 1e-9 ? Vec3(step / length) : Vec3::UnitX();
}

// A round bar: which way it spins does not matter.
Motion bar_motion(const Vec3& drawn_from, const Vec3& drawn_to, const LinkPose& posed) {
  const Vec3 along = direction(drawn_from, drawn_to);
  const Vec3 across = square_to(along, Vec3::UnitZ());
  return between(frame(drawn_from, along, across), frame(posed.from_mm, posed.along, across));
}

Motion relay_link_motion(const Steering& steering, const Pose& pose, int relay) {
  const auto index = static_cast<std::size_t>(relay);
  if (index >= steering.relays.size() || index >= pose.steering.relays.size()) return {};
  const Vec3 from =
      relay == 0 ? steering.arm.ball(0.0) : steering.relays[index - 1].output.ball(0.0);
  return bar_motion(from, steering.relays[index].from_arm.driven.ball(0.0),
                    pose.steering.relays[index].link);
}

// The drag link spins as its studs want: an offset tube goes with it.
Motion drag_link_motion(const Mechanism& mechanism, const Pose& pose) {
  const Steering& steering = *mechanism.steering;
  const bool plain = steering.relays.empty();
  const int relay = static_cast<int>(steering.relays.size()) - 1;
  const Vec3 from = plain ? steering.arm.ball(0.0) : steering.relays.back().output.ball(0.0);
  const Vec3 to = mechanism.suspension->origin_mm + steering.drag_link.driven.ball(0.0);
  const Motion lever = plain ? moved_from_drawn(mechanism, pose, Body::arm)
                             : moved_from_drawn(mechanism, pose, Body::relay, relay);
  const LinkPose& link = pose.steering.drag_link;
  const Vec3& stud = steering.arm_stud;
  const Vec3 across =
      turned(square_to(link.along, lever.turn * stud), link.along, pose.ball_swing.spin);
  return between(frame(from, direction(from, to), stud), frame(link.from_mm, link.along, across));
}

Motion tie_rod_motion(const Mechanism& mechanism, const Pose& pose) {
  const Vec3& origin = mechanism.suspension->origin_mm;
  return bar_motion(origin + mechanism.steering->left.tie_rod_arm.ball(0.0),
                    origin + mechanism.steering->right.tie_rod_arm.ball(0.0),
                    pose.steering.tie_rod);
}

Motion joint_motion(const Mechanism& mechanism, const Pose& pose, int joint, bool hand_side) {
  if (!mechanism.shaft_line || joint >= pose.shaft_line.cross_count) return {};
  const auto index = static_cast<std::size_t>(joint);
  const DrawnCross& drawn = mechanism.shaft_line->crosses[index];
  const CrossPose& posed = pose.shaft_line.crosses[index];
  return hand_side ? between(frame(drawn.centre_mm, drawn.geometry.in_direction, drawn.in_pin),
                             frame(posed.centre_mm, posed.in_direction, posed.in_pin))
                   : between(frame(drawn.centre_mm, drawn.geometry.out_direction, drawn.out_pin),
                             frame(posed.centre_mm, posed.out_direction, posed.out_pin));
}

}  // namespace

bool SolidBody::stands() const {
  return kind == Kind::of_grips && (body == Body::chassis || body == Body::cab);
}

Placement<Chassis, Chassis> solid_motion(const Mechanism& mechanism, const Pose& pose,
                                         const SolidBody& body) {
  const bool steers = mechanism.steering && mechanism.suspension;
  switch (body.kind) {
    case SolidBody::Kind::of_grips:
      return moved_from_drawn(mechanism, pose, body.body, body.index);
    case SolidBody::Kind::relay_link:
      return steers ? relay_link_motion(*mechanism.steering, pose, body.index) : Motion{};
    case SolidBody::Kind::drag_link:
      return steers ? drag_link_motion(mechanism, pose) : Motion{};
    case SolidBody::Kind::tie_rod:
      return steers ? tie_rod_motion(mechanism, pose) : Motion{};
    case SolidBody::Kind::hand_side_of_joint:
      return joint_motion(mechanism, pose, body.index, true);
    case SolidBody::Kind::road_side_of_joint:
      return joint_motion(mechanism, pose, body.index, false);
  }
  return {};
}

}  // namespace tackbench
