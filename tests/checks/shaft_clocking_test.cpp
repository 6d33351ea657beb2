#include "core/checks/shaft_clocking.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>

#include "core/basics/units.h"
#include "tests/support/shaft_line_plan.h"

namespace tackbench::test {
namespace {

constexpr double kDegree = kRadiansPerDegree;

ShaftPlan chain(const std::vector<double>& bends, const std::vector<double>& planes,
                SectionKind kind, int teeth = 0) {
  ShaftPlan plan = bent_chain(bends, planes);
  for (Shaft& shaft : plan.shafts) {
    shaft.section.kind = kind;
    if (teeth > 0) shaft.section.teeth = teeth;
  }
  return plan;
}

// Bend planes 90 apart: forks 90 apart give an even speed (computed; Fischer and Paul).
TEST(Clocking, TwoJointsFollowTheTwistOfTheBendPlanes) {
  const ClockingResult even = clocking(line_of(chain({30, 30}, {0, 90}, SectionKind::round)));
  EXPECT_TRUE(even.matters);
  EXPECT_TRUE(even.closed_form);
  EXPECT_NEAR(std::abs(even.twist) / kDegree, 90.0, 1e-9);
  EXPECT_NEAR(even.ripple_ideal, 0.0, 1e-12);
  EXPECT_NEAR(even.ripple_as_drawn, 1.0 / 0.75 - 0.75, 1e-6);
  // Unequal bends, planes 40 apart: what remains is cos 20/cos 30 less its inverse.
  const ClockingResult rest = clocking(line_of(chain({20, 30}, {0, 40}, SectionKind::round)));
  EXPECT_NEAR(rest.shafts[0].ideal / kDegree, 40.0, 1e-9);
  EXPECT_NEAR(rest.shafts[0].nearest / kDegree, 40.0, 1e-9);
  EXPECT_NEAR(rest.ripple_ideal, 1.085063 - 0.921605, 2e-6);
}

TEST(Clocking, SplinesGoByTeeth) {
  // 36 teeth: steps of 10 degrees; 44 wanted.
  ClockingResult found = clocking(line_of(chain({25, 25}, {0, 44}, SectionKind::spline, 36)));
  EXPECT_NEAR(found.shafts[0].step / kDegree, 10.0, 1e-12);
  EXPECT_NEAR(found.shafts[0].ideal / kDegree, 44.0, 1e-9);
  EXPECT_NEAR(found.shafts[0].nearest / kDegree, 40.0, 1e-9);
  EXPECT_NEAR(found.ripple_ideal, 0.0, 1e-12);
  // What remains is two joints 4 degrees out of phase.
  const ClockingResult out = clocking(line_of([] {
    ShaftPlan plan = chain({25, 25}, {0, 0}, SectionKind::round);
    plan.shafts[0].fork_offset = 4.0 * kDegree;
    return plan;
  }()));
  EXPECT_NEAR(found.ripple_nearest, out.ripple_as_drawn, 1e-9);
  // An odd count comes round to half steps, since half a turn is the same fork: 35 teeth reach
  // 41.142857 (4 steps) and, half a turn on, 46.285714 (22 steps less 180).
  found = clocking(line_of(chain({25, 25}, {0, 46}, SectionKind::spline, 35)));
  EXPECT_NEAR(found.shafts[0].nearest / kDegree, 22.0 * 360.0 / 35.0 - 180.0, 1e-9);
}

TEST(Clocking, DoubleDKeepsItsMakersCut) {
  ShaftPlan plan = chain({25, 25}, {0, 44}, SectionKind::double_d);
  plan.shafts[0].fork_offset = 90.0 * kDegree;
  const ClockingResult found = clocking(line_of(plan));
  EXPECT_EQ(found.shafts[0].by, ClockingBy::makers_cut);
  EXPECT_NEAR(found.shafts[0].nearest / kDegree, 90.0, 1e-12);
  EXPECT_NEAR(found.ripple_nearest, found.ripple_as_drawn, 1e-12);
  EXPECT_NEAR(found.shafts[0].ideal / kDegree, 44.0, 1e-9);
}

// No grid of fork offsets, 6 degrees fine, does better than the search.
TEST(Clocking, ThreeJointsBeatAGrid) {
  for (const auto& planes : {std::vector<double>{0, 0, 0}, std::vector<double>{0, 35, -70}}) {
    const ShaftLine line = line_of(chain({30, 20, 22}, planes, SectionKind::round));
    const ClockingResult found = clocking(line);
    EXPECT_FALSE(found.closed_form);
    double best = 10.0;
    for (int a = -15; a < 15; ++a) {
      for (int b = -15; b < 15; ++b) {
        const ShaftLine tried = with_fork_offsets(line, {6.0 * a * kDegree, 6.0 * b * kDegree});
        double least = 10.0;
        double most = 0.0;
        for (int i = 0; i < 24; ++i) {
          ShaftLinePose pose;
          pose_shaft_line(tried, tried.cab_as_drawn, kPi * i / 24, pose);
          least = std::min(least, pose.box_rate);
          most = std::max(most, pose.box_rate);
        }
        best = std::min(best, most - least);  // samples: never more than the true ripple
      }
    }
    EXPECT_LT(found.ripple_ideal, best + 1e-3);
    EXPECT_LE(found.ripple_ideal, found.ripple_nearest + 1e-9);
  }
  // (0, 90) leaves 0.9940..1.0061 in one plane (computed): the best is no worse.
  const ClockingResult plane =
      clocking(line_of(chain({30, 20, 22}, {0, 0, 0}, SectionKind::round)));
  EXPECT_LT(plane.ripple_ideal, 1.0061 - 0.9940);
}

// A last joint with hardly any bend, as one has that is set into a straight shaft: its shaft's
// offset hardly counts, and the search may not creep along that valley (it took half a minute). Of
// two bends of 18 and 20 and one of 0.02 degrees the first two settle what is left: with offsets in
// step, cos 18 / cos 20 less its inverse (computed; Fischer and Paul), to which 0.02 degrees add or
// take away at most 1 / cos 0.02 less cos 0.02, which is 1.2e-7.
TEST(Clocking, AJointWithHardlyAnyBendCostsNothing) {
  const ClockingResult found =
      clocking(line_of(chain({18, 20, 0.02}, {0, 30, 0}, SectionKind::spline, 36)));
  const double rest = std::cos(18 * kDegree) / std::cos(20 * kDegree) -
                      std::cos(20 * kDegree) / std::cos(18 * kDegree);
  EXPECT_NEAR(found.ripple_ideal, rest, 3e-7);
  EXPECT_NEAR(std::abs(found.shafts[0].ideal) / kDegree, 30.0, 0.1);
}

TEST(Clocking, OneJointHasNothingToClock) {
  EXPECT_FALSE(clocking(line_of(bent_chain({25}, {0}))).matters);
  ShaftPlan plan = bent_chain({25, 25}, {0, 0});
  plan.joints[1].kind = JointKind::double_centred;
  const ClockingResult found = clocking(line_of(plan));
  EXPECT_FALSE(found.matters);
  EXPECT_FALSE(found.shafts[0].matters);
}

}  // namespace
}  // namespace tackbench::test
