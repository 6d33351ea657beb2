// Arm to road wheels, and back.
#include <algorithm>
#include <cmath>

#include "core/mechanism/solve.h"

namespace tackbench {

namespace {

// A ball on its way down the linkage: place and movement per radian of arm.
struct MovingBall {
  Vec3 at_mm;
  Vec3 rate;
};

MovingBall ball_on(const Crank& crank, double cosine, double sine, double rate) {
  return {crank.ball(cosine, sine), rate * crank.ball_rate(cosine, sine)};
}

struct StageAnswer {
  LoopAnswer loop;
  double rate = 0.0;  // of the driven crank per radian of arm
};

// One crank driven through a link by a moving ball, all in the driven crank's frame. `driving_rate`
// is the driving ball's movement per radian of its own crank, for the effective angle there.
StageAnswer drive(const LinkLoop& stage, const MovingBall& ball, const Vec3& lever_rate,
                  double lever_radius, LinkPose& link) {
  StageAnswer answer;
  answer.loop = solve_loop(stage, ball.at_mm);
  const Vec3 driven_rate = stage.driven.ball_rate(answer.loop.cosine, answer.loop.sine);
  link.from_mm = ball.at_mm;
  link.to_mm = stage.driven.ball(answer.loop.cosine, answer.loop.sine);
  link.along = (link.to_mm - link.from_mm).stableNormalized();
  link.closure = answer.loop.closure;
  link.from_leverage =
      lever_radius > 0.0 ? std::abs(link.along.dot(lever_rate)) / lever_radius : 0.0;
  link.to_leverage = leverage(stage.driven, driven_rate, link.along);
  answer.rate = link_ratio(link.along, ball.rate, driven_rate);
  return answer;
}

void to_chassis(const Placement<Chassis, Axle>& chassis_from_axle, LinkPose& link) {
  link.from_mm = chassis_from_axle.turn * link.from_mm + chassis_from_axle.shift_mm;
  link.to_mm = chassis_from_axle.turn * link.to_mm + chassis_from_axle.shift_mm;
  link.along = chassis_from_axle.turn * link.along;
}

// Rotation about a unit axis from the angle's cosine and sine (Rodrigues).
Mat3 turn_matrix(const Vec3& k, double c, double s) {
  const double v = 1.0 - c;
  Mat3 turn;
  turn << c + k.x() * k.x() * v, k.x() * k.y() * v - k.z() * s, k.x() * k.z() * v + k.y() * s,
      k.y() * k.x() * v + k.z() * s, c + k.y() * k.y() * v, k.y() * k.z() * v - k.x() * s,
      k.z() * k.x() * v - k.y() * s, k.z() * k.y() * v + k.x() * s, c + k.z() * k.z() * v;
  return turn;
}

void pose_knuckle(const KnuckleBody& body, const Placement<Chassis, Axle>& chassis_from_axle,
                  const LoopAnswer& swivel, double swivel_rate, KnucklePose& pose) {
  const Vec3& kingpin = body.tie_rod_arm.axis;
  const Mat3 axle_turn = turn_matrix(kingpin, swivel.cosine, swivel.sine);
  pose.swivel = swivel.angle;
  pose.swivel_rate = swivel_rate;
  pose.chassis_from_knuckle.turn = chassis_from_axle.turn * axle_turn;
  pose.chassis_from_knuckle.shift_mm =
      chassis_from_axle.turn * (body.kingpin_point_mm - axle_turn * body.kingpin_point_mm) +
      chassis_from_axle.shift_mm;
  pose.spindle = pose.chassis_from_knuckle.turn * body.spindle;
  const Vec3 spindle_rate = (chassis_from_axle.turn * kingpin).cross(pose.spindle);
  const double flat = pose.spindle.x() * pose.spindle.x() + pose.spindle.y() * pose.spindle.y();
  pose.steer = std::atan2(-pose.spindle.x(), pose.spindle.y());
  pose.steer_rate =
      flat > 0.0
          ? swivel_rate *
                (pose.spindle.x() * spindle_rate.y() - pose.spindle.y() * spindle_rate.x()) / flat
          : 0.0;
}

// Both knuckles from the driven one's swivel; rates per radian of arm.
bool pose_knuckles(const Steering& steering, const Placement<Chassis, Axle>& chassis_from_axle,
                   const LoopAnswer& driven_swivel, double driven_rate, SteeringPose& pose) {
  const KnuckleBody& driven = steering.driven();
  const MovingBall tie_ball =
      ball_on(driven.tie_rod_arm, driven_swivel.cosine, driven_swivel.sine, driven_rate);
  const Vec3 lever_rate = driven.tie_rod_arm.ball_rate(driven_swivel.cosine, driven_swivel.sine);
  LinkPose link;
  const StageAnswer follower =
      drive(steering.tie_rod, tie_ball, lever_rate, driven.tie_rod_arm.radius, link);
  to_chassis(chassis_from_axle, link);
  if (steering.driven_side == Side::left) {
    pose.tie_rod = link;
  } else {
    pose.tie_rod = {link.to_mm,       link.from_mm,       -link.along,
                    link.to_leverage, link.from_leverage, link.closure};
  }
  const bool left_driven = steering.driven_side == Side::left;
  pose_knuckle(driven, chassis_from_axle, driven_swivel, driven_rate,
               left_driven ? pose.left : pose.right);
  pose_knuckle(steering.follower(), chassis_from_axle, follower.loop, follower.rate,
               left_driven ? pose.right : pose.left);
  return follower.loop.closes;
}

LoopAnswer at_swivel(double swivel) {
  LoopAnswer answer;
  answer.angle = swivel;
  answer.cosine = std::cos(swivel);
  answer.sine = std::sin(swivel);
  answer.closes = true;
  return answer;
}

}  // namespace

Outcome solve_steering(const Steering& steering, const Placement<Chassis, Axle>& chassis_from_axle,
                       double arm, SteeringPose& pose, int* failed_relay) {
  Outcome outcome = Outcome::solved;
  const double arm_cosine = std::cos(arm);
  const double arm_sine = std::sin(arm);
  pose.arm = arm;
  MovingBall ball = ball_on(steering.arm, arm_cosine, arm_sine, 1.0);
  Vec3 lever_rate = ball.rate;
  double lever_radius = steering.arm.radius;
  pose.arm_ball_mm = ball.at_mm;

  for (std::size_t i = 0; i < steering.relays.size(); ++i) {
    const RelayStage& relay = steering.relays[i];
    RelayPose& relay_pose = pose.relays[i];
    const StageAnswer stage =
        drive(relay.from_arm, ball, lever_rate, lever_radius, relay_pose.link);
    if (!stage.loop.closes && outcome == Outcome::solved) {
      outcome = Outcome::relay_does_not_close;
      if (failed_relay != nullptr) *failed_relay = static_cast<int>(i);
    }
    relay_pose.angle = stage.loop.angle;
    relay_pose.rate = stage.rate;
    relay_pose.input_ball_mm = relay_pose.link.to_mm;
    ball = ball_on(relay.output, stage.loop.cosine, stage.loop.sine, stage.rate);
    lever_rate = relay.output.ball_rate(stage.loop.cosine, stage.loop.sine);
    lever_radius = relay.output.radius;
    relay_pose.output_ball_mm = ball.at_mm;
  }

  const Mat3 axle_turn = chassis_from_axle.turn.transpose();
  const MovingBall ball_axle{axle_turn * (ball.at_mm - chassis_from_axle.shift_mm),
                             axle_turn * ball.rate};
  const StageAnswer driven =
      drive(steering.drag_link, ball_axle, axle_turn * lever_rate, lever_radius, pose.drag_link);
  to_chassis(chassis_from_axle, pose.drag_link);
  if (!driven.loop.closes && outcome == Outcome::solved) {
    outcome = Outcome::drag_link_does_not_close;
  }
  const bool tie_rod_closes =
      pose_knuckles(steering, chassis_from_axle, driven.loop, driven.rate, pose);
  if (!tie_rod_closes && outcome == Outcome::solved) outcome = Outcome::tie_rod_does_not_close;
  return outcome;
}

std::optional<double> arm_from_swivel(const Steering& steering,
                                      const Placement<Chassis, Axle>& chassis_from_axle,
                                      double swivel) {
  Vec3 ball =
      chassis_from_axle.turn * steering.drag_link.driven.ball(swivel) + chassis_from_axle.shift_mm;
  for (auto relay = steering.relays.rbegin(); relay != steering.relays.rend(); ++relay) {
    const LoopAnswer answer = solve_loop(relay->from_road, ball);
    if (!answer.closes) return std::nullopt;
    ball = relay->from_arm.driven.ball(answer.cosine, answer.sine);
  }
  const LoopAnswer answer = solve_loop(steering.arm_from_road, ball);
  if (!answer.closes) return std::nullopt;
  return answer.angle;
}

std::optional<double> straight_swivel(const Steering& steering,
                                      const Placement<Chassis, Axle>& chassis_from_axle) {
  constexpr int kMostSteps = 50;
  constexpr double kStraight = 1e-15;
  SteeringPose pose;
  double swivel = 0.0;
  for (int step = 0; step < kMostSteps; ++step) {
    if (!pose_knuckles(steering, chassis_from_axle, at_swivel(swivel), 1.0, pose)) {
      return std::nullopt;
    }
    const double sum = pose.left.steer + pose.right.steer;
    const double rate = pose.left.steer_rate + pose.right.steer_rate;
    const double change = rate != 0.0 ? -sum / rate : 0.0;
    if (std::abs(change) <= kStraight) return swivel;
    swivel += std::clamp(change, -0.2, 0.2);
    // The last digits of the two steer angles need not cancel: the step no longer shrinks.
    if (step > 6 && std::abs(change) < 1e-13) return swivel;
  }
  return std::nullopt;
}

double camber(const KnucklePose& knuckle, Side side) {
  return -side_sign(side) * std::asin(std::clamp(knuckle.spindle.z(), -1.0, 1.0));
}

double effective_angle(double leverage) {
  return std::asin(std::clamp(leverage, 0.0, 1.0));
}

}  // namespace tackbench
