#include "ui/session/kept_references.h"

#include <system_error>

#include "core/project-file/file_references.h"

namespace tackbench::ui {

namespace fs = std::filesystem;

std::vector<KeptReferences::Stamp> KeptReferences::stamps(const fs::path& project_file) const {
  std::vector<Stamp> found;
  for (const CheckedReference& each : known_) {
    const fs::path path = project_file.parent_path() / each.path;
    Stamp stamp;
    std::error_code absent;
    stamp.time = fs::last_write_time(path, absent);
    if (absent) stamp.time = {};
    stamp.size = fs::file_size(path, absent);
    if (absent) stamp.size = 0;
    found.push_back(stamp);
  }
  return found;
}

const std::vector<CheckedReference>& KeptReferences::of(const Project& project,
                                                        const fs::path& project_file) {
  const bool same = file_ == project_file && of_.shapes == project.shapes &&
                    of_.sheet == project.sheet && stamps_ == stamps(project_file);
  if (same) return known_;
  of_ = project;
  file_ = project_file;
  known_ = file_.empty() ? std::vector<CheckedReference>{} : checked_references(project, file_);
  stamps_ = stamps(file_);
  return known_;
}

}  // namespace tackbench::ui
