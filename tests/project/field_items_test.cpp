#include "core/project/field_items.h"

#include <gtest/gtest.h>

#include "core/project/field_path.h"
#include "core/project/value_checks.h"

namespace tackbench {
namespace {

// Two joints with a shaft and a support, a column behind and a box ahead of them.
Project line_of_two() {
  Project project;
  auto column = std::make_shared<ColumnStation>();
  column->hand_wheel_centre.mm = Vec3(0, 0, 1000);
  column->output_end.mm = Vec3(400, 0, 600);
  project.column = column;
  auto line = std::make_shared<ShaftLineStation>();
  line->joints.resize(2);
  line->joints[0].name = "upper";
  line->joints[0].centre = Vec3(420, 0, 580);
  line->joints[1].name = "lower";
  line->joints[1].centre = Vec3(800, 0, 100);
  line->shafts.resize(1);
  line->shafts[0].name = "shaft";
  line->supports.resize(1);
  line->supports[0].name = "eye";
  project.shaft_line = line;
  auto box = std::make_shared<SteeringBoxStation>();
  box->input_end.mm = Vec3(900, 0, 0);
  box->ratio = 16.0;
  project.steering_box = box;
  return project;
}

TEST(FieldItems, AJointComesWithItsShaftHalfwayToTheBox) {
  const Project before = line_of_two();
  const Result<Project> after = with_item_added(before, "shaft_line.joints");
  ASSERT_TRUE(after.ok());
  const ShaftLineStation& line = *after->shaft_line;
  ASSERT_EQ(line.joints.size(), 3U);
  EXPECT_EQ(line.shafts.size(), 2U);
  // Middle of (800, 0, 100) and (900, 0, 0).
  EXPECT_LT((line.joints[2].centre - Vec3(850, 0, 50)).norm(), 1e-9);
  EXPECT_NE(line.joints[2].name, line.joints[1].name);
  EXPECT_NE(line.shafts[1].name, line.shafts[0].name);
  EXPECT_TRUE(value_problems(*after).empty());
  // The rest is the very same.
  EXPECT_EQ(after->column, before.column);
  EXPECT_EQ(after->steering_box, before.steering_box);
}

TEST(FieldItems, AJointGoesWithItsShaftAndWhatSatOnIt) {
  const Result<Project> after = with_item_removed(line_of_two(), "shaft_line.joints", 0);
  ASSERT_TRUE(after.ok());
  EXPECT_EQ(after->shaft_line->joints.size(), 1U);
  EXPECT_EQ(after->shaft_line->joints[0].name, "lower");
  EXPECT_TRUE(after->shaft_line->shafts.empty());
  EXPECT_TRUE(after->shaft_line->supports.empty());
  EXPECT_TRUE(value_problems(*after).empty());
}

TEST(FieldItems, FourJointsAreTheMost) {
  Project project = line_of_two();
  for (int i = 0; i < 2; ++i) {
    const Result<Project> more = with_item_added(project, "shaft_line.joints");
    ASSERT_TRUE(more.ok());
    project = *more;
  }
  EXPECT_FALSE(with_item_added(project, "shaft_line.joints").ok());
}

TEST(FieldItems, RowsOfARatioTableRise) {
  Project project = line_of_two();
  for (int i = 0; i < 3; ++i) {
    const Result<Project> more = with_item_added(project, "steering_box.ratio_table");
    ASSERT_TRUE(more.ok());
    project = *more;
  }
  const auto& rows = project.steering_box->ratio_table;
  ASSERT_EQ(rows.size(), 3U);
  EXPECT_LT(rows[0].input, rows[1].input);
  EXPECT_LT(rows[1].input, rows[2].input);
}

TEST(FieldItems, PointsOfAListComeAndGo) {
  Project project;
  project.front_axle = std::make_shared<const FrontAxleStation>();
  const char* const list = "front_axle.road.body_corners_mm";
  for (int i = 0; i < 3; ++i) {
    const Result<Project> more = with_item_added(project, list);
    ASSERT_TRUE(more.ok());
    project = *more;
  }
  const auto corners = project.front_axle->road.body_corners;
  ASSERT_EQ(corners.size(), 3U);
  const Result<Project> fewer = with_item_removed(project, list, 1);
  ASSERT_TRUE(fewer.ok());
  ASSERT_EQ(fewer->front_axle->road.body_corners.size(), 2U);
  EXPECT_EQ(fewer->front_axle->road.body_corners[1].mm, corners[2].mm);
}

TEST(FieldItems, GroupsAndStationsBegin) {
  Project project;
  Result<Project> after = with_group_added(project, "drag_link");
  ASSERT_TRUE(after.ok());
  EXPECT_FALSE(after->drag_link->tube);
  after = with_group_added(*after, "drag_link.tube");
  ASSERT_TRUE(after.ok());
  EXPECT_TRUE(after->drag_link->tube);
  // Twice is a fault; so is what may not be left out.
  EXPECT_FALSE(with_group_added(*after, "drag_link.tube").ok());
  EXPECT_FALSE(with_group_added(*after, "drag_link.forces").ok());
  EXPECT_FALSE(with_item_added(*after, "drag_link.tube").ok());
}

TEST(FieldItems, TheRightKnuckleIsFreedWhereItsMirrorImageStands) {
  Project project;
  auto axle = std::make_shared<FrontAxleStation>();
  axle->left_knuckle.kingpin_point.mm = Vec3(10, 800, 400);
  axle->left_knuckle.tie_rod_ball.mm = Vec3(-150, 760, 390);
  axle->left_knuckle.stops.resize(1);
  axle->left_knuckle.stops[0].lock = Side::left;
  project.front_axle = axle;
  const Result<Project> freed = with_group_added(project, "front_axle.right_knuckle");
  ASSERT_TRUE(freed.ok());
  ASSERT_TRUE(freed->front_axle->right_knuckle);
  const KnuckleSide& right = *freed->front_axle->right_knuckle;
  EXPECT_EQ(right.tie_rod_ball.mm, Vec3(-150, -760, 390));
  EXPECT_EQ(right.stops.at(0).lock, Side::right);
  EXPECT_FALSE(with_group_added(*freed, "front_axle.right_knuckle").ok());
}

TEST(FieldItems, AFreshColumnHasAnAxis) {
  const Result<Project> after = with_group_added(Project{}, "column");
  ASSERT_TRUE(after.ok());
  EXPECT_TRUE(value_problems(*after).empty());
}

}  // namespace
}  // namespace tackbench
