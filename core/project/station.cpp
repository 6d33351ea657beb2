#include "core/project/station.h"

#include <algorithm>

namespace tackbench {

const char* station_word(Station station) {
  switch (station) {
    case Station::column:
      return "Column";
    case Station::shaft_line:
      return "Shaft line";
    case Station::steering_box:
      return "Steering box";
    case Station::drag_link:
      return "Drag link";
    case Station::front_axle:
      return "Front axle";
    case Station::pedals:
      return "Pedals";
    case Station::driver:
      return "Driver";
    case Station::shapes:
      return "Shapes";
  }
  return "";
}

const char* station_name(Station station) {
  switch (station) {
    case Station::column:
      return "column";
    case Station::shaft_line:
      return "shaft_line";
    case Station::steering_box:
      return "steering_box";
    case Station::drag_link:
      return "drag_link";
    case Station::front_axle:
      return "front_axle";
    case Station::pedals:
      return "pedals";
    case Station::driver:
      return "driver";
    case Station::shapes:
      return "shapes";
  }
  return "";
}

std::optional<Station> station_of(std::string_view path) {
  const std::string_view first = path.substr(0, std::min(path.find_first_of(".["), path.size()));
  for (const Station station : kStations)
    if (first == station_name(station)) return station;
  return std::nullopt;
}

}  // namespace tackbench
