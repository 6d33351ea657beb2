#include <gmock/gmock.h>

#include "core/project-file/project_file.h"
#include "core/project-file/project_schema.h"
#include "tests/project-file/temporary_folder.h"

namespace tackbench {
namespace {

namespace fs = std::filesystem;
using testing::content_of;

TEST(ProjectSchema, ThePublishedCopyIsTheOneMadeFromTheTables) {
  const std::string published =
      content_of(std::string(TACKBENCH_SOURCE_FOLDER) + "/resources/tackbench-project.schema.json");
  EXPECT_TRUE(published == project_schema_text())
      << "after a change of a table: tackbench-cli schema "
         ">resources/tackbench-project.schema.json, "
         "and a line in resources/file-format-changelog.md";
}

// The texts that an outside validator judges by the schema (validate_texts.py) are judged alike by
// the reader.
TEST(ProjectSchema, ReaderAndSchemaJudgeTheSameTexts) {
  const fs::path texts = fs::path(TACKBENCH_SOURCE_FOLDER) / "tests/project-file/texts";
  int good = 0;
  int bad = 0;
  for (const auto& entry : fs::directory_iterator(texts / "good")) {
    EXPECT_TRUE(read_project(entry.path()).ok()) << entry.path();
    ++good;
  }
  for (const auto& entry : fs::directory_iterator(texts / "bad")) {
    EXPECT_FALSE(read_project(entry.path()).ok()) << entry.path();
    ++bad;
  }
  EXPECT_GE(good, 3);
  EXPECT_GE(bad, 12);
}

}  // namespace
}  // namespace tackbench
