// Limits of one project that differ from the shipped ones or that only a maker knows.
#pragma once

#include "core/project/common.h"

namespace tackbench {

// How far a number may be trusted.
enum class Standing {
  read,             // read in the named published text
  computed,         // from a stated formula
  memory,           // from memory of the named source
  common_practice,  // trade rule of thumb
  maker,            // from the maker's sheet
  builder,          // builder's choice
};

struct LimitChoice {
  std::string name;             // as in resources/limits.json, "shaft.ripple"
  std::optional<double> least;  // in the limit's shown unit
  std::optional<double> most;
  std::optional<double> least_inner;  // a value short of this is close
  std::optional<double> most_inner;   // a value beyond this is close
  std::string source = "builder's choice";
  Standing standing = Standing::builder;
  UnknownMembers unknown;
};

struct LimitsStation {
  std::vector<LimitChoice> choices;
  UnknownMembers unknown;
};

}  // namespace tackbench
