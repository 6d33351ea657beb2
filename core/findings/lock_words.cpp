#include "core/findings/lock_words.h"

#include "core/basics/wording.h"

namespace tackbench {

std::string event_words(const LockEvent& event) {
  const auto named = [&](const std::string& plain) {
    return event.name.empty() ? plain : plain + " (" + event.name + ")";
  };
  switch (event.kind) {
    case LockEventKind::axle_stop:
      return named(say("event.axle_stop"));
    case LockEventKind::assist_cut:
      return named(say("event.assist_cut"));
    case LockEventKind::box_end:
      return named(say("event.box_end"));
    case LockEventKind::ball_stud:
      return named(say("event.ball_stud"));
    case LockEventKind::outer_joint:
      return named(say("event.outer_joint"));
    case LockEventKind::toggle:
      return named(say("event.toggle"));
  }
  return {};
}

std::optional<LockEvent> first_of(const LockSide& lock, LockEventKind kind) {
  for (const LockEvent& event : lock.events)
    if (event.kind == kind) return event;
  return std::nullopt;
}

std::optional<LockEvent> real_end(const LockSide& lock) {
  for (const LockEvent& event : lock.events)
    if (event.ends) return event;
  return std::nullopt;
}

bool ends_hard(LockEventKind kind) {
  switch (kind) {
    case LockEventKind::ball_stud:
    case LockEventKind::outer_joint:
    case LockEventKind::toggle:
      return true;
    case LockEventKind::axle_stop:
    case LockEventKind::assist_cut:
    case LockEventKind::box_end:
      return false;
  }
  return false;
}

std::optional<LockEvent> acting_stop(const LockSide& lock) {
  for (const LockEvent& event : lock.events)
    if (event.ends && event.kind == LockEventKind::axle_stop) return event;
  return std::nullopt;
}

std::optional<LockEvent> first_other_end(const LockSide& lock) {
  for (const LockEvent& event : lock.events)
    if (event.ends && event.kind != LockEventKind::axle_stop) return event;
  return std::nullopt;
}

}  // namespace tackbench
