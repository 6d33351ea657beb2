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
  if (const auto again = read_unfinished_text(text, path.string()); !again) {
    return again.problems();
  }
  return replace_file(path, text);
}

namespace {

// All of the file, or one byte more than is read.
Result<std::string> content_of(const fs::path& path) {
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
  return text;
}

}  // namespace

Result<Project> read_project(const fs::path& path) {
  const Result<std::string> text = content_of(path);
  if (!text) return text.problems();
  return read_project_text(*text, path.string());
}

Result<UnfinishedProject> read_unfinished(const fs::path& path) {
  const Result<std::string> text = content_of(path);
  if (!text) return text.problems();
  return read_unfinished_text(*text, path.string());
}

}  // namespace tackbench
