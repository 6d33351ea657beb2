#include "core/basics/result.h"

namespace tackbench {

std::string one_line(const Problem& problem) {
  std::string line;
  for (const std::string* part : {&problem.file, &problem.place}) {
    if (!part->empty()) line += *part + ": ";
  }
  line += problem.found;
  if (!problem.wanted.empty()) line += "; " + problem.wanted;
  return line;
}

}  // namespace tackbench
