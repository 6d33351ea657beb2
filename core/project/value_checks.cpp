#include "core/project/value_checks.h"

#include <fmt/format.h>

#include <algorithm>
#include <map>

#include "core/basics/units.h"
#include "core/project/choice_words.h"
#include "core/project/field_path.h"
#include "core/project/field_walk.h"
#include "core/project/fields.h"
#include "core/project/number_text.h"

namespace tackbench {

namespace {

// Two places closer than this give no direction and no lever, mm.
constexpr double kLeastDistance = 0.1;

bool coincide(const Vec3& a, const Vec3& b) {
  return (a - b).norm() < kLeastDistance;
}

std::string indexed(std::string_view list, std::size_t index) {
  return fmt::format("{}[{}]", list, index);
}

void report(Problems& problems, std::string place, std::string found, std::string wanted) {
  problems.push_back({"", std::move(place), std::move(found), std::move(wanted)});
}

// Names are what paths and findings call a record by, so each list may hold one only once.
class DuplicateNames final : public FieldWalk {
 public:
  explicit DuplicateNames(Problems& problems) : problems_(problems) {}

  void text(const TextField& field, std::string& value) override {
    if (field.kind != TextKind::name || lists_.empty()) return;
    const auto [first, fresh] = lists_.back().emplace(value, place());
    if (!fresh) {
      report(problems_, place_of(field),
             fmt::format("\"{}\" is the name of {} already", value, first->second),
             "give each its own name");
    }
  }
  void list_access(const FieldLabel& field, ListAccess& list) override {
    lists_.emplace_back();
    FieldWalk::list_access(field, list);
    lists_.pop_back();
  }

 private:
  Problems& problems_;
  std::vector<std::map<std::string, std::string>> lists_;  // name to place
};

// A picture or scan that was begun and not chosen yet.
class UnnamedFiles final : public FieldWalk {
 public:
  explicit UnnamedFiles(Problems& problems) : problems_(problems) {}

  void text(const TextField& field, std::string& value) override {
    if (!value.empty()) return;
    if (field.kind == TextKind::relative_path) {
      report(problems_, place_of(field), "no file is chosen",
             "give its path, seen from the project's own folder");
    } else if (field.kind == TextKind::sha256) {
      report(problems_, place_of(field), "the file's checksum is missing",
             "give its SHA-256, 64 hex digits");
    }
  }

