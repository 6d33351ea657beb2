#include "core/mechanism/loop_slider.h"

#include <gtest/gtest.h>

#include <cmath>

namespace tackbench {
namespace {

// Slider-crank x = r cos t + sqrt(l^2 - (r sin t)^2) (any textbook of mechanisms).
TEST(SliderLoop, IsTheTextbookSliderCrank) {
  constexpr double r = 50.0;
  constexpr double l = 160.0;
  const SliderLoop loop = slider_as_drawn({r + l, 0.0, 0.0}, Vec3::UnitX(), {r, 0.0, 0.0});
  for (double t = 0.0; t < 6.3; t += 0.1) {
    const SliderAnswer answer = solve_slider(loop, {r * std::cos(t), r * std::sin(t), 0.0});
    EXPECT_TRUE(answer.closes);
    EXPECT_NEAR(answer.slide + r + l,
                r * std::cos(t) + std::sqrt(l * l - r * r * std::sin(t) * std::sin(t)), 1e-12);
  }
}

TEST(SliderLoop, KeepsItsRoot) {
  // Pulled rather than pushed: the ball stands ahead of the sliding point.
  const SliderLoop loop = slider_as_drawn({0.0, 0.0, 0.0}, Vec3::UnitX(), {80.0, 60.0, 0.0});
  EXPECT_EQ(loop.length, 100.0);
  EXPECT_NEAR(solve_slider(loop, {180.0, 60.0, 0.0}).slide, 100.0, 1e-12);
  EXPECT_NEAR(solve_slider(loop, {80.0, 0.0, 100.0}).slide, 80.0, 1e-12);
}

TEST(SliderLoop, SaysWhenTheBallIsTooFarFromTheLine) {
  const SliderLoop loop = slider_as_drawn({0.0, 0.0, 0.0}, Vec3::UnitX(), {-80.0, 60.0, 0.0});
  const SliderAnswer answer = solve_slider(loop, {-80.0, 110.0, 0.0});
  EXPECT_FALSE(answer.closes);
  EXPECT_NEAR(answer.closure, -0.1, 1e-12);
  EXPECT_NEAR(answer.slide, -80.0, 1e-12);  // abreast of the ball: the nearest it comes
}

}  // namespace
}  // namespace tackbench
