#include "core/project/grips.h"

#include <algorithm>

#include "core/project/field_path.h"
#include "core/project/grip_list.h"
#include "core/project/number_text.h"

namespace tackbench {

namespace {

std::string vector_text(const Vec3& value) {
  return '[' + number_text(value.x()) + ", " + number_text(value.y()) + ", " +
         number_text(value.z()) + ']';
}

// Micrometres: a dragged place is written without the noise of the arithmetic.
Vec3 rounded(const Vec3& mm) {
  constexpr double kSteps = 1000.0;
  return (mm * kSteps).array().round() / kSteps;
}

Vec3 on_circle(const Grip& grip, const Vec3& wanted_mm) {
  const Vec3 drawn = grip.at_mm - grip.centre_mm;
  Vec3 arm = wanted_mm - grip.centre_mm;
  arm -= grip.along.dot(arm) * grip.along;
  const double length = arm.norm();
  if (length < 1e-6) return grip.at_mm;  // no direction to go by
  return grip.centre_mm + arm * (drawn.norm() / length);
}

// Members of the cab's own frame are written in it.
bool written_in_cab_frame(const Grip& grip) {
  if (grip.body != Body::cab && grip.body != Body::pedal) return false;
  return grip.station != Station::front_axle;
}

Vec3 in_file_frame(const Project& project, const Grip& grip, const Vec3& chassis_mm) {
  Vec3 place_mm = chassis_mm;
  if (written_in_cab_frame(grip))
    place_mm = (grip_list::drawn_cab(project).inverse() * Point<Chassis>{chassis_mm}).mm;
  if (grip.mirrored) place_mm.y() = -place_mm.y();
  return rounded(place_mm);
}

std::string written_member(const Grip& grip) {
  constexpr std::string_view kRight = "front_axle.right_knuckle";
  if (!grip.mirrored) return grip.path;
  return "front_axle.left_knuckle" + grip.path.substr(kRight.size());
}

}  // namespace

Body body_of(RidesOn rides_on) {
  switch (rides_on) {
    case RidesOn::chassis:
      return Body::chassis;
    case RidesOn::cab:
      return Body::cab;
    case RidesOn::axle:
      return Body::axle;
    case RidesOn::left_knuckle:
      return Body::left_knuckle;
    case RidesOn::right_knuckle:
      return Body::right_knuckle;
  }
  return Body::chassis;
}

std::vector<Grip> grips(const Project& project) {
  std::vector<Grip> list;
  grip_list::add_column_grips(project, list);
  grip_list::add_shaft_line_grips(project, list);
  grip_list::add_steering_box_grips(project, list);
  grip_list::add_drag_link_grips(project, list);
  grip_list::add_front_axle_grips(project, list);
  if (project.cab) {
    Grip cab;
    cab.path = "cab";
    cab.words = "cab";
    cab.body = Body::cab;
    cab.at_mm = project.cab->place;
    cab.moves_several = true;
    list.push_back(cab);
  }
  grip_list::add_pedal_grips(project, list);
  grip_list::add_driver_grips(project, list);
  grip_list::add_shape_grips(project, list);
  return list;
}

std::optional<Grip> grip_at(const Project& project, std::string_view path) {
  std::vector<Grip> list = grips(project);
  const auto found =
      std::find_if(list.begin(), list.end(), [&](const Grip& grip) { return grip.path == path; });
  if (found == list.end()) return std::nullopt;
  return std::move(*found);
}

Vec3 allowed_place(const Grip& grip, const Vec3& wanted_mm, bool keep_line) {
  const Vec3 step = wanted_mm - grip.at_mm;
  switch (grip.freedom) {
    case GripFreedom::on_line:
      return grip.at_mm + grip.along.dot(step) * grip.along;
    case GripFreedom::on_circle:
      return on_circle(grip, wanted_mm);
    case GripFreedom::free:
      break;
  }
  if (keep_line && grip.has_along) return grip.at_mm + grip.along.dot(step) * grip.along;
  return wanted_mm;
}

Result<Project> with_grip_at(const Project& project, const Grip& grip, const Vec3& wanted_mm,
                             bool keep_line) {
  if (!wanted_mm.allFinite())
    return Problem{"", grip.path, "the place is not a number", "give X, Y and Z"};
  const Vec3 to_mm = allowed_place(grip, wanted_mm, keep_line);
  if (auto whole = grip_list::with_whole_moved(project, grip, to_mm)) return *std::move(whole);
  return with_field(project, written_member(grip),
                    vector_text(in_file_frame(project, grip, to_mm)));
}

}  // namespace tackbench
