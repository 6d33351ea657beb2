#include <cerrno>
#include <cstring>
#include <fstream>
#include <system_error>

#include "core/drawing/svg.h"
#include "core/fabrication/cut_list_writers.h"
#include "core/fabrication/drag_link_sheet.h"

namespace tackbench {

namespace {

namespace fs = std::filesystem;

Problem cannot_write(const fs::path& path, const std::string& why) {
  return {path.string(), "", "cannot be written: " + why,
          "give a folder that you may write to, with room on its disc"};
}

// Written beside its place and moved there when whole: a reader never sees half a file.
std::optional<Problem> write_whole(const fs::path& path, const std::string& content) {
  fs::path beside = path;
  beside += ".part";
  {
    errno = 0;
    std::ofstream out(beside, std::ios::binary | std::ios::trunc);
    out.write(content.data(), static_cast<std::streamsize>(content.size()));
    out.flush();
    if (!out) {
      const std::string why = errno != 0 ? std::strerror(errno) : "writing failed";
      std::error_code ignored;
      fs::remove(beside, ignored);
      return cannot_write(path, why);
    }
  }
  std::error_code fault;
  fs::rename(beside, path, fault);
  if (!fault) return std::nullopt;
  std::error_code ignored;
  fs::remove(beside, ignored);
  return cannot_write(path, fault.message());
}

}  // namespace

Result<std::vector<fs::path>> write_cut_list(const CutList& list, const fs::path& folder) {
  std::error_code fault;
  fs::create_directories(folder, fault);
  if (!fs::is_directory(folder))
    return Problem{folder.string(), "",
                   fault ? "the folder cannot be made: " + fault.message() : "is not a folder",
                   "give a folder's name"};
  std::vector<std::pair<std::string, std::string>> files = {{"cut-list.txt", cut_list_text(list)},
                                                            {"cut-list.csv", cut_list_csv(list)}};
  if (list.drag_link)
    files.emplace_back("drag-link.svg", svg(drag_link_sheet(*list.drag_link, list.project,
                                                            list.projection, list.past.size())));
  std::vector<fs::path> written;
  Problems problems;
  for (const auto& [name, content] : files) {
    if (auto problem = write_whole(folder / name, content))
      problems.push_back(*problem);
    else
      written.push_back(folder / name);
  }
  if (!problems.empty()) return problems;
  return written;
}

}  // namespace tackbench
