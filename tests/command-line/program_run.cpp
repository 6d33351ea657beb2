#include "tests/command-line/program_run.h"

#include <sys/wait.h>
#include <unistd.h>

#include <cstdlib>
#include <fstream>
#include <iterator>

namespace tackbench {

namespace {

std::string whole_text(const std::filesystem::path& path) {
  std::ifstream file(path, std::ios::binary);
  return {std::istreambuf_iterator<char>(file), {}};
}

}  // namespace

ScratchFolder::ScratchFolder() {
  std::string pattern = (std::filesystem::temp_directory_path() / "tackbench-XXXXXX").string();
  path_ = mkdtemp(pattern.data());
}

ScratchFolder::~ScratchFolder() {
  std::error_code ignored;
  std::filesystem::remove_all(path_, ignored);
}

ProgramRun run_program(const std::vector<std::string>& arguments) {
  const ScratchFolder folder;
  const std::string out = (folder.path() / "out").string();
  const std::string err = (folder.path() / "err").string();
  std::vector<std::string> words = {TACKBENCH_CLI};
  words.insert(words.end(), arguments.begin(), arguments.end());
  std::vector<char*> pointers;
  pointers.reserve(words.size() + 1);
  for (std::string& word : words) pointers.push_back(word.data());
  pointers.push_back(nullptr);
  const pid_t child = fork();
  if (child == 0) {
    if (std::freopen(out.c_str(), "w", stdout) != nullptr &&
        std::freopen(err.c_str(), "w", stderr) != nullptr) {
      execv(pointers.front(), pointers.data());
    }
    _exit(127);
  }
  int status = 0;
  waitpid(child, &status, 0);
  ProgramRun run;
  if (WIFEXITED(status)) run.exit_code = WEXITSTATUS(status);
  run.out = whole_text(out);
  run.err = whole_text(err);
  return run;
}

std::string sample_path(const std::string& name) {
  return std::string(TACKBENCH_SOURCE_FOLDER) + "/sample-projects/" + name + "/" + name + ".tack";
}

}  // namespace tackbench
