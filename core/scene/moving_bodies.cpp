#include "core/scene/moving_bodies.h"

namespace tackbench {

namespace {

struct Sweeps {
  bool operator()(const RidesBody& rider) const {
    return rider.body != Body::chassis && rider.body != Body::cab && rider.body != Body::axle;
  }
  bool operator()(const Reaches&) const { return true; }
  bool operator()(const SpinsOnStuds&) const { return true; }
  bool operator()(const TurnsOnBellCrank&) const { return true; }
  template <class Other>
  bool operator()(const Other&) const {
    return false;
  }
};

}  // namespace

bool sweeps(const Rider& rider) {
  return std::visit(Sweeps{}, rider);
}

bool is_of_shaft_line(const Rider& rider) {
  return std::holds_alternative<TurnsWithColumn>(rider) ||
         std::holds_alternative<TurnsWithCross>(rider) ||
         std::holds_alternative<TurnsWithBoxInput>(rider);
}

}  // namespace tackbench
