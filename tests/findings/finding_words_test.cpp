// Every kind of finding in words; members and findings in a sentence by their words.
#include "core/findings/finding_words.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <regex>
#include <set>

#include "core/findings/all_findings.h"
#include "core/findings/limits.h"
#include "core/project-file/project_file.h"
#include "core/project/field_path.h"

namespace tackbench {
namespace {

using ::testing::HasSubstr;
using ::testing::Not;

Project sample(const std::string& name) {
  const Result<Project> read = read_project(std::string(TACKBENCH_SOURCE_FOLDER) +
                                            "/sample-projects/" + name + '/' + name + ".tack");
  EXPECT_TRUE(read.ok()) << name;
  return read ? *read : Project{};
}

class EverySample : public testing::TestWithParam<const char*> {};

TEST_P(EverySample, FindingsHaveATitleAndAMeaningAndNoRawNames) {
  const Project project = sample(GetParam());
  const Result<Mechanism> mechanism = compile(project);
  ASSERT_TRUE(mechanism.ok());
  const std::regex raw(R"(\b[a-z][a-z_]*(\[[0-9]+\])?\.[a-z_]{2,}|\b[a-z_]+_(mm|deg)\b)");
  std::set<std::string> titles;
  for (const Finding& finding : all_findings(*mechanism, run_checks(*mechanism))) {
    const FindingWords words = finding_words(finding.name);
    EXPECT_FALSE(words.title.empty()) << finding.name;
    EXPECT_FALSE(words.meaning.empty()) << finding.name;
    EXPECT_EQ(words.title.find("[["), std::string::npos) << words.title;
    EXPECT_TRUE(titles.insert(words.title).second) << words.title << " is said of two findings";
    for (const std::string& text :
         {finding.sentence, finding.why_not_judged, finding.caution.value_or("")}) {
      const std::string plain = in_plain_words(project, text);
      std::smatch found;
      EXPECT_FALSE(std::regex_search(plain, found, raw)) << finding.name << ": " << plain;
    }
  }
  EXPECT_GT(titles.size(), 3U);
}

INSTANTIATE_TEST_SUITE_P(Samples, EverySample,
                         testing::Values("tender-as-first-tacked", "tender-sorted", "timber-wagon",
                                         "bare-start"));

TEST(FindingWords, EveryKindIsInWords) {
  for (const std::string_view kind : finding_kinds()) {
    const FindingWords words = finding_words(kind);
    EXPECT_GT(words.title.size(), 5U) << kind;
    EXPECT_GT(words.meaning.size(), 25U) << kind;
    EXPECT_THAT(words.title + words.meaning, Not(HasSubstr("[["))) << kind;
  }
  EXPECT_TRUE(finding_words("pedal").title.empty());
  EXPECT_TRUE(finding_words("nothing.of.the.kind").title.empty());
}

TEST(FindingWords, TheItemIsSaidInTheTitle) {
  EXPECT_EQ(finding_words("pedal.brake.full_stroke").title, "full stroke of the brake");
  EXPECT_EQ(finding_words("lock.left.end").title, "what ends the left lock");
  EXPECT_EQ(finding_words("shaft.support.rail_eye.swing").title, "tilt in support rail eye");
  EXPECT_EQ(finding_words("missing.drag_link.arm_end").title,
            "still to measure, drag link, arm end");
}

TEST(FindingWords, MembersLimitsAndFindingsInASentence) {
  const Project project = sample("timber-wagon");
  const std::string field = *field_words(project, "drag_link.arm_end.swing_limit_deg");
  EXPECT_EQ(in_plain_words(project, "fill in drag_link.arm_end.swing_limit_deg."),
            "fill in \"" + field + "\".");
  EXPECT_EQ(in_plain_words(project, "see lock.left.end, please"),
            "see \"what ends the left lock\", please");
  EXPECT_EQ(in_plain_words(project, "choose lock.ackermann in the limits"),
            "choose \"Ackermann percentage at the lock\" in the limits");
  EXPECT_EQ(in_plain_words(project, "swing_limit_deg of the pedal's rod"),
            "\"swing limit\" of the pedal's rod");
  // What is no name of ours stays: figures, files, sentences that end.
  for (const char* text : {"it is 3.5 mm. so it is", "the file \"frame.first.ply\" is not there",
                           "See the drawing. then measure", "a...b", "", "UN R79, 1.2.3"})
    EXPECT_EQ(in_plain_words(project, text), text);
  EXPECT_EQ(in_plain_words(Project{}, "give drag_link.tube.wall_mm"),
            "give \"drag link, tube, wall\"");
}

}  // namespace
}  // namespace tackbench
