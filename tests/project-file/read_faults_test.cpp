// Every kind of fault in a project file: place, what was found, what is wanted.
#include <gmock/gmock.h>

#include "core/project-file/project_file.h"
#include "tests/project-file/small_project.h"

namespace tackbench {
namespace {

using ::testing::Contains;
using ::testing::HasSubstr;
using ::testing::SizeIs;
using testing::small_project_with;

std::vector<std::string> faults_of(const std::string& text) {
  const Result<Project> project = read_project_text(text, "yard.tack");
  std::vector<std::string> lines;
  if (!project.ok()) {
    for (const Problem& problem : project.problems()) lines.push_back(one_line(problem));
  }
  return lines;
}

struct Fault {
  const char* piece;        // of the small project
  const char* replacement;  // what stands there instead
  const char* message;      // the one fault that is reported
};

class ReadFault : public ::testing::TestWithParam<Fault> {};

TEST_P(ReadFault, IsTheOnlyOneReported) {
  const auto faults = faults_of(small_project_with(GetParam().piece, GetParam().replacement));
  ASSERT_THAT(faults, SizeIs(1)) << ::testing::PrintToString(faults);
  EXPECT_EQ(faults[0], std::string("yard.tack: ") + GetParam().message);
}

INSTANTIATE_TEST_SUITE_P(
    SingleFields, ReadFault,
    ::testing::Values(
        Fault{"\"wall_mm\": 5", "\"wall_mm\": -3",
              "drag_link.tube.wall_mm: -3 is not a wall thickness; give 1 to 20"},
        Fault{"\"wall_mm\": 5", "\"wall_mm\": \"5\"",
              "drag_link.tube.wall_mm: \"5\" is not a wall thickness; write the number without "
              "quotes"},
        Fault{"\"wall_mm\": 5", "\"wall_mm\": \"5 mm\"",
              "drag_link.tube.wall_mm: \"5 mm\" is not a wall thickness; write the number alone, "
              "without quotes: the member's name says the unit"},
        Fault{"\"wall_mm\": 5", "\"wall_mm\": \"thick\"",
              "drag_link.tube.wall_mm: \"thick\" is not a wall thickness; give 1 to 20"},
        Fault{"\"wall_mm\": 5", "\"wall_mm\": null",
              "drag_link.tube.wall_mm: null is not a wall thickness; give 1 to 20"},
        Fault{"\"caster_deg\": 3", "\"caster_deg\": 300",
              "front_axle.left_knuckle.caster_deg: 300 is not a caster; give -30 to 30"},
        Fault{"\"travel_left_deg\": 45,", "",
              "steering_box.travel_left_deg: travel to the left is missing; give 0 to 180"},
        Fault{"\"input_axis\": [0.8, 0, -0.6]", "\"input_axis\": [0, 0, 0]",
              "steering_box.input_axis: [0, 0, 0] is not an input axis; give three numbers "
              "[x, y, z] that are not all zero"},
        Fault{"[0, 460, 300]", "[0, 460]",
              "shaft_line.supports[0].eye_mm: [0,460] is not a centre of the eye; give three "
              "numbers [x, y, z], each -20000 to 20000"},
        Fault{"[0, 460, 300]", "[0, 460, 30000]",
              "shaft_line.supports[0].eye_mm: [0, 460, 30000] is not a centre of the eye; give "
              "three numbers [x, y, z], each -20000 to 20000"},
        Fault{"[900, -1000, 0]", "[900, \"-1000\", 0]",
              "front_axle.road.body_corners_mm[1]: [900,\"-1000\",0] is not an outer corner of the "
              "body; write the numbers without quotes"},
        Fault{
            "\"left_turns_arm\": \"clockwise\"", "\"left_turns_arm\": \"left\"",
            "steering_box.left_turns_arm: \"left\" is not a way the arm turns when the hand wheel "
            "turns left; give clockwise or anticlockwise (seen from the arm's side; read it off "
            "the "
            "box)"},
        Fault{"\"kind\": \"leaf\"", "\"kind\": \"independent\"",
              "front_axle.suspension.kind: \"independent\" is not a kind of suspension; give leaf, "
              "radius_arms or straight (beam axles only: independent suspension is not computed)"},
        Fault{
            "\"slip\": \"double_d\"", "\"slip\": 2",
            "shaft_line.shafts[0].slip: 2 is not a slip; give none, spline, double_d or tube (what "
            "slides between the two halves)"},
        Fault{
            "\"shaft\": 0,", "\"shaft\": 0.5,",
            "shaft_line.supports[0].shaft: 0.5 is not a number of the shaft that it carries; give "
            "a whole number from 0 to 2"},
        Fault{"\"name\": \"upper eye\"", "\"name\": \"upper [eye]\"",
              "shaft_line.supports[0].name: \"upper [eye]\" is not a name; give a name in quotes, "
              "without square brackets"},
        Fault{"\"name\": \"upper eye\",", "",
              "shaft_line.supports[0].name: name is missing; give a name in quotes, without square "
              "brackets"},
        Fault{"{\"outside_diameter_mm\": 35, \"wall_mm\": 5}", "35",
              "drag_link.tube: 35 is not a tube; give an object in braces"},
        Fault{"[{\"name\": \"shaft\", \"slip\": \"double_d\", \"fork_offset_deg\": 12.5}]", "{}",
              "shaft_line.shafts: an object in braces is not a shaft; give a list in square "
              "brackets"}));

INSTANTIATE_TEST_SUITE_P(
    AcrossFields, ReadFault,
    ::testing::Values(
        Fault{"\"wall_mm\": 5", "\"wall_mm\": 17.5",
              "drag_link.tube.wall_mm: 17.5 leaves no bore in a tube of 35 outside diameter; give "
              "less than half the outside diameter"},
        Fault{R"("name": "lower joint")", R"("name": "upper joint")",
              "shaft_line.joints[1].name: \"upper joint\" is the name of shaft_line.joints[0] "
              "already; give each its own name"},
        Fault{"\"shaft\": 0,", "\"shaft\": 1,",
              "shaft_line.supports[0].shaft: there is no shaft 1; give 0 to 0"},
        Fault{"[{\"name\": \"shaft\",", "[{\"name\": \"spare\"}, {\"name\": \"shaft\",",
              "shaft_line.shafts: 2 shafts with 2 joints; give 1: one between each two joints"},
        Fault{"\"output_end_mm\": [-300, 470, 550]", "\"output_end_mm\": [-900, 480, 900]",
              "column.output_end_mm: the output end lies at the hand wheel's centre; give two "
              "places, so that the column has an axis"},
        Fault{"\"input_deg\": 300", "\"input_deg\": -300",
              "steering_box.ratio_table[1].input_deg: the input turn does not rise from the row "
              "before; give rows by rising input turn"},
        Fault{"\"kind\": \"leaf\"", "\"kind\": \"radius_arms\"",
              "front_axle.suspension.radius_arms: radius arms are not given; give the group "
              "\"radius_arms\", or another kind"},
        Fault{"\"leaf\": {\"fixed_eye_mm\": [600, 425, -60], \"seat_mm\": [0, 425, -120],\n"
              "               \"fixed_half_mm\": 600, \"shackle_half_mm\": 600}",
              "\"heave_empty_mm\": -20",
              "front_axle.suspension.leaf: leaf suspension without its leaf spring; give the group "
              "\"leaf\", or another kind"},
        Fault{"\"ratio_table\": [{\"input_deg\": -300, \"ratio\": 20}, {\"input_deg\": 300, "
              "\"ratio\": 22}]",
              "\"ratio_table\": []",
              "steering_box.ratio: neither a ratio nor a ratio table is given; give 0.05 to 100: "
              "turns of the input for one of the output"},
        Fault{"\"pad_normal_direction\": [1, 0, 0]", "\"pad_normal_direction\": [-1, 0, 0]",
              "front_axle.left_knuckle.stops[0].bolt_axis: the bolt points away from its pad; give "
              "the bolt's axis towards its tip and the pad's normal out of the pad"},
        Fault{"\"to\": \"steering_box.input_end_mm\"", "\"to\": \"steering_box.end_mm\"",
              "measurements.tapes[0].to: there is no point \"steering_box.end_mm\"; give a datum's "
              "name or a point's member path, such as steering_box.input_end_mm"},
        Fault{"\"centre_mm\": [-280, 470, 540], \"rides_on\": \"cab\"",
              "\"centre_mm\": [-280, 470, 540], \"rides_on\": \"axle\"",
              "shaft_line.joints[0].rides_on: axle carries no shaft; give chassis or cab"}));

TEST(ReadFaults, AreReportedAllTogether) {
  std::string text = small_project_with("\"wall_mm\": 5", "\"wall_mm\": -3");
  for (const auto& [piece, replacement] :
       {std::pair<std::string, std::string>{"\"travel_left_deg\": 45,", ""},
        {"\"caster_deg\": 3", "\"caster_deg\": 300"},
        {R"("name": "lower joint")", R"("name": "upper joint")"}}) {
    text.replace(text.find(piece), piece.size(), replacement);
  }
  const auto faults = faults_of(text);
  EXPECT_THAT(faults, SizeIs(4));
  for (const char* place : {"drag_link.tube.wall_mm", "steering_box.travel_left_deg",
                            "front_axle.left_knuckle.caster_deg", "shaft_line.joints[1].name"}) {
    EXPECT_THAT(faults, Contains(HasSubstr(place)));
  }
}

TEST(ReadFaults, AFollowingFaultIsNotReported) {
  // Without its end the column has no axis either; one message is enough.
  const auto faults = faults_of(small_project_with("\"output_end_mm\": [-300, 470, 550],", ""));
  EXPECT_THAT(faults, SizeIs(1)) << ::testing::PrintToString(faults);
}

TEST(ReadFaults, BeyondAHundredAreCounted) {
  std::string relays;
  for (int i = 0; i < 150; ++i) relays += "5,";
  const auto faults = faults_of(small_project_with(
      "\"travel_left_deg\": 45,",
      R"("travel_left_deg": 45, "relays": [)" + relays.substr(0, relays.size() - 1) + "],"));
  ASSERT_THAT(faults, SizeIs(101));
  EXPECT_THAT(faults.front(), HasSubstr("steering_box.relays[0]: 5 is not a relay"));
  EXPECT_THAT(faults.back(), HasSubstr("and 50 more"));
}

TEST(Format, NewerOnesAreRefusedInWords) {
  const auto faults =
      faults_of(small_project_with("\"tackbench_format\": 1", "\"tackbench_format\": 2"));
  ASSERT_THAT(faults, SizeIs(1));
  EXPECT_EQ(faults[0],
            "yard.tack: tackbench_format: the file was written by a newer Tackbench; open it with "
            "that one; this one reads formats 0 to 1");
}

TEST(Format, HasToBeGiven) {
  EXPECT_THAT(faults_of(small_project_with("\"tackbench_format\": 1,", "")),
              Contains(HasSubstr("tackbench_format: format version is missing")));
  for (const char* version : {"-1", "1.5", "\"1\"", "null", "1e3", "18446744073709551615"}) {
    EXPECT_THAT(faults_of(small_project_with("\"tackbench_format\": 1",
                                             std::string("\"tackbench_format\": ") + version)),
                SizeIs(1))
        << version;
  }
}

}  // namespace
}  // namespace tackbench
