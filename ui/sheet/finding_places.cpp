#include "ui/sheet/finding_places.h"

#include <string_view>

#include "core/findings/build_finding.h"
#include "core/project/front_axle.h"

namespace tackbench::ui {

namespace {

using Paths = std::vector<std::string>;

std::string item(const char* list, std::size_t index, const char* member = "") {
  return std::string(list) + '[' + std::to_string(index) + ']' + member;
}

// "shaft.joint.upper_joint.angle" after "shaft.joint.": its name is the next part.
bool names(std::string_view rest, const std::string& name, std::size_t index) {
  const std::string part = name_part(name, index);
  return rest.starts_with(part) && (rest.size() == part.size() || rest[part.size()] == '.');
}

Paths all_joints(const ShaftLineStation& line) {
  Paths paths;
  const std::size_t count = line.joints.size();
  if (count == 0) return paths;
  const std::size_t middle = count / 2;
  paths.push_back(item("shaft_line.joints", middle, ".centre_mm"));
  for (std::size_t i = 0; i < count; ++i)
    if (i != middle) paths.push_back(item("shaft_line.joints", i, ".centre_mm"));
  return paths;
}

Paths shaft_places(const Project& project, std::string_view name) {
  if (name.starts_with("shaft.column_end")) return {"column.output_end_mm"};
  if (name.starts_with("shaft.box_end")) return {"steering_box.input_end_mm"};
  if (!project.shaft_line) return {};
  const ShaftLineStation& line = *project.shaft_line;
  constexpr std::string_view kJoint = "shaft.joint.";
  constexpr std::string_view kSupport = "shaft.support.";
  constexpr std::string_view kShaft = "shaft.";
  if (name.starts_with(kJoint)) {
    for (std::size_t i = 0; i < line.joints.size(); ++i)
      if (names(name.substr(kJoint.size()), line.joints[i].name, i))
        return {item("shaft_line.joints", i, ".centre_mm")};
  }
  if (name.starts_with(kSupport)) {
    for (std::size_t i = 0; i < line.supports.size(); ++i)
      if (names(name.substr(kSupport.size()), line.supports[i].name, i))
        return {item("shaft_line.supports", i, ".eye_mm")};
  }
  for (std::size_t i = 0; i < line.shafts.size() && i + 1 < line.joints.size(); ++i)
    if (names(name.substr(kShaft.size()), line.shafts[i].name, i))
      return {item("shaft_line.joints", i, ".centre_mm"),
              item("shaft_line.joints", i + 1, ".centre_mm")};
  return all_joints(line);
}

Paths stops_of(const FrontAxleStation& axle, Side lock) {
  Paths paths;
  for (const Side side : {Side::left, Side::right}) {
    const KnuckleSide knuckle = knuckle_side(axle, side);
    const char* list =
        side == Side::left ? "front_axle.left_knuckle.stops" : "front_axle.right_knuckle.stops";
    for (std::size_t i = 0; i < knuckle.stops.size(); ++i) {
      if (knuckle.stops[i].lock != lock) continue;
      paths.push_back(item(list, i, ".pad_centre_mm"));
      paths.push_back(item(list, i, ".tip_centre_mm"));
    }
  }
  return paths;
}

const Paths& link_ends() {
  static const Paths ends{"drag_link.knuckle_ball_mm", "steering_box.arm"};
  return ends;
}

Paths lock_places(const Project& project, std::string_view name) {
  if (name.find("toggle") != std::string_view::npos) return link_ends();
  if (name.ends_with(".end") || name.find(".stop") != std::string_view::npos) {
    const Side lock = name.starts_with("lock.left") ? Side::left : Side::right;
    Paths stops = project.front_axle ? stops_of(*project.front_axle, lock) : Paths{};
    if (!stops.empty()) return stops;
  }
  if (name.starts_with("lock.turns") || name == "lock.ratio") return {"steering_box"};
  return {"front_axle.left_knuckle.kingpin_point_mm", "front_axle.right_knuckle.kingpin_point_mm"};
}

Paths pedal_places(const Project& project, std::string_view name) {
  constexpr std::string_view kPedal = "pedal.";
  if (!project.pedals) return {};
  for (std::size_t i = 0; i < project.pedals->pedals.size(); ++i) {
    const Pedal& pedal = project.pedals->pedals[i];
    if (!names(name.substr(kPedal.size()), pedal.name, i)) continue;
    const bool about_rod = name.find("rod") != std::string_view::npos && pedal.rod;
    if (about_rod)
      return {item("pedals.pedals", i, ".rod.cylinder_pin_mm"),
              item("pedals.pedals", i, ".rod.pedal_pin_mm")};
    return {item("pedals.pedals", i, ".pad_centre_mm")};
  }
  return {};
}

Paths stretch_places(const Project& project, std::string_view name) {
  constexpr std::string_view kStretch = "stretch.";
  if (!project.shapes) return {};
  for (std::size_t i = 0; i < project.shapes->stretch_pairs.size(); ++i)
    if (names(name.substr(kStretch.size()), project.shapes->stretch_pairs[i].name, i))
      return {item("shapes.stretch_pairs", i, ".from.at_mm"),
              item("shapes.stretch_pairs", i, ".to.at_mm")};
  return {};
}

}  // namespace

std::vector<std::string> finding_places(const Project& project, const Finding& finding) {
  const std::string_view name = finding.name;
  if (name.starts_with("shaft.")) return shaft_places(project, name);
  if (name.starts_with("link.")) {
    if (name.ends_with("arm_end")) return {"steering_box.arm"};
    if (name.ends_with("knuckle_end")) return {"drag_link.knuckle_ball_mm"};
    return link_ends();
  }
  if (name.starts_with("lock.")) return lock_places(project, name);
  if (name.starts_with("bump.")) return link_ends();
  if (name.starts_with("pedal.")) return pedal_places(project, name);
  if (name.starts_with("stretch.")) return stretch_places(project, name);
  if (name == "steering.direction") return {"steering_box"};
  return {};
}

}  // namespace tackbench::ui
