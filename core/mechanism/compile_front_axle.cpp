// Kingpins, spindles and tie rod in the axle frame.
#include "core/mechanism/compile_parts.h"

namespace tackbench {

namespace {

// Point of the line (point, unit) nearest to another line.
Vec3 nearest_on_line(const Vec3& point, const Vec3& unit, const Vec3& other_point,
                     const Vec3& other_unit) {
  const double parallel = unit.dot(other_unit);
  const double across = 1.0 - parallel * parallel;
  const Vec3 between = other_point - point;
  return point + (between.dot(unit) - between.dot(other_unit) * parallel) / across * unit;
}

KnuckleBody compile_knuckle(const FrontAxleStation& axle, Side side, const Vec3& origin_mm,
                            Problems& problems) {
  const KnuckleSide knuckle = knuckle_side(axle, side);
  const Vec3 kingpin = kingpin_axis(knuckle, side).along;
  KnuckleBody body;
  body.side = side;
  body.wheel_centre_mm = side_sign(side) * (0.5 * axle.track + axle.hub_offset) * Vec3::UnitY();
  body.spindle = spindle_straight(axle, side).along;
  body.kingpin_point_mm = nearest_on_line(knuckle.kingpin_point.mm - origin_mm, kingpin,
                                          body.wheel_centre_mm, body.spindle);
  body.tie_rod_arm =
      crank_through(body.kingpin_point_mm, kingpin, knuckle.tie_rod_ball.mm - origin_mm);
  constexpr double kLeastLever = 1.0;  // mm
  if (body.tie_rod_arm.radius < kLeastLever) {
    problems.push_back({"",
                        side == Side::left || !axle.right_knuckle
                            ? "front_axle.left_knuckle.tie_rod_ball_mm"
                            : "front_axle.right_knuckle.tie_rod_ball_mm",
                        "the ball lies on its kingpin axis", "move it off the axis"});
  }
  return body;
}

}  // namespace

void compile_knuckles(const FrontAxleStation& axle, const Vec3& origin_mm, Steering& steering,
                      Problems& problems) {
  steering.left = compile_knuckle(axle, Side::left, origin_mm, problems);
  steering.right = compile_knuckle(axle, Side::right, origin_mm, problems);
  const Vec3 driving = steering.driven().tie_rod_arm.ball(0.0);
  const Crank& held = steering.follower().tie_rod_arm;
  steering.tie_rod_drawn = (held.ball(0.0) - driving).norm();
  steering.tie_rod =
      loop_as_drawn(held, axle.tie_rod_length.value_or(steering.tie_rod_drawn), driving);
  if (!solve_loop(steering.tie_rod, driving).closes) {
    problems.push_back({"", "front_axle.tie_rod_length_mm",
                        "this length cannot join the two tie-rod balls",
                        "give a length nearer to the drawn one, or none for as drawn"});
  }
}

}  // namespace tackbench
