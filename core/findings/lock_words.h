// What ends a lock, in words.
#pragma once

#include <optional>
#include <string>

#include "core/checks/lock_check.h"

namespace tackbench {

// "the box", "the axle stop 'left bolt'", "the ball stud at the arm end".
std::string event_words(const LockEvent& event);
// Whether it ends the lock; the assist's cut-off does not.
bool ends_lock(LockEventKind kind);

// First event of that kind on this lock, in order of turning.
std::optional<LockEvent> first_of(const LockSide& lock, LockEventKind kind);
// First event that would end the lock and is no axle stop.
std::optional<LockEvent> first_other_end(const LockSide& lock);

}  // namespace tackbench
