#include "core/project/steering_box.h"

#include <cmath>

#include "core/basics/units.h"

namespace tackbench {

Direction<Chassis> arm_zero_direction(const SteeringBoxStation& box) {
  const Vec3& axis = box.output_axis.along;
  const bool upright = std::abs(axis.z()) > std::cos(radians_from_degrees(25.0));
  return {square_to(axis, upright ? Vec3(-Vec3::UnitX()) : Vec3(-Vec3::UnitZ()))};
}

Point<Chassis> arm_ball_at_centre(const SteeringBoxStation& box) {
  const Vec3& axis = box.output_axis.along;
  const Vec3 lever = turned(arm_zero_direction(box).along, axis, box.arm.clocking);
  return {box.output_point.mm + box.arm.offset * axis + box.arm.length * lever};
}

}  // namespace tackbench
