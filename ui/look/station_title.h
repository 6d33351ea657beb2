// What a station is called on the screen, in the language in use.
#pragma once

#include <QString>

#include "core/project/station.h"

namespace tackbench::ui {

QString station_title(Station station);  // "Shaft line"

}  // namespace tackbench::ui
