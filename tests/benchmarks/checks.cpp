// The checks over a truck with everything that can end a lock: four joints, two relays, stops,
// assist cut-off, ball studs and a driven axle.
#include <benchmark/benchmark.h>

#include <memory>

#include "core/basics/units.h"
#include "core/checks/bump_check.h"
#include "core/checks/lock_check.h"
#include "core/checks/pedal_check.h"
#include "core/checks/stretch_check.h"
#include "tests/support/bench_truck.h"
#include "tests/support/random_truck.h"

namespace tackbench {
namespace {

Project benchmark_truck() {
  TruckChoices choices;
  choices.joints = 4;
  choices.relays = 2;
  choices.ratio_table = true;
  std::mt19937_64 random(7);
  Project project = random_truck(choices, random);
  SteeringBoxStation box = *project.steering_box;
  box.assist_cut_left = box.assist_cut_right = radians_from_degrees(38.0);
  project.steering_box = std::make_shared<const SteeringBoxStation>(box);
  FrontAxleStation axle = *project.front_axle;
  axle.driven = true;
  axle.outer_joint_limit = radians_from_degrees(42.0);
  axle.wanted_steer_left = axle.wanted_steer_right = radians_from_degrees(30.0);
  project.front_axle = std::make_shared<const FrontAxleStation>(axle);
  StretchPair hose;
  hose.from.rides_on = RidesOn::left_knuckle;
  hose.from.at = Vec3(50.0, 700.0, -150.0);
  hose.to.at = Vec3(150.0, 430.0, 50.0);
  ShapesStation shapes;
  shapes.stretch_pairs = {hose};
  project.shapes = std::make_shared<const ShapesStation>(shapes);
  return project;
}

const Mechanism& mechanism() {
  static const Mechanism made = compiled(benchmark_truck());
  return made;
}

void lock_check_every_event(benchmark::State& state) {
  LockSettings settings;
  settings.margin_before_others = radians_from_degrees(1.0);
  std::size_t events = 0;
  for (auto _ : state) {
    const auto locks = check_locks(mechanism(), settings);
    if (!locks) {
      state.SkipWithError("the truck has no locks");
      break;
    }
    events = locks->left.events.size() + locks->right.events.size();
  }
  state.counters["events"] = static_cast<double>(events);
}
BENCHMARK(lock_check_every_event);

void bump_check(benchmark::State& state) {
  for (auto _ : state) benchmark::DoNotOptimize(check_bump(mechanism(), {}));
}
BENCHMARK(bump_check);

void pedal_check(benchmark::State& state) {
  for (auto _ : state) benchmark::DoNotOptimize(check_pedals(mechanism()));
}
BENCHMARK(pedal_check);

void stretch_check(benchmark::State& state) {
  const auto locks = check_locks(mechanism(), {});
  for (auto _ : state) benchmark::DoNotOptimize(check_stretch(mechanism(), locks));
}
BENCHMARK(stretch_check);

}  // namespace
}  // namespace tackbench

BENCHMARK_MAIN();
