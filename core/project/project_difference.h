// What differs between two projects, member by member: to compare a recovered one with the saved.
#pragma once

#include <string>
#include <vector>

#include "core/project/project.h"

namespace tackbench {

struct FieldDifference {
  std::string path;
  std::string words;   // "drag link, tube, wall thickness"; the path where there are none
  std::string before;  // as the file writes it; empty when only the other has the member
  std::string after;
};

// In the order of the tables of fields, members that only `before` has last.
std::vector<FieldDifference> differences(const Project& before, const Project& after);

}  // namespace tackbench
