// Once compiled, posing allocates nothing.
#include <gtest/gtest.h>

#include <atomic>
#include <cstdlib>
#include <new>

#include "core/mechanism/solve.h"
#include "tests/support/random_truck.h"

namespace {
std::atomic<long> allocations{0};
}

// Not inlined: where only one of a pair is, the compiler takes them for mismatched.
[[gnu::noinline]] void* operator new(std::size_t size) {
  ++allocations;
  // NOLINTNEXTLINE(*-no-malloc): this is what new and delete stand on
  if (void* memory = std::malloc(size == 0 ? 1 : size)) return memory;
  throw std::bad_alloc();
}
[[gnu::noinline]] void operator delete(void* memory) noexcept {
  std::free(memory);  // NOLINT(*-no-malloc)
}
[[gnu::noinline]] void operator delete(void* memory, std::size_t) noexcept {
  std::free(memory);  // NOLINT(*-no-malloc)
}

namespace tackbench {
namespace {

TEST(Solve, AllocatesNothingOnceCompiled) {
  for (std::uint64_t seed = 0; seed < 50; ++seed) {
    const Project project = random_truck(seed);
    const auto mechanism = compile(project);
    ASSERT_TRUE(mechanism.ok());
    Pose pose = blank_pose(*mechanism);
    const long before = allocations;
    int solved = 0;
    for (int i = -20; i <= 20; ++i) {
      Controls controls;
      controls.hand_wheel = 0.3 * i;
      controls.bump_left = 3.0 * i;
      const bool can_shake = project.shaft_line->joints.size() != 1;
      if (can_shake) controls.cab_shake = Vec3(0.1 * i, 0.0, 0.2 * i);
      controls.pedals.fill(0.02 * (i + 20));
      solved += solve(*mechanism, controls, pose) == Outcome::solved ? 1 : 0;
    }
    EXPECT_EQ(allocations - before, 0) << seed;
    EXPECT_GT(solved, 20) << seed;
  }
}

TEST(Solve, TheCounterCounts) {
  const long before = allocations;
  const auto kept = std::make_unique<Pose>();
  EXPECT_GT(allocations - before, 0);
}

}  // namespace
}  // namespace tackbench
