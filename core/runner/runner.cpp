#include "core/runner/runner.h"

#include <utility>

namespace tackbench {

Runner::Runner() : thread_([this](const std::stop_token& ending) { work(ending); }) {}

Runner::~Runner() {
  stop();
  thread_.request_stop();
  changed_.notify_all();
}

void Runner::submit(Job job, bool stop_running) {
  {
    const std::lock_guard lock(guard_);
    waiting_ = std::move(job);
    if (stop_running) running_.request_stop();
  }
  changed_.notify_all();
}

void Runner::stop() {
  {
    const std::lock_guard lock(guard_);
    waiting_.reset();
    running_.request_stop();
  }
  changed_.notify_all();
}

void Runner::wait_until_idle() {
  std::unique_lock lock(guard_);
  changed_.wait(lock, [this] { return !busy_ && !waiting_; });
}

bool Runner::idle() const {
  const std::lock_guard lock(guard_);
  return !busy_ && !waiting_;
}

void Runner::work(const std::stop_token& ending) {
  while (true) {
    Job job;
    std::stop_token token;
    {
      std::unique_lock lock(guard_);
      if (!changed_.wait(lock, ending, [this] { return waiting_.has_value(); })) return;
      job = std::move(*waiting_);
      waiting_.reset();
      running_ = std::stop_source();
      token = running_.get_token();
      busy_ = true;
    }
    job(token);
    {
      const std::lock_guard lock(guard_);
      busy_ = false;
    }
    changed_.notify_all();
  }
}

}  // namespace tackbench
