// Any bytes: the reader refuses them with at least one fault, or what it read is written and read
// again to the same bytes.
#include <cstddef>
#include <cstdint>
#include <cstdlib>
#include <string_view>

#include "core/project-file/project_file.h"

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  const std::string_view text(reinterpret_cast<const char*>(data), size);
  const auto project = tackbench::read_project_text(text);
  if (!project.ok()) {
    if (project.problems().empty()) std::abort();
    return 0;
  }
  const std::string once = tackbench::project_text(*project);
  const auto again = tackbench::read_project_text(once);
  if (!again.ok() || tackbench::project_text(*again) != once) std::abort();
  return 0;
}
