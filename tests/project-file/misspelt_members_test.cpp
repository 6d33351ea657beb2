// A slip in a member's name is told, never read as "left out": its default would go unnoticed into
// the cut list. Names that are nothing like ours are kept for another version's sake.
#include <gmock/gmock.h>

#include "core/project-file/near_name.h"
#include "core/project-file/project_file.h"
#include "core/project/unknown_members.h"
#include "tests/project-file/small_project.h"

namespace tackbench {
namespace {

using ::testing::ElementsAre;
using testing::small_project_with;

struct Slip {
  const char* piece;
  const char* replacement;
  const char* message;
};

class MisspeltMember : public ::testing::TestWithParam<Slip> {};

TEST_P(MisspeltMember, IsToldWithTheNameThatWasMeant) {
  const auto project =
      read_project_text(small_project_with(GetParam().piece, GetParam().replacement), "yard.tack");
  ASSERT_FALSE(project.ok());
  std::vector<std::string> lines;
  for (const Problem& problem : project.problems()) lines.push_back(one_line(problem));
  EXPECT_THAT(lines, ::testing::Contains(std::string("yard.tack: ") + GetParam().message));
}

INSTANTIATE_TEST_SUITE_P(
    Slips, MisspeltMember,
    ::testing::Values(
        Slip{"\"arm\": {\"length_mm\"", "\"arm\": {\"lenght_mm\"",
             "steering_box.arm.lenght_mm: there is no such member; did you mean length_mm?"},
        Slip{"\"hand\": \"left\"", "\"hnad\": \"left\"",
             "drag_link.arm_end.thread.hnad: there is no such member; did you mean hand?"},
        Slip{"\"diameter_mm\": 20", "\"diametre_mm\": 20",
             "drag_link.arm_end.thread.diametre_mm: there is no such member; did you mean "
             "diameter_mm?"},
        Slip{"\"track_mm\"", "\"track_in\"",
             "front_axle.track_in: there is no such member; did you mean track_mm?"},
        Slip{"\"track_mm\"", "\"track\"",
             "front_axle.track: there is no such member; did you mean track_mm?"},
        Slip{"\"steering_box\": {", "\"steeringbox\": {",
             "steeringbox: there is no such member; did you mean steering_box?"},
        // Optional ones too: without a word these would just be missing.
        Slip{"\"knuckle_ball_mm\"", "\"tolerence_mm\": 0.5, \"knuckle_ball_mm\"",
             "drag_link.tolerence_mm: there is no such member; did you mean tolerance_mm?"}));

TEST(UnknownMembers, AreKeptAndListedWhenTheyAreNothingLikeOurs) {
  const auto project = read_project_text(
      small_project_with("\"track_mm\": 1800", R"("track_mm": 1800, "colour": "green")"));
  ASSERT_TRUE(project.ok()) << one_line(project.problems().front());
  EXPECT_THAT(unknown_member_places(*project), ElementsAre("front_axle.colour"));
  EXPECT_THAT(project_text(*project), ::testing::HasSubstr("\"colour\": \"green\""));
}

TEST(NearName, IsNearButNotAnything) {
  EXPECT_EQ(near_name("hnad", {"hand", "pitch_mm"}), "hand");
  EXPECT_EQ(near_name("track_cm", {"toe_deg", "track_mm"}), "track_mm");
  EXPECT_EQ(near_name("notes", {"name", "cab"}), std::nullopt);
  EXPECT_EQ(near_name("later", {"taper", "notes", "track_mm"}), std::nullopt);
  EXPECT_EQ(near_name("", {"cab"}), std::nullopt);
}

TEST(NearestNames, CountsPartsInCommonBeforeSlips) {
  const std::vector<std::string_view> names = {"lock.ratio", "shaft.wander", "lock.left.end",
                                               "lock.right.end"};
  EXPECT_THAT(nearest_names("lock.left", names, 2), ElementsAre("lock.left.end", "lock.ratio"));
  EXPECT_THAT(nearest_names("shaft_wander", names, 1), ElementsAre("shaft.wander"));
  EXPECT_THAT(nearest_names("x", names, 9), ::testing::SizeIs(4));
}

}  // namespace
}  // namespace tackbench
