// Findings of the lock from results made up by hand.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "core/findings/all_findings.h"
#include "core/findings/builders.h"
#include "tests/support/random_truck.h"

namespace tackbench {
namespace {

using testing::HasSubstr;

LockEvent event(LockEventKind kind, double inner_deg, double turns, bool ends = true) {
  LockEvent event;
  event.kind = kind;
  event.ends = ends;
  event.hand_wheel = turns * kRadiansPerTurn;
  event.inner_steer = radians_from_degrees(inner_deg);
  return event;
}

class LockFindings : public testing::Test {
 protected:
  LockFindings() : mechanism_(compile(random_truck(7)).value()) {
    result_.left.side = Side::left;
    result_.right.side = Side::right;
  }

  const Finding& judged(const std::string& name) {
    findings_.clear();
    add_lock_findings(mechanism_, result_, findings_);
    const Finding* finding = finding_named(findings_, name);
    EXPECT_NE(finding, nullptr) << name;
    static const Finding kNone;
    return finding ? *finding : kNone;
  }
  void left(std::vector<LockEvent> events) {
    result_.left.found = !events.empty();
    result_.left.events = std::move(events);
    if (!result_.left.found) return;
    result_.left.turns = result_.left.events.front().hand_wheel / kRadiansPerTurn;
    result_.left.inner_steer = result_.left.events.front().inner_steer;
  }

