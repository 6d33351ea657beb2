// Shaft lines for tests: joint centres in the chassis and what lies between them, made into a
// project whose column ends just before the first joint and whose box input starts just after the
// last. The cab stands at the chassis origin unless said.
#pragma once

#include <memory>
#include <stdexcept>
#include <vector>

#include "core/basics/units.h"
#include "core/mechanism/shaft_line.h"
#include "core/project/project.h"

namespace tackbench::test {

struct ShaftPlan {
  Vec3 column_axis = Vec3::UnitX();  // hand to road
  Vec3 box_axis = Vec3::UnitX();     // hand to road
  std::vector<ShaftJoint> joints;
  std::vector<Shaft> shafts;
  std::vector<ShaftSupport> supports;
  double first_yoke_clocking = 0.0;
  int column_bearings = 2;
  CabStation cab;
  std::optional<double> push_back;
};

inline ShaftJoint joint_at(const Vec3& centre, JointKind kind = JointKind::universal) {
  ShaftJoint joint;
  joint.centre = centre;
  joint.kind = kind;
  return joint;
}

inline Shaft shaft_with(SlipKind slip, double fork_offset_deg = 0.0) {
  Shaft shaft;
  shaft.slip = slip;
  shaft.fork_offset = radians_from_degrees(fork_offset_deg);
  return shaft;
}

inline ShaftSupport eye_at(const Vec3& eye, int shaft, bool collar = false,
                           bool on_road_half = false) {
  ShaftSupport support;
  support.eye = eye;
  support.shaft = shaft;
  support.collar = collar;
  support.on_road_half = on_road_half;
  return support;
}

inline Project project_of(const ShaftPlan& plan) {
  Project project;
  auto column = std::make_shared<ColumnStation>();
  const Placement<Cab, Chassis> cab_from_chassis = chassis_from_cab(plan.cab).inverse();
  const Vec3 first = plan.joints.empty() ? Vec3(Vec3::Zero()) : plan.joints.front().centre;
  const Vec3 last = plan.joints.empty() ? Vec3(Vec3::Zero()) : plan.joints.back().centre;
  column->hand_wheel_centre = cab_from_chassis * Point<Chassis>{first - 700.0 * plan.column_axis};
  column->output_end = cab_from_chassis * Point<Chassis>{first - 40.0 * plan.column_axis};
  for (int i = 0; i < plan.column_bearings; ++i) {
    ColumnBearing bearing;
    bearing.from_hand_wheel = 100.0 + 450.0 * i;
    column->bearings.push_back(bearing);
  }
  auto box = std::make_shared<SteeringBoxStation>();
  box->input_end.mm = last + 40.0 * plan.box_axis;
  box->input_axis.along = plan.box_axis;
  auto station = std::make_shared<ShaftLineStation>();
  station->joints = plan.joints;
  station->shafts = plan.shafts;
  station->supports = plan.supports;
  station->first_yoke_clocking = plan.first_yoke_clocking;
  station->push_back = plan.push_back;
  project.cab = std::make_shared<CabStation>(plan.cab);
  project.column = column;
  project.steering_box = box;
  project.shaft_line = station;
  return project;
}

inline ShaftLine line_of(const ShaftPlan& plan) {
  Result<ShaftLine> line = compile_shaft_line(project_of(plan));
  if (!line.ok()) throw std::runtime_error(one_line(line.problems().front()));
  return std::move(line).value();
}

// Unit vector in the X-Z plane, `down_deg` below X.
inline Vec3 sloping(double down_deg) {
  const double angle = radians_from_degrees(down_deg);
  return {std::cos(angle), 0.0, -std::sin(angle)};
}

// `direction` bent by `bend_deg` towards the unit vector square to it that stands `plane_deg`
// right-handed about it from nearest-to-down.
inline Vec3 bent(const Vec3& direction, double bend_deg, double plane_deg) {
  const Vec3 towards =
      turned(square_to(direction, -Vec3::UnitZ()), direction, radians_from_degrees(plane_deg));
  const double bend = radians_from_degrees(bend_deg);
  return std::cos(bend) * direction + std::sin(bend) * towards;
}

// Joints 300 mm apart along the X axis bent in turn: bends_deg[i] at joint i, in a plane that
// stands planes_deg[i] on from the plane of the bend before, right-handed about the shaft between
// them. The first bends downwards. Forks aligned.
inline ShaftPlan bent_chain(const std::vector<double>& bends_deg,
                            const std::vector<double>& planes_deg) {
  ShaftPlan plan;
  Vec3 direction = Vec3::UnitX();
  Vec3 towards = -Vec3::UnitZ();  // square to `direction`, the way the next bend goes
  Vec3 at = Vec3::Zero();
  for (std::size_t i = 0; i < bends_deg.size(); ++i) {
    towards = turned(towards, direction, radians_from_degrees(planes_deg[i]));
    const double bend = radians_from_degrees(bends_deg[i]);
    const Vec3 before = direction;
    plan.joints.push_back(joint_at(at));
    direction = std::cos(bend) * before + std::sin(bend) * towards;
    towards = std::cos(bend) * towards - std::sin(bend) * before;
    at += 300.0 * direction;
    if (i + 1 < bends_deg.size()) plan.shafts.push_back(shaft_with(SlipKind::none));
  }
  plan.box_axis = direction;
  return plan;
}

}  // namespace tackbench::test
