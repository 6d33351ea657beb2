#include "core/checks/shaft_check.h"

#include <Eigen/Geometry>
#include <algorithm>
#include <cmath>
#include <set>

#include "core/checks/joint_angles.h"

namespace tackbench {
namespace {

constexpr double kWantedDiameters = 1.5;  // of engagement, common practice

std::size_t index_of(int i) {
  return static_cast<std::size_t>(i);
}

const ShaftJoint& joint_of(const ShaftLine& line, std::size_t cross) {
  return line.station.joints[index_of(line.crosses[cross].joint)];
}

// Drawn place first, then everywhere else on the grid of the shake's ends and middles.
std::vector<Vec3> shake_places(const CabShake& shake) {
  std::vector<Vec3> places{Vec3::Zero()};
  for (const double x : std::set<double>{-shake.rearward, 0.0, shake.forward}) {
    for (const double y : std::set<double>{-shake.right, 0.0, shake.left}) {
      for (const double z : std::set<double>{-shake.down, 0.0, shake.up}) {
        if (x != 0.0 || y != 0.0 || z != 0.0) places.emplace_back(x, y, z);
      }
    }
  }
  return places;
}

std::vector<JointAngleResult> start_joints(const ShaftLine& line) {
  const std::vector<double> drawn = drawn_angles_of_joints(line);
  std::vector<JointAngleResult> joints;
  for (std::size_t i = 0; i < line.station.joints.size(); ++i) {
    JointAngleResult result;
    result.joint = static_cast<int>(i);
    result.limit = line.station.joints[i].angle_limit;
    result.as_drawn = result.worst = drawn[i];
    joints.push_back(result);
  }
  for (const DrawnCross& cross : line.crosses) {
    JointAngleResult& result = joints[index_of(cross.joint)];
    result.held = result.held && cross.held;
  }
  return joints;
}

ShaftLengthResult shaft_length(const ShaftLine& line, std::size_t span) {
  const ShaftJoint& hand = joint_of(line, span);
  const ShaftJoint& road = joint_of(line, span + 1);
  ShaftLengthResult length;
  length.shaft = line.spans[span].shaft;
  length.centre_to_centre = line.spans[span].length;
  length.cut_length = length.centre_to_centre - hand.yoke_depth - road.yoke_depth;
  length.grips = hand.grip_length + road.grip_length;
  length.both_pieces =
      length.cut_length + line.station.shafts[index_of(length.shaft)].engagement.value_or(0.0);
  return length;
}

SlipResult start_slip(const Shaft& shaft, int index) {
  SlipResult slip;
  slip.shaft = index;
  slip.kind = shaft.slip;
  slip.diameter = shaft.slip == SlipKind::tube ? shaft.outside_diameter : shaft.section.diameter;
  slip.engagement = shaft.engagement;
  slip.wanted_is_common_practice = !shaft.engagement_least.has_value();
  slip.wanted_engagement = shaft.engagement_least.value_or(kWantedDiameters * slip.diameter);
  return slip;
}

void note_length(double change, const Vec3& shake, SlipResult& slip) {
  if (change > slip.longest_change) {
    slip.longest_change = change;
    slip.longest_shake_mm = shake;
  }
  if (change < slip.shortest_change) {
    slip.shortest_change = change;
    slip.shortest_shake_mm = shake;
  }
}

EndInYoke end_in_yoke(bool at_box, const ShaftLine& line) {
  const DrawnCross& cross = at_box ? line.crosses.back() : line.crosses.front();
  const ShaftJoint& joint = line.station.joints[index_of(cross.joint)];
  const Vec3 end = at_box ? line.box_input_end.mm : (line.cab_as_drawn * line.column.output_end).mm;
  // From the cross's centre to the end, along the shaft away from the joint.
  const Vec3 away = at_box ? line.box_input_axis.along : Vec3(-line.column_axis.along);
  const Vec3 to_end = end - cross.centre_mm;
  EndInYoke result;
  result.at_box = at_box;
  result.joint = cross.joint;
  result.distance = away.dot(to_end);
  result.off_axis = (to_end - result.distance * away).norm();
  result.clear = result.distance - joint.yoke_depth;
  result.grip_length = joint.grip_length;
  result.gripped = std::clamp(joint.grip_length - result.clear, 0.0, joint.grip_length);
  return result;
}

SupportResult start_support(const ShaftLine& line, const DrawnSupport& drawn) {
  const ShaftSupport& support = line.station.supports[index_of(drawn.support)];
  const Shaft& shaft = line.station.shafts[index_of(support.shaft)];
  SupportResult result;
  result.support = drawn.support;
  result.swing_limit = support.swing_limit;
  result.off_line = drawn.off_line;
  result.height_above_base = support.eye.z() - support.base.z();
  if (shaft.outside_diameter < support.bore) {
    result.sleeve_bore = shaft.outside_diameter;
    result.sleeve_outside = support.bore;
    result.sleeve_length = support.width;
  }
  const std::size_t span = index_of(drawn.span);
  result.to_hand_cross = drawn.from_hand_cross;
  result.to_road_cross = line.spans[span].length - result.to_hand_cross;
  return result;
}

// A joint there is bent to a right angle or more.
bool folds_back(const ShaftLinePose& pose) {
  return std::any_of(
      pose.crosses.begin(), pose.crosses.begin() + pose.cross_count,
      [](const CrossPose& cross) { return cross.in_direction.dot(cross.out_direction) <= 0.0; });
}

// Everything that moves with the cab, at one place of its shake.
void note_place(const ShaftLine& line, const Vec3& shake, ShaftCheck& check) {
  Placement<Chassis, Cab> cab = line.cab_as_drawn;
  cab.shift_mm += shake;
  ShaftLinePose pose;
  pose_shaft_line(line, cab, 0.0, pose);
  if (!pose.closes) {
    ++check.misfit.places;
    if (folds_back(pose)) ++check.misfit.folds;
    if (pose.misfit > check.misfit.worst) {
      check.misfit.worst = pose.misfit;
      check.misfit.worst_shake_mm = shake;
    }
  }
  check.box_turn_by_shake = std::max(check.box_turn_by_shake, std::abs(pose.box_turn));
  const std::vector<double> angles =
      angles_of_joints(line, [&](std::size_t i) { return pose.crosses[i].angle; });
  for (JointAngleResult& joint : check.joints) {
    const double angle = angles[index_of(joint.joint)];
    if (angle > joint.worst) {
      joint.worst = angle;
      joint.worst_shake_mm = shake;
    }
  }
  for (SlipResult& slip : check.slips) {
    for (std::size_t i = 0; i < line.spans.size(); ++i) {
      if (line.spans[i].shaft != slip.shaft) continue;
      const double length = (pose.crosses[i + 1].centre_mm - pose.crosses[i].centre_mm).norm();
      note_length(length - line.spans[i].length, shake, slip);
    }
  }
  for (const DrawnSupport& drawn : line.supports) {
    SupportResult& support = check.supports[index_of(drawn.support)];
    const double tilt =
        angle_between(drawn.along, pose.crosses[index_of(drawn.span)].out_direction);
    if (tilt > support.worst_tilt) {
      support.worst_tilt = tilt;
      support.worst_shake_mm = shake;
    }
  }
}

void finish_slip(const Shaft& shaft, SlipResult& slip) {
  if (slip.engagement) slip.least_engagement = *slip.engagement - slip.longest_change;
  if (shaft.slide_in_left) slip.least_slide_in = *shaft.slide_in_left + slip.shortest_change;
}

}  // namespace

std::vector<EndInYoke> ends_in_yokes(const ShaftLine& line) {
  if (!line.has_joints) return {};
  return {end_in_yoke(false, line), end_in_yoke(true, line)};
}

ShaftCheck shaft_check(const ShaftLine& line, std::optional<double> torque) {
  ShaftCheck check;
  check.ripple = line_ripple(line);
  check.clocking = clocking(line);
  check.couples = secondary_couples(line, torque);
  if (!line.has_joints) return check;
  check.joints = start_joints(line);
  for (std::size_t i = 0; i < line.spans.size(); ++i) {
    const int shaft = line.spans[i].shaft;
    if (shaft < 0) continue;
    check.lengths.push_back(shaft_length(line, i));
    if (line.spans[i].slips) {
      check.slips.push_back(start_slip(line.station.shafts[index_of(shaft)], shaft));
    }
  }
  check.ends = ends_in_yokes(line);
  for (const DrawnSupport& support : line.supports) {
    check.supports.push_back(start_support(line, support));
  }
  for (const Vec3& shake : shake_places(line.shake)) note_place(line, shake, check);
  for (SlipResult& slip : check.slips) {
    finish_slip(line.station.shafts[index_of(slip.shaft)], slip);
  }
  return check;
}

}  // namespace tackbench
