// Column, shafts and their joints.
#include <algorithm>

#include "core/clearance/solids_maker.h"

namespace tackbench {

namespace {

std::string cross_joint(std::size_t cross) {
  return "cross " + std::to_string(cross);
}

class ShaftSolids {
 public:
  ShaftSolids(SolidsMaker& maker, const ShaftLine& line) : maker_(maker), line_(line) {}

  void add() {
    for (std::size_t i = 0; i < line_.crosses.size(); ++i) add_joint(i);
    for (std::size_t i = 0; i < line_.spans.size(); ++i) add_shaft(i);
  }

 private:
  const ShaftJoint& joint_of(std::size_t cross) const {
    return line_.station.joints[static_cast<std::size_t>(line_.crosses[cross].joint)];
  }
  static SolidBody hand_side(std::size_t cross) {
    return {SolidBody::Kind::hand_side_of_joint, Body::chassis, static_cast<int>(cross)};
  }
  static SolidBody road_side(std::size_t cross) {
    return {SolidBody::Kind::road_side_of_joint, Body::chassis, static_cast<int>(cross)};
  }

  double shaft_radius_before(std::size_t cross) const {
    return cross == 0 ? 0.5 * line_.column.output.diameter : shaft_radius_after(cross - 1);
  }
  double shaft_radius_after(std::size_t cross) const {
    if (cross >= line_.spans.size()) return 0.5 * maker_.project.steering_box->input.diameter;
    const int shaft = line_.spans[cross].shaft;
    return shaft < 0 ? 0.5 * line_.column.output.diameter
                     : 0.5 * line_.station.shafts[static_cast<std::size_t>(shaft)].section.diameter;
  }

  // Its ears out to the shaft's end, then the hub that grips it.
  static void add_yoke(SolidPart& part, const Vec3& centre, const Vec3& away,
                       const ShaftJoint& joint, double shaft_radius, const SolidBody& body) {
    const Vec3 root = centre + joint.yoke_depth * away;
    // Round edges: a shallow overlap then has a depth.
    part.pieces.push_back(
        {rounded_cylinder(centre, root, kUsualYoke, 0.4 * kUsualYoke), body, true});
    part.pieces.push_back({rounded_cylinder(root, root + joint.grip_length * away,
                                            shaft_radius + kUsualHubWall, kUsualHubWall),
                           body, true});
  }

  // Both yokes, each about its own shaft's line.
  void add_joint(std::size_t i) {
    const DrawnCross& cross = line_.crosses[i];
    const ShaftJoint& joint = joint_of(i);
    const auto index = static_cast<std::size_t>(cross.joint);
    SolidPart part{joint.name.empty() ? "joint " + std::to_string(index + 1) : joint.name,
                   item_path("shaft_line.joints", index) + ".centre_mm",
                   {},
                   {cross_joint(i), cross_joint(i + 1)}};
    // Its neighbours sit on the same shaft; the first and the last on column and box.
    if (i > 0) part.joints.push_back(cross_joint(i - 1));
    if (i == 0) part.joints.emplace_back("column end");
    const Vec3& at = cross.centre_mm;
    part.pieces.push_back({ball(at, kUsualYoke), hand_side(i), true});
    add_yoke(part, at, -cross.geometry.in_direction, joint, shaft_radius_before(i), hand_side(i));
    add_yoke(part, at, cross.geometry.out_direction, joint, shaft_radius_after(i), road_side(i));
    maker_.add(std::move(part));
  }

  void add_shaft(std::size_t i) {
    const DrawnSpan& span = line_.spans[i];
    if (span.shaft < 0) return;  // the middle piece of a double joint is its two yokes
    const auto index = static_cast<std::size_t>(span.shaft);
    const Shaft& shaft = line_.station.shafts[index];
    const Vec3 from = line_.crosses[i].centre_mm;
    const Vec3 along = line_.crosses[i].geometry.out_direction;
    const double start = joint_of(i).yoke_depth;
    const double end = span.length - joint_of(i + 1).yoke_depth;
    if (end - start < 5.0) return;
    const double radius = 0.5 * shaft.outside_diameter;
    SolidPart part{
        shaft.name.empty() ? "shaft " + std::to_string(index + 1) : shaft.name + " shaft",
        item_path("shaft_line.shafts", index),
        {},
        {cross_joint(i), cross_joint(i + 1)}};
    if (!span.slips) {
      part.pieces.push_back({rounded_cylinder(from + start * along, from + end * along, radius),
                             road_side(i), false});
    } else {
      // The outer half at the hand, the inner half at the road, engaged about the middle.
      constexpr double kOuterWall = 5.0;
      const double overlap = std::clamp(shaft.engagement.value_or(3.0 * radius), 0.0, end - start);
      const double middle = 0.5 * (start + end);
      part.pieces.push_back(
          {rounded_cylinder(from + start * along, from + (middle + 0.5 * overlap) * along,
                            radius + kOuterWall),
           road_side(i), true});
      part.pieces.push_back(
          {rounded_cylinder(from + (middle - 0.5 * overlap) * along, from + end * along, radius),
           hand_side(i + 1), false});
    }
    maker_.add(std::move(part));
  }

  SolidsMaker& maker_;
  const ShaftLine& line_;
};

void add_column(SolidsMaker& maker) {
  const ColumnStation& column = *maker.project.column;
  const Vec3 wheel = maker.in_chassis(column.hand_wheel_centre);
  const Vec3 end = maker.in_chassis(column.output_end);
  SolidPart part{"column", "column", {}, {"column end"}};
  const SolidBody cab = rides(Body::cab);
  part.pieces.push_back(
      {rounded_cylinder(wheel + 0.14 * (end - wheel), wheel + 0.93 * (end - wheel), kUsualJacket),
       cab, true});
  part.pieces.push_back(
      {rounded_cylinder(wheel + 0.5 * (end - wheel), end, 0.5 * column.output.diameter), cab,
       false});
  maker.add(std::move(part));
}

}  // namespace

void add_shaft_solids(SolidsMaker& maker) {
  if (maker.project.column) add_column(maker);
  if (!maker.mechanism.shaft_line || !maker.mechanism.shaft_line->has_joints) return;
  ShaftSolids(maker, *maker.mechanism.shaft_line).add();
}

}  // namespace tackbench
