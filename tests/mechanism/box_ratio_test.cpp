#include "core/mechanism/box_ratio.h"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <cmath>
#include <vector>

namespace tackbench {
namespace {

TEST(BoxRatio, ConstantRatioDivides) {
  const BoxRatio box(20.5);
  EXPECT_DOUBLE_EQ(box.output_from_input(4.1), 0.2);
  EXPECT_DOUBLE_EQ(box.input_from_output(-0.2), -4.1);
  EXPECT_DOUBLE_EQ(box.ratio_at(99.0), 20.5);
}

const std::vector<RatioRow> kRows{{-10.0, 24.0}, {-3.0, 20.0}, {1.0, 20.0}, {12.0, 25.5}};

TEST(BoxRatio, RatioIsLinearBetweenRowsAndHeldBeyond) {
  const BoxRatio box(kRows);
  EXPECT_DOUBLE_EQ(box.ratio_at(-40.0), 24.0);
  EXPECT_DOUBLE_EQ(box.ratio_at(-6.5), 22.0);
  EXPECT_DOUBLE_EQ(box.ratio_at(0.0), 20.0);
  EXPECT_DOUBLE_EQ(box.ratio_at(3.0), 21.0);
  EXPECT_DOUBLE_EQ(box.ratio_at(50.0), 25.5);
}

// Against numerical integration of 1 / ratio (composite Simpson, each piece smooth).
TEST(BoxRatio, OutputIsTheIntegral) {
  const BoxRatio box(kRows);
  EXPECT_NEAR(box.output_from_input(0.0), 0.0, 1e-15);
  const auto ratio = [](double input) {
    if (input <= -10.0) return 24.0;
    if (input >= 12.0) return 25.5;
    if (input < -3.0) return 20.0 + (-3.0 - input) * 4.0 / 7.0;
    if (input > 1.0) return 20.0 + (input - 1.0) * 0.5;
    return 20.0;
  };
  const auto simpson = [&](double from, double to) {
    constexpr int kPieces = 400;
    double sum = 0.0;
    for (int i = 0; i < kPieces; ++i) {
      const double a = from + (to - from) * i / kPieces;
      const double b = from + (to - from) * (i + 1) / kPieces;
      sum += (b - a) / 6.0 * (1.0 / ratio(a) + 4.0 / ratio(0.5 * (a + b)) + 1.0 / ratio(b));
    }
    return sum;
  };
  EXPECT_NEAR(box.output_from_input(8.0), simpson(0.0, 1.0) + simpson(1.0, 8.0), 1e-12);
  EXPECT_NEAR(box.output_from_input(15.0),
              simpson(0.0, 1.0) + simpson(1.0, 12.0) + simpson(12.0, 15.0), 1e-12);
  EXPECT_NEAR(box.output_from_input(-12.0),
              -simpson(-3.0, 0.0) - simpson(-10.0, -3.0) - simpson(-12.0, -10.0), 1e-12);
}

TEST(BoxRatio, TableThatLeavesTheCentreOut) {
  const BoxRatio box(std::vector<RatioRow>{{2.0, 18.0}, {6.0, 22.0}});
  EXPECT_NEAR(box.output_from_input(0.0), 0.0, 1e-15);
  EXPECT_DOUBLE_EQ(box.output_from_input(1.8), 0.1);
  EXPECT_DOUBLE_EQ(box.input_from_output(0.1), 1.8);
}

RC_GTEST_PROP(BoxRatioProperties, ForwardAndBackReturns, ()) {
  const BoxRatio box(kRows);
  const double input = *rc::gen::inRange(-30000, 30000) / 1000.0;
  const double output = box.output_from_input(input);
  RC_ASSERT(std::abs(box.input_from_output(output) - input) < 1e-11);
  constexpr double kStep = 1e-5;
  const double slope =
      (box.output_from_input(input + kStep) - box.output_from_input(input - kStep)) / (2.0 * kStep);
  RC_ASSERT(std::abs(slope * box.ratio_at(input) - 1.0) < 1e-6);
}

}  // namespace
}  // namespace tackbench
