#include "core/project-file/replace_file.h"

#include <fcntl.h>
#include <sys/stat.h>
#include <unistd.h>

#include <cerrno>
#include <cstdlib>
#include <cstring>
#include <string>

namespace tackbench {

namespace {

namespace fs = std::filesystem;

Problem io_problem(const fs::path& path, const std::string& what) {
  const int number = errno;
  return {path.string(), "", what + ": " + std::strerror(number), "mend that and try again"};
}

// Closes on the way out; close() early where its answer matters.
class OpenFile {
 public:
  explicit OpenFile(int descriptor) : descriptor_(descriptor) {}
  OpenFile(const OpenFile&) = delete;
  OpenFile& operator=(const OpenFile&) = delete;
  ~OpenFile() { close(); }

  int descriptor() const { return descriptor_; }
  bool ok() const { return descriptor_ >= 0; }
  bool close() {
    const int descriptor = descriptor_;
    descriptor_ = -1;
    return descriptor < 0 || ::close(descriptor) == 0;
  }

 private:
  int descriptor_;
};

bool write_all(int descriptor, std::string_view text) {
  while (!text.empty()) {
    const ssize_t written = ::write(descriptor, text.data(), text.size());
    if (written < 0 && errno == EINTR) continue;
    if (written < 0) return false;
    text.remove_prefix(static_cast<std::size_t>(written));
  }
  return true;
}

// Permission bits of the file that is replaced, or those that a new file would get.
mode_t permissions_for(const fs::path& target) {
  struct stat status {};
  if (::stat(target.c_str(), &status) == 0) return status.st_mode & 07777;
  const mode_t mask = ::umask(0);
  ::umask(mask);
  return 0666 & ~mask;
}

// The folder's entry has to reach the disk too, or a power cut could bring the old name back.
bool sync_folder(const fs::path& folder) {
  const OpenFile opened(::open(folder.c_str(), O_RDONLY | O_DIRECTORY | O_CLOEXEC));
  return opened.ok() && ::fsync(opened.descriptor()) == 0;
}

}  // namespace

Result<Done> replace_file(const fs::path& path, std::string_view text) {
  std::error_code error;
  const fs::path target = fs::is_symlink(path, error) ? fs::weakly_canonical(path, error) : path;
  const fs::path folder = target.has_parent_path() ? target.parent_path() : fs::path(".");

  std::string beside = (folder / ("." + target.filename().string() + ".saving-XXXXXX")).string();
  OpenFile file(::mkstemp(beside.data()));
  if (!file.ok()) return io_problem(path, "cannot write in this folder");
  const bool written = write_all(file.descriptor(), text) &&
                       ::fchmod(file.descriptor(), permissions_for(target)) == 0 &&
                       ::fsync(file.descriptor()) == 0 && file.close() &&
                       ::rename(beside.c_str(), target.c_str()) == 0;
  if (!written) {
    const Problem problem = io_problem(path, "cannot save");
    ::unlink(beside.c_str());
    return problem;
  }
  if (!sync_folder(folder)) return io_problem(path, "saved, but the folder could not be synced");
  return Done{};
}

}  // namespace tackbench
