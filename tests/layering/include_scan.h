// Reads the #include lines of a source and judges each against the arrows that the house allows.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace tackbench::layering {

struct Include {
  std::string file;    // path from the top, "core/checks/lock_check.cpp"
  int line = 0;        // from 1
  std::string target;  // what stands between the quotes or angle brackets
  bool quoted = false;
};

std::vector<Include> includes_in(std::string_view file, std::string_view text);

// Why the include is not allowed, with file and line in front; nothing when it is.
std::optional<std::string> fault_of(const Include& include);

}  // namespace tackbench::layering
