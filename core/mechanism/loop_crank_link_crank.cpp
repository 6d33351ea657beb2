#include "core/mechanism/loop_crank_link_crank.h"

#include <algorithm>

#include "core/basics/frames.h"

namespace tackbench {

namespace {

// A cos t + B sin t = C for |foot + cos t lever + sin t sideways - b| = length.
struct LengthCondition {
  double a;
  double b;
  double c;
};

LengthCondition length_condition(const LinkLoop& loop, const Vec3& driving_ball) {
  const Vec3 m = loop.driven.foot - driving_ball;
  return {2.0 * m.dot(loop.driven.lever), 2.0 * m.dot(loop.driven.sideways),
          loop.length * loop.length - m.squaredNorm() - loop.driven.lever.squaredNorm()};
}

}  // namespace

LoopAnswer solve_loop(const LinkLoop& loop, const Vec3& driving_ball) {
  const LengthCondition condition = length_condition(loop, driving_ball);
  const double reach = std::sqrt(condition.a * condition.a + condition.b * condition.b);
  if (!(reach > 0.0)) return {};  // driving ball on the crank's axis, or no lever
  LoopAnswer answer;
  answer.closure = 1.0 - std::abs(condition.c) / reach;
  answer.closes = answer.closure >= 0.0;
  // atan2 of both root components keeps full accuracy near toggle, where acos would lose half.
  const double along = condition.c / reach;
  const double across = loop.branch * std::sqrt(std::max(0.0, 1.0 - along * along));
  const double cosine = along * condition.a - across * condition.b;
  const double sine = along * condition.b + across * condition.a;
  answer.angle = std::atan2(sine, cosine);
  if (!answer.closes)
    answer.angle = std::atan2(std::copysign(1.0, condition.c) * condition.b,
                              std::copysign(1.0, condition.c) * condition.a);
  return answer;
}

LinkLoop loop_as_drawn(const Crank& driven, double length, const Vec3& driving_ball,
                       double driven_angle) {
  LinkLoop loop{driven, length, 1.0};
  const LengthCondition condition = length_condition(loop, driving_ball);
  const double middle = std::atan2(condition.b, condition.a);
  loop.branch = wrapped(driven_angle - middle) >= 0.0 ? 1.0 : -1.0;
  return loop;
}

double leverage(const Crank& crank, double angle, const Vec3& link_direction) {
  const double lever = crank.lever.norm();
  return lever > 0.0 ? link_direction.dot(crank.ball_rate(angle)) / lever : 0.0;
}

}  // namespace tackbench
