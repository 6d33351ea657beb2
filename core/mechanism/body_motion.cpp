#include "core/mechanism/body_motion.h"

namespace tackbench {

namespace {

using Motion = Placement<Chassis, Chassis>;

Motion turned_about(const Crank& crank, double angle) {
  const Mat3 turn = turn_about(crank.axis, angle);
  return {turn, crank.foot - turn * crank.foot};
}

// Axle and knuckle frames stand at the axle's origin with the chassis' axes as drawn.
template <class Frame>
Motion from_axle_origin(const Placement<Chassis, Frame>& chassis_from_body, const Vec3& origin_mm) {
  return {chassis_from_body.turn, chassis_from_body.shift_mm - chassis_from_body.turn * origin_mm};
}

Motion cab_motion(const Mechanism& mechanism, const Pose& pose) {
  const auto drawn = mechanism.chassis_from_cab.inverse();
  const auto both = pose.chassis_from_cab * drawn;
  return {both.turn, both.shift_mm};
}

bool knuckles_posed(Outcome outcome) {
  return outcome == Outcome::solved || outcome == Outcome::shaft_line_does_not_close ||
         outcome == Outcome::pedal_does_not_close;
}

}  // namespace

Placement<Chassis, Chassis> moved_from_drawn(const Mechanism& mechanism, const Pose& pose,
                                             Body body, int body_index) {
  const auto index = static_cast<std::size_t>(body_index);
  switch (body) {
    case Body::chassis:
      return {};
    case Body::cab:
      return cab_motion(mechanism, pose);
    case Body::axle:
      if (!mechanism.suspension) return {};
      return from_axle_origin(pose.chassis_from_axle, mechanism.suspension->origin_mm);
    case Body::left_knuckle:
    case Body::right_knuckle: {
      if (!mechanism.suspension) return {};
      const Vec3& origin_mm = mechanism.suspension->origin_mm;
      if (!mechanism.steering || !knuckles_posed(pose.outcome))
        return from_axle_origin(pose.chassis_from_axle, origin_mm);
      const Side side = body == Body::left_knuckle ? Side::left : Side::right;
      return from_axle_origin(pose.steering.knuckle(side).chassis_from_knuckle, origin_mm);
    }
    case Body::arm:
      if (!mechanism.steering) return {};
      return turned_about(mechanism.steering->arm, pose.steering.arm);
    case Body::relay:
      if (!mechanism.steering || index >= mechanism.steering->relays.size() ||
          index >= pose.steering.relays.size())
        return {};
      return turned_about(mechanism.steering->relays[index].output,
                          pose.steering.relays[index].angle);
    case Body::pedal: {
      if (index >= mechanism.pedals.size()) return cab_motion(mechanism, pose);
      // The pedal's crank is in the cab: out of the drawn chassis place, turned, and back.
      const Mat3 turn = turn_about(mechanism.pedals[index].pad.axis, pose.pedals[index].angle);
      const Vec3& foot = mechanism.pedals[index].pad.foot;
      const Placement<Cab, Cab> pressed{turn, foot - turn * foot};
      const auto whole = pose.chassis_from_cab * pressed * mechanism.chassis_from_cab.inverse();
      return {whole.turn, whole.shift_mm};
    }
  }
  return {};
}

}  // namespace tackbench
