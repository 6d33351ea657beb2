// How the events of a lock came, so that they can be followed by hand.
#pragma once

#include <string>

#include "core/checks/axle_stop.h"
#include "core/checks/lock_check.h"
#include "core/findings/finding.h"

namespace tackbench {

// What an event waits for, as a formula.
const char* event_formula(LockEventKind kind);
// The event, what sets it, and the linkage solved there.
std::vector<TraceStep> event_steps(const Mechanism& mechanism, const LockSide& lock,
                                   const LockEvent& event);
// Margin in inner steer from the one event to the other.
Trace margin_trace(const Mechanism& mechanism, const LockSide& lock, const LockEvent& first,
                   const LockEvent& second);

// The stop of that name that ends a lock to the side steered to.
std::optional<AxleStop> stop_named(const Mechanism& mechanism, Side steers,
                                   const std::string& name);
bool any_stop_for(const Mechanism& mechanism, Side steers);
// The bolt's tip turned about the kingpin, and its gap to the pad.
TraceStep stop_step(const AxleStop& stop, double swivel);

}  // namespace tackbench
