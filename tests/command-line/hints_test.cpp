// What the program answers when somebody mistypes, leaves something out or goes too far.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <fstream>
#include <iterator>
#include <nlohmann/json.hpp>

#include "tests/command-line/program_run.h"

namespace tackbench {
namespace {

using Json = nlohmann::ordered_json;
using testing::HasSubstr;
using testing::Not;

const std::string kTender = "tender-as-first-tacked";

Json sample_tree(const std::string& name) {
  std::ifstream stream(sample_path(name));
  return Json::parse(stream, nullptr, false);
}

std::string written(const ScratchFolder& folder, const Json& tree) {
  std::string file = (folder.path() / "truck.tack").string();
  std::ofstream(file) << tree.dump(2);
  return file;
}

const Json* finding_in(const Json& answer, const std::string& name) {
  for (const Json& finding : answer["findings"]) {
    if (finding["name"] == name) return &finding;
  }
  return nullptr;
}

TEST(Hints, MembersThatAreNotUsedStandInTheFindings) {
  const ScratchFolder folder;
  Json tree = sample_tree(kTender);
  tree["front_axle"]["colour"] = "green";
  const Json answer =
      Json::parse(run_program({"findings", written(folder, tree), "--json"}).out, nullptr, false);
  EXPECT_EQ(answer["unknown_members"], Json::array({"front_axle.colour"}));
  const Json clean =
      Json::parse(run_program({"findings", sample_path(kTender), "--json"}).out, nullptr, false);
  EXPECT_EQ(clean["unknown_members"], Json::array());
}

TEST(Hints, AMistypedCommandIsGuessed) {
  const ProgramRun run = run_program({"finding", sample_path(kTender)});
  EXPECT_EQ(run.exit_code, 2);
  EXPECT_THAT(run.err, HasSubstr("did you mean findings?"));
  EXPECT_THAT(run_program({"cutlist"}).err, HasSubstr("did you mean cut-list?"));
  const ProgramRun other = run_program({"polish"});
  EXPECT_EQ(other.exit_code, 2);
  EXPECT_THAT(other.err, HasSubstr("give one of: findings, why, pose, gaps, sweep, cut-list, new"));
}

TEST(Hints, AMistypedFindingIsAnsweredWithItsNeighboursFirst) {
  const ProgramRun run = run_program({"why", sample_path(kTender), "lock.left.ends"});
  EXPECT_EQ(run.exit_code, 2);
  EXPECT_THAT(run.err, HasSubstr("nearest: lock.left.end, "));
  EXPECT_LT(run.err.find("nearest:"), run.err.find("others:"));
  EXPECT_THAT(run_program({"why", sample_path(kTender), "wander"}).err,
              HasSubstr("nearest: shaft.wander, "));
}

TEST(Hints, AnUnknownSampleListsThem) {
  const ScratchFolder folder;
  const std::string file = (folder.path() / "mine.tack").string();
  const ProgramRun run = run_program({"new", file, "--from", "nothing"});
  EXPECT_EQ(run.exit_code, 2);
  EXPECT_THAT(run.err, testing::ContainsRegex(
                           "bare-start, tender-as-first-tacked,[ \n]+tender-sorted, timber-wagon"));
}

TEST(Hints, APoseBeyondTheBoxSaysSoFirst) {
  const ProgramRun far = run_program({"pose", sample_path(kTender), "--hand-wheel-deg", "1100"});
  EXPECT_EQ(far.exit_code, 0);
  const std::size_t second_line = far.out.find('\n') + 1;
  EXPECT_EQ(far.out.find("The box ends before that"), second_line) << far.out.substr(0, 300);
  EXPECT_THAT(far.out, Not(HasSubstr("Solved")));
  const ProgramRun near = run_program({"pose", sample_path(kTender), "--hand-wheel-deg", "300"});
  EXPECT_EQ(near.out.find("Solved."), near.out.find('\n') + 1);
}

TEST(Hints, WhyAnswersBeforeItExplains) {
  const std::string out = run_program({"why", sample_path(kTender), "lock.left.end"}).out;
  const std::size_t result = out.find("\nResult\n");
  const std::size_t limit = out.find("\nLimit: ");
  const std::size_t formula = out.find("\nFormula: ");
  ASSERT_NE(formula, std::string::npos);
  EXPECT_LT(result, limit);
  EXPECT_LT(limit, formula);
}

TEST(Hints, CommandsToTypeNameTheProgramAsItWasCalled) {
  const std::string findings = run_program({"findings", sample_path(kTender)}).out;
  EXPECT_THAT(findings, HasSubstr(std::string(TACKBENCH_CLI) + " why "));
  const ScratchFolder folder;
  const std::string file = (folder.path() / "my truck.tack").string();
  EXPECT_THAT(run_program({"new", file}).out,
              HasSubstr(std::string(TACKBENCH_CLI) + " findings '" + file + "'"));
}

TEST(Hints, RollAndWindUpThatNobodyGaveAreNoZeroes) {
  const ScratchFolder folder;
  Json tree = sample_tree(kTender);
  tree["front_axle"]["suspension"].erase("roll_deg");
  tree["front_axle"]["suspension"].erase("wind_up_deg");
  const std::string file = written(folder, tree);
  const Json answer = Json::parse(run_program({"findings", file, "--json"}).out, nullptr, false);
  for (const std::string name : {"bump.roll", "bump.wind_up"}) {
    const Json* finding = finding_in(answer, name);
    ASSERT_NE(finding, nullptr) << name;
    EXPECT_EQ((*finding)["verdict"], "not_judged") << name;
    EXPECT_THAT((*finding)["sentence"].get<std::string>(), HasSubstr("is not given")) << name;
    EXPECT_TRUE((*finding)["numbers"].empty()) << name;
    EXPECT_THAT(run_program({"why", file, name}).out, Not(HasSubstr("Formula"))) << name;
  }
}

}  // namespace
}  // namespace tackbench
