#include "core/mechanism/loop_crank_link_crank.h"

#include <algorithm>

#include "core/basics/angle_of.h"
#include "core/basics/frames.h"

namespace tackbench {

namespace {

// A cos t + B sin t = C for |foot + cos t lever + sin t sideways - b| = length.
struct LengthCondition {
  double a;
  double b;
  double c;
};

inline LengthCondition length_condition(const LinkLoop& loop, const Vec3& driving_ball) {
  const Vec3 m = loop.driven.foot - driving_ball;
  return {2.0 * m.dot(loop.driven.lever), 2.0 * m.dot(loop.driven.sideways),
          loop.length * loop.length - m.squaredNorm() - loop.driven.lever.squaredNorm()};
}

}  // namespace

LoopAnswer solve_loop(const LinkLoop& loop, const Vec3& driving_ball) {
  const LengthCondition condition = length_condition(loop, driving_ball);
  const double reach = std::sqrt(condition.a * condition.a + condition.b * condition.b);
  LoopAnswer answer;
  if (!(reach > 0.0)) {  // driving ball on the crank's axis, or no lever
    answer.closure = -1.0;
    return answer;
  }
  const double per_reach = 1.0 / reach;
  const double along = condition.c * per_reach;
  answer.closure = 1.0 - std::abs(along);
  answer.closes = answer.closure >= 0.0;
  // Both components of the root, not acos, which would lose half the digits near toggle; clamped
  // they give the angle at which a loop that cannot close comes nearest to it.
  const double nearest = std::clamp(along, -1.0, 1.0);
  const double across = loop.branch * std::sqrt((1.0 - nearest) * (1.0 + nearest));
  answer.cosine = (nearest * condition.a - across * condition.b) * per_reach;
  answer.sine = (nearest * condition.b + across * condition.a) * per_reach;
  answer.angle = angle_of(answer.sine, answer.cosine);
  return answer;
}

LinkLoop loop_as_drawn(const Crank& driven, double length, const Vec3& driving_ball,
                       double driven_angle) {
  LinkLoop loop{driven, length, 1.0};
  const LengthCondition condition = length_condition(loop, driving_ball);
  const double middle = angle_of(condition.b, condition.a);
  loop.branch = wrapped(driven_angle - middle) >= 0.0 ? 1.0 : -1.0;
  return loop;
}

}  // namespace tackbench
