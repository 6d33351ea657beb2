// Findings of bump steer where the steering cannot follow the axle all the way.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "core/findings/all_findings.h"
#include "core/findings/builders.h"
#include "tests/support/bench_truck.h"

namespace tackbench {
namespace {

using testing::HasSubstr;

class BumpFindings : public testing::Test {
 protected:
  BumpFindings() : mechanism_(BenchTruck().mechanism()) {
    result_ = check_bump(mechanism_, {}).value();
  }
  Finding judged(const std::string& name) {
    std::vector<Finding> findings;
    add_bump_findings(mechanism_, result_, findings);
    const Finding* finding = finding_named(findings, name);
    EXPECT_NE(finding, nullptr) << name;
    return finding ? *finding : Finding{};
  }

  Mechanism mechanism_;
  BumpResult result_;
};

TEST_F(BumpFindings, ASteeringThatStopsFollowingIsPastHoweverSmallItsSteer) {
  result_.heave.greatest = 0.0;
  EXPECT_EQ(judged("bump.travel").verdict, Verdict::within);
  result_.heave.follows_up_to = 52.0;
  const Finding travel = judged("bump.travel");
  EXPECT_EQ(travel.verdict, Verdict::past);
  EXPECT_EQ(travel.sentence,
            "The steering cannot follow the axle beyond 52.0 mm of bump; its range is 80.0 mm.");
  EXPECT_EQ(travel.numbers.front().value, 52.0);
  ASSERT_TRUE(travel.worst_at);
  EXPECT_EQ(travel.worst_at->bump_left, 52.0);
}

TEST_F(BumpFindings, TheSideThatStopsFirstIsTold) {
  result_.heave.follows_up_to = 52.0;
  result_.heave.follows_down_to = -31.0;
  const Finding travel = judged("bump.travel");
  EXPECT_THAT(travel.sentence, HasSubstr("beyond 31.0 mm of droop"));
  EXPECT_EQ(travel.worst_at->bump_left, -31.0);
}

TEST_F(BumpFindings, RollAndWindUpAreHeldToTheirRangesToo) {
  result_.roll.follows_down_to = -0.02;
  result_.wind_up.follows_up_to = 0.001;
  EXPECT_EQ(judged("bump.roll").verdict, Verdict::past);
  EXPECT_EQ(judged("bump.wind_up").verdict, Verdict::past);
}

// A rate or a kickback that there is none of is no rate of zero.
TEST_F(BumpFindings, WhatHasNoNumberIsNotJudged) {
  result_.heave.rate_per_25.reset();
  result_.heave.kickback_everywhere = false;
  for (const char* name : {"bump.rate", "bump.kickback"}) {
    const Finding finding = judged(name);
    EXPECT_EQ(finding.verdict, Verdict::not_judged) << name;
    EXPECT_TRUE(finding.numbers.empty()) << name;
    EXPECT_FALSE(finding.why_not_judged.empty()) << name;
  }
}

TEST_F(BumpFindings, KickbackIsToldAsItIsTried) {
  EXPECT_THAT(judged("bump.kickback").sentence, HasSubstr("With the road wheels held, "));
}

}  // namespace
}  // namespace tackbench
