// Background work: the newest job counts. Also built under the thread sanitizer.
#include "core/runner/runner.h"

#include <gtest/gtest.h>

#include <atomic>
#include <memory>
#include <semaphore>
#include <vector>

namespace tackbench {
namespace {

TEST(Runner, RunsEachJobOnItsOwnThread) {
  Runner runner;
  std::thread::id ran_on;
  runner.submit([&](const std::stop_token&) { ran_on = std::this_thread::get_id(); }, false);
  runner.wait_until_idle();
  EXPECT_NE(ran_on, std::thread::id());
  EXPECT_NE(ran_on, std::this_thread::get_id());
  EXPECT_TRUE(runner.idle());
}

TEST(Runner, OnlyTheNewestOfThoseThatWaitRuns) {
  Runner runner;
  std::binary_semaphore started(0);
  std::binary_semaphore go_on(0);
  std::vector<int> ran;
  runner.submit(
      [&](const std::stop_token&) {
        started.release();
        go_on.acquire();
        ran.push_back(0);
      },
      false);
  started.acquire();
  for (int job = 1; job <= 5; ++job)
    runner.submit([&ran, job](const std::stop_token&) { ran.push_back(job); }, false);
  EXPECT_FALSE(runner.idle());
  go_on.release();
  runner.wait_until_idle();
  EXPECT_EQ(ran, (std::vector<int>{0, 5}));
}

TEST(Runner, ANewJobAsksTheRunningOneToStop) {
  Runner runner;
  std::binary_semaphore started(0);
  bool asked = false;
  bool second = false;
  runner.submit(
      [&](const std::stop_token& token) {
        started.release();
        while (!token.stop_requested()) std::this_thread::yield();
        asked = true;
      },
      false);
  started.acquire();
  runner.submit([&](const std::stop_token& token) { second = !token.stop_requested(); }, true);
  runner.wait_until_idle();
  EXPECT_TRUE(asked);
  EXPECT_TRUE(second);
}

TEST(Runner, StopDropsWhatWaits) {
  Runner runner;
  std::binary_semaphore started(0);
  bool ran = false;
  runner.submit(
      [&](const std::stop_token& token) {
        started.release();
        while (!token.stop_requested()) std::this_thread::yield();
      },
      false);
  started.acquire();
  runner.submit([&](const std::stop_token&) { ran = true; }, false);
  runner.stop();
  runner.wait_until_idle();
  EXPECT_FALSE(ran);
}

TEST(Runner, GoesAwayWhileAJobRuns) {
  std::atomic<bool> left = false;
  {
    Runner runner;
    std::binary_semaphore started(0);
    runner.submit(
        [&](const std::stop_token& token) {
          started.release();
          while (!token.stop_requested()) std::this_thread::yield();
          left = true;
        },
        false);
    started.acquire();
  }
  EXPECT_TRUE(left);
}

TEST(Runner, ManyJobsFromTwoThreads) {
  Runner runner;
  std::atomic<int> ran = 0;
  const auto submit_many = [&] {
    for (int i = 0; i < 500; ++i) runner.submit([&](const std::stop_token&) { ++ran; }, i % 2 == 0);
  };
  {
    const std::jthread first(submit_many);
    const std::jthread second(submit_many);
  }
  runner.wait_until_idle();
  EXPECT_GE(ran, 1);
  EXPECT_LE(ran, 1000);
}

}  // namespace
}  // namespace tackbench
