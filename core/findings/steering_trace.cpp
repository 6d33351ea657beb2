#include "core/findings/steering_trace.h"

#include <cmath>

#include "core/findings/build_finding.h"

namespace tackbench {

namespace {

constexpr const char* kBallFormula = "ball = foot + cos t lever + sin t (axis x lever)";
constexpr const char* kLoopFormula =
    "m = foot - b; A = 2 m . lever; B = 2 m . (axis x lever); "
    "C = L^2 - m . m - lever . lever; "
    "A cos t + B sin t = C; t = atan2(B, A) +/- acos(C / sqrt(A^2 + B^2))";

// The loop's own numbers: driving ball b, foot, lever, length, A, B, C and the angle.
std::vector<Quantity> loop_numbers(const LinkLoop& loop, const Vec3& ball, const LoopAnswer& answer,
                                   std::string_view angle_name) {
  const Crank& crank = loop.driven;
  const Vec3 m = crank.foot - ball;
  auto numbers = point_numbers("driving_ball", ball);
  numbers = joined(std::move(numbers), point_numbers("foot", crank.foot));
  numbers = joined(std::move(numbers), point_numbers("lever", crank.lever));
  numbers = joined(std::move(numbers), point_numbers("axis_cross_lever", crank.sideways));
  numbers.push_back(quantity("link_length", loop.length, Unit::millimetre));
  numbers.push_back(quantity("loop_a", 2.0 * m.dot(crank.lever), Unit::number));
  numbers.push_back(quantity("loop_b", 2.0 * m.dot(crank.sideways), Unit::number));
  numbers.push_back(
      quantity("loop_c", loop.length * loop.length - m.squaredNorm() - crank.lever.squaredNorm(),
               Unit::number));
  numbers.push_back(quantity("loop_root", loop.branch, Unit::count));
  numbers.push_back(quantity(angle_name, answer.angle, Unit::degree));
  return numbers;
}

TraceStep steer_step(const KnuckleBody& body, double swivel,
                     const Placement<Chassis, Axle>& chassis_from_axle) {
  const Vec3& kingpin = body.tie_rod_arm.axis;
  const Vec3 spindle = chassis_from_axle.turn * turned(body.spindle, kingpin, swivel);
  std::vector<Quantity> numbers = direction_numbers("kingpin", kingpin);
  numbers = joined(std::move(numbers), direction_numbers("spindle_at_0", body.spindle));
  numbers.push_back(quantity("swivel", swivel, Unit::degree));
  numbers.push_back(quantity("spindle_x", spindle.x(), Unit::number));
  numbers.push_back(quantity("spindle_y", spindle.y(), Unit::number));
  const double steer = std::atan2(-spindle.x(), spindle.y());
  const char* formula =
      "spindle = s cos t + (k x s) sin t + k (k . s)(1 - cos t), t = swivel, then turned with the "
      "axle; steer = atan2(-x, y)";
  if (body.side == Side::left) {
    numbers.push_back(quantity("steer_left", steer, Unit::degree));
    return step("steer_left", formula, std::move(numbers));
  }
  numbers.push_back(quantity("steer_right", steer, Unit::degree));
  return step("steer_right", formula, std::move(numbers));
}

}  // namespace

void append(std::vector<TraceStep>& steps, std::vector<TraceStep> more) {
  for (TraceStep& each : more) steps.push_back(std::move(each));
}

std::vector<TraceStep> hand_to_arm_steps(const Mechanism& mechanism, double hand_wheel) {
  const Steering& steering = *mechanism.steering;
  const double arm = arm_from_hand_wheel(mechanism, hand_wheel);
  const double input = steering.box.input_from_output(arm);
  return {step("hand_to_box", "box input = straight-ahead input + hand wheel through the joints",
               {quantity("hand_wheel", hand_wheel, Unit::degree),
                quantity("straight_input", steering.straight_input, Unit::degree),
                quantity("box_input", input, Unit::degree)}),
          step("box_to_arm", "arm = box input / ratio (constant, or integrated over the table)",
               {quantity("box_ratio", steering.box.ratio_at(input), Unit::number),
                quantity("arm", arm, Unit::degree)})};
}

std::vector<TraceStep> steering_steps(const Mechanism& mechanism, double arm,
                                      const AxlePose& axle) {
  const Steering& steering = *mechanism.steering;
  const Placement<Chassis, Axle> at = chassis_from_axle(*mechanism.suspension, axle);
  std::vector<TraceStep> steps;
  Vec3 ball = steering.arm.ball(arm);
  auto arm_numbers =
      joined({quantity("arm", arm, Unit::degree)}, point_numbers("foot", steering.arm.foot));
  arm_numbers = joined(std::move(arm_numbers), point_numbers("lever", steering.arm.lever));
  arm_numbers =
      joined(std::move(arm_numbers), point_numbers("axis_cross_lever", steering.arm.sideways));
  steps.push_back(step("arm_ball", kBallFormula,
                       joined(std::move(arm_numbers), point_numbers("arm_ball", ball))));
  for (const RelayStage& relay : steering.relays) {
    const LoopAnswer answer = solve_loop(relay.from_arm, ball);
    steps.push_back(
        step("relay", kLoopFormula, loop_numbers(relay.from_arm, ball, answer, "relay_angle")));
    if (!answer.closes) return steps;
    ball = relay.output.ball(answer.angle);
  }
  ball = at.turn.transpose() * (ball - at.shift_mm);
  steps.push_back(step("ball_in_axle", "ball in the axle's frame = ball - axle origin, turned back",
                       point_numbers("driving_ball", ball)));
  const LoopAnswer driven = solve_loop(steering.drag_link, ball);
  steps.push_back(step("drag_link_loop", kLoopFormula,
                       loop_numbers(steering.drag_link, ball, driven, "driven_swivel")));
  if (!driven.closes) return steps;
  const Vec3 tie_ball = steering.driven().tie_rod_arm.ball(driven.angle);
  const LoopAnswer other_swivel = solve_loop(steering.tie_rod, tie_ball);
  steps.push_back(step("tie_rod_loop", kLoopFormula,
                       loop_numbers(steering.tie_rod, tie_ball, other_swivel, "other_swivel")));
  const bool left_driven = steering.driven_side == Side::left;
  steps.push_back(steer_step(steering.left, left_driven ? driven.angle : other_swivel.angle, at));
  steps.push_back(steer_step(steering.right, left_driven ? other_swivel.angle : driven.angle, at));
  return steps;
}

}  // namespace tackbench