 private:
  Problems& problems_;
};

void check_section(const ShaftSection& section, const std::string& place, Problems& problems) {
  if (section.kind == SectionKind::double_d && section.across_flats &&
      *section.across_flats >= section.diameter) {
    report(problems, place + ".across_flats_mm",
           fmt::format("{} is not less than the diameter {}", number_text(*section.across_flats),
                       number_text(section.diameter)),
           "give less than the diameter");
  }
}

void check_column(const ColumnStation& column, Problems& problems) {
  if (coincide(column.hand_wheel_centre.mm, column.output_end.mm)) {
    report(problems, "column.output_end_mm", "the output end lies at the hand wheel's centre",
           "give two places, so that the column has an axis");
  }
  check_section(column.output, "column.output", problems);
}

void check_carrier(RidesOn rides_on, const std::string& place, Problems& problems) {
  if (rides_on == RidesOn::chassis || rides_on == RidesOn::cab) return;
  report(problems, place + ".rides_on", fmt::format("{} carries no shaft", word(rides_on)),
         "give chassis or cab");
}

void check_shaft(const Shaft& shaft, const std::string& place, Problems& problems) {
  check_section(shaft.section, place + ".section", problems);
  if (shaft.inside_diameter >= shaft.outside_diameter) {
    report(problems, place + ".inside_diameter_mm",
           fmt::format("{} is not less than the outside diameter {}",
                       number_text(shaft.inside_diameter), number_text(shaft.outside_diameter)),
           "give less, or 0 for a bar");
  }
}

void check_shaft_line(const ShaftLineStation& line, Problems& problems) {
  constexpr std::size_t kMostJoints = 4;
  const std::size_t joints = line.joints.size();
  if (joints > kMostJoints) {
    report(problems, "shaft_line.joints", fmt::format("{} joints", joints),
           fmt::format("give 0 to {}", kMostJoints));
  }
  const std::size_t shafts = joints > 0 ? joints - 1 : 0;
  if (line.shafts.size() != shafts) {
    report(problems, "shaft_line.shafts",
           fmt::format("{} shafts with {} joints", line.shafts.size(), joints),
           fmt::format("give {}: one between each two joints", shafts));
  }
  for (std::size_t i = 0; i < joints; ++i) {
    const std::string place = indexed("shaft_line.joints", i);
    check_carrier(line.joints[i].rides_on, place, problems);
    if (i > 0 && line.joints[i].rides_on == line.joints[i - 1].rides_on &&
        coincide(line.joints[i].centre, line.joints[i - 1].centre)) {
      report(problems, place + ".centre_mm", "the joint lies at the centre of the one before it",
             "give two places, so that the shaft between has an axis");
    }
  }
  for (std::size_t i = 0; i < line.shafts.size(); ++i) {
    check_shaft(line.shafts[i], indexed("shaft_line.shafts", i), problems);
  }
  for (std::size_t i = 0; i < line.supports.size(); ++i) {
    const ShaftSupport& support = line.supports[i];
    const std::string place = indexed("shaft_line.supports", i);
    check_carrier(support.rides_on, place, problems);
    if (support.shaft < 0 || static_cast<std::size_t>(support.shaft) >= shafts) {
      report(problems, place + ".shaft", fmt::format("there is no shaft {}", support.shaft),
             shafts == 0 ? "leave the support out: there are no shafts"
                         : fmt::format("give 0 to {}", shafts - 1));
    }
  }
}

// A lever needs a length: its ball or pin must stand off the axis.
bool on_axis(const Vec3& point, const Vec3& pivot, const Vec3& axis) {
  return (point - pivot).cross(axis).norm() < kLeastDistance;
}

void check_lever_point(const Vec3& point, const Vec3& pivot, const Vec3& axis, std::string place,
                       Problems& problems) {
  if (!on_axis(point, pivot, axis)) return;
  report(problems, std::move(place), "the point lies on the lever's own axis",
         "give a point beside the axis");
}

void check_steering_box(const SteeringBoxStation& box, Problems& problems) {
  check_section(box.input, "steering_box.input", problems);
  if (!box.ratio && box.ratio_table.empty()) {
    report(problems, "steering_box.ratio", "neither a ratio nor a ratio table is given",
           "give 0.05 to 100: turns of the input for one of the output");
  }
  for (std::size_t i = 1; i < box.ratio_table.size(); ++i) {
    if (box.ratio_table[i].input > box.ratio_table[i - 1].input) continue;
    report(problems, indexed("steering_box.ratio_table", i) + ".input_deg",
           "the input turn does not rise from the row before", "give rows by rising input turn");
  }
  const auto check_cut = [&](const std::optional<double>& cut, double travel, const char* key) {
    if (!cut || *cut <= travel) return;
    report(problems, key, "the assist is cut off beyond the end of the box's travel",
           "give at most the travel on that side");
  };
  check_cut(box.assist_cut_left, box.travel_left, "steering_box.assist_cut_left_deg");
  check_cut(box.assist_cut_right, box.travel_right, "steering_box.assist_cut_right_deg");
  for (std::size_t i = 0; i < box.relays.size(); ++i) {
    const Relay& relay = box.relays[i];
    const std::string place = indexed("steering_box.relays", i);
    check_lever_point(relay.input_ball.mm, relay.pivot.mm, relay.axis.along,
                      place + ".input_ball_mm", problems);
    check_lever_point(relay.output_ball.mm, relay.pivot.mm, relay.axis.along,
                      place + ".output_ball_mm", problems);
  }
}

void check_drag_link(const DragLinkStation& link, Problems& problems) {
  if (link.tube && 2.0 * link.tube->wall >= link.tube->outside_diameter) {
    report(problems, "drag_link.tube.wall_mm",
           fmt::format("{} leaves no bore in a tube of {} outside diameter",
                       number_text(link.tube->wall), number_text(link.tube->outside_diameter)),
           "give less than half the outside diameter");
  }
  const auto check_end = [&](const LinkEnd& end, const std::string& place) {
    if (end.thread_engagement && end.shank_length && *end.thread_engagement > *end.shank_length) {
      report(problems, place + ".thread_engagement_mm",
             fmt::format("{} is more than the shank length {}", number_text(*end.thread_engagement),
                         number_text(*end.shank_length)),
             "give at most the shank length");
    }
  };
  check_end(link.arm_end, "drag_link.arm_end");
  check_end(link.knuckle_end, "drag_link.knuckle_end");
}

void check_knuckle(const KnuckleSide& knuckle, const std::string& place, Problems& problems) {
  for (std::size_t i = 0; i < knuckle.stops.size(); ++i) {
    const LockStop& stop = knuckle.stops[i];
    // Straight ahead a bolt may look far past its pad, but never along the pad's own normal.
    if (stop.bolt_axis.dot(stop.pad_normal) >= 0.0) {
      report(problems, indexed(place + ".stops", i) + ".bolt_axis",
             "the bolt points away from its pad",
             "give the bolt's axis towards its tip and the pad's normal out of the pad");
    }
  }
}

void check_front_axle(const FrontAxleStation& axle, Problems& problems) {
  check_knuckle(axle.left_knuckle, "front_axle.left_knuckle", problems);
  if (axle.right_knuckle) check_knuckle(*axle.right_knuckle, "front_axle.right_knuckle", problems);
  const Suspension& suspension = axle.suspension;
  if (suspension.kind == SuspensionKind::leaf && !suspension.leaf) {
    report(problems, "front_axle.suspension.leaf", "leaf suspension without its leaf spring",
           "give the group \"leaf\", or another kind");
  }
  if (suspension.kind == SuspensionKind::radius_arms && !suspension.radius_arms) {
    report(problems, "front_axle.suspension.radius_arms", "radius arms are not given",
           "give the group \"radius_arms\", or another kind");
  }
  const Tyre& tyre = axle.tyre;
  if (2.0 * tyre.loaded_radius > tyre.diameter) {
    report(problems, "front_axle.tyre.loaded_radius_mm",
           fmt::format("{} is more than half the diameter {}", number_text(tyre.loaded_radius),
                       number_text(tyre.diameter)),
           "give at most half the diameter");
  }
  if (2.0 * tyre.shoulder_radius > tyre.width) {
    report(problems, "front_axle.tyre.shoulder_radius_mm",
           fmt::format("{} is more than half the width {}", number_text(tyre.shoulder_radius),
                       number_text(tyre.width)),
           "give at most half the width");
  }
}

void check_pedals(const PedalsStation& station, Problems& problems) {
  std::map<PedalUse, std::size_t> first_of;
  for (std::size_t i = 0; i < station.pedals.size(); ++i) {
    const Pedal& pedal = station.pedals[i];
    const std::string place = indexed("pedals.pedals", i);
    const auto [first, fresh] = first_of.emplace(pedal.use, i);
    if (!fresh) {
      report(problems, place + ".use",
             fmt::format("{} is the use of {} already", word(pedal.use),
                         indexed("pedals.pedals", first->second)),
             "give one brake, at most one clutch and one accelerator");
    }
    constexpr double kLeastTravel = 0.1 * kRadiansPerDegree;
    if (pedal.full_travel < kLeastTravel) {
      report(problems, place + ".full_travel_deg", "the pedal's full travel is not measured",
             "give 0.1 to 120");
    }
    if (pedal.rod && pedal.cable) {
      report(problems, place + ".cable", "the pedal has a push rod and a cable",
             "give one of the two");
    }
    check_lever_point(pedal.pad_centre.mm, pedal.pivot.mm, pedal.axis.along,
                      place + ".pad_centre_mm", problems);
    if (pedal.rod) {
      check_lever_point(pedal.rod->pedal_pin.mm, pedal.pivot.mm, pedal.axis.along,
                        place + ".rod.pedal_pin_mm", problems);
    }
    if (pedal.cable) {
      check_lever_point(pedal.cable->pedal_pin.mm, pedal.pivot.mm, pedal.axis.along,
                        place + ".cable.pedal_pin_mm", problems);
    }
  }
  if (!station.pedals.empty() && !first_of.contains(PedalUse::brake)) {
    report(problems, "pedals.pedals", "no pedal is the brake", "give one brake");
  }
}

void check_driver(const DriverStation& driver, Problems& problems) {
  constexpr std::size_t kMostDrawn = 3;
  if (driver.drawn.size() > kMostDrawn) {
    report(problems, "driver.drawn", fmt::format("{} drawn people", driver.drawn.size()),
           fmt::format("give at most {}", kMostDrawn));
  }
  if (driver.roof_height && *driver.roof_height <= driver.floor_height) {
    report(problems, "driver.roof_height_mm",
           fmt::format("{} is not above the floor at {}", number_text(*driver.roof_height),
                       number_text(driver.floor_height)),
           "give more than floor_height_mm");
  }
}

void check_shape(const Shape& shape, const std::string& place, Problems& problems) {
  const bool long_shape = shape.kind == ShapeKind::tube || shape.kind == ShapeKind::cylinder;
  if (long_shape && coincide(shape.place, shape.end)) {
    report(problems, place + ".end_mm", "the far end lies at the near end", "give two places");
  }
  if (shape.kind == ShapeKind::tube && 2.0 * shape.wall >= shape.diameter) {
    report(problems, place + ".wall_mm",
           fmt::format("{} leaves no bore in a tube of {}", number_text(shape.wall),
                       number_text(shape.diameter)),
           "give less than half the diameter");
  }
  if (shape.kind == ShapeKind::mesh && !shape.mesh) {
    report(problems, place + ".mesh", "a mesh without its scan file",
           "give the scan's path and sha256");
  }
  if (shape.kind != ShapeKind::plate && !shape.holes.empty()) {
    report(problems, place + ".holes", fmt::format("holes in a {}", word(shape.kind)),
           "give holes in plates only");
  }
}

void check_shapes(const ShapesStation& station, Problems& problems) {
  for (std::size_t i = 0; i < station.shapes.size(); ++i) {
    check_shape(station.shapes[i], indexed("shapes.shapes", i), problems);
  }
  for (std::size_t i = 0; i < station.stretch_pairs.size(); ++i) {
    const StretchPair& pair = station.stretch_pairs[i];
    if (pair.least && pair.greatest && *pair.least > *pair.greatest) {
      report(problems, indexed("shapes.stretch_pairs", i) + ".least_mm",
             fmt::format("{} is more than the open length {}", number_text(*pair.least),
                         number_text(*pair.greatest)),
             "give at most greatest_mm");
    }
  }
  if (station.rails && 2.0 * station.rails->flange > station.rails->outside_width) {
    report(problems, "shapes.rails.flange_mm", "the two rails overlap",
           "give at most half of outside_width_mm");
  }
  if (station.rails && station.rails->rear_end >= station.rails->front_end) {
    report(problems, "shapes.rails.rear_end_mm", "the rear end is not behind the front end",
           "give less than front_end_mm");
  }
}

void check_measurements(const Project& project, Problems& problems) {
  const MeasurementsStation& station = *project.measurements;
  const auto check_point = [&](const std::string& point, const std::string& place) {
    const bool datum = std::any_of(station.datums.begin(), station.datums.end(),
                                   [&](const DatumPoint& d) { return d.name == point; });
    if (datum || point_at(project, point)) return;
    report(problems, place, fmt::format("there is no point \"{}\"", point),
           "give a datum's name or a point's member path, such as steering_box.input_end_mm");
  };
  const auto check_list = [&](const auto& readings, std::string_view list) {
    for (std::size_t i = 0; i < readings.size(); ++i) {
      const std::string place = indexed(list, i);
      check_point(readings[i].from, place + ".from");
      constexpr bool kToMayBeFloor =
          std::is_same_v<std::decay_t<decltype(readings[i])>, PlumbReading>;
      if (!kToMayBeFloor || !readings[i].to.empty()) check_point(readings[i].to, place + ".to");
      if (readings[i].from == readings[i].to) {
        report(problems, place + ".to", "both points are the same", "give two points");
      }
    }
  };
  check_list(station.tapes, "measurements.tapes");
  check_list(station.plumbs, "measurements.plumbs");
  check_list(station.angles, "measurements.angles");
}

void check_limits(const LimitsStation& limits, Problems& problems) {
  const auto check_order = [&](const std::optional<double>& low, const std::optional<double>& high,
                               const std::string& place, const char* found, const char* wanted) {
    if (low && high && *low > *high) report(problems, place, found, wanted);
  };
  for (std::size_t i = 0; i < limits.choices.size(); ++i) {
    const LimitChoice& choice = limits.choices[i];
    const std::string place = indexed("limits.choices", i);
    check_order(choice.least, choice.most, place + ".least", "least is more than most",
                "give at most the value of most");
    check_order(choice.least, choice.least_inner, place + ".least_inner",
                "least_inner lies outside the limit", "give at least the value of least");
    check_order(choice.most_inner, choice.most, place + ".most_inner",
                "most_inner lies outside the limit", "give at most the value of most");
  }
}

}  // namespace

Problems value_problems(const Project& project) {
  Problems problems;
  Project copy = project;
  DuplicateNames names(problems);
  visit_fields(names, copy);
  UnnamedFiles files(problems);
  visit_fields(files, copy);
  if (project.column) check_column(*project.column, problems);
  if (project.shaft_line) check_shaft_line(*project.shaft_line, problems);
  if (project.steering_box) check_steering_box(*project.steering_box, problems);
  if (project.drag_link) check_drag_link(*project.drag_link, problems);
  if (project.front_axle) check_front_axle(*project.front_axle, problems);
  if (project.pedals) check_pedals(*project.pedals, problems);
  if (project.driver) check_driver(*project.driver, problems);
  if (project.shapes) check_shapes(*project.shapes, problems);
  if (project.measurements) check_measurements(project, problems);
  if (project.limits) check_limits(*project.limits, problems);
  return problems;
}

}  // namespace tackbench
