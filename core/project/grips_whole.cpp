// Grips that stand for several members: box, cab, pedal, arm, support, shape.
#include <cmath>
#include <utility>

#include "core/basics/units.h"
#include "core/project/field_path.h"
#include "core/project/grip_list.h"
#include "core/project/number_text.h"

namespace tackbench::grip_list {

namespace {

constexpr double kSteps = 1000.0;  // a micrometre, a thousandth of a degree

std::string text(double value) {
  return number_text(std::round(value * kSteps) / kSteps);
}
std::string text(const Vec3& mm) {
  return '[' + text(mm.x()) + ", " + text(mm.y()) + ", " + text(mm.z()) + ']';
}

// Members to write, in order; the first fault ends it.
class Writes {
 public:
  explicit Writes(Project project) : project_(std::move(project)) {}

  Writes& set(const std::string& path, const std::string& value) {
    if (!problems_.empty()) return *this;
    Result<Project> next = with_field(project_, path, value);
    if (next) {
      project_ = std::move(next).value();
    } else {
      problems_ = next.problems();
    }
    return *this;
  }
  Writes& shift(const std::string& path, const Vec3& from, const Vec3& step) {
    return set(path, text(Vec3(from + step)));
  }
  Result<Project> done() const {
    if (!problems_.empty()) return problems_;
    return project_;
  }

 private:
  Project project_;
  Problems problems_;
};

Result<Project> cab_moved(const Project& project, const Vec3& to_mm) {
  return Writes(project).set("cab.place_mm", text(to_mm)).done();
}

Result<Project> box_moved(const Project& project, const Vec3& step) {
  const SteeringBoxStation& box = *project.steering_box;
  return Writes(project)
      .shift("steering_box.input_end_mm", box.input_end.mm, step)
      .shift("steering_box.output_point_mm", box.output_point.mm, step)
      .done();
}

// The arm's length stays; its clocking goes by whole spline steps where the teeth are known.
Result<Project> arm_turned(const Project& project, const Grip& grip, const Vec3& to_mm) {
  const PitmanArm& arm = project.steering_box->arm;
  double clocking = wrapped(
      arm.clocking + angle_about(grip.along, grip.at_mm - grip.centre_mm, to_mm - grip.centre_mm));
  if (arm.spline_teeth && *arm.spline_teeth > 0) {
    const double step = kRadiansPerTurn / *arm.spline_teeth;
    const double steps = std::round((clocking - arm.clocking) / step);
    clocking = wrapped(arm.clocking + steps * step);
  }
  return Writes(project)
      .set("steering_box.arm.clocking_deg", text(degrees_from_radians(clocking)))
      .done();
}

Result<Project> bearing_moved(const Project& project, const Grip& grip, std::size_t index,
                              const Vec3& to_mm) {
  const double from = project.column->bearings[index].from_hand_wheel;
  return Writes(project)
      .set(grip.path + ".from_hand_wheel_mm", text(from + grip.along.dot(to_mm - grip.at_mm)))
      .done();
}

Vec3 in_cab_axes(const Project& project, const Vec3& chassis_step) {
  return drawn_cab(project).turn.transpose() * chassis_step;
}

// The bracket's foot comes along.
Result<Project> support_moved(const Project& project, const Grip& grip, std::size_t index,
                              const Vec3& step) {
  const ShaftSupport& support = project.shaft_line->supports[index];
  const Vec3 own = support.rides_on == RidesOn::cab ? in_cab_axes(project, step) : step;
  const std::string path = item("shaft_line.supports", index);
  return Writes(project)
      .shift(grip.path, support.eye, own)
      .shift(path + ".base_mm", support.base, own)
      .done();
}

Result<Project> pedal_moved(const Project& project, const Grip& grip, std::size_t index,
                            const Vec3& chassis_step) {
  const Pedal& pedal = project.pedals->pedals[index];
  const Vec3 step = in_cab_axes(project, chassis_step);
  Writes writes(project);
  writes.shift(grip.path + ".pivot_mm", pedal.pivot.mm, step)
      .shift(grip.path + ".pad_centre_mm", pedal.pad_centre.mm, step);
  for (std::size_t i = 0; i < pedal.arm_path.size(); ++i)
    writes.shift(item(grip.path + ".arm_path_mm", i), pedal.arm_path[i].mm, step);
  // What is fixed in the cab stays: springs' far ends, cylinder, cable exit.
  for (std::size_t i = 0; i < pedal.springs.size(); ++i)
    writes.shift(item(grip.path + ".springs", i) + ".pedal_point_mm",
                 pedal.springs[i].pedal_point.mm, step);
  if (pedal.rod) writes.shift(grip.path + ".rod.pedal_pin_mm", pedal.rod->pedal_pin.mm, step);
  if (pedal.cable) writes.shift(grip.path + ".cable.pedal_pin_mm", pedal.cable->pedal_pin.mm, step);
  return writes.done();
}

Result<Project> shape_moved(const Project& project, const Grip& grip, std::size_t index,
                            const Vec3& chassis_step) {
  const Shape& shape = project.shapes->shapes[index];
  const Vec3 step =
      shape.rides_on == RidesOn::cab ? in_cab_axes(project, chassis_step) : chassis_step;
  Writes writes(project);
  writes.shift(grip.path + ".place_mm", shape.place, step);
  if (shape.kind == ShapeKind::tube || shape.kind == ShapeKind::cylinder)
    writes.shift(grip.path + ".end_mm", shape.end, step);
  return writes.done();
}

// "list[3]" or "list[3].eye_mm" of that list: 3.
std::optional<std::size_t> index_in(const std::string& path, const std::string& list,
                                    const std::string& tail = {}) {
  if (!path.starts_with(list + '[')) return std::nullopt;
  const std::size_t closed = path.find(']');
  if (closed == std::string::npos || path.substr(closed + 1) != tail) return std::nullopt;
  const auto number = number_from_text(path.substr(list.size() + 1, closed - list.size() - 1));
  if (!number || *number < 0.0) return std::nullopt;
  return static_cast<std::size_t>(*number);
}

}  // namespace

std::optional<Result<Project>> with_whole_moved(const Project& project, const Grip& grip,
                                                const Vec3& to_mm) {
  const std::string& path = grip.path;
  const Vec3 step = to_mm - grip.at_mm;
  if (path == "cab") return cab_moved(project, to_mm);
  if (path == "steering_box") return box_moved(project, step);
  if (path == "steering_box.arm") return arm_turned(project, grip, to_mm);
  if (path == "shapes.rails.front_end_mm" || path == "shapes.rails.rear_end_mm")
    return Writes(project).set(path, text(to_mm.x())).done();
  if (const auto index = index_in(path, "column.bearings"))
    return bearing_moved(project, grip, *index, to_mm);
  if (const auto index = index_in(path, "shaft_line.supports", ".eye_mm"))
    return support_moved(project, grip, *index, step);
  if (const auto index = index_in(path, "pedals.pedals"))
    return pedal_moved(project, grip, *index, step);
  if (const auto index = index_in(path, "shapes.shapes"))
    return shape_moved(project, grip, *index, step);
  return std::nullopt;
}

}  // namespace tackbench::grip_list
