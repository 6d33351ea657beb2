// Findings of the push-back, from results made up by hand.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "core/findings/all_findings.h"
#include "core/findings/builders.h"
#include "tests/support/shaft_line_plan.h"

namespace tackbench {
namespace {

using testing::HasSubstr;

// Two joints and a slip, all known that the push asks for.
class PushBackFinding : public testing::Test {
 protected:
  PushBackFinding() : plan_(test::bent_chain({20.0, 20.0}, {0.0, 180.0})) {
    plan_.shafts[0].name = "Steering shaft";
    plan_.shafts[0].slip = SlipKind::spline;
    plan_.shafts[0].slide_in_left = 200.0;
    for (ShaftJoint& joint : plan_.joints) joint.angle_limit = radians_from_degrees(35.0);
    plan_.push_back = 100.0;
    result_.pushed = 100.0;
    result_.whole_way = true;
    result_.hand_wheel_rearward = 20.0;
  }

  Finding judged() const {
    const Mechanism mechanism = compile(test::project_of(plan_)).value();
    std::vector<Finding> findings;
    add_push_back_finding(mechanism, result_, wandering_, findings);
    return findings.at(0);
  }
  // Within without `what` in its reasons; not judged, and said in the sentence, with it; past when
  // the hand wheel comes too far back all the same.
  void expect_open(const char* what) {
    const Finding open = judged();
    EXPECT_EQ(open.verdict, Verdict::not_judged) << what;
    EXPECT_THAT(open.why_not_judged, HasSubstr(what));
    EXPECT_THAT(open.sentence, HasSubstr(what));
    result_.hand_wheel_rearward = 128.0;
    EXPECT_EQ(judged().verdict, Verdict::past) << what;
  }

  test::ShaftPlan plan_;
  PushBack result_;
  WanderingShaft wandering_;
};

TEST_F(PushBackFinding, WantsTheBuildersDistance) {
  const Mechanism mechanism = compile(test::project_of(plan_)).value();
  std::vector<Finding> findings;
  add_push_back_finding(mechanism, std::nullopt, wandering_, findings);
  EXPECT_EQ(findings.at(0).verdict, Verdict::not_judged);
  EXPECT_THAT(findings.at(0).why_not_judged, HasSubstr("shaft_line.push_back_mm"));
}

TEST_F(PushBackFinding, IsJudgedByTheHandWheelsOwnMovement) {
  EXPECT_EQ(judged().verdict, Verdict::within);
  result_.hand_wheel_rearward = 130.0;
  EXPECT_EQ(judged().verdict, Verdict::past);  // 127 mm, from memory of the older rules
  EXPECT_EQ(judged().limit->standing, Standing::memory);
  EXPECT_THAT(*judged().caution, HasSubstr("no crash test"));
}

TEST_F(PushBackFinding, AChainThatBindsIsPast) {
  result_.whole_way = false;
  EXPECT_EQ(judged().verdict, Verdict::past);
}

TEST_F(PushBackFinding, IsOpenOnceAJointReachesItsLimit) {
  result_.limit_reached_at = 45.0;
  expect_open("a joint reaches its own limit at 45.0 mm");
}

TEST_F(PushBackFinding, IsOpenOnceASlipIsHome) {
  result_.slides_closed = {0};
  expect_open("the slip in Steering shaft is home before the push ends");
}

TEST_F(PushBackFinding, IsOpenWhileASlipsRoomIsNotKnown) {
  plan_.shafts[0].slide_in_left.reset();
  result_.slide_unknown = true;
  expect_open("give shaft_line.shafts[0].slide_in_left_mm");
}

TEST_F(PushBackFinding, IsOpenWhileAJointsLimitIsNotKnown) {
  plan_.joints[1].angle_limit.reset();
  expect_open("give shaft_line.joints[1].angle_limit_deg");
}

TEST_F(PushBackFinding, APushOfNothingSaysNothing) {
  plan_.push_back = 0.0;
  expect_open("shaft_line.push_back_mm");
}

TEST_F(PushBackFinding, IsOpenWhileTheLineWanders) {
  wandering_.free_ways = 1;
  expect_open("may wander");
}

}  // namespace
}  // namespace tackbench
