// Stations in the order in which motion flows from hand to road, then those around it.
#pragma once

#include <array>
#include <optional>
#include <string_view>

namespace tackbench {

enum class Station {
  column,
  shaft_line,
  steering_box,
  drag_link,
  front_axle,
  pedals,
  driver,
  shapes,
};
inline constexpr std::array kStations{
    Station::column,     Station::shaft_line, Station::steering_box, Station::drag_link,
    Station::front_axle, Station::pedals,     Station::driver,       Station::shapes};

const char* station_word(Station station);  // "Shaft line"
const char* station_name(Station station);  // "shaft_line", as in files

// The station whose record the member path lies in; empty for the cab, limits and the like.
std::optional<Station> station_of(std::string_view path);

}  // namespace tackbench
