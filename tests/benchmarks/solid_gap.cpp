// One query of the gap between two convex solids, to 1e-3 mm: the pairs that a truck is full of.
#include <benchmark/benchmark.h>

#include <array>
#include <utility>
#include <vector>

#include "core/geometry/solid_gap.h"
#include "tests/geometry/random_solid.h"

namespace tackbench {
namespace {

using Pair = std::pair<ConvexSolid, ConvexSolid>;

void measure(benchmark::State& state, CoreKind first, CoreKind second) {
  RandomSolids random(1);
  std::vector<Pair> pairs;
  while (pairs.size() < 256) {
    Pair pair{random.of_kind(first, random.vector(50.0)),
              random.of_kind(second, random.vector(600.0))};
    if (gap_between(pair.first, pair.second).low_mm > 0.0) pairs.push_back(std::move(pair));
  }
  std::size_t next = 0;
  double rounds = 0.0;
  for (auto _ : state) {
    const Pair& pair = pairs[next++ % pairs.size()];
    const SolidGap gap = gap_between(pair.first, pair.second);
    rounds += gap.rounds;
    benchmark::DoNotOptimize(gap);
  }
  state.counters["rounds"] = rounds / static_cast<double>(state.iterations());
}

BENCHMARK_CAPTURE(measure, capsule_capsule, CoreKind::segment, CoreKind::segment)
    ->Name("gap_capsule_capsule");
BENCHMARK_CAPTURE(measure, tyre_capsule, CoreKind::cylinder, CoreKind::segment)
    ->Name("gap_tyre_capsule");
BENCHMARK_CAPTURE(measure, tyre_box, CoreKind::cylinder, CoreKind::box)->Name("gap_tyre_box");
BENCHMARK_CAPTURE(measure, tyre_disc, CoreKind::cylinder, CoreKind::disc)->Name("gap_tyre_disc");
BENCHMARK_CAPTURE(measure, box_box, CoreKind::box, CoreKind::box)->Name("gap_box_box");
BENCHMARK_CAPTURE(measure, hull_tyre, CoreKind::hull, CoreKind::cylinder)->Name("gap_hull_tyre");

}  // namespace
}  // namespace tackbench

BENCHMARK_MAIN();
