// The steering solved step by step, so that a trace can be followed with a calculator: arm ball,
// each loop's A cos t + B sin t = C, swivel and steer.
#pragma once

#include <vector>

#include "core/findings/finding.h"
#include "core/mechanism/solve.h"

namespace tackbench {

// Arm to both road wheels at an axle pose (chassis shifts and turns; ride height by default).
// Stops after a loop that does not close.
std::vector<TraceStep> steering_steps(const Mechanism& mechanism, double arm,
                                      const AxlePose& axle = {});
// Box input and arm for a hand-wheel turn.
std::vector<TraceStep> hand_to_arm_steps(const Mechanism& mechanism, double hand_wheel);

void append(std::vector<TraceStep>& steps, std::vector<TraceStep> more);

}  // namespace tackbench
