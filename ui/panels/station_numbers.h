// The one or two live numbers of each station.
#pragma once

#include <QString>

#include "core/project/station.h"
#include "ui/session/session.h"

namespace tackbench::ui {

struct StationNumbers {
  QString first;             // "803.6 mm"; empty when there is none
  QString second;            // "+3.1 since the change"
  bool first_stale = false;  // being worked out again
  bool second_stale = false;
};

StationNumbers station_numbers(const Session& session, Station station);

}  // namespace tackbench::ui
