// The faint truck of a bare start: round, invented places to begin with, never a measurement. It is
// drawn behind a project that has not been measured yet, and a station that a builder begins to
// measure starts from it. What only the vehicle or its maker can tell stays empty: which way the
// arm goes, joints' and studs' limits, cylinders' strokes, ends of the drag link.
#pragma once

#include "core/project/project.h"
#include "core/project/station.h"

namespace tackbench {

struct StartAnswers {
  Side drive = Side::left;  // which side the hand wheel and the box are on
  bool box_ahead = false;   // of the front axle
};

Project starting_truck(const StartAnswers& answers);

// The answers that the project keeps (sheet.start); left-hand drive and box behind without them.
StartAnswers start_answers(const Project& project);

// The project with that station begun: the starting truck's own. A station that is there stays.
Project with_station_begun(const Project& project, Station station);

// Whether the project has that station.
bool has_station(const Project& project, Station station);

}  // namespace tackbench
