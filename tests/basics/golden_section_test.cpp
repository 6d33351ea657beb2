#include "core/basics/golden_section.h"

#include <gtest/gtest.h>

#include <cmath>

namespace tackbench {
namespace {

// x^x is least at 1/e (any calculus text; e = 2.718281828459045, OEIS A001113).
TEST(GoldenSection, FindsTheLowestPlaceOfXToTheX) {
  const double at = lowest_place([](double x) { return std::pow(x, x); }, 0.05, 1.0, 1e-7);
  EXPECT_NEAR(at, 1.0 / 2.718281828459045, 1e-7);
}

// A kink has no derivative to follow.
TEST(GoldenSection, FindsAKinkAnywhereInTheRange) {
  for (const double kink : {-3.0, -2.999, -0.4, 0.0, 1.7, 4.999, 5.0}) {
    const auto steep_right = [&](double x) { return x < kink ? kink - x : 3.0 * (x - kink); };
    EXPECT_NEAR(lowest_place(steep_right, -3.0, 5.0, 1e-9), kink, 1e-9) << kink;
  }
}

// Each step costs one value and shrinks the range by 0.618 (J. Kiefer, Sequential minimax search
// for a maximum, 1953, from memory): from 8 to 1e-6 takes ceil(ln(8e6) / 0.4812) = 34 steps.
TEST(GoldenSection, OneValueAStep) {
  int calls = 0;
  lowest_place(
      [&calls](double x) {
        ++calls;
        return x * x;
      },
      -3.0, 5.0, 1e-6);
  EXPECT_EQ(calls, 2 + 34);
}

TEST(GoldenSection, StopsWithTheFirstValueThatIsEnough) {
  int calls = 0;
  const auto square = [&calls](double x) {
    ++calls;
    return (x - 1.0) * (x - 1.0);
  };
  const double at =
      lowest_place(square, -3.0, 5.0, 1e-12, [](double value) { return value < 0.01; });
  EXPECT_LT(std::abs(at - 1.0), 0.1);
  EXPECT_LT(calls, 20);
}

TEST(GoldenSection, ARangeOfNoWidthIsItsOwnAnswer) {
  EXPECT_DOUBLE_EQ(lowest_place([](double x) { return x; }, 2.0, 2.0, 1e-9), 2.0);
}

}  // namespace
}  // namespace tackbench