  Mechanism mechanism_;
  LockResult result_;
  std::vector<Finding> findings_;
};

TEST_F(LockFindings, BoxBeforeTheStopIsPastAndSaysByHowMuch) {
  left({event(LockEventKind::box_end, 33.0, 2.1), event(LockEventKind::axle_stop, 34.8, 2.2)});
  const Finding& end = judged("lock.left.end");
  EXPECT_EQ(end.verdict, Verdict::past);
  EXPECT_NEAR(degrees_from_radians(end.numbers.front().value), -1.8, 1e-9);
  EXPECT_EQ(end.sentence,
            "Left lock ends on the box at 33.0 degrees, 2.10 turns; the axle stop would act 1.8 "
            "degrees later.");
  ASSERT_TRUE(end.worst_at);
  EXPECT_NEAR(end.worst_at->hand_wheel, 2.1 * kRadiansPerTurn, 1e-12);
}

TEST_F(LockFindings, AStopWithLessThanADegreeToSpareIsClose) {
  left({event(LockEventKind::axle_stop, 34.0, 2.0), event(LockEventKind::box_end, 34.6, 2.04)});
  EXPECT_EQ(judged("lock.left.end").verdict, Verdict::close);
  left({event(LockEventKind::axle_stop, 34.0, 2.0), event(LockEventKind::box_end, 36.0, 2.1)});
  const Finding& end = judged("lock.left.end");
  EXPECT_EQ(end.verdict, Verdict::within);
  EXPECT_THAT(end.sentence, HasSubstr("ends on the axle stop"));
  EXPECT_THAT(end.sentence, HasSubstr("the box would act 2.0 degrees later"));
}

TEST_F(LockFindings, ABoltThatMissesItsPadIsNoStop) {
  left({event(LockEventKind::axle_stop, 30.0, 1.8, false),
        event(LockEventKind::box_end, 36.0, 2.1)});
  const Finding& end = judged("lock.left.end");
  EXPECT_EQ(end.verdict, Verdict::past);
  EXPECT_THAT(end.sentence, HasSubstr("the axle stop never acts"));
}

TEST_F(LockFindings, WithoutAGivenStopNothingIsJudged) {
  Project project = random_truck(7);
  auto axle = std::make_shared<FrontAxleStation>(*project.front_axle);
  axle->left_knuckle.stops.clear();
  if (axle->right_knuckle) axle->right_knuckle->stops.clear();
  project.front_axle = axle;
  mechanism_ = compile(project).value();
  left({event(LockEventKind::box_end, 36.0, 2.1)});
  const Finding& end = judged("lock.left.end");
  EXPECT_EQ(end.verdict, Verdict::not_judged);
  EXPECT_THAT(end.why_not_judged, HasSubstr("measure its bolt and pad"));
}

// What breaks or jams may never be what ends a lock, whether a stop is given or not.
TEST_F(LockFindings, AStudJointOrLinkThatEndsALockIsPastWithOrWithoutAStop) {
  Project project = random_truck(7);
  auto axle = std::make_shared<FrontAxleStation>(*project.front_axle);
  axle->left_knuckle.stops.clear();
  if (axle->right_knuckle) axle->right_knuckle->stops.clear();
  project.front_axle = axle;
  const Mechanism without = compile(project).value();
  for (const bool stop_given : {true, false}) {
    if (!stop_given) mechanism_ = without;
    for (const LockEventKind kind :
         {LockEventKind::ball_stud, LockEventKind::outer_joint, LockEventKind::toggle}) {
      left({event(kind, 30.0, 1.8), event(LockEventKind::box_end, 36.0, 2.1)});
      const Finding& end = judged("lock.left.end");
      EXPECT_EQ(end.verdict, Verdict::past) << lock_event_name(kind);
      EXPECT_EQ(end.numbers.front().name, "hard_ends");
      EXPECT_TRUE(end.why_not_judged.empty());
      EXPECT_THAT(end.sentence,
                  HasSubstr(stop_given ? "the axle stop never acts" : "no axle stop is given"));
    }
  }
}

TEST_F(LockFindings, MarginsWithoutAnActingStopSayWhyTheyAreNotJudged) {
  left({event(LockEventKind::box_end, 33.0, 1.9), event(LockEventKind::toggle, 50.0, 2.6)});
  const Finding& margin = judged("lock.left.toggle_margin");
  EXPECT_EQ(margin.verdict, Verdict::not_judged);
  EXPECT_THAT(margin.why_not_judged, HasSubstr("no axle stop acts on the left lock"));
  EXPECT_EQ(judged("lock.left.stop_square").verdict, Verdict::not_judged);
  EXPECT_EQ(judged("lock.left.stop_on_pad").verdict, Verdict::not_judged);
}

TEST_F(LockFindings, ALockWithoutAnEndSaysSo) {
  left({event(LockEventKind::axle_stop, 34.0, 2.0)});
  for (const char* name : {"lock.turns_total", "lock.turns_difference", "lock.right.steer",
                           "lock.right.ackermann", "lock.right.circle"}) {
    const Finding& finding = judged(name);
    EXPECT_EQ(finding.verdict, Verdict::not_judged) << name;
    EXPECT_THAT(finding.why_not_judged, HasSubstr("ends the right lock")) << name;
  }
}

TEST_F(LockFindings, RatingsThatAreNotGivenAreAskedForByMember) {
  Project project = random_truck(7);
  auto link = std::make_shared<DragLinkStation>(*project.drag_link);
  link->arm_end.swing_limit.reset();
  project.drag_link = link;
  auto axle = std::make_shared<FrontAxleStation>(*project.front_axle);
  axle->driven = true;
  axle->outer_joint_limit.reset();
  project.front_axle = axle;
  mechanism_ = compile(project).value();
  EXPECT_THAT(judged("lock.ball_stud.arm_end").why_not_judged,
              HasSubstr("arm end ends a lock is not known: fill in "
                        "drag_link.arm_end.swing_limit_deg"));
  EXPECT_EQ(finding_named(findings_, "lock.ball_stud.knuckle_end"), nullptr);
  EXPECT_THAT(judged("lock.outer_joint").why_not_judged,
              HasSubstr("front_axle.outer_joint_limit_deg"));
}

// A stud that is used up straight ahead: no circle of kilometres, and the assist is judged against
// what does end the lock.
TEST_F(LockFindings, AlmostStraightLocks) {
  left({event(LockEventKind::ball_stud, 0.3, 0.02),
        event(LockEventKind::assist_cut, 33.0, 1.9, false),
        event(LockEventKind::axle_stop, 34.0, 2.0)});
  for (const char* name : {"lock.left.ackermann", "lock.left.circle"}) {
    const Finding& finding = judged(name);
    EXPECT_EQ(finding.verdict, Verdict::not_judged) << name;
    EXPECT_THAT(finding.why_not_judged, HasSubstr("the left lock ends at 0.3 degrees of steer"));
  }
  const Finding& assist = judged("lock.left.assist_margin");
  EXPECT_EQ(assist.verdict, Verdict::past);
  EXPECT_NEAR(degrees_from_radians(assist.numbers.front().value), -32.7, 1e-9);
  EXPECT_THAT(assist.sentence, HasSubstr("32.7 degrees after the ball stud's swing"));
}

TEST_F(LockFindings, WhatComesAfterTheNextIsJudgedOnItsOwn) {
  left({event(LockEventKind::axle_stop, 34.0, 2.0), event(LockEventKind::box_end, 36.0, 2.1),
        event(LockEventKind::ball_stud, 34.5, 2.03)});
  EXPECT_EQ(judged("lock.left.ball_margin").verdict, Verdict::close);
}

TEST_F(LockFindings, AssistIsCutBeforeTheStop) {
  left({event(LockEventKind::assist_cut, 33.0, 1.9, false),
        event(LockEventKind::axle_stop, 34.0, 2.0)});
  EXPECT_EQ(judged("lock.left.assist_margin").verdict, Verdict::within);
  left({event(LockEventKind::axle_stop, 34.0, 2.0),
        event(LockEventKind::assist_cut, 34.5, 2.05, false)});
  const Finding& late = judged("lock.left.assist_margin");
  EXPECT_EQ(late.verdict, Verdict::past);
  EXPECT_THAT(late.sentence, HasSubstr("0.5 degrees after the axle stop"));
}

// Maryland COMAR 11.22.03.04: half a turn either way.
TEST_F(LockFindings, UnequalTurns) {
  left({event(LockEventKind::axle_stop, 34.0, 2.0)});
  result_.right.found = true;
  result_.right.turns = 2.6;
  result_.turns_total = 4.6;
  result_.turns_difference = -0.6;
  const Finding& difference = judged("lock.turns_difference");
  EXPECT_EQ(difference.verdict, Verdict::past);
  EXPECT_EQ(difference.sentence, "Turns differ by 0.60 turns, more to the right.");
  result_.turns_difference = -0.4;
  EXPECT_EQ(judged("lock.turns_difference").verdict, Verdict::close);
  EXPECT_EQ(judged("lock.turns_total").verdict, Verdict::within);
}

// Three exam texts on steering geometry: c 1750, L 4200, inner 40, outer 34: ideal outer 31.870,
// 73.80 % at the same inner angle. Here c comes from the axle, so the trace is followed instead:
// its own numbers, put into its own formula, give its result back.
TEST_F(LockFindings, AckermannsTraceGivesItsResultBack) {
  left({event(LockEventKind::axle_stop, 38.0, 2.0)});
  result_.left.outer_steer = radians_from_degrees(32.0);
  const Finding& finding = judged("lock.left.ackermann");
  const auto input = [&](const char* name) {
    for (const Quantity& each : finding.trace.inputs)
      if (each.name == name) return each.value;
    ADD_FAILURE() << name;
    return 0.0;
  };
  const double inner = input("inner_steer");
  const double ideal =
      std::atan(1.0 / (1.0 / std::tan(inner) + input("kingpin_distance") / input("wheelbase")));
  EXPECT_NEAR(finding.numbers.front().value, (inner - input("outer_steer")) / (inner - ideal),
              1e-12);
  EXPECT_EQ(finding.verdict, Verdict::not_judged);  // the builder's choice, no default
}

}  // namespace
}  // namespace tackbench
