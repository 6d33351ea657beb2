#include "ui/sheet/exact_place.h"

#include <algorithm>
#include <cmath>
#include <optional>
#include <string>

#include "core/basics/units.h"

namespace tackbench::ui {

namespace {

Problem out_of_reach(double nearest_mm, ShownUnit unit) {
  return {"", "", "this point cannot get to that distance",
          "the nearest that it can get is " + shown_length(nearest_mm, unit)};
}

Result<Vec3> along_line(const Grip& grip, const Vec3& other_mm, double distance_mm,
                        ShownUnit unit) {
  // |p + t a - o| = d, the root nearer to where the point is.
  const Vec3 from = grip.at_mm - other_mm;
  const double half = grip.along.dot(from);
  const double least = std::sqrt(std::max(0.0, from.squaredNorm() - half * half));
  if (distance_mm < least - 1e-9) return out_of_reach(least, unit);
  const double root = std::sqrt(std::max(0.0, distance_mm * distance_mm - least * least));
  const double near = half >= 0.0 ? -half + root : -half - root;
  return Vec3(grip.at_mm + near * grip.along);
}

// Turn at which cosine_part cos + sine_part sin is `wanted`, the nearer of the two; beyond the
// swing of the two there is none.
std::optional<double> turn_for(double cosine_part, double sine_part, double wanted) {
  const double swing = std::hypot(cosine_part, sine_part);
  if (std::abs(wanted) > swing || swing < 1e-9) return std::nullopt;
  const double top = std::atan2(sine_part, cosine_part);
  const double off = std::acos(std::clamp(wanted / swing, -1.0, 1.0));
  const double first = wrapped(top + off);
  const double second = wrapped(top - off);
  return std::abs(first) < std::abs(second) ? first : second;
}

Result<Vec3> round_circle(const Grip& grip, const Vec3& other_mm, double distance_mm,
                          ShownUnit unit) {
  // Squared distance on the circle is middle + swing cos(angle - top).
  const Vec3 arm = grip.at_mm - grip.centre_mm;
  const Vec3 side = grip.along.cross(arm);
  const Vec3 away = grip.centre_mm - other_mm;
  const double middle = away.squaredNorm() + arm.squaredNorm();
  const double cosine_part = 2.0 * away.dot(arm);
  const double sine_part = 2.0 * away.dot(side);
  const double wanted = distance_mm * distance_mm - middle;
  const auto turn = turn_for(cosine_part, sine_part, wanted);
  if (!turn) {
    const double swing = std::hypot(cosine_part, sine_part);
    return out_of_reach(std::sqrt(std::max(0.0, middle + std::copysign(swing, wanted))), unit);
  }
  return Vec3(grip.centre_mm + turned(arm, grip.along, *turn));
}

Problem coordinate_out_of_reach(double least_mm, double greatest_mm, ShownUnit unit) {
  return {"", "", "this point cannot get there",
          "give " + shown_length(least_mm, unit) + " to " + shown_length(greatest_mm, unit)};
}

}  // namespace

Result<Vec3> place_at_distance(const Grip& grip, const Vec3& other_mm, double distance_mm,
                               ShownUnit unit) {
  if (!(distance_mm >= 0.0)) return Problem{"", "", "a distance is not negative", "give 0 or more"};
  if (grip.freedom == GripFreedom::on_line) return along_line(grip, other_mm, distance_mm, unit);
  if (grip.freedom == GripFreedom::on_circle)
    return round_circle(grip, other_mm, distance_mm, unit);
  const Vec3 from = grip.at_mm - other_mm;
  if (from.norm() < 1e-6)
    return Problem{"", "", "the two points lie in one place", "give X, Y or Z first"};
  return Vec3(other_mm + from.normalized() * distance_mm);
}

Result<Vec3> place_with_coordinate(const Grip& grip, int axis, double value_mm, ShownUnit unit) {
  const double step = value_mm - grip.at_mm[axis];
  switch (grip.freedom) {
    case GripFreedom::free:
      break;
    case GripFreedom::on_line:
      if (std::abs(step) < 1e-9) return grip.at_mm;
      // A line square to the axis never changes the coordinate.
      if (std::abs(grip.along[axis]) < 1e-3)
        return coordinate_out_of_reach(grip.at_mm[axis], grip.at_mm[axis], unit);
      return Vec3(grip.at_mm + grip.along * (step / grip.along[axis]));
    case GripFreedom::on_circle: {
      const Vec3 arm = grip.at_mm - grip.centre_mm;
      const Vec3 side = grip.along.cross(arm);
      const auto turn = turn_for(arm[axis], side[axis], value_mm - grip.centre_mm[axis]);
      if (turn) return Vec3(grip.centre_mm + turned(arm, grip.along, *turn));
      const double swing = std::hypot(arm[axis], side[axis]);
      return coordinate_out_of_reach(grip.centre_mm[axis] - swing, grip.centre_mm[axis] + swing,
                                     unit);
    }
  }
  Vec3 place_mm = grip.at_mm;
  place_mm[axis] = value_mm;
  return place_mm;
}

Problem steps_only(const Project& project, const Grip& grip, const Vec3& wanted_mm,
                   ShownUnit unit) {
  const auto place_words = [&](const Vec3& at_mm) {
    return "X " + shown_length(at_mm.x(), unit) + ", Y " + shown_length(at_mm.y(), unit) + ", Z " +
           shown_length(at_mm.z(), unit);
  };
  const auto& box = project.steering_box;
  const bool is_arm = grip.path == "steering_box.arm" && box;
  const int teeth = is_arm ? box->arm.spline_teeth.value_or(0) : 0;
  if (teeth <= 0) {
    const Result<Project> after = with_grip_at(project, grip, wanted_mm);
    const auto nearest = after ? grip_at(*after, grip.path) : std::nullopt;
    return {"", grip.path, "this point cannot go exactly there",
            "the nearest place is " + place_words(nearest ? nearest->at_mm : grip.at_mm)};
  }
  const double step = kRadiansPerTurn / teeth;
  const Vec3 arm = grip.at_mm - grip.centre_mm;
  const double turn = angle_about(grip.along, arm, wanted_mm - grip.centre_mm);
  const auto on_tooth = [&](double tooth) {
    return Vec3(grip.centre_mm + turned(arm, grip.along, tooth * step));
  };
  return {"", grip.path,
          "the arm sits on the " + std::to_string(teeth) +
              " teeth of its spline and turns by whole teeth, " + shown(step, Unit::degree) +
              " each",
          "the places to either side are " + place_words(on_tooth(std::floor(turn / step))) +
              ", and " + place_words(on_tooth(std::ceil(turn / step)))};
}

double length_as_read(ShownUnit unit) {
  switch (unit) {
    case ShownUnit::millimetre:
      return 0.1;
    case ShownUnit::inch_decimal:
      return 0.001 * kMillimetresPerInch;
    case ShownUnit::inch_fraction:
      return kMillimetresPerInch / 32.0;  // half a sixteenth
  }
  return 0.1;
}

}  // namespace tackbench::ui
