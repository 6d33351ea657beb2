// All gaps of the tender in one pose, as a drag wants them: solids made anew, then asked.
#include <benchmark/benchmark.h>

#include "tests/clearance/tender.h"

namespace tackbench {
namespace {

void gaps_in_pose(benchmark::State& state) {
  const SampleSolids tender = sample_solids("tender-as-first-tacked");
  Pose pose = blank_pose(tender.mechanism);
  Controls controls;
  double turn = 0.0;
  for (auto _ : state) {
    controls.hand_wheel = std::sin(turn += 0.1);
    benchmark::DoNotOptimize(solve(tender.mechanism, controls, pose));
    const auto solids = truck_solids(tender.mechanism);
    benchmark::DoNotOptimize(gaps(*solids, tender.mechanism, pose, {150.0, "drag_link", 300.0}));
  }
}
BENCHMARK(gaps_in_pose);

void gaps_of_all_pairs(benchmark::State& state) {
  const SampleSolids tender = sample_solids("tender-as-first-tacked");
  const Pose pose = solved_pose(tender.mechanism, {});
  for (auto _ : state) benchmark::DoNotOptimize(gaps(*tender.solids, tender.mechanism, pose));
  state.counters["pairs"] = static_cast<double>(tender.solids->pairs.size());
}
BENCHMARK(gaps_of_all_pairs);

}  // namespace
}  // namespace tackbench

BENCHMARK_MAIN();
