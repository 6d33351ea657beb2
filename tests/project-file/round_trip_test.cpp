// What is written is read back as it was, member by member, and a change shows on its own line.
#include <gmock/gmock.h>
#include <rapidcheck/gtest.h>

#include <nlohmann/json.hpp>
#include <sstream>

#include "core/project-file/project_file.h"
#include "core/project-file/project_tree.h"
#include "core/project/field_path.h"
#include "core/project/field_walk.h"
#include "tests/project-file/random_project.h"
#include "tests/project-file/small_project.h"

namespace tackbench {
namespace {

using testing::random_project;
using testing::small_project_text;
using testing::small_project_with;

// Every present value with its member path, numbers as the core holds them.
class Listing final : public FieldWalk {
 public:
  void text(const TextField& field, std::string& value) override { note(field, value); }
  void flag(const FieldLabel& field, bool& value) override { note(field, value ? "yes" : "no"); }
  void number(const NumberField& field, double& value) override { note(field, "", {value}); }
  void optional_number(const NumberField& field, std::optional<double>& value) override {
    if (value) number(field, *value);
  }
  void whole(const NumberField& field, int& value) override { note(field, std::to_string(value)); }
  void optional_whole(const NumberField& field, std::optional<int>& value) override {
    if (value) whole(field, *value);
  }
  void vector(const NumberField& field, Vec3& value) override { direction(field, value); }
  void direction(const FieldLabel& field, Vec3& value) override {
    note(field, "", {value.x(), value.y(), value.z()});
  }
  void optional_direction(const FieldLabel& field, std::optional<Vec3>& value) override {
    if (value) direction(field, *value);
  }
  void choice_index(const FieldLabel& field, ChoiceWords, int& index) override {
    note(field, std::to_string(index));
  }
  void optional_choice_index(const FieldLabel& field, ChoiceWords,
                             std::optional<int>& index) override {
    if (index) note(field, std::to_string(*index));
  }
  void points_access(const NumberField& field, PointsAccess& points) override {
    for (std::size_t i = 0; i < points.size(); ++i) direction(field, points.at(i));
  }
  void unknown_members(UnknownMembers& members) override {
    for (const auto& [key, json] : members) note(label(key, ""), json);
  }

  struct Entry {
    std::string place;
    std::string text;
    std::vector<double> numbers;
  };
  std::vector<Entry> entries;

 private:
  void note(const FieldLabel& field, std::string value, std::vector<double> numbers = {}) {
    entries.push_back({place_of(field), std::move(value), std::move(numbers)});
  }
};

std::vector<Listing::Entry> listing_of(Project project) {
  Listing listing;
  visit_fields(listing, project);
  return listing.entries;
}

// 14 digits are written: no number may differ by more than half a unit of the last one.
bool alike(const Listing::Entry& a, const Listing::Entry& b) {
  const auto close = [](double x, double y) { return std::abs(x - y) <= 1e-13 * std::abs(x); };
  return a.place == b.place && a.text == b.text &&
         std::equal(a.numbers.begin(), a.numbers.end(), b.numbers.begin(), b.numbers.end(), close);
}

Project read_fields(const std::string& text) {
  auto tree = nlohmann::ordered_json::parse(text);
  tree.erase("tackbench_format");
  FaultList faults;
  Project project = project_from_tree(tree, faults);
  for (const Problem& fault : faults.listed()) RC_FAIL(one_line(fault));
  return project;
}

RC_GTEST_PROP(RoundTrip, KeepsEveryValueAndThenEveryByte, ()) {
  const Project project = random_project();
  const std::string text = project_text(project);
  const Project back = read_fields(text);
  const auto before = listing_of(project);
  const auto after = listing_of(back);
  RC_ASSERT(before.size() == after.size());
  for (std::size_t i = 0; i < before.size(); ++i) {
    if (!alike(before[i], after[i])) RC_FAIL(before[i].place + " came back changed");
  }
  RC_ASSERT(project_text(back) == text);
}

std::vector<std::string> lines_of(const std::string& text) {
  std::vector<std::string> lines;
  std::istringstream stream(text);
  for (std::string line; std::getline(stream, line);) lines.push_back(line);
  return lines;
}

TEST(ProjectText, AChangedFieldChangesItsLineOnly) {
  const Project project = *read_project_text(small_project_text());
  const auto before = lines_of(project_text(project));
  for (const auto& [path, value] : {std::pair{"drag_link.tube.wall_mm", "6"},
                                    {"front_axle.left_knuckle.caster_deg", "2.75"},
                                    {"shaft_line.supports[0].eye_mm.z", "301"},
                                    {"steering_box.left_turns_arm", "anticlockwise"},
                                    {"front_axle.road.body_corners_mm[1]", "[1,2,3]"},
                                    {"name", "other"}}) {
    const auto after = lines_of(project_text(*with_field(project, path, value)));
    ASSERT_EQ(before.size(), after.size()) << path;
    int changed = 0;
    for (std::size_t i = 0; i < before.size(); ++i) changed += before[i] != after[i] ? 1 : 0;
    EXPECT_EQ(changed, 1) << path;
  }
}

TEST(ProjectText, AClearedOptionalFieldTakesItsLineAlong) {
  const Project project = *read_project_text(small_project_text());
  const auto before = lines_of(project_text(project));
  auto after = lines_of(
      project_text(*with_field(project, "shaft_line.supports[0].swing_limit_deg", "none")));
  EXPECT_EQ(after.size() + 1, before.size());
}

TEST(ProjectText, StandsInTheOrderOfTheTableWhateverTheFileHad) {
  const Project one = *read_project_text(small_project_text());
  const Project other = *read_project_text(small_project_with(
      R"("outside_diameter_mm": 35, "wall_mm": 5)", R"("wall_mm": 5, "outside_diameter_mm": 35)"));
  EXPECT_EQ(project_text(one), project_text(other));
}

TEST(ProjectText, UnknownMembersAreWrittenBackAtTheEndOfTheirObject) {
  const std::string text = small_project_with(
      "\"wall_mm\": 5", R"("colour": {"red": [1, 2.50]}, "wall_mm": 5, "maker": "none")");
  const auto project = read_project_text(text);
  ASSERT_TRUE(project.ok());
  const std::string written = project_text(*project);
  EXPECT_THAT(written, ::testing::HasSubstr("      \"wall_mm\": 5,\n"
                                            "      \"colour\": {\n"
                                            "        \"red\": [1, 2.5]\n"
                                            "      },\n"
                                            "      \"maker\": \"none\"\n"
                                            "    }"));
  EXPECT_EQ(project_text(*read_project_text(written)), written);
}

TEST(ProjectText, NumbersDoNotDriftThroughRadians) {
  for (const char* degrees : {"0.1", "12.345", "7.7777", "-29.999999999999", "1e-07"}) {
    const std::string member = std::string("\"caster_deg\": ") + degrees;
    const auto project = read_project_text(small_project_with("\"caster_deg\": 3", member));
    ASSERT_TRUE(project.ok()) << degrees;
    EXPECT_THAT(project_text(*project), ::testing::HasSubstr(member + ",")) << degrees;
  }
}

}  // namespace
}  // namespace tackbench
