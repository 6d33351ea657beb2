// Column with its hand wheel, shafts, joints and supports.
#include <algorithm>
#include <cmath>
#include <optional>

#include "core/basics/units.h"
#include "core/drawing/truck_parts.h"

namespace tackbench {

namespace {

// Sizes of what is drawn but not measured.
constexpr double kJacketRadius = 26.0;  // of the column's outer tube
constexpr double kRimRadius = 14.0;     // of the hand wheel's rim
constexpr double kHubRadius = 42.0;
constexpr double kPinReach = 24.0;  // of a cross, to each side
constexpr double kBareShaft = 11.0;

// One joint centre of the line at this pose, or as drawn while the line is not compiled.
struct Centre {
  Vec3 at_mm;
  int joint = 0;
  int span_shaft = -1;  // project's shaft after it; -1 none or a middle piece
  const CrossPose* cross = nullptr;
};

std::vector<Centre> centres(const TruckAtPose& truck) {
  std::vector<Centre> list;
  if (truck.mechanism.shaft_line) {
    const ShaftLine& line = *truck.mechanism.shaft_line;
    for (int i = 0; i < truck.pose.shaft_line.cross_count; ++i) {
      const auto k = static_cast<std::size_t>(i);
      const CrossPose& cross = truck.pose.shaft_line.crosses[k];
      const int shaft = k < line.spans.size() ? line.spans[k].shaft : -1;
      list.push_back({cross.centre_mm, cross.joint, shaft, &cross});
    }
  } else if (truck.project.shaft_line) {
    const auto& joints = truck.project.shaft_line->joints;
    for (std::size_t i = 0; i < joints.size(); ++i) {
      const auto joint = static_cast<int>(i);
      const bool last = i + 1 == joints.size();
      list.push_back(
          {truck.riding(joints[i].rides_on, joints[i].centre), joint, last ? -1 : joint, nullptr});
    }
  }
  return list;
}

Vec3 unit_between(const Vec3& from, const Vec3& to) {
  return (to - from).stableNormalized();
}

std::string joint_part(int joint) {
  return item("shaft_line.joints", static_cast<std::size_t>(joint)) + ".centre_mm";
}

const ShaftJoint* joint_of(const TruckAtPose& truck, int joint) {
  if (!truck.project.shaft_line) return nullptr;
  const auto& joints = truck.project.shaft_line->joints;
  const auto index = static_cast<std::size_t>(joint);
  return joint >= 0 && index < joints.size() ? &joints[index] : nullptr;
}

double yoke_depth(const TruckAtPose& truck, int joint) {
  const ShaftJoint* found = joint_of(truck, joint);
  return found != nullptr ? found->yoke_depth : 25.0;
}

// Two cheeks and a sleeve round the shaft's end: `along` points from the cross to the shaft, `pin`
// is its own.
void draw_yoke(const Vec3& centre, const Vec3& along, const Vec3& pin, double depth,
               const std::string& part, TruckPen& pen) {
  const double reach = 0.8 * kPinReach;
  const Vec3 root = centre + std::max(depth, 12.0) * along;
  for (const double side : {reach, -reach}) {
    const Vec3 cheek = centre + side * pin;
    pen.lever(root + 0.6 * side * pin, 9.0, cheek, 9.0, pin, 3.5, Ink::link, part);
  }
  pen.rod(root - 4.0 * along, root + 30.0 * along, 16.0, Ink::link, part);
}

JointSymbol symbol_of(JointKind kind) {
  switch (kind) {
    case JointKind::universal:
      return JointSymbol::universal_joint;
    case JointKind::double_joint:
    case JointKind::double_centred:
      return JointSymbol::double_joint;
    case JointKind::coupling_disc:
      return JointSymbol::coupling_disc;
  }
  return JointSymbol::universal_joint;
}

void draw_joint(const TruckAtPose& truck, const Centre& centre, const Vec3& before,
                const Vec3& after, TruckPen& pen) {
  const std::string part = joint_part(centre.joint);
  const ShaftJoint* joint = joint_of(truck, centre.joint);
  const JointKind kind = joint != nullptr ? joint->kind : JointKind::universal;
  if (kind == JointKind::coupling_disc) {
    const Vec3 along = (before + after).stableNormalized();
    pen.rod(centre.at_mm - 8.0 * along, centre.at_mm + 8.0 * along, 42.0, Ink::link, part);
    return;
  }
  if (centre.cross == nullptr) return;
  const CrossPose& cross = *centre.cross;
  const double depth = yoke_depth(truck, centre.joint);
  draw_yoke(centre.at_mm, -cross.in_direction, cross.in_pin, depth, part, pen);
  draw_yoke(centre.at_mm, cross.out_direction, cross.out_pin, depth, part, pen);
  for (const Vec3& pin : {cross.in_pin, cross.out_pin})
    pen.rod(centre.at_mm - kPinReach * pin, centre.at_mm + kPinReach * pin, 6.0, Ink::link, part);
}

void draw_shaft(const TruckAtPose& truck, const Centre& from, const Centre& to, TruckPen& pen) {
  const Vec3 between = to.at_mm - from.at_mm;
  const double length = between.norm();
  if (!(length > 2.0)) return;
  const Vec3 along = between / length;
  const auto index = static_cast<std::size_t>(std::max(from.span_shaft, 0));
  const Shaft* shaft = nullptr;
  if (from.span_shaft >= 0 && truck.project.shaft_line &&
      index < truck.project.shaft_line->shafts.size())
    shaft = &truck.project.shaft_line->shafts[index];
  const std::string part =
      shaft != nullptr ? item("shaft_line.shafts", index) : joint_part(from.joint);
  const double begin = std::min(yoke_depth(truck, from.joint), 0.4 * length);
  const double end = std::min(yoke_depth(truck, to.joint), 0.4 * length);
  const double radius = shaft != nullptr ? shaft->outside_diameter / 2.0 : kBareShaft;
  pen.rod(from.at_mm + begin * along, to.at_mm - end * along, radius, Ink::link, part);
  if (shaft != nullptr && shaft->slip != SlipKind::none) {
    // The outer half reaches over the inner one from the road side.
    const double over = std::min(shaft->engagement.value_or(60.0), 0.5 * length);
    const Vec3 mouth = from.at_mm + (0.5 * length - 0.5 * over) * along;
    pen.rod(mouth, to.at_mm - end * along, radius + 6.0, Ink::link, part);
  }
}

void draw_hand_wheel_spokes(const ColumnStation& column, const Vec3& centre, const Vec3& axis,
                            double turn, double rim, TruckPen& pen) {
  // A left turn is left-handed about the axis from hand to road.
  const Vec3 up = square_to(axis, Vec3::UnitZ());
  const double depth = std::min(45.0, 0.1 * column.hand_wheel_diameter);
  const Vec3 hub = centre + depth * axis;
  for (int i = 0; i < 3; ++i) {
    const Vec3 way = turned(-up, axis, -turn + kRadiansPerTurn * i / 3.0);
    pen.cone(hub + 0.8 * kHubRadius * way, 13.0, centre + (rim - kRimRadius) * way, 9.0, Ink::arm,
             "column.hand_wheel_centre_mm");
  }
  pen.rod(hub - 14.0 * axis, hub + 30.0 * axis, kHubRadius, Ink::arm,
          "column.hand_wheel_centre_mm");
}

}  // namespace

void draw_shafts(const TruckAtPose& truck, TruckPen& pen) {
  const std::vector<Centre> line = centres(truck);
  if (line.empty()) {
    // The column drives the box directly.
    if (truck.project.column && truck.project.steering_box)
      pen.rod(truck.in_cab(truck.project.column->output_end),
              truck.project.steering_box->input_end.mm, kBareShaft, Ink::link, "column");
    return;
  }
  const Centre& first = line.front();
  const Centre& last = line.back();
  std::optional<Vec3> hand;
  std::optional<Vec3> road;
  if (truck.project.column) hand = truck.in_cab(truck.project.column->output_end);
  if (truck.project.steering_box) road = truck.project.steering_box->input_end.mm;
  if (hand) {
    const Vec3 along = unit_between(*hand, first.at_mm);
    pen.rod(*hand - 60.0 * along, first.at_mm - yoke_depth(truck, first.joint) * along, kBareShaft,
            Ink::link, "column.output_end_mm");
  }
  for (std::size_t i = 0; i + 1 < line.size(); ++i) draw_shaft(truck, line[i], line[i + 1], pen);
  if (road) {
    const Vec3 along = unit_between(last.at_mm, *road);
    pen.rod(last.at_mm + yoke_depth(truck, last.joint) * along, *road + 20.0 * along, kBareShaft,
            Ink::link, "steering_box.input_end_mm");
  }
  for (std::size_t i = 0; i < line.size(); ++i) {
    const Vec3 before = i > 0  ? unit_between(line[i - 1].at_mm, line[i].at_mm)
                        : hand ? unit_between(*hand, line[i].at_mm)
                               : Vec3(Vec3::Zero());
    const Vec3 after = i + 1 < line.size() ? unit_between(line[i].at_mm, line[i + 1].at_mm)
                       : road              ? unit_between(line[i].at_mm, *road)
                                           : Vec3(Vec3::Zero());
    draw_joint(truck, line[i], before, after, pen);
    const ShaftJoint* joint = joint_of(truck, line[i].joint);
    pen.symbol(joint != nullptr ? symbol_of(joint->kind) : JointSymbol::universal_joint,
               line[i].at_mm, before + after, Ink::link, joint_part(line[i].joint));
  }
}

void draw_supports(const TruckAtPose& truck, TruckPen& pen) {
  if (!truck.project.shaft_line) return;
  const std::vector<Centre> line = centres(truck);
  const auto& supports = truck.project.shaft_line->supports;
  for (std::size_t i = 0; i < supports.size(); ++i) {
    const ShaftSupport& support = supports[i];
    const std::string place = item("shaft_line.supports", i);
    const Vec3 eye = truck.riding(support.rides_on, support.eye);
    const Vec3 base = truck.riding(support.rides_on, support.base);
    Vec3 along = Vec3::Zero();
    for (std::size_t k = 0; k + 1 < line.size(); ++k)
      if (line[k].span_shaft == support.shaft)
        along = unit_between(line[k].at_mm, line[k + 1].at_mm);
    pen.rod(base, eye, 11.0, Ink::fixed, place + ".base_mm");
    const Vec3 to_eye = (eye - base).stableNormalized();
    pen.rod(base - 5.0 * to_eye, base + 5.0 * to_eye, 34.0, Ink::fixed, place + ".base_mm");
    if (along.norm() > 0.5) {
      const double half = support.width / 2.0;
      pen.rod(eye - half * along, eye + half * along, support.bore / 2.0 + 13.0, Ink::fixed,
              place + ".eye_mm");
    }
    pen.symbol(JointSymbol::bearing, eye, along, Ink::fixed, place + ".eye_mm");
  }
}

void draw_column(const TruckAtPose& truck, TruckPen& pen) {
  if (!truck.project.column) return;
  const ColumnStation& column = *truck.project.column;
  const Vec3 wheel = truck.in_cab(column.hand_wheel_centre);
  const Vec3 end = truck.in_cab(column.output_end);
  const double length = (end - wheel).norm();
  if (!(length > 1.0)) return;
  const Vec3 axis = (end - wheel) / length;
  const double begin = std::min(95.0, 0.3 * length);
  const double bare = std::min(45.0, 0.2 * length);
  pen.rod(wheel + begin * axis, wheel + 0.55 * length * axis, 1.25 * kJacketRadius, Ink::fixed,
          "column");
  pen.rod(wheel + 0.55 * length * axis, end - bare * axis, kJacketRadius, Ink::fixed, "column");
  for (std::size_t i = 0; i < column.bearings.size(); ++i) {
    const double from = column.bearings[i].from_hand_wheel;
    const Vec3 place = wheel + from * axis;
    pen.rod(place - 12.0 * axis, place + 12.0 * axis, 1.5 * kJacketRadius, Ink::fixed,
            item("column.bearings", i));
  }
  pen.path({wheel - 60.0 * axis, end + 60.0 * axis}, Ink::centre, "column");
}

void draw_hand_wheel(const TruckAtPose& truck, TruckPen& pen) {
  if (!truck.project.column) return;
  const ColumnStation& column = *truck.project.column;
  const Vec3 centre = truck.in_cab(column.hand_wheel_centre);
  const Vec3 between = truck.in_cab(column.output_end) - centre;
  const double length = between.norm();
  if (!(length > 1.0)) return;
  const Vec3 axis = between / length;
  const double rim = column.hand_wheel_diameter / 2.0;
  const char* const part = "column.hand_wheel_centre_mm";
  const bool from_behind = pen.towards_eye(axis) > 0.0;
  // Rim as two lines, so that one sees through it.
  const auto draw_rim = [&] {
    pen.rim({centre, axis, rim - kRimRadius}, kRimRadius, Ink::arm, part);
    pen.ring({centre, axis, rim - 2.0 * kRimRadius}, Ink::arm, part);
  };
  if (from_behind) draw_rim();
  draw_hand_wheel_spokes(column, centre, axis, truck.hand_wheel(), rim, pen);
  if (!from_behind) draw_rim();
}

}  // namespace tackbench
