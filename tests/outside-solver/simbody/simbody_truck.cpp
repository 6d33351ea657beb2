#include "tests/outside-solver/simbody/simbody_truck.h"

#include <Eigen/Geometry>
#include <cmath>

#include "core/basics/units.h"

namespace tackbench {

namespace {

using Body = SimbodyLinkage::Body;

SimbodyLinkage::Triple triple(const Vec3& v) {
  return {v.x(), v.y(), v.z()};
}

// Up along a kingpin from caster (top rearward) and inclination (top inward).
Vec3 kingpin_direction(const KnuckleSide& knuckle, Side side) {
  const double inward = side == Side::left ? -1.0 : 1.0;
  return {-std::tan(knuckle.caster), inward * std::tan(knuckle.kingpin_inclination), 1.0};
}

Vec3 arm_ball(const SteeringBoxStation& box) {
  const Vec3 axis = box.output_axis.along;
  const bool upright = std::abs(axis.z()) > std::cos(25.0 * kPi / 180.0);
  const Vec3 wanted = upright ? Vec3(-1.0, 0.0, 0.0) : Vec3(0.0, 0.0, -1.0);
  const Vec3 zero = (wanted - wanted.dot(axis) * axis).normalized();
  return box.output_point.mm + box.arm.offset * axis +
         box.arm.length * (Eigen::AngleAxisd(box.arm.clocking, axis) * zero);
}

}  // namespace

SimbodyTruck::SimbodyTruck(const Project& project)
    : linkage_({0.0, 0.0, project.front_axle->wheel_centre_height}) {
  const SteeringBoxStation& box = *project.steering_box;
  const DragLinkStation& link = *project.drag_link;
  const FrontAxleStation& axle = *project.front_axle;
  const double sense = box.left_turns_arm == TurnSense::anticlockwise ? 1.0 : -1.0;

  const KnuckleSide left = knuckle_side(axle, Side::left);
  const KnuckleSide right = knuckle_side(axle, Side::right);
  left_ = linkage_.add_hinged(SimbodyLinkage::kAxle, triple(left.kingpin_point.mm),
                              triple(kingpin_direction(left, Side::left)));
  right_ = linkage_.add_hinged(SimbodyLinkage::kAxle, triple(right.kingpin_point.mm),
                               triple(kingpin_direction(right, Side::right)));
  const auto join = [this](Body from, const Vec3& from_ball, Body to, const Vec3& to_ball,
                           const std::optional<double>& length) {
    linkage_.add_rod(from, triple(from_ball), to, triple(to_ball),
                     length.value_or((to_ball - from_ball).norm()));
  };
  join(left_, left.tie_rod_ball.mm, right_, right.tie_rod_ball.mm, axle.tie_rod_length);

  const Body arm = linkage_.add_hinged(SimbodyLinkage::kChassis, triple(box.output_point.mm),
                                       triple(sense * box.output_axis.along));
  Body driving = arm;
  Vec3 driving_ball = arm_ball(box);
  for (const Relay& relay : box.relays) {
    const Body lever = linkage_.add_hinged(SimbodyLinkage::kChassis, triple(relay.pivot.mm),
                                           triple(relay.axis.along));
    join(driving, driving_ball, lever, relay.input_ball.mm, relay.link_length);
    driving = lever;
    driving_ball = relay.output_ball.mm;
  }
  join(driving, driving_ball, link.knuckle == Side::left ? left_ : right_, link.knuckle_ball.mm,
       link.given_length);
  linkage_.finish(arm);
}

bool SimbodyTruck::project_to(double arm, const AxlePose& axle) {
  return linkage_.project_to(arm, {axle.dx, axle.dy, axle.dz}, {axle.roll, axle.pitch, axle.yaw});
}

bool SimbodyTruck::walk_to(double arm, const AxlePose& axle, int steps) {
  linkage_.as_drawn();
  for (int step = 0; step <= steps; ++step) {
    const double part = static_cast<double>(step) / steps;
    const AxlePose between{part * axle.dx,   part * axle.dy,    part * axle.dz,
                           part * axle.roll, part * axle.pitch, part * axle.yaw};
    if (!project_to(part * arm, between)) return false;
  }
  return true;
}

double SimbodyTruck::swivel(Side side) const {
  return linkage_.angle(side == Side::left ? left_ : right_);
}

}  // namespace tackbench
