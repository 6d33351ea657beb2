// A trace can be followed by hand: its own inputs, put into its own formulas, give its results.
#include <gtest/gtest.h>

#include <cmath>

#include "core/findings/all_findings.h"
#include "core/findings/steering_trace.h"
#include "tests/support/random_truck.h"

namespace tackbench {
namespace {

double number(const std::vector<Quantity>& numbers, const std::string& name) {
  for (const Quantity& each : numbers)
    if (each.name == name) return each.value;
  ADD_FAILURE() << "no number " << name;
  return std::nan("");
}

Vec3 vector(const std::vector<Quantity>& numbers, const std::string& name) {
  return {number(numbers, name + "_x"), number(numbers, name + "_y"), number(numbers, name + "_z")};
}

bool has(const std::vector<Quantity>& numbers, const std::string& name) {
  for (const Quantity& each : numbers)
    if (each.name == name) return true;
  return false;
}

class TraceOfAnyTruck : public testing::TestWithParam<std::uint64_t> {};

// A cos t + B sin t = C with A, B, C from the printed vectors: C from m and L; the printed angle
// solves it, and it is one of the two textbook roots.
TEST_P(TraceOfAnyTruck, LoopsCloseWithThePrintedNumbers) {
  const Mechanism mechanism = compile(random_truck(GetParam())).value();
  int loops = 0;
  for (const double arm : {-0.4, 0.0, 0.3}) {
    for (const TraceStep& step : steering_steps(mechanism, arm)) {
      if (!has(step.results, "loop_a")) continue;
      ++loops;
      const Vec3 m = vector(step.results, "foot") - vector(step.results, "driving_ball");
      const Vec3 lever = vector(step.results, "lever");
      const double a = 2.0 * m.dot(lever);
      const double b = 2.0 * m.dot(vector(step.results, "axis_cross_lever"));
      const double length = number(step.results, "link_length");
      const double c = length * length - m.dot(m) - lever.dot(lever);
      EXPECT_NEAR(number(step.results, "loop_a"), a, 1e-6);
      EXPECT_NEAR(number(step.results, "loop_b"), b, 1e-6);
      EXPECT_NEAR(number(step.results, "loop_c"), c, 1e-6);
      const double t = step.results.back().value;
      EXPECT_NEAR(a * std::cos(t) + b * std::sin(t), c, 1e-6 * std::hypot(a, b));
      const double root =
          std::atan2(b, a) + number(step.results, "loop_root") * std::acos(c / std::hypot(a, b));
      EXPECT_NEAR(std::remainder(root - t, 2.0 * kPi), 0.0, 1e-7);
    }
  }
  EXPECT_GE(loops, 6);
}

// The printed steer angles are those of the pose.
TEST_P(TraceOfAnyTruck, SteerIsThatOfThePose) {
  const Mechanism mechanism = compile(random_truck(GetParam())).value();
  Controls controls;
  controls.hand_wheel = 1.5;
  controls.bump_left = 20.0;
  controls.bump_right = -10.0;
  const Pose pose = solved_pose(mechanism, controls);
  ASSERT_EQ(pose.outcome, Outcome::solved);
  int seen = 0;
  for (const TraceStep& step : steering_steps(mechanism, pose.steering.arm, pose.axle)) {
    if (has(step.results, "steer_left")) {
      EXPECT_NEAR(number(step.results, "steer_left"), pose.steering.left.steer, 1e-12);
      ++seen;
    }
    if (has(step.results, "steer_right")) {
      EXPECT_NEAR(number(step.results, "steer_right"), pose.steering.right.steer, 1e-12);
      ++seen;
    }
  }
  EXPECT_EQ(seen, 2);
}

TEST_P(TraceOfAnyTruck, LinkLengthIsTheDistanceOfThePrintedBalls) {
  const Mechanism mechanism = compile(random_truck(GetParam())).value();
  const auto findings = all_findings(mechanism, run_checks(mechanism));
  const Finding* length = finding_named(findings, "link.length");
  ASSERT_NE(length, nullptr);
  const double apart =
      (vector(length->trace.inputs, "knuckle_ball") - vector(length->trace.inputs, "arm_ball"))
          .norm();
  EXPECT_NEAR(number(length->numbers, "drawn_length"), apart, 1e-9);
  const double change = number(length->trace.steps.back().results, "centring_length") -
                        number(length->trace.steps.back().results, "real_length");
  EXPECT_NEAR(length->numbers.front().value, change, 1e-12);
}

// Brake stroke by the printed pin and rod: along + sqrt(rod^2 - across^2), less free play.
TEST_P(TraceOfAnyTruck, PedalStrokeFollowsFromThePrintedPin) {
  const Mechanism mechanism = compile(random_truck(GetParam())).value();
  const auto findings = all_findings(mechanism, run_checks(mechanism));
  const Finding* stroke = finding_named(findings, "pedal.brake.full_stroke");
  ASSERT_NE(stroke, nullptr);
  int compared = 0;
  for (const TraceStep& step : stroke->trace.steps) {
    if (!has(step.results, "across")) continue;
    ++compared;
    const double rod = number(step.results, "rod_length");
    const double across = number(step.results, "across");
    const double reach = std::sqrt(rod * rod - across * across);
    const double along = number(step.results, "along");
    const double travel = number(step.results, "rod_travel");
    EXPECT_NEAR(std::min(std::abs(along + reach - travel), std::abs(along - reach - travel)), 0.0,
                1e-6);
    EXPECT_NEAR(stroke->numbers.front().value, travel - number(stroke->trace.inputs, "free_play"),
                1e-6);
  }
  EXPECT_EQ(compared, 1);
}

// Hooke's joint, ratio = cos b / (1 - sin^2 b cos^2 t), t = 0 with the driving pin in the bend
// plane (theory of machines texts): with the printed b and t it gives the printed ratio, and the
// ratios' product is the greatest of the line.
TEST_P(TraceOfAnyTruck, RippleFollowsFromThePrintedJoints) {
  TruckChoices choices;
  choices.joints = 3;
  std::mt19937_64 random(GetParam());
  const Mechanism mechanism = compile(random_truck(choices, random)).value();
  const auto findings = all_findings(mechanism, run_checks(mechanism));
  const Finding* ripple = finding_named(findings, "shaft.ripple");
  ASSERT_NE(ripple, nullptr);
  double product = 1.0;
  int ratios = 0;
  int joints = 0;
  for (const TraceStep& step : ripple->trace.steps) {
    if (has(step.results, "cross_ratio")) {
      product *= number(step.results, "cross_ratio");
      ++ratios;
    }
    if (!has(step.results, "pin_turn")) continue;
    ++joints;
    const double b = number(step.results, "cross_angle");
    const double t = number(step.results, "pin_turn");
    EXPECT_NEAR(number(step.results, "cross_ratio"),
                std::cos(b) / (1.0 - std::pow(std::sin(b) * std::cos(t), 2)), 1e-9);
  }
  EXPECT_GE(ratios, choices.joints);
  EXPECT_GE(joints, choices.joints);
  EXPECT_NEAR(product, number(ripple->numbers, "most_rate"), 1e-6);
}

// An axle stop touches: the printed tip stands its radius from the printed pad.
TEST_P(TraceOfAnyTruck, StopsTouchWhereTheTraceSays) {
  const Mechanism mechanism = compile(random_truck(GetParam())).value();
  const auto findings = all_findings(mechanism, run_checks(mechanism));
  int compared = 0;
  for (const char* name : {"lock.left.stop_square", "lock.right.stop_square"}) {
    const Finding* square = finding_named(findings, name);
    if (!square || square->trace.steps.empty()) continue;
    ++compared;
    const std::vector<Quantity>& at = square->trace.steps.front().results;
    const double swivel = number(at, "swivel");
    const Vec3 tip = vector(at, "foot") + std::cos(swivel) * vector(at, "lever") +
                     std::sin(swivel) * vector(at, "axis_cross_lever");
    EXPECT_NEAR((tip - vector(at, "stop_tip")).norm(), 0.0, 1e-9);
    EXPECT_NEAR((tip - vector(at, "pad")).dot(vector(at, "pad_normal")), number(at, "tip_radius"),
                1e-3);
  }
  EXPECT_GE(compared, 1);  // a stop may stand beyond reach on one side
}

// The turning circle by the printed tyre and turning centre.
TEST_P(TraceOfAnyTruck, CirclesFollowFromThePrintedCentres) {
  const Mechanism mechanism = compile(random_truck(GetParam())).value();
  const auto findings = all_findings(mechanism, run_checks(mechanism));
  const Finding* circle = finding_named(findings, "lock.left.circle");
  ASSERT_NE(circle, nullptr);
  if (circle->verdict == Verdict::not_judged) return;  // a lock that ends almost straight
  const auto& steps = circle->trace.steps;
  const Vec3 wheel = vector(steps[0].results, "outer_wheel");
  const Vec3 spindle = vector(steps[0].results, "outer_spindle");
  const Vec3 centre = vector(steps[0].results, "outer_turn_centre");
  EXPECT_NEAR(centre.x(), -number(circle->trace.inputs, "wheelbase"), 1e-9);
  EXPECT_NEAR((centre.y() - wheel.y()) / (centre.x() - wheel.x()), spindle.y() / spindle.x(), 1e-9);
  const Vec3 tyre = vector(steps[2].results, "outer_tyre");
  const double radius = std::hypot(tyre.x() - centre.x(), tyre.y() - centre.y());
  EXPECT_NEAR(number(circle->numbers, "kerb_circle_by_outer"),
              2.0 * radius + number(circle->trace.inputs, "tyre_width"), 1e-3);
}

INSTANTIATE_TEST_SUITE_P(Seeds, TraceOfAnyTruck, testing::Range<std::uint64_t>(20, 28));

}  // namespace
}  // namespace tackbench
