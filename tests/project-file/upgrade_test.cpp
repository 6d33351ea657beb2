// Files of older formats keep opening. Each old format has a planted file, kept as it was.
#include <gmock/gmock.h>

#include "core/basics/units.h"
#include "core/project-file/project_file.h"
#include "tests/project-file/temporary_folder.h"

namespace tackbench {
namespace {

TEST(OlderFormat, Version0Opens) {
  const auto project = read_project(std::string(TACKBENCH_SOURCE_FOLDER) +
                                    "/tests/project-file/texts/format-0.tack");
  ASSERT_TRUE(project.ok()) << one_line(project.problems().front());
  ASSERT_TRUE(project->drag_link && project->steering_box);
  EXPECT_EQ(project->drag_link->given_length, 812.5);
  EXPECT_DOUBLE_EQ(project->steering_box->travel_left, radians_from_degrees(45.0));
  EXPECT_DOUBLE_EQ(project->steering_box->travel_right, radians_from_degrees(45.0));
  // What the old format did not know either is kept.
  ASSERT_EQ(project->drag_link->unknown.size(), 1U);
  EXPECT_EQ(project->drag_link->unknown[0].key, "paint");

  const std::string text = project_text(*project);
  EXPECT_THAT(text, ::testing::HasSubstr("\"tackbench_format\": 1,"));
  EXPECT_THAT(text, ::testing::HasSubstr("\"given_length_mm\": 812.5,"));
  EXPECT_THAT(text, ::testing::Not(::testing::HasSubstr("\"length_mm\": 812.5")));
  EXPECT_TRUE(read_project_text(text).ok());
}

TEST(OlderFormat, ItsOldNamesMeanNothingToday) {
  std::string text = testing::content_of(std::string(TACKBENCH_SOURCE_FOLDER) +
                                         "/tests/project-file/texts/format-0.tack");
  const std::string version = "\"tackbench_format\": 0";
  ASSERT_NE(text.find(version), std::string::npos);
  text.replace(text.find(version), version.size(), "\"tackbench_format\": 1");
  const auto project = read_project_text(text);
  ASSERT_FALSE(project.ok());
  EXPECT_EQ(project.problems().front().place, "steering_box.travel_left_deg");
}

TEST(OlderFormat, FaultsAreStillFaults) {
  const auto project = read_project_text(
      R"({"tackbench_format": 0, "drag_link": {"knuckle_ball_mm": [0, 0, 0], "length_mm": "long"},
          "steering_box": 5})");
  ASSERT_FALSE(project.ok());
  EXPECT_EQ(project.problems().size(), 2U);
}

}  // namespace
}  // namespace tackbench
