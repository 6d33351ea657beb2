#include <gmock/gmock.h>

#include "core/basics/units.h"
#include "core/project-file/project_file.h"
#include "tests/project-file/small_project.h"

namespace tackbench {
namespace {

using testing::small_project_text;
using testing::small_project_with;

Project read_good(const std::string& text) {
  const Result<Project> project = read_project_text(text, "yard.tack");
  if (!project.ok()) {
    for (const Problem& problem : project.problems()) ADD_FAILURE() << one_line(problem);
    return {};
  }
  return *project;
}

TEST(ReadProject, TakesValuesInTheirInsideUnits) {
  const Project project = read_good(small_project_text());
  ASSERT_TRUE(project.front_axle && project.shaft_line && project.steering_box);
  EXPECT_EQ(project.name, "yard tender");
  EXPECT_FALSE(project.pedals);
  EXPECT_DOUBLE_EQ(project.front_axle->left_knuckle.caster, 3.0 * kPi / 180.0);
  EXPECT_DOUBLE_EQ(project.shaft_line->shafts[0].fork_offset, 12.5 * kPi / 180.0);
  EXPECT_EQ(project.shaft_line->joints[0].rides_on, RidesOn::cab);
  EXPECT_EQ(project.steering_box->left_turns_arm, TurnSense::clockwise);
  EXPECT_EQ(project.drag_link->arm_end.thread->hand, ThreadHand::left);
  EXPECT_EQ(project.front_axle->road.body_corners.size(), 2U);
  EXPECT_EQ(project.front_axle->road.rear_track, std::nullopt);
}

TEST(ReadProject, MakesDirectionsUnit) {
  const Project project = read_good(small_project_text());
  ASSERT_TRUE(project.drag_link && project.drag_link->arm_end.stud_axis);
  EXPECT_LT((*project.drag_link->arm_end.stud_axis - Vec3(0, 0.6, 0.8)).norm(), 1e-15);
}

TEST(ReadProject, OptionalMembersMayBeNull) {
  const Project project =
      read_good(small_project_with("\"swing_limit_deg\": 15", "\"swing_limit_deg\": null"));
  ASSERT_TRUE(project.shaft_line);
  EXPECT_EQ(project.shaft_line->supports[0].swing_limit, std::nullopt);
}

TEST(ProjectText, ReadAndWrittenAgainGivesTheSameBytes) {
  const std::string once = project_text(read_good(small_project_text()));
  EXPECT_EQ(project_text(read_good(once)), once);
}

TEST(ProjectText, AnEmptyProjectIsSmallAndOpens) {
  EXPECT_EQ(project_text(Project{}),
            "{\n  \"tackbench_format\": 1,\n  \"name\": \"\",\n  \"notes\": \"\"\n}\n");
  read_good(project_text(Project{}));
}

}  // namespace
}  // namespace tackbench
