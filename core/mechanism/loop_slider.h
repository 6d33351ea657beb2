// Loop: a ball in a given place, a rigid link, and a point that slides along a line.
// Source: the link's length condition is a quadratic in the slide.
#pragma once

#include "core/basics/frames.h"

namespace tackbench {

struct SliderLoop {
  Vec3 start = Vec3::Zero();   // of the sliding point as drawn, mm
  Vec3 along = Vec3::UnitX();  // unit, positive slide
  double length = 0.0;         // of the link, mm
  double branch = 1.0;         // which root is the drawn one
};

struct SliderAnswer {
  double slide = 0.0;    // from the drawn place, mm
  double closure = 0.0;  // (length - distance of ball from the line) / length; negative: too far
  bool closes = false;   // false: `slide` is where the loop comes nearest to closing
};

SliderLoop slider_as_drawn(const Vec3& start, const Vec3& along, const Vec3& driving_ball);
SliderAnswer solve_slider(const SliderLoop& loop, const Vec3& driving_ball);

}  // namespace tackbench
