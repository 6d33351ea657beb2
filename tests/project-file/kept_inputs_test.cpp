// The fuzzer's kept inputs through the reader, for builds without a fuzzer.
#include <gtest/gtest.h>

#include "core/project-file/project_file.h"
#include "tests/project-file/temporary_folder.h"

namespace tackbench {
namespace {

namespace fs = std::filesystem;

TEST(KeptInputs, AreRefusedOrReadAndWrittenToTheSameBytes) {
  const fs::path kept = fs::path(TACKBENCH_SOURCE_FOLDER) / "tests/fuzz/corpus/read-project";
  int read = 0;
  int refused = 0;
  for (const auto& entry : fs::directory_iterator(kept)) {
    const auto project = read_project_text(testing::content_of(entry.path()));
    if (!project.ok()) {
      EXPECT_FALSE(project.problems().empty()) << entry.path();
      ++refused;
      continue;
    }
    ++read;
    const std::string once = project_text(*project);
    const auto again = read_project_text(once);
    ASSERT_TRUE(again.ok()) << entry.path() << ": " << one_line(again.problems().front());
    EXPECT_EQ(project_text(*again), once) << entry.path();
  }
  EXPECT_GE(read, 4);
  EXPECT_GE(refused, 5);
}

}  // namespace
}  // namespace tackbench
