#include "core/fabrication/mock_up_link.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "tests/fabrication/example_link.h"

namespace tackbench {
namespace {

// Least hole t + 8 mm (AISC/AWS D1.1 limits as quoted), spacing 4 d (from memory): walls of 3, 4,
// 5, 6 want holes of 11, 12, 13, 14 and 44, 48, 52, 56 between centres.
TEST(MockUpLink, PlugWeldTable) {
  const double rows[][3] = {{3, 11, 44}, {4, 12, 48}, {5, 13, 52}, {6, 14, 56}};
  for (const auto& row : rows) {
    EXPECT_DOUBLE_EQ(least_plug_hole(row[0]), row[1]);
    EXPECT_DOUBLE_EQ(least_plug_spacing(least_plug_hole(row[0])), row[2]);
  }
}

// Tube 38, adjustment 15 each way: overlap 2 x 38 = 76 a side, gap 30, sleeve 182; two tubes of
// (706 - 30)/2 = 338; it can be drawn out 2 x 0.5 x 38 = 38 before less than 1.5 diameters overlap.
TEST(MockUpLink, LengthsByHand) {
  const MockUpLink mock_up = mock_up_link(example_part());
  EXPECT_DOUBLE_EQ(mock_up.overlap, 76.0);
  EXPECT_DOUBLE_EQ(mock_up.sleeve_length, 182.0);
  EXPECT_DOUBLE_EQ(mock_up.piece_length, 338.0);
  EXPECT_DOUBLE_EQ(mock_up.longer, 38.0);
  EXPECT_DOUBLE_EQ(2.0 * mock_up.piece_length + mock_up.gap, 706.0);
  EXPECT_DOUBLE_EQ(mock_up.hole, 12.0);
}

// Two holes half way round a 46.5 sleeve, 76/3 apart along it: hypot(73.04, 25.33) = 77.3 > 48. On
// a 20 tube they come too close: hypot(44.77, 13.33) = 46.7.
TEST(MockUpLink, HolesKeepTheirDistance) {
  const MockUpLink mock_up = mock_up_link(example_part());
  EXPECT_NEAR(mock_up.hole_distance, 77.31, 0.01);
  EXPECT_TRUE(mock_up.spacing_kept);
  DragLinkStation station = example_station();
  station.tube->outside_diameter = 20.0;
  const MockUpLink small = mock_up_link(example_part(station));
  EXPECT_NEAR(small.hole_distance, 46.71, 0.01);
  EXPECT_FALSE(small.spacing_kept);
}

TEST(MockUpLink, SaysWhatItIsFor) {
  const CutItem item = mock_up_item(mock_up_link(example_part()));
  EXPECT_THAT(item.cautions,
              ::testing::Contains("Mock-up template only: walking pace, level ground, assist "
                                  "disconnected, never on a slope or a slip."));
  EXPECT_THAT(item.title, ::testing::HasSubstr("NEVER FOR THE ROAD"));
}

}  // namespace
}  // namespace tackbench
