#include <gmock/gmock.h>
#include <sys/stat.h>
#include <sys/wait.h>
#include <unistd.h>

#include <chrono>
#include <csignal>
#include <random>
#include <thread>

#include "core/project-file/project_file.h"
#include "tests/project-file/small_project.h"
#include "tests/project-file/temporary_folder.h"

namespace tackbench {
namespace {

namespace fs = std::filesystem;
using testing::content_of;
using ::testing::HasSubstr;
using testing::small_project_text;
using testing::TemporaryFolder;
using testing::write_content;

Project small_project() {
  return *read_project_text(small_project_text());
}

std::size_t files_in(const fs::path& folder) {
  return static_cast<std::size_t>(
      std::distance(fs::directory_iterator(folder), fs::directory_iterator()));
}

TEST(SaveProject, WritesWhatOpensAgain) {
  const TemporaryFolder folder;
  const fs::path file = folder.path() / "yard.tack";
  ASSERT_TRUE(save_project(small_project(), file).ok());
  const auto project = read_project(file);
  ASSERT_TRUE(project.ok());
  EXPECT_EQ(project_text(*project), project_text(small_project()));
  EXPECT_EQ(files_in(folder.path()), 1U) << "nothing may stay beside the file";
}

TEST(SaveProject, KeepsPermissionsAndFollowsLinks) {
  const TemporaryFolder folder;
  const fs::path file = folder.path() / "yard.tack";
  const fs::path link = folder.path() / "current.tack";
  write_content(file, "old");
  ASSERT_EQ(::chmod(file.c_str(), 0640), 0);
  fs::create_symlink("yard.tack", link);
  ASSERT_TRUE(save_project(small_project(), link).ok());
  EXPECT_TRUE(fs::is_symlink(link));
  EXPECT_EQ(content_of(file), project_text(small_project()));
  EXPECT_EQ(static_cast<unsigned>(fs::status(file).permissions()), 0640U);
}

TEST(SaveProject, ANewFileGetsTheUsualPermissions) {
  const TemporaryFolder folder;
  const mode_t mask = ::umask(022);
  ASSERT_TRUE(save_project(small_project(), folder.path() / "new.tack").ok());
  ::umask(mask);
  EXPECT_EQ(static_cast<unsigned>(fs::status(folder.path() / "new.tack").permissions()), 0644U);
}

TEST(SaveProject, RefusesWhatCouldNotBeOpenedAgain) {
  const TemporaryFolder folder;
  const fs::path file = folder.path() / "yard.tack";
  write_content(file, "old");
  Project project = small_project();
  auto link = std::make_shared<DragLinkStation>(*project.drag_link);
  link->tube->wall = -3.0;
  project.drag_link = link;
  const auto saved = save_project(project, file);
  ASSERT_FALSE(saved.ok());
  EXPECT_THAT(one_line(saved.problems().front()),
              HasSubstr("drag_link.tube.wall_mm: -3 is not a wall thickness; give 1 to 20"));
  EXPECT_EQ(content_of(file), "old");
}

TEST(SaveProject, AFolderThatIsNotThereIsAProblem) {
  const TemporaryFolder folder;
  const auto saved = save_project(small_project(), folder.path() / "none" / "yard.tack");
  ASSERT_FALSE(saved.ok());
  EXPECT_THAT(one_line(saved.problems().front()), HasSubstr("cannot write in this folder"));
}

TEST(ReadProject, AMissingFileOrAFolderIsAProblem) {
  const TemporaryFolder folder;
  const auto missing = read_project(folder.path() / "none.tack");
  ASSERT_FALSE(missing.ok());
  EXPECT_THAT(one_line(missing.problems().front()), HasSubstr("none.tack: there is no such file"));
  const auto read = read_project(folder.path());
  ASSERT_FALSE(read.ok());
  EXPECT_THAT(one_line(read.problems().front()), HasSubstr("this is a folder"));
}

TEST(ReadProject, AFileBeyondTheLimitIsRefused) {
  const TemporaryFolder folder;
  const fs::path file = folder.path() / "big.tack";
  write_content(file, "{}");
  fs::resize_file(file, kMostFileBytes + 1);
  const auto project = read_project(file);
  ASSERT_FALSE(project.ok());
  EXPECT_THAT(one_line(project.problems().front()), HasSubstr("more than 16 MB"));
}

// Runs until it is killed; says on `ready` when the first save is done.
[[noreturn]] void save_in_turn(const Project& one, const Project& other, const fs::path& file,
                               int ready) {
  for (bool told = false; save_project(other, file).ok() && save_project(one, file).ok();) {
    if (!told) told = ::write(ready, "!", 1) == 1;
  }
  ::_exit(1);
}

// A child saves two projects in turn and is killed at a random moment, 200 times: each time the
// file is one of the two, whole. Files left beside it show that kills did fall into saves.
TEST(SaveProject, KilledAtAnyMomentTheFileIsWhole) {
  const TemporaryFolder folder;
  const fs::path file = folder.path() / "yard.tack";
  Project one = small_project();
  one.notes = std::string(30000, 'o');
  Project other = small_project();
  other.notes = std::string(20000, 't');
  const std::string one_text = project_text(one);
  const std::string other_text = project_text(other);

  using Clock = std::chrono::steady_clock;
  const auto start = Clock::now();
  ASSERT_TRUE(save_project(one, file).ok() && save_project(other, file).ok());
  const auto two_saves =
      std::chrono::duration_cast<std::chrono::microseconds>(Clock::now() - start);

  std::mt19937 random(20240501);
  std::uniform_int_distribution<std::int64_t> wait(0, 2 * two_saves.count());
  int found_one = 0;
  int found_other = 0;
  for (int kill_number = 0; kill_number < 200; ++kill_number) {
    int ready[2];
    ASSERT_EQ(::pipe(ready), 0);
    const pid_t child = ::fork();
    ASSERT_GE(child, 0);
    if (child == 0) save_in_turn(one, other, file, ready[1]);
    char told = 0;
    ::close(ready[1]);
    ASSERT_EQ(::read(ready[0], &told, 1), 1) << "the child could not save";
    ::close(ready[0]);
    std::this_thread::sleep_for(std::chrono::microseconds(wait(random)));
    ::kill(child, SIGKILL);
    ASSERT_EQ(::waitpid(child, nullptr, 0), child);
    const std::string content = content_of(file);
    if (content == one_text) {
      ++found_one;
    } else if (content == other_text) {
      ++found_other;
    } else {
      FAIL() << "after kill " << kill_number << " the file has " << content.size() << " bytes";
    }
  }
  EXPECT_GT(found_one, 0);
  EXPECT_GT(found_other, 0);
  EXPECT_GT(files_in(folder.path()), 1U) << "no kill fell into a save";
}

}  // namespace
}  // namespace tackbench
