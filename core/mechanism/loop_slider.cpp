#include "core/mechanism/loop_slider.h"

#include <algorithm>
#include <cmath>

namespace tackbench {

SliderLoop slider_as_drawn(const Vec3& start, const Vec3& along, const Vec3& driving_ball) {
  SliderLoop loop;
  loop.start = start;
  loop.along = along;
  loop.length = (start - driving_ball).norm();
  loop.branch = along.dot(start - driving_ball) >= 0.0 ? 1.0 : -1.0;
  return loop;
}

SliderAnswer solve_slider(const SliderLoop& loop, const Vec3& driving_ball) {
  const Vec3 from_ball = loop.start - driving_ball;
  const double along = loop.along.dot(from_ball);
  const double off_line = (from_ball - along * loop.along).norm();
  SliderAnswer answer;
  answer.closure = loop.length > 0.0 ? (loop.length - off_line) / loop.length : -1.0;
  answer.closes = answer.closure >= 0.0;
  // Product form: no cancellation when the link stands nearly square to the line.
  const double reach_squared = (loop.length - off_line) * (loop.length + off_line);
  answer.slide = loop.branch * std::sqrt(std::max(0.0, reach_squared)) - along;
  return answer;
}

}  // namespace tackbench
