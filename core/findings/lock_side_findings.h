// Findings of one lock: what ends it and what comes next, its stop, steer and circle.
#pragma once

#include "core/findings/builders.h"

namespace tackbench {

// "lock.<side>.end", "lock.<side>.<what>_margin", ".steer", ".stop_bolt", ".stop_square",
// ".stop_on_pad", ".ackermann", ".circle"; not judged, with the reason, where one cannot be
// computed
void add_lock_side_findings(const Mechanism& mechanism, const LockResult& result,
                            const LockSide& lock, Findings& findings);

// The part about steer angles and circles, also for a lock without an end.
void add_turning_findings(const Mechanism& mechanism, const LockResult& result,
                          const LockSide& lock, Findings& findings);

// "lock.left.<what>"
std::string lock_name(const LockSide& lock, const char* what);
// The hand wheel at that lock's end.
Controls at_lock_end(const LockSide& lock);

}  // namespace tackbench
