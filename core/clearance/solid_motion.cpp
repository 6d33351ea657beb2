// Where each body of a solid goes.
#include "core/clearance/truck_solids.h"
#include "core/mechanism/body_motion.h"
#include "core/mechanism/part_motion.h"

namespace tackbench {

namespace {

using Motion = PartMotion;

// A round bar: which way it spins does not matter.
Motion bar_motion(const Vec3& drawn_from, const Vec3& drawn_to, const LinkPose& posed) {
  const Vec3 along = direction_between(drawn_from, drawn_to, Vec3::UnitX());
  const Vec3 across = square_to(along, Vec3::UnitZ());
  return frame_to_frame(frame_at(drawn_from, along, across),
                        frame_at(posed.from_mm, posed.along, across));
}

Motion relay_link_motion(const Steering& steering, const Pose& pose, int relay) {
  const auto index = static_cast<std::size_t>(relay);
  if (index >= steering.relays.size() || index >= pose.steering.relays.size()) return {};
  const Vec3 from =
      relay == 0 ? steering.arm.ball(0.0) : steering.relays[index - 1].output.ball(0.0);
  return bar_motion(from, steering.relays[index].from_arm.driven.ball(0.0),
                    pose.steering.relays[index].link);
}

Motion drag_link_motion(const Mechanism& mechanism, const Pose& pose) {
  const Steering& steering = *mechanism.steering;
  const bool plain = steering.relays.empty();
  const int relay = static_cast<int>(steering.relays.size()) - 1;
  const Vec3 from = plain ? steering.arm.ball(0.0) : steering.relays.back().output.ball(0.0);
  const Vec3 to = mechanism.suspension->origin_mm + steering.drag_link.driven.ball(0.0);
  const Motion lever = plain ? moved_from_drawn(mechanism, pose, Body::arm)
                             : moved_from_drawn(mechanism, pose, Body::relay, relay);
  const LinkPose& link = pose.steering.drag_link;
  return spun_link_motion(mechanism, pose, lever, from, to, link.from_mm, link.to_mm);
}

Motion tie_rod_motion(const Mechanism& mechanism, const Pose& pose) {
  const Vec3& origin = mechanism.suspension->origin_mm;
  return bar_motion(origin + mechanism.steering->left.tie_rod_arm.ball(0.0),
                    origin + mechanism.steering->right.tie_rod_arm.ball(0.0),
                    pose.steering.tie_rod);
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
      return cross_motion(mechanism, pose, body.index, CrossPart::hand_side);
    case SolidBody::Kind::road_side_of_joint:
      return cross_motion(mechanism, pose, body.index, CrossPart::road_side);
  }
  return {};
}

}  // namespace tackbench
