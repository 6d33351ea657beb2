// What a begun station holds is invented until somebody types over it, and is named so.
#include "core/project/starting_guesses.h"

#include <gtest/gtest.h>

#include <algorithm>

#include "core/project-file/project_file.h"
#include "core/project/field_path.h"
#include "core/project/starting_truck.h"

namespace tackbench {
namespace {

Project bare() {
  Project project;
  project.name = "bare";
  return project;
}

bool is_guess(const Project& project, const std::string& path) {
  const auto guesses = starting_guesses(project);
  return std::find(guesses.begin(), guesses.end(), path) != guesses.end();
}

TEST(StartingGuesses, EveryFigureOfABegunStationIsOneUntilItIsTyped) {
  const Project begun = with_station_begun(bare(), Station::front_axle);
  for (const char* path :
       {"front_axle.track_mm", "front_axle.wheel_centre_height_mm",
        "front_axle.left_knuckle.kingpin_point_mm", "front_axle.suspension.bump_mm",
        "front_axle.suspension.leaf.fixed_eye_mm", "front_axle.road.wheelbase_mm"})
    EXPECT_TRUE(is_guess(begun, path)) << path;
  const auto before = guesses_by_station(begun).at(Station::front_axle);
  const Result<Project> typed = with_field(begun, "front_axle.track_mm", "1874.5");
  ASSERT_TRUE(typed.ok());
  EXPECT_FALSE(is_guess(*typed, "front_axle.track_mm"));
  EXPECT_EQ(guesses_by_station(*typed).at(Station::front_axle), before - 1);
}

TEST(StartingGuesses, OutlastAFile) {
  Project begun = bare();
  for (const Station station : kStations) begun = with_station_begun(begun, station);
  const Result<Project> again = read_project_text(project_text(begun));
  ASSERT_TRUE(again.ok()) << one_line(again.problems().front());
  EXPECT_EQ(starting_guesses(*again), starting_guesses(begun));
  EXPECT_EQ(guesses_by_station(*again).size(), kStations.size());
}

// A project that never began bare has been measured by somebody, whatever its figures are.
TEST(StartingGuesses, AreNoneInAProjectThatDidNotBeginBare) {
  Project truck = starting_truck({});
  truck.name = "truck";
  EXPECT_TRUE(starting_guesses(truck).empty());
  truck.pedals.reset();
  EXPECT_TRUE(starting_guesses(with_station_begun(truck, Station::pedals)).empty());
}

}  // namespace
}  // namespace tackbench
