// Runs the built tackbench-cli and gathers what it printed.
#pragma once

#include <filesystem>
#include <string>
#include <vector>

namespace tackbench {

struct ProgramRun {
  int exit_code = -1;  // -1: ended by a signal
  std::string out;
  std::string err;
};

// Arguments are passed as they are, no shell in between.
ProgramRun run_program(const std::vector<std::string>& arguments);

std::string sample_path(const std::string& name);

// A folder of its own for one test, gone with the object.
class ScratchFolder {
 public:
  ScratchFolder();
  ~ScratchFolder();
  ScratchFolder(const ScratchFolder&) = delete;
  ScratchFolder& operator=(const ScratchFolder&) = delete;
  std::filesystem::path path() const { return path_; }

 private:
  std::filesystem::path path_;
};

}  // namespace tackbench
