#include "core/basics/shown_number.h"

#include <gtest/gtest.h>

#include <limits>

namespace tackbench {
namespace {

TEST(ShownNumber, LengthsByTheProjectsSwitch) {
  EXPECT_EQ(shown_length(812.44), "812.4 mm");
  EXPECT_EQ(shown_length(15753.1), "15753 mm");
  // 25.4 mm an inch exactly: ISO 80000-3.
  EXPECT_EQ(shown_length(314.325, ShownUnit::inch_decimal), "12.375 in");
  EXPECT_EQ(shown_length(314.325, ShownUnit::inch_fraction), "12-3/8 in");
  EXPECT_EQ(shown_length(314.5, ShownUnit::inch_fraction), "~12-3/8 in");
  EXPECT_EQ(shown_length(-6.35, ShownUnit::inch_fraction), "-1/4 in");
  EXPECT_EQ(shown_length(25.4 * 15.99 / 16, ShownUnit::inch_fraction), "~1 in");
  EXPECT_EQ(shown_length(0.2, ShownUnit::inch_fraction), "~0 in");
  EXPECT_EQ(shown_length(-0.2, ShownUnit::inch_fraction), "~0 in");
}

TEST(ShownNumber, AnglesTurnsAndShares) {
  EXPECT_EQ(shown(radians_from_degrees(1.84), Unit::degree), "1.8 degrees");
  EXPECT_EQ(shown(0.31 * kRadiansPerTurn, Unit::turn), "0.31 turns");
  EXPECT_EQ(shown(0.125, Unit::percent), "12.5 %");
  EXPECT_EQ(shown(2.0, Unit::count), "2");
  EXPECT_EQ(shown_bare(radians_from_degrees(-20.0), Unit::degree), "-20.0");
}

TEST(ShownNumber, NeverMinusZeroNorNan) {
  EXPECT_EQ(shown(-1e-9, Unit::degree), "0.0 degrees");
  EXPECT_EQ(shown_exactly(-1e-13, Unit::millimetre), "0 mm");
  EXPECT_EQ(shown(std::numeric_limits<double>::quiet_NaN(), Unit::degree), "not known");
  EXPECT_EQ(shown_length(std::numeric_limits<double>::infinity()), "not known");
}

TEST(ShownNumber, EnoughDigitsToFollowByHand) {
  EXPECT_EQ(shown_exactly(radians_from_degrees(43.175699), Unit::degree), "43.1757 degrees");
}

}  // namespace
}  // namespace tackbench
