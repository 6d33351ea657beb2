// Which values of a project are still those that the starting truck put in. They are round and
// invented: to whoever looks at them they must not pass for measurements.
#pragma once

#include <map>
#include <string>
#include <vector>

#include "core/project/project.h"
#include "core/project/station.h"

namespace tackbench {

// Member paths, in the order of the file. Numbers, points and directions that are neither nought
// nor left out, in stations of a project that began bare (sheet.start); none in any other.
// A value that was typed and happens to equal the starting truck's counts as one of them.
std::vector<std::string> starting_guesses(const Project& project);

// How many of them each station has.
std::map<Station, int> guesses_by_station(const Project& project);

}  // namespace tackbench
