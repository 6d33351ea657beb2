// gaps: the pairs that come near at one setting of the controls.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <nlohmann/json.hpp>

#include "tests/command-line/program_run.h"

namespace tackbench {
namespace {

using Json = nlohmann::json;
using testing::HasSubstr;

Json gaps_of(std::vector<std::string> arguments) {
  arguments.insert(arguments.begin(), {"gaps", sample_path("tender-as-first-tacked"), "--json"});
  const ProgramRun run = run_program(arguments);
  EXPECT_EQ(run.exit_code, 0);
  EXPECT_THAT(run.err, testing::IsEmpty());
  return Json::parse(run.out, nullptr, false);
}

double gap(const Json& json, const std::string& first, const std::string& second) {
  for (const Json& pair : json["gaps"])
    if (pair["first"] == first && pair["second"] == second) return pair["gap_mm"];
  ADD_FAILURE() << "no pair " << first << ", " << second;
  return 0.0;
}

// 570 - 12/2 - (505.5 + 101/2) of the file.
TEST(GapsCommand, TellsPairsLeastFirst) {
  const Json json = gaps_of({});
  EXPECT_EQ(json["outcome"], "solved");
  ASSERT_GT(json["gaps"].size(), 10U);
  double before = -1e9;
  for (const Json& pair : json["gaps"]) {
    EXPECT_GE(pair["gap_mm"], before);
    EXPECT_LE(pair["gap_mm"], 150.0);
    EXPECT_LE(pair["gap_low_mm"], pair["gap_high_mm"]);
    EXPECT_EQ(pair["on_first_mm"].size(), 3U);
    before = pair["gap_mm"];
  }
  EXPECT_NEAR(gap(json, "clutch pedal arm", "column bracket"), 8.0, 1e-3);
}

TEST(GapsCommand, FollowsControlsAndTriedValues) {
  const Json rest = gaps_of({});
  const Json bumped = gaps_of({"--bump-left-mm", "60", "--bump-right-mm", "60"});
  EXPECT_NEAR(gap(rest, "axle beam", "engine") - gap(bumped, "axle beam", "engine"), 60.0, 1.5);
  const Json apart = gaps_of({"--set", "shapes.shapes[2].size_mm=[60, 91, 110]"});
  EXPECT_NEAR(gap(apart, "clutch pedal arm", "column bracket"), 13.0, 1e-3);
  EXPECT_LT(gaps_of({"--within-mm", "30"})["gaps"].size(), rest["gaps"].size());
}

TEST(GapsCommand, SaysThatItIsOnePositionOnly) {
  const ProgramRun run = run_program({"gaps", sample_path("tender-as-first-tacked")});
  EXPECT_EQ(run.exit_code, 0);
  EXPECT_THAT(run.out, HasSubstr("gap in this position"));
  EXPECT_THAT(run.out, HasSubstr("nothing is judged by them"));
  EXPECT_THAT(run.out, HasSubstr("clutch pedal arm"));
  EXPECT_EQ(
      run_program({"gaps", sample_path("tender-as-first-tacked"), "--pedal", "horn=1"}).exit_code,
      2);
  EXPECT_THAT(run_program({"gaps", sample_path("bare-start")}).out,
              HasSubstr("no pair is so near"));
}

}  // namespace
}  // namespace tackbench
