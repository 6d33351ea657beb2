// Background work in ranks: each rank has one thread and at most one job waiting. A newer job takes
// the place of the one that waits and asks the one that runs to stop, so that work for a state that
// is gone does not pile up.
#pragma once

#include <condition_variable>
#include <cstdint>
#include <functional>
#include <mutex>
#include <optional>
#include <stop_token>
#include <thread>

namespace tackbench {

// Counts the states of what is worked on; a result carries the one it came from.
using Revision = std::uint64_t;

// One rank. Jobs run one after the other on its own thread. Destroying it asks the running job to
// stop and waits for it; a job that waits is dropped.
class Runner {
 public:
  // A job looks at its token now and then, and leaves when asked; it throws nothing.
  using Job = std::function<void(const std::stop_token&)>;

  Runner();
  ~Runner();
  Runner(const Runner&) = delete;
  Runner& operator=(const Runner&) = delete;

  // Takes the place of a job that waits. `stop_running`: also asks the running one to stop.
  void submit(Job job, bool stop_running);
  // Drops what waits and asks what runs to stop.
  void stop();
  // Waits until nothing runs and nothing waits.
  void wait_until_idle();
  bool idle() const;

 private:
  void work(const std::stop_token& ending);

  mutable std::mutex guard_;
  std::condition_variable_any changed_;
  std::optional<Job> waiting_;
  std::stop_source running_;
  bool busy_ = false;
  std::jthread thread_;  // last: it uses all of the above
};

}  // namespace tackbench
