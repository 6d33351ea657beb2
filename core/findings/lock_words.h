// What ends a lock, in words.
#pragma once

#include <optional>
#include <string>

#include "core/checks/lock_check.h"

namespace tackbench {

// "the box", "the axle stop 'left bolt'", "the ball stud at the arm end".
std::string event_words(const LockEvent& event);

// What really ends the lock: the first event that does, whatever it is.
std::optional<LockEvent> real_end(const LockSide& lock);
// An end that breaks or jams what is driven against it: ball stud, outer joint, link over centre.
bool ends_hard(LockEventKind kind);

// First event of that kind on this lock, in order of turning.
std::optional<LockEvent> first_of(const LockSide& lock, LockEventKind kind);
// The axle stop that ends it or would; a bolt that misses its pad does not.
std::optional<LockEvent> acting_stop(const LockSide& lock);
// First event that would end the lock and is no axle stop.
std::optional<LockEvent> first_other_end(const LockSide& lock);

}  // namespace tackbench
