// The shipped limits (resources/limits.json, built in) and how a project changes them.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "core/basics/result.h"
#include "core/basics/shown_number.h"
#include "core/findings/finding.h"
#include "core/project/project.h"

namespace tackbench {

struct ShippedLimit {
  Limit limit;        // inside units; no numbers for what only a maker or the builder knows
  std::string about;  // what it limits, for people
  // Facts of geometry and of the parts (does left steer left? is the shaft line held?) are no
  // matter of choice.
  bool fixed = false;
  bool tighten_only = false;  // a choice may make it stricter, never looser
};
const std::vector<ShippedLimit>& shipped_limits();

// The limit of that name with the project's own choice over it; a fixed one stays as it is, and of
// one that may only be tightened the stricter value holds. An unknown name gives a limit without
// numbers, which judges nothing.
Limit limit_for(const Project& project, std::string_view name);

// A value from the part's own record (maker's sheet or builder's wish) as the limit of that name;
// a choice in the project's limits goes over it. Inside units.
struct OwnValue {
  std::optional<double> least;
  std::optional<double> most;
  std::string source;
  Standing standing = Standing::maker;
};
Limit limit_from(const Project& project, std::string_view name, const OwnValue& own);

// Choices that name no limit or a fixed one, that loosen what may only be tightened, that give no
// value, or whose values are in the wrong order.
Problems check_limit_choices(const Project& project);

// "at most 12.5 %", "2.00 to 6.00 turns"; "none" where the answer is yes or no; "no limit given".
std::string limit_words(const Limit& limit, ShownUnit lengths);
// "common practice", "from memory", "maker's sheet" ...
std::string standing_words(Standing standing);
// Standing and source in one phrase, neither said twice: "common practice: a slip keeps ...",
// "the maker's sheet". A project's choice is the builder's or from a maker's sheet, whatever text
// it names: "builder's choice, read in the source: the county's rules".
std::string source_words(const Limit& limit);
// Stable name as in files: "common_practice".
const char* standing_name(Standing standing);
// Why a limit without numbers has none and where to fill it in: "take the limit from the maker's
// sheet: fill in drag_link.arm_end.swing_limit_deg".
std::string no_limit_words(const Limit& limit);

}  // namespace tackbench
