#include "core/checks/push_back.h"

#include <Eigen/Geometry>
#include <algorithm>
#include <cmath>

#include "core/basics/units.h"
#include "core/checks/joint_angles.h"
#include "core/mechanism/shaft_follow.h"

namespace tackbench {
namespace {

constexpr double kStepMm = 1.0;
constexpr int kShownSteps = 40;
constexpr double kFolds = 5.0 * kRadiansPerDegree;

double least_length(const ShaftLine& line, std::size_t span) {
  const Shaft& shaft = line.station.shafts[static_cast<std::size_t>(line.spans[span].shaft)];
  if (shaft.slide_in_left) return line.spans[span].length - *shaft.slide_in_left;
  double least = 0.0;
  for (const std::size_t cross : {span, span + 1}) {
    const ShaftJoint& joint =
        line.station.joints[static_cast<std::size_t>(line.crosses[cross].joint)];
    least += joint.yoke_depth + joint.grip_length;
  }
  return std::min(least, line.spans[span].length);
}

// Follows the crosses as the box comes back step by step.
class Push {
 public:
  explicit Push(const ShaftLine& line) : line_(line), task_(follow_task(line, line.cab_as_drawn)) {
    for (std::size_t i = 0; i < line.crosses.size(); ++i) {
      task_.start[i] = line.crosses[i].centre_mm;
    }
    lean_out_of_line();
    last_drawn_ = task_.start[line.crosses.size() - 1];
  }

  // A lone joint belongs to column and box both: it comes back only as far as the column lets it
  // along its own axis.
  bool lone_joint_leaves_the_column(double pushed) const {
    constexpr double kCloses = 1e-6;  // mm
    return line_.crosses.size() == 1 &&
           pushed * line_.column_axis.along.cross(Vec3::UnitX()).norm() > kCloses;
  }

  // False: the chain cannot be there, or a joint would bend to a right angle. `least` per span.
  bool step_to(double pushed, const std::vector<double>& least) {
    if (lone_joint_leaves_the_column(pushed)) return false;
    task_.start[line_.crosses.size() - 1] = last_drawn_ - pushed * Vec3::UnitX();
    task_.chassis_shift_mm = -pushed * Vec3::UnitX();
    task_.chassis_from_cab = line_.cab_as_drawn;  // supports in the cab stand on the firewall
    task_.chassis_from_cab.shift_mm -= pushed * Vec3::UnitX();
    for (const bool column_slides : {false, true}) {
      task_.column_slides = column_slides;
      for (std::size_t i = 0; i <= line_.spans.size(); ++i) {  // at most every slip closes
        const FollowAnswer answer = follow(line_, task_);
        if (!answer.closes || bends_square(answer.centres)) break;
        if (!close_one(answer.centres, least)) {
          const double driven =
              line_.column_axis.along.dot(line_.crosses[0].centre_mm - answer.centres[0]);
          if (driven < -1e-6) return false;  // it would have to be pulled out of the column
          task_.start = answer.centres;
          return true;
        }
      }
    }
    return false;
  }

  const CrossCentres& centres() const { return task_.start; }
  bool closed(std::size_t span) const {
    return line_.spans[span].slips && task_.fixed_length[span];
  }

  Vec3 direction_after(std::size_t cross) const {
    return cross + 1 == line_.crosses.size()
               ? line_.box_input_axis.along
               : Vec3((task_.start[cross + 1] - task_.start[cross]).normalized());
  }
  double angle_at(std::size_t cross) const {
    const Vec3 before = cross == 0 ? line_.column_axis.along : direction_after(cross - 1);
    return angle_between(before, direction_after(cross));
  }

 private:
  // A straight chain gives way to one side or the other; which is not for geometry to say, so a
  // free joint is leant down by half a millimetre to let it.
  void lean_out_of_line() {
    constexpr double kStraight = 1e-3;  // rad
    for (std::size_t i = 1; i + 1 < line_.crosses.size(); ++i) {
      const DrawnCross& cross = line_.crosses[i];
      if (!cross.held && cross.angle < kStraight) {
        task_.start[i] += 0.5 * square_to(cross.geometry.in_direction, -Vec3::UnitZ());
      }
    }
  }

  // Fixes the slip that has shrunk most beyond its end. False when none has.
  bool close_one(const CrossCentres& centres, const std::vector<double>& least) {
    double most = 1e-9;
    std::size_t worst = line_.spans.size();
    for (std::size_t i = 0; i < line_.spans.size(); ++i) {
      if (task_.fixed_length[i]) continue;
      const double beyond = least[i] - (centres[i + 1] - centres[i]).norm();
      if (beyond > most) {
        most = beyond;
        worst = i;
      }
    }
    if (worst == line_.spans.size()) return false;
    task_.fixed_length[worst] = true;
    task_.length[worst] = least[worst];
    return true;
  }

