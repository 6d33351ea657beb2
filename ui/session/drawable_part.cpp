#include "ui/session/drawable_part.h"

#include <algorithm>
#include <utility>

#include "core/project/starting_truck.h"
#include "core/project/station.h"

namespace tackbench::ui {

namespace {

void leave_out(Project& project, Station station) {
  switch (station) {
    case Station::column:
      project.column.reset();
      break;
    case Station::shaft_line:
      project.shaft_line.reset();
      break;
    case Station::steering_box:
      project.steering_box.reset();
      break;
    case Station::drag_link:
      project.drag_link.reset();
      break;
    case Station::front_axle:
      project.front_axle.reset();
      break;
    case Station::pedals:
      project.pedals.reset();
      break;
    case Station::driver:
      project.driver.reset();
      break;
    case Station::shapes:
      project.shapes.reset();
      break;
  }
}

}  // namespace

std::optional<Mechanism> drawable_part(const Project& project) {
  Project part = project;
  // What is left out may be missed by another station: once more, until nothing is wrong.
  for (std::size_t round = 0; round <= kStations.size(); ++round) {
    Result<Mechanism> compiled = compile(part);
    if (compiled) return std::move(compiled).value();
    bool left_out = false;
    for (const Problem& problem : compiled.problems()) {
      const auto station = station_of(problem.place);
      if (!station || !has_station(part, *station)) continue;
      leave_out(part, *station);
      left_out = true;
    }
    if (!left_out) return std::nullopt;
  }
  return std::nullopt;
}

bool has_stations_of(const Project& whole, const Project& part) {
  return std::all_of(kStations.begin(), kStations.end(), [&](Station station) {
    return has_station(whole, station) || !has_station(part, station);
  });
}

}  // namespace tackbench::ui
