#include <fmt/core.h>

#include <Eigen/Geometry>
#include <string>

#include "core/basics/units.h"
#include "core/mechanism/shaft_follow.h"
#include "core/mechanism/shaft_line.h"

namespace tackbench {
namespace {

constexpr double kApart = 1.0;         // joint centres nearer than this are the same place, mm
constexpr double kLeastCosine = 1e-3;  // a bend this near 90 degrees turns nothing

std::string joint_place(std::size_t joint, const char* member) {
  return fmt::format("shaft_line.joints[{}].{}", joint, member);
}

// Joint centres in the chassis, and every fault of counts and frames.
std::vector<Vec3> joint_centres(const ShaftLine& line, Problems& problems) {
  std::vector<Vec3> centres;
  for (std::size_t i = 0; i < line.station.joints.size(); ++i) {
    const ShaftJoint& joint = line.station.joints[i];
    if (joint.rides_on == RidesOn::cab) {
      centres.push_back((line.cab_as_drawn * Point<Cab>{joint.centre}).mm);
      continue;
    }
    if (joint.rides_on != RidesOn::chassis) {
      problems.push_back({"", joint_place(i, "rides_on"), "a shaft joint cannot ride on the axle",
                          "give chassis or cab"});
    }
    centres.push_back(joint.centre);
  }
  return centres;
}

void check_counts(const ShaftLineStation& station, Problems& problems) {
  if (station.joints.size() > static_cast<std::size_t>(kMostJoints)) {
    problems.push_back({"", "shaft_line.joints", fmt::format("{} joints", station.joints.size()),
                        fmt::format("give at most {}", kMostJoints)});
  }
  const std::size_t wanted = station.joints.empty() ? 0 : station.joints.size() - 1;
  if (station.shafts.size() != wanted) {
    problems.push_back(
        {"", "shaft_line.shafts",
         fmt::format("{} shafts for {} joints", station.shafts.size(), station.joints.size()),
         fmt::format("give {}: one between each joint and the next", wanted)});
  }
  for (std::size_t i = 0; i < station.supports.size(); ++i) {
    const ShaftSupport& support = station.supports[i];
    if (support.shaft < 0 || static_cast<std::size_t>(support.shaft) >= wanted) {
      problems.push_back({"", fmt::format("shaft_line.supports[{}].shaft", i),
                          fmt::format("there is no shaft {}", support.shaft),
                          "give the index of a shaft between two joints, 0 = after the first"});
    }
    if (support.rides_on != RidesOn::chassis && support.rides_on != RidesOn::cab) {
      problems.push_back({"", fmt::format("shaft_line.supports[{}].rides_on", i),
                          "a shaft support cannot ride on the axle", "give chassis or cab"});
    }
  }
}

void check_apart(const ShaftLine& line, const std::vector<Vec3>& centres, Problems& problems) {
  for (std::size_t i = 0; i < centres.size(); ++i) {
    if (!centres[i].allFinite()) {
      problems.push_back({"", joint_place(i, "centre_mm"), "not a place", "give three numbers"});
      return;
    }
    if (i > 0 && (centres[i] - centres[i - 1]).norm() < kApart) {
      problems.push_back({"", joint_place(i, "centre_mm"), "in the same place as the joint before",
                          "give the joint's own centre"});
    }
  }
  const Vec3 from_hand_wheel =
      centres.front() - (line.cab_as_drawn * line.column.hand_wheel_centre).mm;
  if (line.column_axis.along.dot(from_hand_wheel) <= 0.0) {
    problems.push_back({"", joint_place(0, "centre_mm"), "on the driver's side of the hand wheel",
                        "give the centre of the joint at the column's output end"});
  }
}

struct JointDirections {
  Vec3 in;
  Vec3 out;
};

std::vector<JointDirections> joint_directions(const ShaftLine& line,
                                              const std::vector<Vec3>& centres,
                                              Problems& problems) {
  std::vector<JointDirections> directions;
  for (std::size_t i = 0; i < centres.size(); ++i) {
    const Vec3 in =
        i == 0 ? line.column_axis.along : Vec3((centres[i] - centres[i - 1]).normalized());
    const Vec3 out = i + 1 == centres.size() ? line.box_input_axis.along
                                             : Vec3((centres[i + 1] - centres[i]).normalized());
    directions.push_back({in, out});
    if (in.dot(out) < kLeastCosine) {
      problems.push_back({"", joint_place(i, "centre_mm"),
                          fmt::format("the shafts meet there at {:.1f} degrees",
                                      degrees_from_radians(angle_between(in, out))),
                          "a joint bends less than 90 degrees: move a joint, or turn the axis "
                          "round so that it points from hand to road"});
    }
  }
  return directions;
}

JointTurning turning_of(JointKind kind) {
  switch (kind) {
    case JointKind::double_centred:
      return JointTurning::constant_velocity_aligned;
    case JointKind::coupling_disc:
      return JointTurning::constant_velocity_crossed;
    case JointKind::universal:
    case JointKind::double_joint:
      break;
  }
  return JointTurning::cross;
}

// Crosses and the spans between them, geometry not yet filled in. A double joint's centre is where
// the lines of its two shafts meet: each cross stands on its own shaft's line, the two of them
// cross_spacing apart along the bisector.
void lay_out(ShaftLine& line, const std::vector<Vec3>& centres,
             const std::vector<JointDirections>& directions) {
  for (std::size_t i = 0; i < centres.size(); ++i) {
    const ShaftJoint& joint = line.station.joints[i];
    DrawnCross cross;
    cross.joint = static_cast<int>(i);
    cross.rides_on = joint.rides_on;
    cross.geometry.turning = turning_of(joint.kind);
    if (i > 0) {
      DrawnSpan span;
      span.shaft = static_cast<int>(i) - 1;
      span.slips = line.station.shafts[i - 1].slip != SlipKind::none;
      span.fork_offset = line.station.shafts[i - 1].fork_offset;
      line.spans.push_back(span);
    }
    if (joint.kind == JointKind::double_joint) {
      const double half_bend = 0.5 * angle_between(directions[i].in, directions[i].out);
      const double along = 0.5 * joint.cross_spacing / std::cos(half_bend);
      cross.centre_mm = centres[i] - along * directions[i].in;
      line.crosses.push_back(cross);
      line.spans.push_back(DrawnSpan{});
      cross.centre_mm = centres[i] + along * directions[i].out;
      line.crosses.push_back(cross);
    } else {
      cross.centre_mm = centres[i];
      line.crosses.push_back(cross);
    }
  }
  // By nature the column carries the first cross and the box the last; one cross between the two
  // stays with the box.
  line.crosses.front().rides_on = RidesOn::cab;
  line.crosses.back().rides_on = RidesOn::chassis;
}

// Directions, bends and the pins at hand-wheel zero.
void set_geometry(ShaftLine& line, Problems& problems) {
  const std::size_t count = line.crosses.size();
  for (std::size_t i = 0; i < count; ++i) {
    DrawnCross& cross = line.crosses[i];
    const Vec3 in = i == 0 ? line.column_axis.along
                           : Vec3((cross.centre_mm - line.crosses[i - 1].centre_mm).normalized());
    const Vec3 out = i + 1 == count
                         ? line.box_input_axis.along
                         : Vec3((line.crosses[i + 1].centre_mm - cross.centre_mm).normalized());
    if (in.dot(out) < kLeastCosine) {
      problems.push_back({"",
                          joint_place(static_cast<std::size_t>(cross.joint), "cross_spacing_mm"),
                          "there is no room for the double joint beside its neighbour",
                          "give a smaller spacing or move a joint"});
      return;
    }
    cross.geometry = universal_joint(in, out, cross.geometry.turning);
    cross.angle = bend(cross.geometry);
    if (i + 1 < count) {
      line.spans[i].length = (line.crosses[i + 1].centre_mm - cross.centre_mm).norm();
    }
  }
}

// Pins at hand-wheel zero, handed down the chain.
void set_pins(ShaftLine& line) {
  const std::size_t count = line.crosses.size();
  const Vec3 up = line.cab_as_drawn.turn.col(2);
  Vec3 pin = turned(square_to(line.column_axis.along, up), line.column_axis.along,
                    line.station.first_yoke_clocking);
  PinAngle in;
  for (std::size_t i = 0; i < count; ++i) {
    DrawnCross& cross = line.crosses[i];
    const UniversalJoint& joint = cross.geometry;
    cross.in_pin = pin;
    cross.out_pin = out_pin_of(joint.in_direction, joint.out_direction, joint.turning, pin);
    cross.in_at_zero = i == 0 ? in_pin_angle(joint, pin) : in;
    const JointAnswer answer = turn_out(joint, cross.in_at_zero);
    cross.out_at_zero = answer.pin;
    cross.lead_at_zero = answer.lead;
    if (i + 1 == count) break;
    DrawnSpan& span = line.spans[i];
    const UniversalJoint& next = line.crosses[i + 1].geometry;
    span.to_next =
        in_pin_angle(next, turned(joint.out_zero, joint.out_direction, span.fork_offset));
    pin = turned(cross.out_pin, joint.out_direction, span.fork_offset);
    // Chained as posing chains it, so that no turn of the hand wheel gives exactly none of the box.
    in = answer.pin + span.to_next;
  }
}

int span_of_shaft(const ShaftLine& line, int shaft) {
  for (std::size_t i = 0; i < line.spans.size(); ++i) {
    if (line.spans[i].shaft == shaft) return static_cast<int>(i);
  }
  return 0;
}

std::string support_place(std::size_t support, const char* member) {
  return fmt::format("shaft_line.supports[{}].{}", support, member);
}

// Nothing is held by an eye that its shaft does not reach or does not go through.
void check_support(const ShaftLine& line, std::size_t index, const DrawnSupport& drawn,
                   Problems& problems) {
  const ShaftSupport& support = line.station.supports[index];
  const Shaft& shaft = line.station.shafts[static_cast<std::size_t>(support.shaft)];
  const double length = line.spans[static_cast<std::size_t>(drawn.span)].length;
  const double distance = drawn.from_hand_cross;
  if (!(distance > -kApart && distance < length + kApart)) {
    problems.push_back({"", support_place(index, "eye_mm"),
                        distance < 0.0
                            ? fmt::format("{:.0f} mm before the joint at the hand end of shaft {}",
                                          -distance, support.shaft)
                            : fmt::format("{:.0f} mm beyond the joint at the road end of shaft {}",
                                          distance - length, support.shaft),
                        "give a place between the shaft's two joints, or the index of the shaft "
                        "that goes through the eye"});
  }
  if (support.bore < shaft.outside_diameter) {
    problems.push_back({"", support_place(index, "bore_mm"),
                        fmt::format("shaft {} of {:g} mm does not go through an eye of {:g} mm",
                                    support.shaft, shaft.outside_diameter, support.bore),
                        fmt::format("give a bore of at least {:g}, or the shaft's own diameter "
                                    "(shaft_line.shafts[{}].outside_diameter_mm)",
                                    shaft.outside_diameter, support.shaft)});
  }
}

void place_supports(ShaftLine& line, Problems& problems) {
  for (std::size_t i = 0; i < line.station.supports.size(); ++i) {
    const ShaftSupport& support = line.station.supports[i];
    const Vec3 eye = support.rides_on == RidesOn::cab
                         ? (line.cab_as_drawn * Point<Cab>{support.eye}).mm
                         : support.eye;
    DrawnSupport drawn;
    drawn.support = static_cast<int>(i);
    drawn.span = span_of_shaft(line, support.shaft);
    drawn.rides_on = support.rides_on;
    const auto span = static_cast<std::size_t>(drawn.span);
    const Vec3& from = line.crosses[span].centre_mm;
    drawn.along = line.crosses[span].geometry.out_direction;
    const double distance = drawn.along.dot(eye - from);
    drawn.from_hand_cross = distance;
    drawn.eye_mm = eye;
    drawn.on_line_mm = from + distance * drawn.along;
    drawn.off_line = (eye - drawn.on_line_mm).norm();
    drawn.holds_direction = support.kind == SupportKind::bearing_block;
    drawn.holds_lengthways = support.collar;
    drawn.on_road_half = support.on_road_half;
    drawn.collar_distance = support.on_road_half ? line.spans[span].length - distance : distance;
    check_support(line, i, drawn, problems);
    line.supports.push_back(drawn);
  }
}

}  // namespace

Result<ShaftLine> compile_shaft_line(const Project& project) {
  Problems problems;
  if (!project.column) {
    problems.push_back({"", "column", "there is no column", "give the column"});
  }
  if (!project.steering_box) {
    problems.push_back({"", "steering_box", "there is no steering box", "give the steering box"});
  }
  if (!problems.empty()) return problems;

  ShaftLine line;
  if (project.shaft_line) line.station = *project.shaft_line;
  line.column = *project.column;
  if (project.cab) {
    line.shake = project.cab->shake;
    line.cab_as_drawn = chassis_from_cab(*project.cab);
  }
  if ((line.column.output_end.mm - line.column.hand_wheel_centre.mm).norm() < kApart) {
    return Problem{"", "column.output_end_mm", "in the same place as the hand wheel's centre",
                   "give the lower end of the column"};
  }
  line.column_axis = line.cab_as_drawn * column_axis(line.column);
  line.box_input_end = project.steering_box->input_end;
  line.box_input_axis = {project.steering_box->input_axis.along.normalized()};
  if (!line.box_input_axis.along.allFinite() || line.box_input_axis.along.norm() < 0.5) {
    return Problem{"", "steering_box.input_axis", "not a direction",
                   "give the axis from hand to road"};
  }
  line.has_joints = !line.station.joints.empty();

  check_counts(line.station, problems);
  if (!problems.empty()) return problems;
  if (!line.has_joints) return line;

  const std::vector<Vec3> centres = joint_centres(line, problems);
  check_apart(line, centres, problems);
  if (!problems.empty()) return problems;
  const std::vector<JointDirections> directions = joint_directions(line, centres, problems);
  if (!problems.empty()) return problems;
  lay_out(line, centres, directions);
  set_geometry(line, problems);
  if (!problems.empty()) return problems;
  set_pins(line);
  place_supports(line, problems);
  if (!problems.empty()) return problems;
  mark_held(line);
  return line;
}

ShaftLine with_fork_offsets(ShaftLine line, const std::vector<double>& fork_offsets) {
  for (DrawnSpan& span : line.spans) {
    if (span.shaft < 0) continue;
    const auto shaft = static_cast<std::size_t>(span.shaft);
    span.fork_offset = fork_offsets[shaft];
    line.station.shafts[shaft].fork_offset = fork_offsets[shaft];
  }
  if (line.has_joints) set_pins(line);
  return line;
}

}  // namespace tackbench
