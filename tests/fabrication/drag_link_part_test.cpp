#include "core/fabrication/drag_link_part.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "tests/fabrication/example_link.h"

namespace tackbench {
namespace {

using ::testing::HasSubstr;

bool cautioned(const CutItem& item, const std::string& words) {
  for (const std::string& caution : item.cautions)
    if (caution.find(words) != std::string::npos) return true;
  return false;
}

// By hand: out of the tube stand 90 - 36 = 54 and 80 - 40 = 40, so the tube is 800 - 54 - 40 = 706.
TEST(DragLinkPart, TubeIsWhatTheShanksLeave) {
  const DragLinkPart part = example_part();
  EXPECT_NEAR(part.arm.free_length, 54.0, 1e-12);
  EXPECT_NEAR(part.knuckle.free_length, 40.0, 1e-12);
  EXPECT_NEAR(part.tube_length, 706.0, 1e-12);
  EXPECT_NEAR(part.tube_length + part.arm.size.shank_length + part.knuckle.size.shank_length -
                  part.arm.size.thread_engagement - part.knuckle.size.thread_engagement,
              part.ball_to_ball, 1e-9);
}

// By hand: 36 - 24 = 12 and 40 - 24 = 16 can come out; turning the tube 12/1.5 = 8 turns uses up
// the arm end, and 8 turns x 3 mm = 24 longer. Inward the nuts would leave 54 - 12 = 42 and 40 - 10
// = 30, but each end is tapped only 7.5 deeper than it is engaged: 5 turns, 15.
TEST(DragLinkPart, AdjustmentByOppositeHands) {
  const DragLinkPart part = example_part();
  EXPECT_TRUE(part.opposite_hands);
  EXPECT_NEAR(length_per_tube_turn(part), 3.0, 1e-12);
  EXPECT_NEAR(part.longer, 24.0, 1e-12);
  EXPECT_NEAR(part.shorter, 15.0, 1e-12);
  // Thread depth: 36 engaged + half of 15 + two pitches.
  EXPECT_NEAR(part.arm.thread_depth, 46.5, 1e-12);
}

// Same hands: each end is set by itself, so what both can give adds up: 12 + 16, and 15 of tapped
// depth at either end.
TEST(DragLinkPart, AdjustmentBySameHands) {
  DragLinkStation station = example_station();
  station.knuckle_end.thread->hand = ThreadHand::right;
  const DragLinkPart part = example_part(station);
  EXPECT_FALSE(part.opposite_hands);
  EXPECT_NEAR(length_per_tube_turn(part), 0.0, 1e-12);
  EXPECT_NEAR(part.longer, 28.0, 1e-12);
  EXPECT_NEAR(part.shorter, 30.0, 1e-12);
  const CutItem item = drag_link_item(part);
  EXPECT_THAT(dimension(item, "length_per_turn")->note, HasSubstr("take one stud off"));
}

// 22 engaged in M24: 0.92 diameters, nothing left to unscrew.
TEST(DragLinkPart, ShortEngagementGivesNoAdjustment) {
  DragLinkStation station = example_station();
  station.arm_end.thread_engagement = 22.0;
  const DragLinkPart part = example_part(station);
  EXPECT_DOUBLE_EQ(part.longer, 0.0);
  const CutItem item = drag_link_item(part);
  EXPECT_TRUE(cautioned(item, "Adjustment longer: 0.0 mm where 15.0 mm is wanted"));
  EXPECT_TRUE(cautioned(item, "22.0 mm is less than 1 diameter"));
}

// Bore 38 - 16 = 22; core of M24x1.5 = 24 - 1.082532 x 1.5 = 22.376: carries the thread. A wall of
// 5 leaves a bore of 28, which no M24 fits.
TEST(DragLinkPart, BoreAgainstThread) {
  EXPECT_TRUE(example_part().arm.bore_carries_thread);
  EXPECT_TRUE(drag_link_item(example_part()).cautions.empty());
  DragLinkStation station = example_station();
  station.tube->wall = 5.0;
  const CutItem item = drag_link_item(example_part(station));
  EXPECT_TRUE(cautioned(item, "bore of 28.0 mm is larger than the core of M24x1.5 (22.38"));
  EXPECT_TRUE(cautioned(item, "never a welded bung"));
}

// Outside M24 in a 38 tube: (38 - 24)/2 = 7 wall and pi/4 (38^2 - 24^2) = 681.7 mm2 against a shank
// of 401 mm2; in a 28 tube 163.4 mm2.
TEST(DragLinkPart, WallOutsideTheThread) {
  EXPECT_NEAR(example_part().arm.wall_outside, 7.0, 1e-12);
  EXPECT_NEAR(example_part().arm.area_outside, 681.73, 0.01);
  DragLinkStation station = example_station();
  station.tube->outside_diameter = 28.0;
  station.tube->wall = 3.0;
  const DragLinkPart part = example_part(station);
  EXPECT_NEAR(part.arm.area_outside, 163.36, 0.01);
  EXPECT_TRUE(cautioned(drag_link_item(part), "Thin wall at the arm end: 2.0 mm"));
}

TEST(DragLinkPart, ClockingSaysWhichWay) {
  const CutItem item = drag_link_item(example_part());
  EXPECT_EQ(value_text(*dimension(item, "stud_clocking")), "20.0");
  EXPECT_THAT(dimension(item, "stud_clocking")->note,
              HasSubstr("clockwise, seen from the arm end"));
  EXPECT_EQ(value_text(*dimension(item, "best_clocking")), "9.0");
  EXPECT_THAT(dimension(item, "best_clocking")->note, HasSubstr("anticlockwise"));
  EXPECT_THAT(dimension(item, "best_clocking")->note, HasSubstr("12.5 deg"));
}

TEST(DragLinkPart, SwingThatOnlyTheMakerKnows) {
  DragLinkStation station = example_station();
  station.knuckle_end.swing_limit = radians_from_degrees(16.0);
  const CutItem item = drag_link_item(example_part(station));
  EXPECT_EQ(value_text(*dimension(item, "arm_end_swing_available")), "not given");
  EXPECT_THAT(dimension(item, "arm_end_swing_available")->note,
              HasSubstr("from the maker's sheet"));
  EXPECT_EQ(value_text(*dimension(item, "knuckle_end_swing_available")), "16.0");
  EXPECT_TRUE(cautioned(item, "Swing at the knuckle end: 17.9 deg needed, 16.0 deg available"));
}

// 600 N at 225 mm through 20 : 1 on an arm of 190 at leverage 0.8: 600 x 225 x 20 / 152 = 17 763 N.
TEST(DragLinkPart, GreatestForceGiven) {
  const DragLinkPart assisted = example_part();
  EXPECT_DOUBLE_EQ(*assisted.force.newtons, 12000.0);
  EXPECT_EQ(assisted.force.name, "assist limit");
  EXPECT_THAT(assisted.force.not_given,
              ::testing::ElementsAre("two-handed rim force", "kerb strike"));
  DragLinkStation station = example_station();
  station.forces.two_handed_rim = 600.0;
  const DragLinkPart by_hand = example_part(station);
  EXPECT_NEAR(*by_hand.force.newtons, 17763.16, 0.01);
  EXPECT_EQ(by_hand.force.name, "two-handed rim force");
  station.forces.kerb_strike = 20000.0;
  EXPECT_EQ(example_part(station).force.name, "kerb strike");
  station.forces = {};
  const CutItem none = drag_link_item(example_part(station));
  EXPECT_EQ(value_text(*dimension(none, "force")), "none given");
}

// A link of 806 on a build that wants 800: order the one that centres the box.
TEST(DragLinkPart, GivenLengthAndTheOneToOrder) {
  DragLinkStation station = example_station();
  station.given_length = 806.0;
  LinkResult link = example_length();
  link.real_length = 806.0;
  link.input_offset = 0.15 * kRadiansPerTurn;
  link.within_adjustment = true;
  const CutItem item =
      drag_link_item(drag_link_part(example_mechanism(station), link, example_locks()));
  EXPECT_EQ(value_text(*dimension(item, "ball_to_ball")), "800.0");
  EXPECT_EQ(value_text(*dimension(item, "given_length")), "806.0");
  EXPECT_THAT(dimension(item, "given_length")->note, HasSubstr("6.0 mm long"));
  EXPECT_THAT(dimension(item, "given_length")->note, HasSubstr("0.15 turns"));
  EXPECT_THAT(dimension(item, "given_length")->note, HasSubstr("adjustment reaches"));
}

TEST(DragLinkPart, ToleranceOrBlank) {
  EXPECT_EQ(tolerance_text(*dimension(drag_link_item(example_part()), "ball_to_ball")), "0.5");
  DragLinkStation station = example_station();
  station.tolerance.reset();
  const CutItem item = drag_link_item(example_part(station));
  EXPECT_EQ(tolerance_text(*dimension(item, "ball_to_ball")), "blank until measured in");
  EXPECT_EQ(tolerance_text(*dimension(item, "tube_length")), "blank until measured in");
}

TEST(DragLinkPart, RodEndAlwaysDrawsACaution) {
  DragLinkStation station = example_station();
  station.arm_end.kind = LinkEndKind::rod_end;
  EXPECT_TRUE(cautioned(drag_link_item(example_part(station)), "Rod end at the arm end"));
}

}  // namespace
}  // namespace tackbench
