// What was begun on the bench and does not fit yet is kept, and comes back with its faults told.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <set>

#include "core/project-file/project_file.h"
#include "core/project/field_items.h"
#include "core/project/value_checks.h"
#include "tests/project-file/small_project.h"
#include "tests/project-file/temporary_folder.h"
#include "tests/support/what_may_begin.h"

namespace tackbench {
namespace {

using ::testing::ElementsAre;
using ::testing::Field;
using testing::small_project_text;
using testing::TemporaryFolder;

// Saved, opened, and neither refused nor changed; it compiles or says why not.
void expect_kept(const Project& project, const std::string& begun) {
  const TemporaryFolder folder;
  const auto file = folder.path() / "begun.tack";
  const Result<Done> saved = save_project(project, file);
  std::string faults;
  if (!saved.ok()) {
    for (const Problem& fault : saved.problems()) faults += '\n' + one_line(fault);
  }
  ASSERT_TRUE(saved.ok()) << begun << faults;
  const Result<UnfinishedProject> read = read_unfinished(file);
  ASSERT_TRUE(read.ok()) << begun;
  EXPECT_EQ(project_text(read->project), project_text(project)) << begun;
  EXPECT_EQ(read->unfit.size(), value_problems(project).size()) << begun;
  EXPECT_EQ(read_project(file).ok(), read->unfit.empty()) << begun;
}

TEST(Unfinished, AStationBegunWithoutItsRatioIsKept) {
  const auto begun = with_group_added(Project{}, "steering_box");
  ASSERT_TRUE(begun.ok());
  const TemporaryFolder folder;
  const auto file = folder.path() / "box.tack";
  ASSERT_TRUE(save_project(*begun, file).ok());
  const auto read = read_unfinished(file);
  ASSERT_TRUE(read.ok());
  EXPECT_THAT(read->unfit, ElementsAre(Field(&Problem::place, "steering_box.ratio")));
  EXPECT_EQ(read->unfit.front().file, file.string());
  EXPECT_FALSE(read_project(file).ok());  // for judging it has to fit
}

TEST(Unfinished, WhateverIsBegunIsKept) {
  const std::set<std::string> begun = begin_everything(expect_kept);
  EXPECT_THAT(begun, ::testing::IsSupersetOf({"steering_box", "drag_link.tube", "pedals.pedals",
                                              "shapes.shapes[1].mesh", "sheet.backdrops"}));
}

TEST(Unfinished, AValueOutOfRangeIsStillRefusedWithWhatDoesNotFit) {
  std::string text = small_project_text();
  const std::string wall = "\"wall_mm\": 5";
  text.replace(text.find(wall), wall.size(), "\"wall_mm\": -3");
  EXPECT_FALSE(read_unfinished_text(text).ok());
}

}  // namespace
}  // namespace tackbench
