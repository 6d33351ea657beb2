#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "core/fabrication/cut_items.h"

namespace tackbench {
namespace {

using ::testing::HasSubstr;

ShaftLineStation two_shafts() {
  ShaftLineStation station;
  station.joints.resize(3);
  station.joints[0].name = "upper";
  station.joints[1].name = "middle";
  station.joints[2].name = "lower";
  station.shafts.resize(2);
  station.shafts[0].name = "upper shaft";
  station.shafts[1].name = "lower shaft";
  station.shafts[1].slip = SlipKind::double_d;
  station.shafts[1].engagement = 60.0;
  ShaftSupport support;
  support.name = "rail";
  support.eye = {-310.0, 300.0, 65.0};
  support.base = {-310.0, 300.0, 0.0};
  support.bore = 25.0;
  support.width = 31.0;
  station.supports = {support};
  return station;
}

ShaftCheck result_for(const ShaftLineStation&) {
  ShaftCheck check;
  // Yoke depths of 25 at both ends: 420 - 50 = 370; 500 - 50 = 450, both halves 450 + 60 = 510.
  check.lengths = {{0, 420.0, 370.0, 0.0, 60.0}, {1, 500.0, 450.0, 510.0, 60.0}};
  ShaftClocking clocking;
  clocking.shaft = 0;
  clocking.as_drawn = 0.0;
  clocking.ideal = radians_from_degrees(-23.0);
  clocking.nearest = radians_from_degrees(-20.0);
  clocking.by = ClockingBy::teeth;
  clocking.step = radians_from_degrees(10.0);
  clocking.matters = true;
  check.clocking.shafts = {clocking};
  check.clocking.matters = true;
  check.clocking.ripple_as_drawn = 0.121;
  check.clocking.ripple_ideal = 0.011;
  check.clocking.ripple_nearest = 0.024;
  SupportResult support;
  support.support = 0;
  support.height_above_base = 65.0;
  support.sleeve_bore = 19.05;
  support.sleeve_outside = 25.0;
  support.sleeve_length = 31.0;
  check.supports = {support};
  return check;
}

TEST(ShaftItems, LengthsFromTheCheck) {
  const ShaftLineStation station = two_shafts();
  const std::vector<CutItem> items = shaft_items(station, result_for(station));
  ASSERT_EQ(items.size(), 2U);
  EXPECT_EQ(items[0].name, "shaft.upper shaft");
  EXPECT_EQ(value_text(*dimension(items[0], "centre_to_centre")), "420.0");
  EXPECT_EQ(value_text(*dimension(items[0], "cut_length")), "370.0");
  EXPECT_EQ(tolerance_text(*dimension(items[0], "cut_length")), "blank until measured in");
  EXPECT_EQ(value_text(*dimension(items[1], "both_halves")), "510.0");
  EXPECT_EQ(value_text(*dimension(items[1], "engagement")), "60.0");
  EXPECT_EQ(dimension(items[0], "engagement"), nullptr);
}

TEST(ShaftItems, ClockingIdealNearestAndWhatRemains) {
  const ShaftLineStation station = two_shafts();
  const CutItem item = shaft_items(station, result_for(station)).front();
  EXPECT_EQ(value_text(*dimension(item, "fork_offset_ideal")), "23.0");
  EXPECT_EQ(value_text(*dimension(item, "fork_offset_nearest")), "20.0");
  EXPECT_EQ(value_text(*dimension(item, "ripple_remaining")), "2.4");
  EXPECT_THAT(dimension(item, "fork_offset_ideal")->note, HasSubstr("anticlockwise"));
  EXPECT_THAT(dimension(item, "fork_offset_nearest")->note, HasSubstr("steps of 10.00 deg"));
}

TEST(ShaftItems, TooShortForItsYokes) {
  const ShaftLineStation station = two_shafts();
  ShaftCheck check = result_for(station);
  check.lengths[0].cut_length = 50.0;
  EXPECT_THAT(shaft_items(station, check).front().cautions,
              ::testing::Contains(HasSubstr("Too short: 50.0 mm")));
}

TEST(SupportItems, EyeHeightAndSleeve) {
  const ShaftLineStation station = two_shafts();
  const std::vector<CutItem> items = support_items(station, result_for(station));
  ASSERT_EQ(items.size(), 1U);
  EXPECT_EQ(value_text(*dimension(items[0], "eye_x")), "-310.0");
  EXPECT_EQ(value_text(*dimension(items[0], "height_above_base")), "65.0");
  EXPECT_EQ(value_text(*dimension(items[0], "sleeve_bore")), "19.05");
  EXPECT_EQ(value_text(*dimension(items[0], "sleeve_outside_diameter")), "25.00");
  EXPECT_EQ(value_text(*dimension(items[0], "sleeve_length")), "31.0");
}

// 19.05 in an eye of 20 leaves (20 - 19.05)/2 = 0.475 of wall.
TEST(SupportItems, SleeveTooThinToTurn) {
  const ShaftLineStation station = two_shafts();
  ShaftCheck check = result_for(station);
  EXPECT_THAT(support_items(station, check).front().cautions, ::testing::IsEmpty());
  check.supports[0].sleeve_outside = 20.0;
  EXPECT_THAT(support_items(station, check).front().cautions,
              ::testing::Contains(HasSubstr("wall of 0.4")));
}

TEST(StopItems, BoltForWantedSteerAndBeforeAllElse) {
  LockResult locks;
  locks.left.side = Side::left;
  locks.left.stop = StopContact{};
  locks.left.stop->name = "left stop";
  locks.left.stop->gap_straight = 62.0;
  locks.left.stop->degrees_per_mm = radians_from_degrees(0.55);
  locks.left.stop->inside_pad = true;
  locks.left.wanted = StopSetting{"left stop", radians_from_degrees(36.0), -3.2, true};
  locks.left.before_others = StopSetting{"left stop", radians_from_degrees(34.5), 4.0, false};
  const std::vector<CutItem> items = stop_items(locks);
  ASSERT_EQ(items.size(), 1U);  // the right lock names no stop
  EXPECT_EQ(items[0].name, "stop.left");
  EXPECT_EQ(value_text(*dimension(items[0], "bolt_for_wanted_steer")), "-3.2");
  EXPECT_THAT(dimension(items[0], "bolt_for_wanted_steer")->note, HasSubstr("screw in for 36.0"));
  // One instruction, not two: set for 36 degrees the stop would come too late by 4.0 + 3.2.
  EXPECT_EQ(dimension(items[0], "bolt_before_others"), nullptr);
  ASSERT_EQ(items[0].cautions.size(), 1U);
  EXPECT_THAT(items[0].cautions[0], HasSubstr("at least 7.2 mm further out"));
  EXPECT_EQ(value_text(*dimension(items[0], "degrees_per_mm")), "0.55");

  locks.left.wanted.reset();
  const std::vector<CutItem> unasked = stop_items(locks);
  EXPECT_EQ(value_text(*dimension(unasked[0], "bolt_before_others")), "4.0");
  EXPECT_THAT(dimension(unasked[0], "bolt_before_others")->note, HasSubstr("MORE THAN THE BOLT"));

  // A stop that acts first with room to spare wants no change.
  locks.left.before_others->screw_out = -2.6;
  const std::vector<CutItem> first = stop_items(locks);
  EXPECT_EQ(value_text(*dimension(first[0], "bolt_before_others")),
            "none needed; at most 2.6 mm in");
}

}  // namespace
}  // namespace tackbench
