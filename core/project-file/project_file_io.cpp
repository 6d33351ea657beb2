#include <array>
#include <cerrno>
#include <cstring>
#include <fstream>

#include "core/project-file/project_file.h"
#include "core/project-file/replace_file.h"

namespace tackbench {

namespace fs = std::filesystem;

Result<Done> save_project(const Project& project, const fs::path& path) {
  const std::string text = project_text(project);
  if (const Result<Project> again = read_project_text(text, path.string()); !again.ok()) {
    return again.problems();
  }
  return replace_file(path, text);
}

Result<Project> read_project(const fs::path& path) {
  std::error_code error;
  const fs::file_status status = fs::status(path, error);
  if (!fs::exists(status)) {
    return Problem{path.string(), "", "there is no such file", "give a project file (*.tack)"};
  }
  if (fs::is_directory(status)) {
    return Problem{path.string(), "", "this is a folder", "give a project file (*.tack)"};
  }
  std::ifstream stream(path, std::ios::binary);
  if (!stream)
    return Problem{path.string(), "", std::string("cannot be opened: ") + std::strerror(errno),
                   "mend that and try again"};
  // One byte beyond the limit is enough to be refused for it.
  std::string text;
  std::array<char, 65536> block{};
  while (text.size() <= kMostFileBytes && stream.read(block.data(), block.size()).gcount() > 0) {
    text.append(block.data(), static_cast<std::size_t>(stream.gcount()));
  }
  if (stream.bad()) return Problem{path.string(), "", "cannot be read to its end", "try again"};
  return read_project_text(text, path.string());
}

}  // namespace tackbench
