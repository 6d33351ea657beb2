#include "core/checks/first_toggle.h"

#include <algorithm>
#include <cmath>
#include <vector>

#include "core/basics/golden_section.h"
#include "core/basics/units.h"
#include "core/mechanism/solve.h"

namespace tackbench {
namespace {

constexpr double kArmTolerance = 1e-9;  // rad

class Search {
 public:
  Search(const ToggleSearch& search, SteeringPose& pose)
      : search_(search), pose_(pose), closures_(search.steering.relays.size() + 2) {}

  std::optional<FirstToggle> run();

 private:
  // Closures (LinkPose::closure) of one loop at the last three samples.
  struct Samples {
    double two_back = 0.0;
    double last = 0.0;
    double now = 0.0;
  };

  bool closes(double arm);
  double closure(std::size_t link) const;
  std::optional<FirstToggle> sample(double arm);
  std::optional<double> open_between(std::size_t link, double from, double to);
  FirstToggle between(double closing, double open);

  const ToggleSearch& search_;
  SteeringPose& pose_;
  std::vector<Samples> closures_;  // from hand to road
  double arm_two_back_ = 0.0;
  double arm_last_ = 0.0;
  int samples_ = 0;
  int open_link_ = 0;  // of the last solve that did not close
};

bool Search::closes(double arm) {
  const int relays = static_cast<int>(search_.steering.relays.size());
  int failed_relay = 0;
  switch (solve_steering(search_.steering, search_.chassis_from_axle, arm, pose_, &failed_relay)) {
    case Outcome::solved:
      return true;
    case Outcome::relay_does_not_close:
      open_link_ = failed_relay;
      return false;
    case Outcome::drag_link_does_not_close:
      open_link_ = relays;
      return false;
    default:
      open_link_ = relays + 1;
      return false;
  }
}

double Search::closure(std::size_t link) const {
  const std::size_t relays = search_.steering.relays.size();
  if (link < relays) return pose_.relays[link].link.closure;
  return link == relays ? pose_.drag_link.closure : pose_.tie_rod.closure;
}

// Bisection of "closes".
FirstToggle Search::between(double closing, double open) {
  closes(open);
  int link = open_link_;
  while (std::abs(open - closing) > kArmTolerance) {
    const double middle = 0.5 * (closing + open);
    if (closes(middle)) {
      closing = middle;
    } else {
      open = middle;
      link = open_link_;
    }
  }
  return {closing, link};
}

// An angle in a valley of one closure at which the linkage does not close.
std::optional<double> Search::open_between(std::size_t link, double from, double to) {
  constexpr double kValleyTolerance = 2e-5 * kRadiansPerDegree;
  const auto closure_at = [&](double arm) {
    closes(arm);
    return closure(link);
  };
  const double lowest = lowest_place(closure_at, std::min(from, to), std::max(from, to),
                                     kValleyTolerance, [](double at) { return at < 0.0; });
  if (closes(lowest)) return std::nullopt;
  return lowest;
}

// The pose is solved at `arm`. Gives the toggle that a valley between the last samples hides.
std::optional<FirstToggle> Search::sample(double arm) {
  for (std::size_t link = 0; link < closures_.size(); ++link) {
    Samples& at = closures_[link];
    at = {at.last, at.now, closure(link)};
  }
  const double from = arm_two_back_;
  arm_two_back_ = arm_last_;
  arm_last_ = arm;
  if (++samples_ < 3) return std::nullopt;
  for (std::size_t link = 0; link < closures_.size(); ++link) {
    const Samples& at = closures_[link];
    if (at.last > at.two_back || at.last > at.now) continue;
    // Near its bottom a function that bends upward stays above its own chords prolonged by a step;
    // twice that is allowed.
    if (at.last > 2.0 * (std::max(at.two_back, at.now) - at.last)) continue;
    if (const std::optional<double> open = open_between(link, from, arm))
      return between(from, *open);
  }
  return std::nullopt;
}

std::optional<FirstToggle> Search::run() {
  const double start = search_.steering.straight_arm;
  if (!closes(start)) return std::nullopt;
  sample(start);
  double last = start;
  for (int step = 1; step <= search_.steps; ++step) {
    const double arm = start + search_.outward * search_.step * step;
    if (closes(arm)) {
      if (const auto hidden = sample(arm)) return hidden;
      last = arm;
      continue;
    }
    const FirstToggle toggle = between(last, arm);
    std::optional<FirstToggle> hidden;
    crowd_towards(last, toggle.arm, [&](double at) {
      if (!hidden && closes(at)) hidden = sample(at);
    });
    return hidden ? hidden : toggle;
  }
  return std::nullopt;
}

}  // namespace

std::optional<FirstToggle> first_toggle(const ToggleSearch& search, SteeringPose& pose) {
  return Search(search, pose).run();
}

}  // namespace tackbench
