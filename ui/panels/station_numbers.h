// The one or two live numbers of each station.
#pragma once

#include <QString>
#include <vector>

#include "core/project/station.h"
#include "ui/look/meaning.h"
#include "ui/session/session.h"

namespace tackbench::ui {

struct StationNumbers {
  QString first;             // "803.6 mm"; empty when there is none
  QString second;            // "+3.1 since the change"
  QString figure;            // the first number by itself: "803.6"
  bool first_stale = false;  // being worked out again
  bool second_stale = false;
};

// What each of them means, of all stations in order; numbers stand as %1, %2.
struct StationNumberMeaning {
  Station station = Station::column;
  Meaning said;
};
std::vector<StationNumberMeaning> station_number_meanings();

StationNumbers station_numbers(const Session& session, Station station);

}  // namespace tackbench::ui
