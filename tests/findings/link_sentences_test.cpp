// Whatever limit a project chooses, what is said of the drag link stays true.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "core/findings/all_findings.h"
#include "core/findings/builders.h"
#include "tests/support/random_truck.h"

namespace tackbench {
namespace {

using testing::HasSubstr;
using testing::Not;

class LinkSentences : public testing::Test {
 protected:
  LinkSentences() {
    result_.real_length = 800.0;
    result_.drawn_length = 805.0;
  }
  Finding judged(const std::string& name, const std::vector<LimitChoice>& choices) {
    Project project = random_truck(7);
    auto link = std::make_shared<DragLinkStation>(*project.drag_link);
    link->given_length = 800.0;
    link->adjustment = 15.0;
    project.drag_link = link;
    LimitsStation limits;
    limits.choices = choices;
    project.limits = std::make_shared<const LimitsStation>(limits);
    std::vector<Finding> findings;
    add_link_findings(compile(project).value(), result_, findings);
    const Finding* finding = finding_named(findings, name);
    EXPECT_NE(finding, nullptr);
    return finding ? *finding : Finding{};
  }

  LinkResult result_;
};

TEST_F(LinkSentences, AnAdjustmentThatIsTooShortIsNeverSaidToDo) {
  result_.centring_length = 830.0;
  const Finding shipped = judged("link.length", {});
  EXPECT_EQ(shipped.verdict, Verdict::past);
  EXPECT_THAT(shipped.sentence, Not(HasSubstr("can centre")));
  const Finding wider =
      judged("link.length", {{"link.length", -50.0, 50.0, {}, {}, "", Standing::builder, {}}});
  EXPECT_EQ(wider.verdict, Verdict::within);
  EXPECT_THAT(wider.sentence, Not(HasSubstr("can centre")));
  EXPECT_THAT(wider.sentence, HasSubstr("at most 50.0 mm either way"));
}

TEST_F(LinkSentences, AnAdjustmentThatReachesIsSaidToDo) {
  result_.centring_length = 810.0;
  EXPECT_THAT(judged("link.length", {}).sentence, HasSubstr("can centre"));
  const Finding narrower =
      judged("link.length", {{"link.length", -5.0, 5.0, {}, {}, "", Standing::builder, {}}});
  EXPECT_EQ(narrower.verdict, Verdict::past);
  EXPECT_THAT(narrower.sentence, HasSubstr("can centre"));
  EXPECT_THAT(narrower.sentence, HasSubstr("at most 5.0 mm either way"));
}

// A limit without numbers judges nothing; a box on its centre is then still on its centre.
TEST_F(LinkSentences, ABoxOnItsCentreIsNotSaidToBeOff) {
  result_.centring_length = 800.0;
  const Finding unjudged =
      judged("link.centring", {{"link.centring", {}, {}, {}, {}, "", Standing::builder, {}}});
  EXPECT_EQ(unjudged.verdict, Verdict::not_judged);
  EXPECT_THAT(unjudged.sentence, Not(HasSubstr("off its centre,")));
}

}  // namespace
}  // namespace tackbench
