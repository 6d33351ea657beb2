// The whole lock check of the tender as first tacked, every event located.
#include <benchmark/benchmark.h>

#include "core/checks/lock_check.h"
#include "core/project-file/project_file.h"

namespace tackbench {
namespace {

void lock_check(benchmark::State& state) {
  const auto project =
      read_project(TACKBENCH_SOURCE_FOLDER
                   "/sample-projects/tender-as-first-tacked/tender-as-first-tacked.tack");
  if (!project) {
    state.SkipWithError("the sample does not read");
    return;
  }
  const auto mechanism = compile(*project);
  if (!mechanism) {
    state.SkipWithError("the sample does not compile");
    return;
  }
  for (auto _ : state) {
    const auto result = check_locks(*mechanism, LockSettings{});
    if (!result || !result->left.found || !result->right.found) {
      state.SkipWithError("a lock has no end");
      break;
    }
    benchmark::DoNotOptimize(result);
  }
}
BENCHMARK(lock_check)->Unit(benchmark::kMicrosecond);

}  // namespace
}  // namespace tackbench

BENCHMARK_MAIN();
