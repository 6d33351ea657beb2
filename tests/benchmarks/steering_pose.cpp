// One pose of steering linkage and of the whole truck, and Simbody's projection of the same states.
#include <benchmark/benchmark.h>

#include <cmath>
#include <cstdio>
#include <cstdlib>
#include <memory>
#include <vector>

#include "core/mechanism/solve.h"
#include "tests/outside-solver/simbody/simbody_truck.h"
#include "tests/support/random_truck.h"

namespace tackbench {
namespace {

// Left-hand drive, box behind, fore-and-aft drag link, leaf springs: four joints, three pedals.
Project uneven_truck() {
  TruckChoices choices;
  choices.joints = 4;
  std::mt19937_64 random(7);
  return random_truck(choices, random);
}

// The same with what most trucks have: equal spring halves, one kind of ball stud at both ends of
// the drag link. The uneven one's dearer parts are timed apart.
Project benchmark_truck() {
  Project project = uneven_truck();
  FrontAxleStation axle = *project.front_axle;
  axle.suspension.leaf->shackle_half = axle.suspension.leaf->fixed_half;
  project.front_axle = std::make_shared<const FrontAxleStation>(axle);
  DragLinkStation link = *project.drag_link;
  link.knuckle_end.swing_limit = link.arm_end.swing_limit;
  project.drag_link = std::make_shared<const DragLinkStation>(link);
  return project;
}

const Mechanism& mechanism() {
  static const Mechanism compiled = [] {
    auto result = compile(benchmark_truck());
    if (!result) {
      for (const Problem& problem : result.problems()) std::puts(one_line(problem).c_str());
      std::abort();
    }
    return std::move(result).value();
  }();
  return compiled;
}

// A drive: lock to lock while the wheels rise and fall, in small steps, so that a solver that
// tracks its last state is not put at a disadvantage.
struct Step {
  Controls controls;
  AxlePose axle_pose;
  Placement<Chassis, Axle> axle;
  double arm = 0.0;
};

const std::vector<Step>& drive() {
  static const std::vector<Step> steps = [] {
    constexpr int kSteps = 1024;
    std::vector<Step> made(kSteps);
    Pose pose = blank_pose(mechanism());
    for (int i = 0; i < kSteps; ++i) {
      const double phase = 6.283185307179586 * i / kSteps;
      Step& step = made[static_cast<std::size_t>(i)];
      step.controls.hand_wheel = 10.0 * std::sin(phase);
      step.controls.bump_left = 50.0 * std::sin(3.0 * phase);
      step.controls.bump_right = 40.0 * std::cos(2.0 * phase) - 40.0;
      step.controls.wind_up = 0.02 * std::sin(phase);
      step.controls.pedals = {0.5, 0.5, 0.5, 0.0};
      if (solve(mechanism(), step.controls, pose) != Outcome::solved) {
        std::printf("state %d: %s\n", i, outcome_words(mechanism(), pose).c_str());
        std::abort();
      }
      step.axle_pose = pose.axle;
      step.axle = pose.chassis_from_axle;
      step.arm = pose.steering.arm;
    }
    return made;
  }();
  return steps;
}

void steering_pose(benchmark::State& state) {
  const Steering& steering = *mechanism().steering;
  const std::vector<Step>& steps = drive();
  SteeringPose pose = blank_pose(mechanism()).steering;
  std::size_t i = 0;
  for (auto _ : state) {
    const Step& step = steps[i++ & 1023];
    benchmark::DoNotOptimize(solve_steering(steering, step.axle, step.arm, pose));
    benchmark::DoNotOptimize(pose);
  }
  state.SetItemsProcessed(state.iterations());
}
BENCHMARK(steering_pose);

void simbody_projection(benchmark::State& state) {
  SimbodyTruck outside(mechanism().project);
  const std::vector<Step>& steps = drive();
  if (!outside.walk_to(steps[0].arm, steps[0].axle_pose, 8)) state.SkipWithError("no start");
  std::size_t i = 0;
  for (auto _ : state) {
    const Step& step = steps[i++ & 1023];
    if (!outside.project_to(step.arm, step.axle_pose)) {
      state.SkipWithError("no convergence");
      break;
    }
    benchmark::DoNotOptimize(outside.swivel(Side::left));
  }
  state.SetItemsProcessed(state.iterations());
}
BENCHMARK(simbody_projection);

void full_pose(benchmark::State& state) {
  const std::vector<Step>& steps = drive();
  Pose pose = blank_pose(mechanism());
  std::size_t i = 0;
  for (auto _ : state) {
    benchmark::DoNotOptimize(solve(mechanism(), steps[i++ & 1023].controls, pose));
    benchmark::DoNotOptimize(pose);
  }
  state.SetItemsProcessed(state.iterations());
}
BENCHMARK(full_pose);

void suspension_pose(benchmark::State& state) {
  const std::vector<Step>& steps = drive();
  std::size_t i = 0;
  for (auto _ : state) {
    const Controls& c = steps[i++ & 1023].controls;
    benchmark::DoNotOptimize(
        axle_pose(*mechanism().suspension, c.bump_left, c.bump_right, c.wind_up));
  }
}
BENCHMARK(suspension_pose);

void suspension_pose_unequal_halves(benchmark::State& state) {
  const std::vector<Step>& steps = drive();
  const SuspensionPath path = compile_suspension(*uneven_truck().front_axle);
  std::size_t i = 0;
  for (auto _ : state) {
    const Controls& c = steps[i++ & 1023].controls;
    benchmark::DoNotOptimize(axle_pose(path, c.bump_left, c.bump_right, c.wind_up));
  }
}
BENCHMARK(suspension_pose_unequal_halves);

void shaft_line_pose(benchmark::State& state) {
  const std::vector<Step>& steps = drive();
  ShaftLinePose pose;
  std::size_t i = 0;
  for (auto _ : state) {
    pose_shaft_line(*mechanism().shaft_line, mechanism().chassis_from_cab,
                    steps[i++ & 1023].controls.hand_wheel, pose);
    benchmark::DoNotOptimize(pose);
  }
}
BENCHMARK(shaft_line_pose);

void pedal_poses(benchmark::State& state) {
  double angle = 0.0;
  for (auto _ : state) {
    angle = angle < 0.3 ? angle + 1e-4 : 0.0;
    for (const PedalLinkage& pedal : mechanism().pedals) {
      benchmark::DoNotOptimize(pose_pedal(pedal, angle));
    }
  }
}
BENCHMARK(pedal_poses);

void ball_swing_pose(benchmark::State& state, double limit_ratio) {
  const Steering& steering = *mechanism().steering;
  SteeringPose pose = blank_pose(mechanism()).steering;
  static_cast<void>(solve_steering(steering, drive()[100].axle, drive()[100].arm, pose));
  constexpr double kLimit = 0.4;
  for (auto _ : state) {
    benchmark::DoNotOptimize(ball_swing(steering, pose, kLimit, limit_ratio * kLimit));
  }
}
BENCHMARK_CAPTURE(ball_swing_pose, one_limit, 1.0);
BENCHMARK_CAPTURE(ball_swing_pose, two_limits, 1.3);

}  // namespace
}  // namespace tackbench

BENCHMARK_MAIN();
