// The program as a user meets it: exit codes, JSON members, messages, page width.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <cmath>
#include <fstream>
#include <iterator>
#include <map>
#include <nlohmann/json.hpp>
#include <sstream>

#include "core/basics/frames.h"
#include "core/project-file/project_file.h"
#include "tests/command-line/program_run.h"

namespace tackbench {
namespace {

using Json = nlohmann::json;
using testing::HasSubstr;

Json json_of(const std::vector<std::string>& arguments) {
  const ProgramRun run = run_program(arguments);
  EXPECT_THAT(run.err, testing::IsEmpty());
  return Json::parse(run.out, nullptr, false);
}

std::size_t widest_line(const std::string& text) {
  std::istringstream lines(text);
  std::size_t widest = 0;
  for (std::string line; std::getline(lines, line);) {
    std::size_t width = 0;
    for (const char c : line) {
      if ((static_cast<unsigned char>(c) & 0xC0U) != 0x80U) ++width;
    }
    // A path is as long as it is; nothing else may be wider than the page.
    if (line.find('/') == std::string::npos) widest = std::max(widest, width);
  }
  return widest;
}

const std::string kTender = "tender-as-first-tacked";

TEST(CommandLine, FindingsOfTheTenderArePastAndSayWhatIsNotChecked) {
  const ProgramRun run = run_program({"findings", sample_path(kTender)});
  EXPECT_EQ(run.exit_code, 1);
  EXPECT_THAT(run.out, HasSubstr("Not checked:"));
  EXPECT_THAT(run.out, HasSubstr("past ("));
  EXPECT_LE(widest_line(run.out), 100U);
}

TEST(CommandLine, FindingsOfTheSortedTenderExitZero) {
  EXPECT_EQ(run_program({"findings", sample_path("tender-sorted")}).exit_code, 0);
}

TEST(CommandLine, FindingsAsJsonTellTheSame) {
  const Json json = json_of({"findings", sample_path(kTender), "--json"});
  ASSERT_TRUE(json.contains("findings"));
  ASSERT_FALSE(json["findings"].empty());
  for (const Json& finding : json["findings"]) {
    EXPECT_TRUE(finding.contains("name"));
    EXPECT_TRUE(finding.contains("verdict"));
    EXPECT_TRUE(finding.contains("sentence"));
  }
  EXPECT_GT(json["past"], 0);
}

// SHA-256 of "abc" as published (FIPS 180-4 examples).
TEST(CommandLine, AScanThatIsGoneOrChangedIsTold) {
  const ScratchFolder folder;
  Project project;
  auto shapes = std::make_shared<ShapesStation>();
  shapes->shapes.resize(3);
  for (const std::size_t i : {0U, 1U, 2U}) {
    Shape& shape = shapes->shapes[i];
    shape.name = "scan " + std::to_string(i);
    shape.kind = ShapeKind::mesh;
    shape.mesh = FileReference{std::to_string(i) + ".ply",
                               "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad",
                               {}};
  }
  project.shapes = shapes;
  const std::string file = (folder.path() / "yard.tack").string();
  ASSERT_TRUE(save_project(project, file).ok());
  std::ofstream(folder.path() / "0.ply") << "abc";
  std::ofstream(folder.path() / "1.ply") << "abd";
  const Json json = json_of({"findings", file, "--json"});
  std::map<std::string, std::string> told;
  for (const Json& finding : json["findings"]) {
    const std::string name = finding["name"];
    if (name.starts_with("file.")) told[name] = finding["sentence"];
  }
  ASSERT_EQ(told.size(), 2U);
  EXPECT_THAT(told["file.shapes.shapes[1].mesh"], HasSubstr("other content"));
  EXPECT_THAT(told["file.shapes.shapes[2].mesh"], HasSubstr("not there"));
  EXPECT_EQ(run_program({"why", file, "file.shapes.shapes[2].mesh"}).exit_code, 0);
}

TEST(CommandLine, EveryFindingCanBeAskedWhy) {
  const Json json = json_of({"findings", sample_path(kTender), "--json"});
  for (const Json& finding : json["findings"]) {
    const ProgramRun run = run_program({"why", sample_path(kTender), finding["name"]});
    EXPECT_EQ(run.exit_code, 0) << finding["name"];
    EXPECT_THAT(run.out, HasSubstr("Formula: ")) << finding["name"];
    EXPECT_THAT(run.out, HasSubstr("Source: ")) << finding["name"];
    EXPECT_LE(widest_line(run.out), 100U) << finding["name"];
  }
}

TEST(CommandLine, AnUnknownFindingIsRefusedWithTheKnownNames) {
  const ProgramRun run = run_program({"why", sample_path(kTender), "no.such"});
  EXPECT_EQ(run.exit_code, 2);
  EXPECT_THAT(run.err, HasSubstr("steering.direction"));
}

TEST(CommandLine, PoseGivesThePromisedMembers) {
  const Json pose = json_of({"pose", sample_path(kTender), "--hand-wheel-deg", "360", "--json"});
  for (const char* member :
       {"outcome", "steer_left_deg", "steer_right_deg", "swivel_left_deg", "swivel_right_deg",
        "arm_deg", "joints", "points", "drag_link", "tie_rod", "axle", "pedals"}) {
    EXPECT_TRUE(pose.contains(member)) << member;
  }
  EXPECT_EQ(pose["outcome"], "solved");
  EXPECT_GT(pose["steer_left_deg"], 0.0);  // left steers left
  EXPECT_TRUE(pose["joints"][0].contains("angle_deg"));
}

// The drag link is rigid: its balls keep their distance at every pose, also where the axle is put
// by hand.
TEST(CommandLine, PointsOfAnExplicitAxlePoseKeepTheLinksLength) {
  const auto length = [](const Json& pose) {
    const Json& from = pose["points"]["arm_ball"];
    const Json& to = pose["points"]["steering_arm_ball"];
    double squares = 0.0;
    for (int k = 0; k < 3; ++k) {
      const double across = from[k].get<double>() - to[k].get<double>();
      squares += across * across;
    }
    return std::sqrt(squares);
  };
  const Json straight = json_of({"pose", sample_path(kTender), "--json"});
  const Json moved = json_of({"pose", sample_path(kTender), "--axle-pose", "5,-3,40,2,1,0.5",
                              "--hand-wheel-deg", "-200", "--json"});
  EXPECT_NEAR(length(straight), length(moved), 1e-8);
  EXPECT_NEAR(moved["axle"]["dz_mm"].get<double>(), 40.0, 1e-12);
  EXPECT_NEAR(moved["axle"]["roll_deg"].get<double>(), 2.0, 1e-9);
}

TEST(CommandLine, BumpAndAxlePoseExcludeEachOther) {
  const ProgramRun run = run_program(
      {"pose", sample_path(kTender), "--axle-pose", "0,0,0,0,0,0", "--bump-left-mm", "10"});
  EXPECT_EQ(run.exit_code, 2);
}

TEST(CommandLine, APedalIsNamedOrRefused) {
  const Json pose = json_of({"pose", sample_path(kTender), "--pedal", "brake=0.5", "--json"});
  EXPECT_GT(pose["controls"]["pedals"]["brake"].get<double>(), 0.4);
  const ProgramRun unknown = run_program({"pose", sample_path(kTender), "--pedal", "horn=0.5"});
  EXPECT_EQ(unknown.exit_code, 2);
  EXPECT_THAT(unknown.err, HasSubstr("brake"));
  EXPECT_EQ(run_program({"pose", sample_path(kTender), "--pedal", "brake=1.5"}).exit_code, 2);
}

TEST(CommandLine, SetTriesAValueAndLeavesTheFileAlone) {
  const Json before = json_of({"pose", sample_path(kTender), "--json"});
  const Json after =
      json_of({"pose", sample_path(kTender), "--set", "steering_box.ratio=10", "--json"});
  // Half the ratio: twice the arm for the same turn at the box.
  const auto arm_per_box = [](const Json& pose) {
    return pose["arm_per_hand_wheel"].get<double>() / pose["box_turn_per_hand_wheel"].get<double>();
  };
  EXPECT_NEAR(arm_per_box(after), 0.1, 1e-8);
  EXPECT_NE(arm_per_box(before), arm_per_box(after));
  const Json again = json_of({"pose", sample_path(kTender), "--json"});
  EXPECT_EQ(before, again);
}

TEST(CommandLine, ABadSetNamesThePlaceAndTheMend) {
  const ProgramRun run =
      run_program({"findings", sample_path(kTender), "--set", "drag_link.tube.wall_mm=-3"});
  EXPECT_EQ(run.exit_code, 2);
  EXPECT_THAT(run.err, HasSubstr("drag_link.tube.wall_mm"));
  EXPECT_THAT(run.err, HasSubstr("-3"));
  EXPECT_EQ(run_program({"findings", sample_path(kTender), "--set", "nonsense"}).exit_code, 2);
}

TEST(CommandLine, EverySweepHasItsRowsInOrder) {
  for (const std::string over : {"lock", "heave", "roll"}) {
    const Json sweep =
        json_of({"sweep", sample_path(kTender), "--over", over, "--rows", "5", "--json"});
    ASSERT_FALSE(sweep["rows"].empty()) << over;
    const std::string member = over == "lock"    ? "hand_wheel_deg"
                               : over == "heave" ? "heave_mm"
                                                 : "roll_deg";
    double last = -1e9;
    for (const Json& row : sweep["rows"]) {
      EXPECT_GT(row[member].get<double>(), last) << over;
      last = row[member].get<double>();
    }
    const ProgramRun text = run_program({"sweep", sample_path(kTender), "--over", over});
    EXPECT_EQ(text.exit_code, 0);
    EXPECT_LE(widest_line(text.out), 100U);
  }
}

TEST(CommandLine, CutListIsWrittenWhereAsked) {
  const ScratchFolder folder;
  const std::string into = (folder.path() / "cut").string();
  const ProgramRun run = run_program({"cut-list", sample_path(kTender), "--into", into});
  EXPECT_EQ(run.exit_code, 0) << run.err;
  for (const char* name : {"cut-list.txt", "cut-list.csv", "drag-link.svg"}) {
    EXPECT_TRUE(std::filesystem::exists(folder.path() / "cut" / name)) << name;
    EXPECT_THAT(run.out, HasSubstr(name));
  }
  EXPECT_LE(widest_line(run.out), 100U);
}

TEST(CommandLine, CutListIntoAFileIsRefused) {
  const ScratchFolder folder;
  const std::string file = (folder.path() / "file").string();
  std::ofstream(file) << "not a folder";
  EXPECT_EQ(run_program({"cut-list", sample_path(kTender), "--into", file}).exit_code, 2);
}

TEST(CommandLine, NewStartsFromASampleAndNeverOverwrites) {
  const ScratchFolder folder;
  const std::string file = (folder.path() / "mine.tack").string();
  EXPECT_EQ(run_program({"new", file, "--from", "tender-sorted"}).exit_code, 0);
  EXPECT_TRUE(read_project(file).ok());
  const ProgramRun again = run_program({"new", file});
  EXPECT_EQ(again.exit_code, 2);
  EXPECT_THAT(again.err, HasSubstr("already"));
  const std::string other = (folder.path() / "other.tack").string();
  EXPECT_EQ(run_program({"new", other, "--from", "nothing"}).exit_code, 2);
  EXPECT_FALSE(std::filesystem::exists(other));
}

TEST(CommandLine, ANewBareStartAsksForMeasurements) {
  const ScratchFolder folder;
  const std::string file = (folder.path() / "bare.tack").string();
  ASSERT_EQ(run_program({"new", file}).exit_code, 0);
  const ProgramRun run = run_program({"findings", file});
  EXPECT_EQ(run.exit_code, 0);
  EXPECT_THAT(run.out, HasSubstr("not judged ("));
  EXPECT_THAT(run.out, testing::Not(HasSubstr("within (")));
}

TEST(CommandLine, SchemaIsTheOneThatIsShipped) {
  const ProgramRun run = run_program({"schema"});
  EXPECT_EQ(run.exit_code, 0);
  std::ifstream shipped(std::string(TACKBENCH_SOURCE_FOLDER) +
                        "/resources/tackbench-project.schema.json");
  EXPECT_EQ(run.out, std::string(std::istreambuf_iterator<char>(shipped), {}));
}

TEST(CommandLine, AFileThatIsNotThereIsNamed) {
  for (const std::string command : {"findings", "pose", "sweep"}) {
    const ProgramRun run = run_program({command, "no-such-file.tack"});
    EXPECT_EQ(run.exit_code, 2) << command;
    EXPECT_THAT(run.err, HasSubstr("no-such-file.tack"));
  }
  const ProgramRun json = run_program({"findings", "no-such-file.tack", "--json"});
  EXPECT_EQ(json.exit_code, 2);
  EXPECT_TRUE(Json::parse(json.out, nullptr, false).contains("problems"));
}

TEST(CommandLine, WrongUseExitsTwo) {
  EXPECT_EQ(run_program({}).exit_code, 2);
  EXPECT_EQ(run_program({"no-such-command"}).exit_code, 2);
  EXPECT_EQ(run_program({"pose", sample_path(kTender), "--hand-wheel-deg", "nan"}).exit_code, 2);
  EXPECT_EQ(run_program({"--help"}).exit_code, 0);
}

}  // namespace
}  // namespace tackbench
