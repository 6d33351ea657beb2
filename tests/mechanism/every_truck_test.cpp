// What must hold for every truck, whatever its lay-out.
#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <array>
#include <cmath>

#include "core/basics/units.h"
#include "core/mechanism/solve.h"
#include "tests/support/mirror_image.h"
#include "tests/support/random_truck.h"

namespace tackbench {
namespace {

Project any_truck() {
  return random_truck(*rc::gen::arbitrary<std::uint32_t>());
}

double between(double low, double high) {
  return low + (high - low) * (*rc::gen::inRange(0, 1000001)) / 1e6;
}

// Hand wheel up to about 25 degrees of arm either way, wheels up to 70 mm, some wind-up.
Controls any_controls(const Project& project) {
  Controls controls;
  controls.hand_wheel = between(-8.0, 8.0);
  controls.bump_left = between(-70.0, 70.0);
  controls.bump_right = between(-70.0, 70.0);
  controls.wind_up = between(-0.03, 0.05);
  if (project.shaft_line->joints.size() != 1) {
    controls.cab_shake = Vec3(between(-10.0, 10.0), between(-8.0, 8.0), between(-15.0, 15.0));
  }
  for (double& pedal : controls.pedals) pedal = between(0.0, 1.0);
  return controls;
}

AxlePose any_axle_pose() {
  return {between(-40.0, 40.0), between(-20.0, 20.0), between(-80.0, 80.0),
          between(-0.08, 0.08), between(-0.06, 0.06), between(-0.03, 0.03)};
}

Mechanism compiled(const Project& project) {
  auto result = compile(project);
  if (!result) {
    for (const Problem& problem : result.problems()) RC_FAIL(one_line(problem));
  }
  return std::move(result).value();
}

bool near(double a, double b, double tolerance) {
  return std::abs(a - b) <= tolerance;
}
bool near(const Vec3& a, const Vec3& b, double tolerance) {
  return (a - b).norm() <= tolerance;
}

TEST(RandomTruck, CompilesAndSteersLeftForEverySeed) {
  for (std::uint64_t seed = 0; seed < 1000; ++seed) {
    const Project project = random_truck(seed);
    const auto mechanism = compile(project);
    ASSERT_TRUE(mechanism.ok()) << seed << ": " << one_line(mechanism.problems().front());
    Controls controls;
    controls.hand_wheel = 1.0;
    const Pose pose = solved_pose(*mechanism, controls);
    ASSERT_EQ(pose.outcome, Outcome::solved) << seed;
    EXPECT_GT(pose.steering.left.steer, 0.01) << seed;
    EXPECT_GT(pose.steering.right.steer, 0.01) << seed;
  }
}

TEST(RandomTruck, HandWheelZeroSetsTheWheelsStraight) {
  for (std::uint64_t seed = 0; seed < 200; ++seed) {
    const auto mechanism = compile(random_truck(seed));
    ASSERT_TRUE(mechanism.ok());
    const Pose pose = solved_pose(*mechanism, Controls{});
    ASSERT_EQ(pose.outcome, Outcome::solved);
    EXPECT_NEAR(pose.steering.left.steer + pose.steering.right.steer, 0.0, 1e-12) << seed;
  }
}

RC_GTEST_PROP(EveryTruck, MirrorImageMirrorsEveryResult, ()) {
  const Project project = any_truck();
  const Controls controls = any_controls(project);
  const Pose pose = solved_pose(compiled(project), controls);
  const Pose image = solved_pose(compiled(mirror_image(project)), mirror_image(controls));
  RC_ASSERT(pose.outcome == image.outcome);
  RC_PRE(pose.outcome == Outcome::solved);
  constexpr double kMm = 1e-7;
  constexpr double kRad = 1e-10;
  RC_ASSERT(near(pose.box_input, -image.box_input, kRad));
  RC_ASSERT(near(pose.arm_rate, image.arm_rate, kRad));
  RC_ASSERT(near(pose.steering.arm, -image.steering.arm, kRad));
  RC_ASSERT(near(pose.steering.arm_ball_mm, mirror_image(image.steering.arm_ball_mm), kMm));
  RC_ASSERT(near(pose.axle.dx, image.axle.dx, kMm));
  RC_ASSERT(near(pose.axle.dy, -image.axle.dy, kMm));
  RC_ASSERT(near(pose.axle.yaw, -image.axle.yaw, kRad));
  for (const Side side : {Side::left, Side::right}) {
    const KnucklePose& here = pose.steering.knuckle(side);
    const KnucklePose& there = image.steering.knuckle(other(side));
    RC_ASSERT(near(here.swivel, -there.swivel, kRad));
    RC_ASSERT(near(here.steer, -there.steer, kRad));
    RC_ASSERT(near(here.swivel_rate, there.swivel_rate, 1e-9));
    RC_ASSERT(near(here.steer_rate, there.steer_rate, 1e-9));
    RC_ASSERT(near(camber(here, side), camber(there, other(side)), kRad));
  }
  RC_ASSERT(
      near(pose.steering.drag_link.from_mm, mirror_image(image.steering.drag_link.from_mm), kMm));
  RC_ASSERT(near(pose.steering.drag_link.to_mm, mirror_image(image.steering.drag_link.to_mm), kMm));
  RC_ASSERT(
      near(pose.steering.drag_link.from_leverage, image.steering.drag_link.from_leverage, kRad));
  RC_ASSERT(near(pose.steering.drag_link.to_leverage, image.steering.drag_link.to_leverage, kRad));
  RC_ASSERT(near(pose.steering.tie_rod.from_mm, mirror_image(image.steering.tie_rod.to_mm), kMm));
  RC_ASSERT(near(pose.ball_swing.arm_end, image.ball_swing.arm_end, 1e-7));
  RC_ASSERT(near(pose.ball_swing.knuckle_end, image.ball_swing.knuckle_end, 1e-7));
  RC_ASSERT(near(pose.ball_swing.least_arm_end, image.ball_swing.least_arm_end, 1e-8));
  RC_ASSERT(pose.shaft_line.cross_count == image.shaft_line.cross_count);
  for (int i = 0; i < pose.shaft_line.cross_count; ++i) {
    const CrossPose& here = pose.shaft_line.crosses[i];
    const CrossPose& there = image.shaft_line.crosses[i];
    RC_ASSERT(near(here.centre_mm, mirror_image(there.centre_mm), 1e-6));
    RC_ASSERT(near(here.angle, there.angle, 1e-8));
    RC_ASSERT(near(here.ratio, there.ratio, 1e-8));
    RC_ASSERT(near(here.out_turn, -there.out_turn, 1e-8));
  }
  for (int i = 0; i < pose.pedal_count; ++i) {
    RC_ASSERT(near(pose.pedals[i].rod_travel, image.pedals[i].rod_travel, kMm));
    RC_ASSERT(near(pose.pedals[i].ratio, image.pedals[i].ratio, 1e-8));
    RC_ASSERT(near(pose.pedals[i].pad_centre_mm, mirror_image(image.pedals[i].pad_centre_mm), kMm));
  }
}

// Loops, axis by axis, carried along by one rigid placement.
Crank carried(const Placement<Chassis, Chassis>& by, const Crank& crank) {
  return crank_through((by * Point<Chassis>{crank.foot}).mm, by.turn * crank.axis,
                       (by * Point<Chassis>{crank.foot + crank.lever}).mm);
}
LinkLoop carried(const Placement<Chassis, Chassis>& by, LinkLoop loop) {
  loop.driven = carried(by, loop.driven);
  return loop;
}

RC_GTEST_PROP(EveryTruck, MovingAndTurningTheWholeTruckChangesNothing, ()) {
  const Mechanism mechanism = compiled(any_truck());
  const Steering& steering = *mechanism.steering;
  const Placement<Chassis, Axle> axle = chassis_from_axle(*mechanism.suspension, any_axle_pose());
  const double arm = between(-0.45, 0.45);
  SteeringPose here = blank_pose(mechanism).steering;
  RC_PRE(solve_steering(steering, axle, arm, here) == Outcome::solved);

  const Placement<Chassis, Chassis> by{
      roll_pitch_yaw_turn(between(-3.0, 3.0), between(-1.5, 1.5), between(-3.0, 3.0)),
      Vec3(between(-5e3, 5e3), between(-5e3, 5e3), between(-5e3, 5e3))};
  Steering moved = steering;
  moved.arm = carried(by, moved.arm);
  moved.arm_from_road = carried(by, moved.arm_from_road);
  for (RelayStage& relay : moved.relays) {
    relay.from_arm = carried(by, relay.from_arm);
    relay.output = carried(by, relay.output);
    relay.from_road = carried(by, relay.from_road);
  }
  SteeringPose there = blank_pose(mechanism).steering;
  RC_ASSERT(solve_steering(moved, by * axle, arm, there) == Outcome::solved);
  for (const Side side : {Side::left, Side::right}) {
    RC_ASSERT(near(here.knuckle(side).swivel, there.knuckle(side).swivel, 1e-10));
    RC_ASSERT(near(here.knuckle(side).swivel_rate, there.knuckle(side).swivel_rate, 1e-9));
    RC_ASSERT(near(by.turn * here.knuckle(side).spindle, there.knuckle(side).spindle, 1e-10));
  }
  RC_ASSERT(near((by * Point<Chassis>{here.drag_link.to_mm}).mm, there.drag_link.to_mm, 1e-7));
  RC_ASSERT(near(here.drag_link.from_leverage, there.drag_link.from_leverage, 1e-10));
  RC_ASSERT(near(here.drag_link.closure, there.drag_link.closure, 1e-10));
  RC_ASSERT(near(here.tie_rod.to_leverage, there.tie_rod.to_leverage, 1e-10));
}

RC_GTEST_PROP(EveryTruck, LinksKeepTheirLengths, ()) {
  const Mechanism mechanism = compiled(any_truck());
  const Steering& steering = *mechanism.steering;
  const Pose pose = solved_pose(mechanism, any_controls(mechanism.project));
  RC_PRE(pose.outcome == Outcome::solved);
  const auto holds = [](const LinkPose& link, double length) {
    return near((link.to_mm - link.from_mm).norm(), length, 1e-9);
  };
  RC_ASSERT(holds(pose.steering.drag_link, steering.drag_link.length));
  RC_ASSERT(holds(pose.steering.tie_rod, steering.tie_rod.length));
  for (std::size_t i = 0; i < steering.relays.size(); ++i) {
    RC_ASSERT(holds(pose.steering.relays[i].link, steering.relays[i].from_arm.length));
  }
  for (int i = 0; i < pose.pedal_count; ++i) {
    const PedalLinkage& pedal = mechanism.pedals[static_cast<std::size_t>(i)];
    if (!pedal.has_rod || !pedal.bell_cranks.empty()) continue;
    RC_ASSERT(near((pose.pedals[i].cylinder_pin_mm - pose.pedals[i].rod_pin_mm).norm(),
                   pedal.slider.length, 1e-9));
  }
}

RC_GTEST_PROP(EveryTruck, AnalyticRatiosAreTheSlopes, ()) {
  const Mechanism mechanism = compiled(any_truck());
  Controls controls = any_controls(mechanism.project);
  const Pose pose = solved_pose(mechanism, controls);
  RC_PRE(pose.outcome == Outcome::solved);
  constexpr double kStep = 1e-5;
  const auto at = [&](double step) {
    Controls stepped = controls;
    stepped.hand_wheel += step;
    return solved_pose(mechanism, stepped);
  };
  const Pose more = at(kStep);
  const Pose less = at(-kStep);
  const double arm_slope = (more.steering.arm - less.steering.arm) / (2.0 * kStep);
  RC_ASSERT(near(pose.arm_rate, arm_slope, 1e-6 * std::abs(arm_slope) + 1e-9));
  for (const Side side : {Side::left, Side::right}) {
    const double swivel_slope =
        (more.steering.knuckle(side).swivel - less.steering.knuckle(side).swivel) /
        (more.steering.arm - less.steering.arm);
    const double steer_slope =
        (more.steering.knuckle(side).steer - less.steering.knuckle(side).steer) /
        (more.steering.arm - less.steering.arm);
    RC_ASSERT(near(pose.steering.knuckle(side).swivel_rate / swivel_slope, 1.0, 1e-6));
    RC_ASSERT(near(pose.steering.knuckle(side).steer_rate / steer_slope, 1.0, 1e-6));
  }
  for (std::size_t i = 0; i < pose.steering.relays.size(); ++i) {
    const double slope = (more.steering.relays[i].angle - less.steering.relays[i].angle) /
                         (more.steering.arm - less.steering.arm);
    RC_ASSERT(near(pose.steering.relays[i].rate / slope, 1.0, 1e-6));
  }
}

RC_GTEST_PROP(EveryTruck, ForwardAndBackReturns, ()) {
  const Mechanism mechanism = compiled(any_truck());
  const Steering& steering = *mechanism.steering;
  const Placement<Chassis, Axle> axle = chassis_from_axle(*mechanism.suspension, any_axle_pose());
  const double arm = between(-0.45, 0.45);
  SteeringPose pose = blank_pose(mechanism).steering;
  RC_PRE(solve_steering(steering, axle, arm, pose) == Outcome::solved);
  const double swivel = pose.knuckle(steering.driven_side).swivel;
  // Past the toggle of a lever seen from the road, another arm angle gives the same swivel.
  bool far_from_toggle = pose.drag_link.from_leverage > 0.2;
  for (const RelayPose& relay : pose.relays) {
    far_from_toggle = far_from_toggle && relay.link.from_leverage > 0.2;
  }
  RC_PRE(far_from_toggle);
  const auto back = arm_from_swivel(steering, axle, swivel);
  RC_ASSERT(back.has_value());
  RC_ASSERT(near(*back, arm, 1e-11));
  const double wheel = between(-8.0, 8.0);
  RC_ASSERT(
      near(hand_wheel_from_arm(mechanism, arm_from_hand_wheel(mechanism, wheel)), wheel, 1e-8));
}

bool all_finite(const Pose& pose) {
  bool finite =
      pose.chassis_from_axle.turn.allFinite() && pose.chassis_from_axle.shift_mm.allFinite();
  for (const Side side : {Side::left, Side::right}) {
    const KnucklePose& knuckle = pose.steering.knuckle(side);
    finite = finite && std::isfinite(knuckle.swivel) && std::isfinite(knuckle.steer) &&
             std::isfinite(knuckle.swivel_rate) && std::isfinite(knuckle.steer_rate) &&
             knuckle.spindle.allFinite() && std::isfinite(camber(knuckle, side));
  }
  for (const LinkPose* link : {&pose.steering.drag_link, &pose.steering.tie_rod}) {
    finite = finite && link->from_mm.allFinite() && link->to_mm.allFinite() &&
             link->along.allFinite() && std::isfinite(link->closure) &&
             std::isfinite(link->from_leverage) && std::isfinite(link->to_leverage);
  }
  for (const RelayPose& relay : pose.steering.relays) {
    finite = finite && std::isfinite(relay.angle) && std::isfinite(relay.rate) &&
             relay.output_ball_mm.allFinite();
  }
  for (const PedalPose& pedal : pose.pedals) {
    finite = finite && std::isfinite(pedal.ratio) && std::isfinite(pedal.rod_travel);
  }
  return finite && std::isfinite(pose.ball_swing.arm_end) &&
         std::isfinite(pose.ball_swing.knuckle_end) && std::isfinite(pose.ball_swing.spin_free) &&
         std::isfinite(pose.box_input);
}

RC_GTEST_PROP(EveryTruck, AnyControlsGiveANamedOutcomeAndFiniteNumbers, ()) {
  const Mechanism mechanism = compiled(any_truck());
  Controls controls;
  controls.hand_wheel = between(-200.0, 200.0);
  controls.bump_left = between(-2000.0, 2000.0);
  controls.bump_right = between(-2000.0, 2000.0);
  controls.wind_up = between(-1.0, 1.0);
  controls.cab_shake = Vec3(between(-900.0, 900.0), between(-900.0, 900.0), between(-900.0, 900.0));
  for (double& pedal : controls.pedals) pedal = between(-5.0, 20.0);
  const Pose pose = solved_pose(mechanism, controls);
  RC_ASSERT(all_finite(pose));
  RC_ASSERT(std::string(outcome_name(pose.outcome)) != "");
  RC_ASSERT(!outcome_words(mechanism, pose).empty());
}

// Turning the arm on from straight, every angle moves continuously up to where the linkage stops
// closing: no jump of branch, however near to toggle.
RC_GTEST_PROP(EveryTruck, NoBranchJumpsOnTheWayToToggle, ()) {
  const Mechanism mechanism = compiled(any_truck());
  const Steering& steering = *mechanism.steering;
  const Placement<Chassis, Axle> axle = chassis_from_axle(*mechanism.suspension, any_axle_pose());
  const double sense = *rc::gen::arbitrary<bool>() ? 1.0 : -1.0;
  SteeringPose before = blank_pose(mechanism).steering;
  SteeringPose now = before;
  RC_PRE(solve_steering(steering, axle, 0.0, before) == Outcome::solved);
  constexpr double kStep = 5e-3;
  for (double arm = kStep; arm < 3.1; arm += kStep) {
    if (solve_steering(steering, axle, sense * arm, now) != Outcome::solved) break;
    for (const Side side : {Side::left, Side::right}) {
      const double change =
          std::abs(wrapped(now.knuckle(side).swivel - before.knuckle(side).swivel));
      // A crank's own speed near toggle grows like one over the root of what is left.
      const double fastest = std::max(std::abs(now.knuckle(side).swivel_rate),
                                      std::abs(before.knuckle(side).swivel_rate));
      RC_ASSERT(change <= 2.0 * kStep * fastest + 2.0 * std::sqrt(kStep) * kStep + 1e-6);
    }
    std::swap(before, now);
  }
}

}  // namespace
}  // namespace tackbench
