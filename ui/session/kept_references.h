// Whether the files that a project refers to are there and unchanged. They are read whole, so they
// are looked at anew only when the references, the project's own file, or a file's time or size
// changed. Of one thread alone.
#pragma once

#include <cstdint>
#include <filesystem>
#include <utility>
#include <vector>

#include "core/project/checked_reference.h"
#include "core/project/project.h"

namespace tackbench::ui {

class KeptReferences {
 public:
  // Paths are seen from the folder of `project_file`; nothing is known of a project without one.
  const std::vector<CheckedReference>& of(const Project& project,
                                          const std::filesystem::path& project_file);

 private:
  struct Stamp {
    std::filesystem::file_time_type time{};
    std::uintmax_t size = 0;
    bool operator==(const Stamp&) const = default;
  };
  std::vector<Stamp> stamps(const std::filesystem::path& project_file) const;

  Project of_;  // what was looked at
  std::filesystem::path file_;
  std::vector<CheckedReference> known_;
  std::vector<Stamp> stamps_;
};

}  // namespace tackbench::ui
