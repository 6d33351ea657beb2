#include "core/basics/root.h"

#include <gtest/gtest.h>

#include <cmath>
#include <limits>

namespace tackbench {
namespace {

// The Dottie number, fixed point of the cosine: 0.739085133215160641655... (OEIS A003957).
TEST(Root, FindsTheFixedPointOfTheCosine) {
  const auto root = find_root([](double x) { return std::cos(x) - x; }, 0.0, 1.0, 1e-13);
  ASSERT_TRUE(root.has_value());
  EXPECT_NEAR(root->at, 0.73908513321516064, 1e-12);
  EXPECT_NEAR(root->residual, 0.0, 1e-12);
}

TEST(Root, EndsMayComeInEitherOrder) {
  const auto line = [](double x) { return x - 0.3; };
  const auto root = find_root(line, 1.0, -1.0, 1e-12);
  ASSERT_TRUE(root.has_value());
  EXPECT_NEAR(root->at, 0.3, 1e-12);
}

// A function that is almost a step holds a plain secant at one end for ever.
TEST(Root, SteepAndFlatDoesNotStall) {
  int calls = 0;
  const auto steep = [&calls](double x) {
    ++calls;
    return std::expm1(40.0 * (x - 0.9));
  };
  const auto root = find_root(steep, 0.0, 1.0, 1e-10);
  ASSERT_TRUE(root.has_value());
  EXPECT_NEAR(root->at, 0.9, 1e-10);
  EXPECT_LT(calls, 130);  // plain bisection on every third step alone needs 3 log2(1e10) = 100
}

TEST(Root, ZeroAtAnEndIsTheRoot) {
  const auto line = [](double x) { return x; };
  EXPECT_EQ(find_root(line, 0.0, 1.0, 1e-9)->at, 0.0);
  EXPECT_EQ(find_root(line, -1.0, 0.0, 1e-9)->at, 0.0);
}

TEST(Root, NoChangeOfSignOrNoNumberIsNoRoot) {
  EXPECT_FALSE(find_root([](double x) { return x * x + 1.0; }, -1.0, 1.0, 1e-9).has_value());
  const auto broken = [](double x) { return x < 0.0 ? -1.0 : std::nan(""); };
  EXPECT_FALSE(find_root(broken, -1.0, 1.0, 1e-9).has_value());
  const auto pole = [](double x) { return 1.0 / x; };
  EXPECT_FALSE(find_root(pole, 0.0, 1.0, 1e-9).has_value());
}

}  // namespace
}  // namespace tackbench
