// The faint truck must be one that can be posed, on both drives, box behind and ahead.
#include "core/project/starting_truck.h"

#include <gtest/gtest.h>

#include "core/mechanism/solve.h"
#include "core/project-file/project_file.h"
#include "tests/support/bench_truck.h"

namespace tackbench {
namespace {

TEST(StartingTruck, CompilesOnBothDrivesWithTheBoxBehindAndAhead) {
  for (const Side drive : {Side::left, Side::right}) {
    for (const bool box_ahead : {false, true}) {
      Project project = starting_truck({drive, box_ahead});
      project.name = "start";
      const Mechanism mechanism = compiled(project);
      // Which way the arm goes has to be read off the box, so the steering is still asked for.
      EXPECT_FALSE(mechanism.steering.has_value());
      auto box = *project.steering_box;
      box.left_turns_arm = TurnSense::clockwise;
      project.steering_box = std::make_shared<const SteeringBoxStation>(box);
      const Mechanism whole = compiled(project);
      ASSERT_TRUE(whole.steering.has_value());
      EXPECT_EQ(solved_pose(whole, {}).outcome, Outcome::solved);
      const Result<Project> again = read_project_text(project_text(project));
      EXPECT_TRUE(again.ok()) << one_line(again.problems().front());
    }
  }
}

TEST(StartingTruck, AStationIsBegunOnceAndOthersStay) {
  Project project;
  const Project begun = with_station_begun(project, Station::column);
  EXPECT_TRUE(has_station(begun, Station::column));
  EXPECT_TRUE(begun.cab);
  EXPECT_FALSE(has_station(begun, Station::pedals));
  const Project again = with_station_begun(begun, Station::column);
  EXPECT_EQ(again.column, begun.column);
  for (const Station station : kStations) {
    EXPECT_FALSE(has_station(project, station));
    EXPECT_TRUE(has_station(with_station_begun(project, station), station));
  }
}

TEST(StartingTruck, FollowsTheAnswersOfTheProject) {
  Project project;
  auto sheet = std::make_shared<SheetSettings>();
  sheet->start = StartOfProject{Side::right, true, "cab", {}};
  project.sheet = sheet;
  const Project begun = with_station_begun(project, Station::steering_box);
  EXPECT_LT(begun.steering_box->output_point.mm.y(), 0.0);
  EXPECT_GT(begun.steering_box->output_point.mm.x(), 0.0);
}

}  // namespace
}  // namespace tackbench
