// Whether the drag link's tube can be threaded.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "core/findings/all_findings.h"
#include "core/findings/builders.h"

namespace tackbench {
namespace {

using testing::HasSubstr;

class ThreadFindings : public testing::Test {
 protected:
  ThreadFindings() {
    link_.tube = LinkTube{};
    link_.tube->outside_diameter = 35.0;
    link_.tube->wall = 8.0;
    link_.arm_end.thread = Thread{20.0, 1.5, ThreadHand::right};
    link_.knuckle_end.thread = Thread{20.0, 1.5, ThreadHand::left};
  }
  Finding judged(const std::string& name) const {
    Mechanism mechanism;
    mechanism.project.drag_link = std::make_shared<const DragLinkStation>(link_);
    std::vector<Finding> findings;
    add_thread_findings(mechanism, findings);
    const Finding* finding = finding_named(findings, name);
    EXPECT_NE(finding, nullptr) << name;
    return finding ? *finding : Finding{};
  }
  DragLinkStation link_;
};

// M20x1.5: D1 = 20 - 1.082532 x 1.5 = 18.376 (ISO 724), its 6H tolerance 0.300 (ISO 965-1 table):
// a bore of 18.7 can no longer be tapped.
TEST_F(ThreadFindings, ABoreLargerThanTheThreadsCoreIsPast) {
  EXPECT_EQ(judged("link.tube_bore.arm_end").verdict, Verdict::past);  // bore 19
  EXPECT_THAT(judged("link.tube_bore.arm_end").sentence, HasSubstr("cannot be threaded"));
  link_.tube->wall = 8.2;  // 18.6
  EXPECT_EQ(judged("link.tube_bore.arm_end").verdict, Verdict::within);
  EXPECT_NEAR(judged("link.tube_bore.arm_end").numbers.front().value, 18.376 + 0.300 - 18.6, 0.01);
  link_.knuckle_end.thread = Thread{16.0, 2.0, ThreadHand::left};
  EXPECT_EQ(judged("link.tube_bore.knuckle_end").verdict, Verdict::past);
}

// M24x2 has 384 mm2 of stress area (ISO 898-1): a tube of 32 leaves pi/4 (32^2 - 24^2) = 352 mm2
// outside it, one of 33 leaves 403.
TEST_F(ThreadFindings, ATubeWeakerThanItsShankIsPast) {
  link_.arm_end.thread = Thread{24.0, 2.0, ThreadHand::right};
  link_.tube->outside_diameter = 32.0;
  EXPECT_EQ(judged("link.tube_wall.arm_end").verdict, Verdict::past);
  EXPECT_NEAR(judged("link.tube_wall.arm_end").numbers.front().value, 351.9 / 384.4, 0.001);
  link_.tube->outside_diameter = 33.0;
  EXPECT_EQ(judged("link.tube_wall.arm_end").verdict, Verdict::within);
  link_.tube->outside_diameter = 22.0;  // the thread is larger than the tube
  EXPECT_EQ(judged("link.tube_wall.arm_end").verdict, Verdict::past);
  EXPECT_EQ(judged("link.tube_wall.arm_end").numbers.front().value, 0.0);
}

TEST_F(ThreadFindings, WhatIsNotGivenIsAskedFor) {
  link_.arm_end.thread.reset();
  EXPECT_THAT(judged("link.tube_bore.arm_end").why_not_judged,
              HasSubstr("drag_link.arm_end.thread"));
  EXPECT_EQ(judged("link.tube_bore.knuckle_end").verdict, Verdict::past);
  link_.tube.reset();
  EXPECT_THAT(judged("link.tube_wall.knuckle_end").why_not_judged, HasSubstr("drag_link.tube"));
}

}  // namespace
}  // namespace tackbench
