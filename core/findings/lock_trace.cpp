#include "core/findings/lock_trace.h"

#include <cmath>

#include "core/basics/wording.h"
#include "core/findings/build_finding.h"
#include "core/findings/lock_words.h"
#include "core/findings/steering_trace.h"

namespace tackbench {

namespace {

TraceStep event_step(const LockEvent& event) {
  return {event_words(event),
          event_formula(event.kind),
          {quantity("hand_wheel_at_event", event.hand_wheel, Unit::degree),
           quantity("arm", event.arm, Unit::degree),
           quantity("inner_steer", event.inner_steer, Unit::degree),
           quantity("outer_steer", event.outer_steer, Unit::degree),
           quantity("driven_swivel", event.driven_swivel, Unit::degree)}};
}

}  // namespace

const char* event_formula(LockEventKind kind) {
  switch (kind) {
    case LockEventKind::axle_stop:
      return "(centre of the bolt's tip - pad) . pad normal - tip radius = 0";
    case LockEventKind::assist_cut:
      return "arm = angle at which the assist is cut";
    case LockEventKind::box_end:
      return "arm = the box's output travel";
    case LockEventKind::ball_stud:
      return "stud from its housing's axis = the maker's swing";
    case LockEventKind::outer_joint:
      return "driven axle's outer joint = the maker's angle";
    case LockEventKind::toggle:
      return "a loop's |C| = sqrt(A^2 + B^2)";
  }
  return "";
}

std::optional<AxleStop> stop_named(const Mechanism& mechanism, Side steers,
                                   const std::string& name) {
  for (AxleStop& stop : axle_stops(*mechanism.project.front_axle, *mechanism.steering))
    if (stop.name == name && stop.lock == steers) return std::move(stop);
  return std::nullopt;
}

bool any_stop_for(const Mechanism& mechanism, Side steers) {
  for (const AxleStop& stop : axle_stops(*mechanism.project.front_axle, *mechanism.steering))
    if (stop.lock == steers) return true;
  return false;
}

TraceStep stop_step(const AxleStop& stop, double swivel) {
  std::vector<Quantity> numbers = point_numbers("foot", stop.tip.foot);
  numbers = joined(std::move(numbers), point_numbers("lever", stop.tip.lever));
  numbers = joined(std::move(numbers), point_numbers("axis_cross_lever", stop.tip.sideways));
  numbers.push_back(quantity("swivel", swivel, Unit::degree));
  numbers = joined(std::move(numbers), point_numbers("stop_tip", stop.tip.ball(swivel)));
  numbers = joined(std::move(numbers), point_numbers("pad", stop.pad_centre_mm));
  numbers = joined(std::move(numbers), direction_numbers("pad_normal", stop.pad_normal));
  numbers.push_back(quantity("tip_radius", stop.tip_radius, Unit::millimetre));
  numbers.push_back(quantity("stop_gap", stop.gap(swivel), Unit::millimetre));
  return step("stop_tip",
              "tip = foot + cos t lever + sin t (axis x lever), axle frame; gap = (tip - pad) . "
              "normal - tip radius",
              std::move(numbers));
}

std::vector<TraceStep> event_steps(const Mechanism& mechanism, const LockSide& lock,
                                   const LockEvent& event) {
  std::vector<TraceStep> steps{event_step(event)};
  if (event.kind == LockEventKind::box_end) {
    const bool left = lock.side == Side::left;
    steps.push_back(
        step("box_travel", "the box's own travel from its centre",
             {quantity("box_travel",
                       left ? mechanism.steering->travel_left : mechanism.steering->travel_right,
                       Unit::degree)}));
  }
  append(steps, steering_steps(mechanism, event.arm));
  if (event.kind == LockEventKind::axle_stop && lock.stop && lock.stop->name == event.name) {
    const std::optional<AxleStop> stop = stop_named(mechanism, lock.steers, event.name);
    if (stop) steps.push_back(stop_step(*stop, lock.stop->swivel));
  }
  return steps;
}

Trace margin_trace(const Mechanism& mechanism, const LockSide& lock, const LockEvent& first,
                   const LockEvent& second) {
  Trace trace;
  trace.formula = "margin = inner steer where the one acts - inner steer where the other acts";
  trace.source = say("source.lock_order");
  append(trace.steps, event_steps(mechanism, lock, first));
  append(trace.steps, event_steps(mechanism, lock, second));
  trace.steps.push_back(
      step("margin", "difference of the two inner steer angles",
           {quantity("margin", second.inner_steer - first.inner_steer, Unit::degree)}));
  return trace;
}

}  // namespace tackbench
