#include "core/checks/metric_thread.h"

#include <gtest/gtest.h>

namespace tackbench {
namespace {

// ISO 724 and ISO 898-1 formulas worked out by hand: d2 = 16 - 0.649519 x 1.5, d3 = 16 - 1.226869 x
// 1.5, As = pi/4 x 14.5932^2.
TEST(MetricThread, SixteenByOneAndAHalf) {
  const Thread thread{16.0, 1.5, ThreadHand::right};
  EXPECT_NEAR(pitch_diameter(thread), 15.026, 0.001);
  EXPECT_NEAR(core_diameter(thread), 14.160, 0.001);
  EXPECT_NEAR(inner_diameter(thread), 14.376, 0.001);
  EXPECT_NEAR(stress_area(thread), 167.25, 0.01);
}

// Stress areas: ISO 898-1 tables (M10 58.0, M12 84.3, M16 157, M20 245 read there; the others by
// its formula).
TEST(MetricThread, StressAreas) {
  const struct {
    double diameter;
    double pitch;
    double area;
  } rows[] = {{8, 1.25, 36.61},  {10, 1.5, 57.99},  {12, 1.75, 84.27}, {14, 2, 115.44},
              {16, 2, 156.67},   {18, 1.5, 216.23}, {20, 2.5, 244.79}, {20, 1.5, 271.50},
              {22, 1.5, 333.06}, {24, 2, 384.42},   {30, 2, 621.20}};
  for (const auto& row : rows)
    EXPECT_NEAR(stress_area({row.diameter, row.pitch, ThreadHand::right}), row.area, 0.01)
        << "M" << row.diameter << "x" << row.pitch;
}

// Tapped-hole limits 6H: M20x1.5 18.376 to 18.676, M24x2 21.835 to 22.210 (ISO 965-1 tables, from
// memory); the formula comes within 0.01 of them.
TEST(MetricThread, LargestTappingBore) {
  EXPECT_NEAR(largest_tapping_bore({20.0, 1.5, ThreadHand::right}), 18.676, 0.01);
  EXPECT_NEAR(largest_tapping_bore({24.0, 2.0, ThreadHand::right}), 22.210, 0.01);
}

// ISO 965-1: nominal x pitch, -LH for left hand.
TEST(MetricThread, Designation) {
  EXPECT_EQ(designation({20.0, 1.5, ThreadHand::left}), "M20x1.5-LH");
  EXPECT_EQ(designation({24.0, 2.0, ThreadHand::right}), "M24x2");
}

}  // namespace
}  // namespace tackbench
