#include "core/mechanism/shaft_line.h"

#include <Eigen/Geometry>

#include "core/basics/units.h"
#include "core/mechanism/shaft_follow.h"

namespace tackbench {
namespace {

bool at_rest(const ShaftLine& line, const Placement<Chassis, Cab>& cab) {
  return cab.shift_mm == line.cab_as_drawn.shift_mm && cab.turn == line.cab_as_drawn.turn;
}

// Everything as drawn: constants of the compiled line, one square root and one arctangent a cross.
void pose_at_rest(const ShaftLine& line, double hand_wheel, ShaftLinePose& pose) {
  const std::size_t count = line.crosses.size();
  double turn = hand_wheel;
  double rate = 1.0;
  PinAngle in = line.crosses[0].in_at_zero + pin_angle(-hand_wheel);
  for (std::size_t i = 0; i < count; ++i) {
    const DrawnCross& drawn = line.crosses[i];
    const JointAnswer answer = turn_out(drawn.geometry, in);
    CrossPose& cross = pose.crosses[i];
    cross.joint = drawn.joint;
    cross.centre_mm = drawn.centre_mm;
    cross.in_direction = drawn.geometry.in_direction;
    cross.out_direction = drawn.geometry.out_direction;
    cross.in_pin = drawn.geometry.in_pin(in);
    cross.out_pin = drawn.geometry.out_pin(answer.pin);
    cross.angle = drawn.angle;
    cross.held = drawn.held;
    cross.in_turn = turn;
    cross.ratio = answer.ratio;
    // Leads are right-handed about the shafts, turns are left-handed.
    turn -= answer.lead - drawn.lead_at_zero;
    cross.out_turn = turn;
    rate *= answer.ratio;
    if (i + 1 < count) in = answer.pin + line.spans[i].to_next;
  }
  pose.box_turn = turn;
  pose.box_rate = rate;
  pose.closes = true;
  pose.misfit = 0.0;
}

// Directions of the column, the spans and the box with the crosses at `centres`; a span that has
// shrunk to nothing keeps its drawn direction.
std::array<Vec3, kMostCrosses + 1> shaft_directions(const ShaftLine& line,
                                                    const Placement<Chassis, Cab>& cab,
                                                    const CrossCentres& centres) {
  constexpr double kNothing = 1e-9;
  std::array<Vec3, kMostCrosses + 1> directions;
  const std::size_t count = line.crosses.size();
  directions[0] = cab.turn * (line.cab_as_drawn.turn.transpose() * line.column_axis.along);
  for (std::size_t i = 1; i < count; ++i) {
    const Vec3 along = centres[i] - centres[i - 1];
    const double length = along.norm();
    directions[i] =
        length > kNothing ? Vec3(along / length) : line.crosses[i].geometry.in_direction;
  }
  directions[count] = line.box_input_axis.along;
  return directions;
}

// A right-handed angle near `near` from `zero` to `pin` about `axis`.
double angle_near(const Vec3& axis, const Vec3& zero, const Vec3& pin, double near) {
  return near + std::remainder(angle_about(axis, zero, pin) - near, kRadiansPerTurn);
}

Vec3 first_pin_at_zero(const ShaftLine& line, const Placement<Chassis, Cab>& cab) {
  return cab.turn * (line.cab_as_drawn.turn.transpose() * line.crosses[0].in_pin);
}

void pose_moved(const ShaftLine& line, const Placement<Chassis, Cab>& cab, double hand_wheel,
                ShaftLinePose& pose) {
  const FollowAnswer answer = follow(line, follow_task(line, cab));
  pose.closes = answer.closes;
  pose.misfit = answer.misfit;
  const std::array<Vec3, kMostCrosses + 1> directions = shaft_directions(line, cab, answer.centres);
  const std::size_t count = line.crosses.size();
  Vec3 pin = turned(first_pin_at_zero(line, cab), directions[0], -hand_wheel);
  double turn = -hand_wheel;  // right-handed
  double rate = 1.0;
  for (std::size_t i = 0; i < count; ++i) {
    const DrawnCross& drawn = line.crosses[i];
    const Vec3& in = directions[i];
    const Vec3& out = directions[i + 1];
    const JointTurning turning = drawn.geometry.turning;
    CrossPose& cross = pose.crosses[i];
    cross.joint = drawn.joint;
    cross.centre_mm = answer.centres[i];
    cross.in_direction = in;
    cross.out_direction = out;
    cross.angle = angle_between(in, out);
    cross.held = drawn.held;
    cross.in_pin = pin;
    cross.in_turn = -turn;
    if (in.dot(out) > 0.0) {
      cross.out_pin = out_pin_of(in, out, turning, pin);
      cross.ratio = speed_ratio(in, out, turning, pin);
    } else {  // folded past a right angle: no joint turns there
      pose.closes = false;
      cross.out_pin = square_to(out, drawn.out_pin);
      cross.ratio = 1.0;
    }
    const Vec3 zero = carried(drawn.out_pin, drawn.geometry.out_direction, out);
    turn = angle_near(out, zero, cross.out_pin, turn);
    cross.out_turn = -turn;
    rate *= cross.ratio;
    if (i + 1 < count) pin = turned(cross.out_pin, out, line.spans[i].fork_offset);
  }
  pose.box_turn = -turn;
  pose.box_rate = rate;
}

double hand_wheel_at_rest(const ShaftLine& line, double box_turn) {
  const std::size_t count = line.crosses.size();
  double turn = box_turn;
  PinAngle out = line.crosses[count - 1].out_at_zero + pin_angle(-box_turn);
  for (std::size_t i = count; i-- > 0;) {
    const DrawnCross& drawn = line.crosses[i];
    const JointAnswer answer = turn_in(drawn.geometry, out);
    turn += answer.lead - drawn.lead_at_zero;
    if (i > 0) {
      const PinAngle& ahead = line.spans[i - 1].to_next;
      out = answer.pin + PinAngle{ahead.cosine, -ahead.sine};
    }
  }
  return turn;
}

double hand_wheel_moved(const ShaftLine& line, const Placement<Chassis, Cab>& cab,
                        double box_turn) {
  const FollowAnswer answer = follow(line, follow_task(line, cab));
  const std::array<Vec3, kMostCrosses + 1> directions = shaft_directions(line, cab, answer.centres);
  const std::size_t count = line.crosses.size();
  Vec3 pin = turned(line.crosses[count - 1].out_pin, directions[count], -box_turn);
  double turn = -box_turn;  // right-handed
  for (std::size_t i = count; i-- > 0;) {
    const DrawnCross& drawn = line.crosses[i];
    const Vec3& in = directions[i];
    if (in.dot(directions[i + 1]) <= 0.0) return box_turn;
    const Vec3 in_pin = in_pin_of(in, directions[i + 1], drawn.geometry.turning, pin);
    const Vec3 zero = i == 0 ? first_pin_at_zero(line, cab)
                             : carried(drawn.in_pin, drawn.geometry.in_direction, in);
    turn = angle_near(in, zero, in_pin, turn);
    if (i > 0) pin = turned(in_pin, in, -line.spans[i - 1].fork_offset);
  }
  return -turn;
}

}  // namespace

void pose_shaft_line(const ShaftLine& line, const Placement<Chassis, Cab>& chassis_from_cab,
                     double hand_wheel, ShaftLinePose& pose) {
  pose.cross_count = static_cast<int>(line.crosses.size());
  if (!line.has_joints) {
    pose.box_turn = hand_wheel;
    pose.box_rate = 1.0;
    pose.closes = true;
    pose.misfit = 0.0;
    return;
  }
  if (at_rest(line, chassis_from_cab)) {
    pose_at_rest(line, hand_wheel, pose);
  } else {
    pose_moved(line, chassis_from_cab, hand_wheel, pose);
  }
}

double hand_wheel_from_box_turn(const ShaftLine& line,
                                const Placement<Chassis, Cab>& chassis_from_cab, double box_turn) {
  if (!line.has_joints) return box_turn;
  return at_rest(line, chassis_from_cab) ? hand_wheel_at_rest(line, box_turn)
                                         : hand_wheel_moved(line, chassis_from_cab, box_turn);
}

}  // namespace tackbench
