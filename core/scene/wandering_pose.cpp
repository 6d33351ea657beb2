#include "core/scene/wandering_pose.h"

#include <Eigen/Geometry>

namespace tackbench {

Pose wandered(const Mechanism& mechanism, Pose pose, const std::vector<Vec3>& cross_shift_mm,
              const Vec3& hand_wheel_shift_mm) {
  if (!mechanism.shaft_line || pose.shaft_line.cross_count == 0) return pose;
  const ShaftLine& line = *mechanism.shaft_line;
  const auto count = static_cast<std::size_t>(pose.shaft_line.cross_count);
  ShaftLinePose led = pose.shaft_line;
  const Vec3 wheel =
      (pose.chassis_from_cab * line.column.hand_wheel_centre).mm + hand_wheel_shift_mm;
  for (std::size_t i = 0; i < count && i < cross_shift_mm.size(); ++i)
    led.crosses[i].centre_mm += cross_shift_mm[i];
  const auto direction_to = [&](std::size_t i) -> Vec3 {
    const Vec3 from = i == 0 ? wheel : led.crosses[i - 1].centre_mm;
    const Vec3 step = led.crosses[i].centre_mm - from;
    const double length = step.norm();
    return length > 1.0 ? Vec3(step / length) : led.crosses[i].in_direction;
  };
  const CrossPose& first = pose.shaft_line.crosses[0];
  // A column that stays keeps its own axis, which need not go through the joint as drawn.
  const bool column_stays = (cross_shift_mm.empty() || cross_shift_mm[0].isZero(1e-12)) &&
                            hand_wheel_shift_mm.isZero(1e-12);
  Vec3 in = column_stays ? first.in_direction : direction_to(0);
  Vec3 pin = carried(first.in_pin, first.in_direction, in);
  for (std::size_t i = 0; i < count; ++i) {
    CrossPose& cross = led.crosses[i];
    const Vec3 out = i + 1 < count ? direction_to(i + 1) : cross.out_direction;
    if (!(in.dot(out) > 1e-3)) return pose;
    cross.in_direction = in;
    cross.out_direction = out;
    cross.in_pin = pin;
    cross.out_pin = out_pin_of(in, out, line.crosses[i].geometry.turning, pin);
    cross.angle = angle_between(in, out);
    if (i + 1 < count) pin = turned(cross.out_pin, out, line.spans[i].fork_offset);
    in = out;
  }
  pose.shaft_line = led;
  return pose;
}

}  // namespace tackbench