  bool bends_square(const CrossCentres& centres) const {
    Vec3 before = line_.column_axis.along;
    for (std::size_t i = 0; i < line_.crosses.size(); ++i) {
      const Vec3 after = i + 1 == line_.crosses.size() ? line_.box_input_axis.along
                                                       : Vec3(centres[i + 1] - centres[i]);
      if (before.dot(after) <= 0.0) return true;
      before = after;
    }
    return false;
  }

  const ShaftLine& line_;
  FollowTask task_;
  Vec3 last_drawn_;
};

PushBackStep shown_step(const ShaftLine& line, const Push& push, double pushed) {
  PushBackStep step;
  step.pushed = pushed;
  step.column_driven = line.column_axis.along.dot(line.crosses[0].centre_mm - push.centres()[0]);
  for (std::size_t i = 0; i < line.crosses.size(); ++i) {
    step.centres_mm.push_back(push.centres()[i]);
  }
  for (std::size_t i = 0; i < line.spans.size(); ++i) {
    const double length = (push.centres()[i + 1] - push.centres()[i]).norm();
    step.slide_used.push_back(line.spans[i].slips ? line.spans[i].length - length : 0.0);
  }
  return step;
}

std::vector<double> angles_now(const ShaftLine& line, const Push& push) {
  return angles_of_joints(line, [&](std::size_t i) { return push.angle_at(i); });
}

bool beyond_a_limit(const ShaftLine& line, const Push& push) {
  const std::vector<double> drawn = drawn_angles_of_joints(line);
  const std::vector<double> now = angles_now(line, push);
  for (std::size_t i = 0; i < now.size(); ++i) {
    const std::optional<double>& limit = line.station.joints[i].angle_limit;
    if (limit && now[i] > *limit && now[i] > drawn[i] + 1e-9) return true;
  }
  return false;
}

void judge_folding(const ShaftLine& line, const Push& push, PushBack& result) {
  const std::vector<double> drawn = drawn_angles_of_joints(line);
  const std::vector<double> now = angles_now(line, push);
  double most = 0.0;
  for (std::size_t i = 0; i < now.size(); ++i) {
    if (now[i] - drawn[i] > most) {
      most = now[i] - drawn[i];
      result.folds_at_joint = static_cast<int>(i);
      result.fold_angle = now[i];
    }
  }
  result.folds = most > kFolds;
}

}  // namespace

std::optional<PushBack> push_back(const ShaftLine& line) {
  if (!line.has_joints || !line.station.push_back) return std::nullopt;
  const double wanted = *line.station.push_back;
  PushBack result;
  std::vector<double> least(line.spans.size(), 0.0);
  for (std::size_t i = 0; i < line.spans.size(); ++i) {
    if (!line.spans[i].slips) continue;
    least[i] = least_length(line, i);
    const auto shaft = static_cast<std::size_t>(line.spans[i].shaft);
    if (!line.station.shafts[shaft].slide_in_left) result.slide_unknown = true;
  }

  Push push(line);
  result.steps.push_back(shown_step(line, push, 0.0));
  const int steps = std::max(1, static_cast<int>(std::ceil(wanted / kStepMm)));
  const int show_every = std::max(1, steps / kShownSteps);
  result.whole_way = true;
  for (int i = 1; i <= steps; ++i) {
    const double pushed = wanted * i / steps;
    if (!push.step_to(pushed, least)) {
      result.whole_way = false;
      break;
    }
    result.pushed = pushed;
    if (!result.limit_reached_at && beyond_a_limit(line, push)) result.limit_reached_at = pushed;
    if (i % show_every == 0 || i == steps) {
      result.steps.push_back(shown_step(line, push, pushed));
    }
  }
  judge_folding(line, push, result);
  for (std::size_t i = 0; i < line.spans.size(); ++i) {
    if (push.closed(i)) result.slides_closed.push_back(line.spans[i].shaft);
  }
  result.column_driven = line.column_axis.along.dot(line.crosses[0].centre_mm - push.centres()[0]);
  result.collapse_used =
      std::clamp(result.column_driven, 0.0, line.column.collapse_stroke.value_or(0.0));
  result.hand_wheel_moves = std::max(0.0, result.column_driven - result.collapse_used);
  result.hand_wheel_rearward = result.hand_wheel_moves * line.column_axis.along.x();
  return result;
}

}  // namespace tackbench
