#include "core/project/project_difference.h"

#include <gtest/gtest.h>

#include "core/project/field_path.h"
#include "core/project/starting_truck.h"

namespace tackbench {
namespace {

Project with(const Project& project, const char* path, const char* value) {
  const Result<Project> changed = with_field(project, path, value);
  if (!changed) throw std::runtime_error(one_line(changed.problems().front()));
  return *changed;
}

TEST(Differences, NoneBetweenAProjectAndItself) {
  const Project truck = starting_truck({});
  EXPECT_TRUE(differences(truck, truck).empty());
}

TEST(Differences, NameTheMemberInWordsWithBothValues) {
  const Project before = starting_truck({});
  const Project after = with(with(before, "steering_box.ratio", "18"),
                             "shaft_line.joints[1].centre_mm", "[-800, 470, 0]");
  const auto found = differences(before, after);
  ASSERT_EQ(found.size(), 2U);
  EXPECT_EQ(found[0].path, "shaft_line.joints[1].centre_mm");
  EXPECT_EQ(found[1].path, "steering_box.ratio");
  EXPECT_EQ(found[1].before, "20");
  EXPECT_EQ(found[1].after, "18");
  EXPECT_NE(found[1].words.find("ratio"), std::string::npos);
}

TEST(Differences, SayWhatOnlyOneOfThemHas) {
  const Project before = starting_truck({});
  const Project after = with(before, "front_axle.road.wheelbase_mm", "none");
  const auto gone = differences(before, after);
  ASSERT_EQ(gone.size(), 1U);
  EXPECT_EQ(gone[0].before, "3700");
  EXPECT_EQ(gone[0].after, "");
  const auto come = differences(after, before);
  ASSERT_EQ(come.size(), 1U);
  EXPECT_EQ(come[0].after, "3700");
}

}  // namespace
}  // namespace tackbench
