// Arm to road wheels, and back.
#include <algorithm>
#include <cmath>
#include <utility>

#include "core/basics/angle_of.h"
#include "core/mechanism/solve.h"

namespace tackbench {

namespace {

// The lever that drives the next link: its ball, and the ball's movement per radian of the lever.
struct DrivingLever {
  Vec3 ball_mm;
  Vec3 ball_rate;
  double radius = 0.0;  // mm
  double rate = 1.0;    // of the lever per radian of arm
};

// Small fixed products. Laid out in place: as calls they would take a fifth of a pose's time.
[[gnu::always_inline]] inline Vec3 turned_by(const Mat3& turn, const Vec3& v) {
  return v.x() * turn.col(0) + v.y() * turn.col(1) + v.z() * turn.col(2);
}
[[gnu::always_inline]] inline Vec3 placed(const Placement<Chassis, Axle>& chassis_from_axle,
                                          const Vec3& axle_mm) {
  return turned_by(chassis_from_axle.turn, axle_mm) + chassis_from_axle.shift_mm;
}

// Unit vector along a link. Where the loop closes its length is known.
[[gnu::always_inline]] inline Vec3 along_link(const Vec3& from, const Vec3& to,
                                              const LinkLoop& loop, const LoopAnswer& answer) {
  const Vec3 between = to - from;
  if (answer.closes) return between * (1.0 / loop.length);
  return between.stableNormalized();
}

// Fills the hand side of a link's pose and gives the driven crank's rate per radian of arm.
// `along_driven` is the link's direction in the frame of `driven_rate`.
[[gnu::always_inline]] inline double link_rates(const DrivingLever& lever, const LinkLoop& loop,
                                                const Vec3& along_driven, const Vec3& driven_rate,
                                                LinkPose& link) {
  const double pushed = link.along.dot(lever.ball_rate);
  const double moved = along_driven.dot(driven_rate);
  link.from_leverage = lever.radius > 0.0 ? std::abs(pushed) / lever.radius : 0.0;
  link.to_leverage = loop.driven.radius > 0.0 ? std::abs(moved) / loop.driven.radius : 0.0;
  return lever.rate * rate_through_link(pushed, moved);
}

struct StageAnswer {
  LoopAnswer loop;
  double rate = 0.0;  // of the driven crank per radian of arm
};

// A crank on the chassis driven through a link by a lever on the chassis.
StageAnswer drive_relay(const LinkLoop& loop, const DrivingLever& lever, LinkPose& link) {
  StageAnswer answer;
  answer.loop = solve_loop(loop, lever.ball_mm);
  link.from_mm = lever.ball_mm;
  link.to_mm = loop.driven.ball(answer.loop.cosine, answer.loop.sine);
  link.along = along_link(link.from_mm, link.to_mm, loop, answer.loop);
  link.closure = answer.loop.closure;
  answer.rate = link_rates(lever, loop, link.along,
                           loop.driven.ball_rate(answer.loop.cosine, answer.loop.sine), link);
  return answer;
}

// A knuckle driven through a link by a ball given in the axle frame; the lever is in the chassis.
StageAnswer drive_knuckle(const LinkLoop& loop, const Vec3& ball_axle_mm, const DrivingLever& lever,
                          const Placement<Chassis, Axle>& chassis_from_axle, LinkPose& link) {
  StageAnswer answer;
  answer.loop = solve_loop(loop, ball_axle_mm);
  const Vec3 to_axle_mm = loop.driven.ball(answer.loop.cosine, answer.loop.sine);
  const Vec3 along_axle = along_link(ball_axle_mm, to_axle_mm, loop, answer.loop);
  link.from_mm = lever.ball_mm;
  link.to_mm = placed(chassis_from_axle, to_axle_mm);
  link.along = turned_by(chassis_from_axle.turn, along_axle);
  link.closure = answer.loop.closure;
  answer.rate = link_rates(lever, loop, along_axle,
                           loop.driven.ball_rate(answer.loop.cosine, answer.loop.sine), link);
  return answer;
}

// Rotation about a unit axis from the angle's cosine and sine (Rodrigues).
[[gnu::always_inline]] inline Mat3 turn_matrix(const Vec3& k, double c, double s) {
  const double v = 1.0 - c;
  const Vec3 kv = v * k;
  const Vec3 ks = s * k;
  const double xy = kv.x() * k.y();
  const double xz = kv.x() * k.z();
  const double yz = kv.y() * k.z();
  Mat3 turn;
  turn << c + kv.x() * k.x(), xy - ks.z(), xz + ks.y(), xy + ks.z(), c + kv.y() * k.y(),
      yz - ks.x(), xz - ks.y(), yz + ks.x(), c + kv.z() * k.z();
  return turn;
}

void pose_knuckle(const KnuckleBody& body, const Placement<Chassis, Axle>& chassis_from_axle,
                  const LoopAnswer& swivel, double swivel_rate, KnucklePose& pose) {
  const Vec3& kingpin = body.tie_rod_arm.axis;
  pose.swivel = swivel.angle;
  pose.swivel_rate = swivel_rate;
  Mat3& turn = pose.chassis_from_knuckle.turn;
  const Mat3 in_axle = turn_matrix(kingpin, swivel.cosine, swivel.sine);
  for (int i = 0; i < 3; ++i) turn.col(i) = turned_by(chassis_from_axle.turn, in_axle.col(i));
  pose.chassis_from_knuckle.shift_mm =
      placed(chassis_from_axle, body.kingpin_point_mm) - turned_by(turn, body.kingpin_point_mm);
  const Vec3 spindle = turned_by(turn, body.spindle);
  pose.spindle = spindle;
  pose.steer = angle_of(-spindle.x(), spindle.y());
  // The spindle s moves by k x s, so its trace in plan turns by (k.z - s.z (s . k)) / (s.x^2 +
  // s.y^2) for each radian of swivel.
  const double kingpin_up = chassis_from_axle.turn.row(2).dot(kingpin);
  const double flat = spindle.x() * spindle.x() + spindle.y() * spindle.y();
  pose.steer_rate =
      flat > 0.0 ? swivel_rate * (kingpin_up - spindle.z() * body.spindle.dot(kingpin)) / flat
                 : 0.0;
}

// Both knuckles from the driven one's swivel; rates per radian of arm.
bool pose_knuckles(const Steering& steering, const Placement<Chassis, Axle>& chassis_from_axle,
                   const LoopAnswer& driven_swivel, double driven_rate, SteeringPose& pose) {
  const bool left_driven = steering.driven_side == Side::left;
  const Crank& arm = steering.driven().tie_rod_arm;
  const Vec3 ball_axle_mm = arm.ball(driven_swivel.cosine, driven_swivel.sine);
  const DrivingLever lever{
      placed(chassis_from_axle, ball_axle_mm),
      turned_by(chassis_from_axle.turn, arm.ball_rate(driven_swivel.cosine, driven_swivel.sine)),
      arm.radius, driven_rate};
  LinkPose& link = pose.tie_rod;
  const StageAnswer follower =
      drive_knuckle(steering.tie_rod, ball_axle_mm, lever, chassis_from_axle, link);
  if (!left_driven) {  // it is told from left to right
    std::swap(link.from_mm, link.to_mm);
    std::swap(link.from_leverage, link.to_leverage);
    link.along = -link.along;
  }
  pose_knuckle(steering.driven(), chassis_from_axle, driven_swivel, driven_rate,
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
  DrivingLever lever{steering.arm.ball(arm_cosine, arm_sine),
                     steering.arm.ball_rate(arm_cosine, arm_sine), steering.arm.radius, 1.0};
  pose.arm_ball_mm = lever.ball_mm;

  for (std::size_t i = 0; i < steering.relays.size(); ++i) {
    const RelayStage& relay = steering.relays[i];
    RelayPose& relay_pose = pose.relays[i];
    const StageAnswer stage = drive_relay(relay.from_arm, lever, relay_pose.link);
    if (!stage.loop.closes && outcome == Outcome::solved) {
      outcome = Outcome::relay_does_not_close;
      if (failed_relay != nullptr) *failed_relay = static_cast<int>(i);
    }
    relay_pose.angle = stage.loop.angle;
    relay_pose.rate = stage.rate;
    relay_pose.input_ball_mm = relay_pose.link.to_mm;
    lever = {relay.output.ball(stage.loop.cosine, stage.loop.sine),
             relay.output.ball_rate(stage.loop.cosine, stage.loop.sine), relay.output.radius,
             stage.rate};
    relay_pose.output_ball_mm = lever.ball_mm;
  }

  const Vec3 ball_axle_mm =
      chassis_from_axle.turn.transpose().lazyProduct(lever.ball_mm - chassis_from_axle.shift_mm);
  const StageAnswer driven =
      drive_knuckle(steering.drag_link, ball_axle_mm, lever, chassis_from_axle, pose.drag_link);
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
