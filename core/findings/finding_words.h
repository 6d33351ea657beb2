// Findings and members by words instead of by their names in files, for readers who know neither.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "core/project/project.h"

namespace tackbench {

// Every kind of finding: a name with * for the part that it is about ("shaft.*.clocking"); a * at
// the end stands for all that follows.
const std::vector<std::string_view>& finding_kinds();

struct FindingWords {
  std::string title;    // "full stroke of the brake"
  std::string meaning;  // what it looks at and why, one or two sentences
};
// Words of the finding of that name, or of a kind (the part is said as "..."); both empty for a
// name that no finding has.
FindingWords finding_words(std::string_view name);

// The field at that path by its words, whether the project has it or not: "drag link, tube".
std::string member_words(const Project& project, std::string_view path);

// The text with each member path said by the words of its field and each name of a finding or
// limit by its title, in quotes: 'fill in "front axle, steer wanted at the left lock"'. What only
// looks like one stays.
std::string in_plain_words(const Project& project, std::string_view text);

}  // namespace tackbench
