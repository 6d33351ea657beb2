#include "core/checks/shaft_couples.h"

#include <Eigen/Geometry>
#include <algorithm>
#include <cmath>

#include "core/basics/units.h"
#include "core/checks/shaft_bodies.h"

namespace tackbench {
namespace {

// Everything repeats after half a turn; at this step a peak is met to 4e-5 of its height.
constexpr int kSamples = 360;

// What a cross does to its two shafts for a torque in the hand-side one.
struct Moments {
  Vec3 on_hand;       // couple square to the hand-side shaft, N mm
  Vec3 on_road;       // couple square to the road-side shaft
  double torque_out;  // handed on
};

// The only moment that a cross hands on is square to both pins; a constant-velocity joint hands on
// along the bisector of its shafts.
Moments moments_at(const CrossPose& cross, JointTurning turning, double torque) {
  const Vec3 through = turning == JointTurning::cross
                           ? Vec3(cross.in_pin.cross(cross.out_pin))
                           : Vec3((cross.in_direction + cross.out_direction).normalized());
  const Vec3 moment = through * (torque / through.dot(cross.in_direction));
  const double out = moment.dot(cross.out_direction);
  return {torque * cross.in_direction - moment, moment - out * cross.out_direction, out};
}

void apply(const ShaftBodies& bodies, std::size_t body, const Vec3& couple, Eigen::VectorXd& load) {
  const ShaftBody& shaft = bodies.bodies[body];
  const auto at = static_cast<Eigen::Index>(body) * ShaftBodies::kCoordinates + 3;
  load[at] += couple.dot(shaft.first) / shaft.size;
  load[at + 1] += couple.dot(shaft.second) / shaft.size;
}

}  // namespace

CouplesResult secondary_couples(const ShaftLine& line, std::optional<double> torque) {
  CouplesResult result;
  result.torque = torque.value_or(1.0);
  result.torque_given = torque.has_value();
  if (!line.has_joints) return result;
  const std::size_t count = line.crosses.size();
  for (std::size_t i = 0; i < count; ++i) {
    result.crosses.push_back({line.crosses[i].joint, static_cast<int>(i), 0.0, 0.0});
  }

  const ShaftBodies bodies = shaft_bodies(line);
  const NullSpaces spaces = null_spaces(bodies.jacobian);
  const Eigen::MatrixXd reaction_of_load = pseudo_inverse(bodies.jacobian.transpose());
  std::vector<Eigen::Index> first_row(line.supports.size());
  for (std::size_t i = bodies.rows.size(); i-- > 0;) {
    if (bodies.rows[i].kind == ShaftRowKind::support_sideways) {
      first_row[static_cast<std::size_t>(bodies.rows[i].index)] = static_cast<Eigen::Index>(i);
    }
  }
  constexpr double kNone = 1e-9;
  for (std::size_t i = 0; i < line.supports.size(); ++i) {
    const bool alone =
        spaces.left.cols() == 0 || spaces.left.middleRows<2>(first_row[i]).norm() < kNone;
    result.supports.push_back({static_cast<int>(i), alone && spaces.right.cols() == 0, 0.0});
  }

  ShaftLinePose pose;
  for (int sample = 0; sample < kSamples; ++sample) {
    pose_shaft_line(line, line.cab_as_drawn, kPi * sample / kSamples, pose);
    Eigen::VectorXd load = Eigen::VectorXd::Zero(bodies.jacobian.cols());
    double along = result.torque;
    for (std::size_t i = 0; i < count; ++i) {
      const int cross = static_cast<int>(i);
      const Moments moments = moments_at(pose.crosses[i], line.crosses[i].geometry.turning, along);
      along = moments.torque_out;
      CrossCouple& couple = result.crosses[i];
      couple.hand_side = std::max(couple.hand_side, moments.on_hand.norm());
      couple.road_side = std::max(couple.road_side, moments.on_road.norm());
      apply(bodies, body_before_cross(bodies, cross), moments.on_hand, load);
      if (i + 1 < count) apply(bodies, body_of_span(bodies, cross, false), moments.on_road, load);
    }
    const Eigen::VectorXd reaction = reaction_of_load * load;
    for (SupportLoad& support : result.supports) {
      if (!support.known) continue;
      const Eigen::Index row = first_row[static_cast<std::size_t>(support.support)];
      support.sideways = std::max(support.sideways, reaction.segment<2>(row).norm());
    }
  }
  return result;
}

}  // namespace tackbench
