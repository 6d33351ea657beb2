#include "core/mechanism/pedal_linkage.h"

#include <fmt/core.h>

#include <algorithm>
#include <cmath>

#include "core/basics/angle_of.h"
#include "core/basics/units.h"

namespace tackbench {

namespace {

constexpr double kLeastLever = 1.0;      // shorter is no lever, mm
constexpr double kLeastRodCosine = 0.1;  // rod within 6 degrees of square cannot push the piston
constexpr double kMostTravel = radians_from_degrees(170.0);

bool unit_length(const Vec3& v) {
  return std::abs(v.norm() - 1.0) < 1e-6;
}

class Faults {
 public:
  void add(std::string place, std::string found, std::string wanted) {
    problems_.push_back({"", std::move(place), std::move(found), std::move(wanted)});
  }
  void lever(const Crank& crank, const std::string& place, const std::string& what) {
    if (crank.radius < kLeastLever) {
      add(place, fmt::format("{} is on the turning axis: no lever", what),
          "give a point at least 1 mm from the axis");
    }
  }
  void rod(double length, const std::string& place) {
    if (length < kLeastLever) {
      add(place, "the rod has no length", "give two pins at least 1 mm apart");
    }
  }
  const Problems& problems() const { return problems_; }

 private:
  Problems problems_;
};

void compile_rod(const PedalRod& rod, PedalLinkage& linkage, Faults& faults) {
  linkage.has_rod = true;
  linkage.pin = crank_through(linkage.pad.foot, linkage.pad.axis, rod.pedal_pin.mm);
  faults.lever(linkage.pin, "rod.pedal_pin_mm", "the rod's pin");

  Vec3 pin = rod.pedal_pin.mm;
  for (std::size_t i = 0; i < rod.bell_cranks.size(); ++i) {
    const BellCrank& bell = rod.bell_cranks[i];
    const std::string place = fmt::format("rod.bell_cranks[{}]", i);
    if (!unit_length(bell.axis.along)) {
      faults.add(place + ".axis", "the axis has no direction", "give a direction");
      return;
    }
    const Crank input = crank_through(bell.pivot.mm, bell.axis.along, bell.input_pin.mm);
    const Crank output = crank_through(bell.pivot.mm, bell.axis.along, bell.output_pin.mm);
    faults.lever(input, place + ".input_pin_mm", "the input pin");
    faults.lever(output, place + ".output_pin_mm", "the output pin");
    const double length = (bell.input_pin.mm - pin).norm();
    faults.rod(length, place + ".input_pin_mm");
    linkage.bell_cranks.push_back({loop_as_drawn(input, length, pin), output});
    pin = bell.output_pin.mm;
  }

  if (!unit_length(rod.cylinder_axis.along)) {
    faults.add("rod.cylinder_axis", "the axis has no direction",
               "give the way the piston is pushed");
    return;
  }
  linkage.slider = slider_as_drawn(rod.cylinder_pin.mm, rod.cylinder_axis.along, pin);
  faults.rod(linkage.slider.length, "rod.cylinder_pin_mm");
  const double along = rod.cylinder_axis.along.dot(rod.cylinder_pin.mm - pin);
  if (linkage.slider.length >= kLeastLever &&
      std::abs(along) < kLeastRodCosine * linkage.slider.length) {
    faults.add("rod.cylinder_axis", "the rod stands square to the cylinder's axis",
               "give the way the piston is pushed");
  }
}

// Unit vector along a rod. Where it reaches, its length is known.
Vec3 along_rod(const Vec3& from, const Vec3& to, double length, bool reaches) {
  const Vec3 between = to - from;
  if (reaches) return between * (1.0 / length);
  return between.stableNormalized();
}

}  // namespace

Result<PedalLinkage> compile_pedal(const Pedal& pedal) {
  Faults faults;
  if (!unit_length(pedal.axis.along)) {
    return Problem{"", "axis", "the axis has no direction", "give a direction"};
  }
  PedalLinkage linkage;
  linkage.pedal = pedal;
  const double sense = pedal.pressed_turns == TurnSense::anticlockwise ? 1.0 : -1.0;
  linkage.pad = crank_through(pedal.pivot.mm, sense * pedal.axis.along, pedal.pad_centre.mm);
  faults.lever(linkage.pad, "pad_centre_mm", "the pad's centre");
  if (!(pedal.full_travel > 0.0 && pedal.full_travel <= kMostTravel)) {
    faults.add(
        "full_travel_deg",
        fmt::format("{:.6g} is not a pedal's travel", degrees_from_radians(pedal.full_travel)),
        "give more than 0 and at most 170");
  }
  if (pedal.rod) compile_rod(*pedal.rod, linkage, faults);
  if (!faults.problems().empty()) return faults.problems();
  return linkage;
}

PedalPose pose_pedal(const PedalLinkage& linkage, double angle) {
  PedalPose pose;
  pose_pedal(linkage, angle, pose);
  return pose;
}

void pose_pedal(const PedalLinkage& linkage, double angle, PedalPose& pose) {
  pose.angle = angle;
  pose.closes = true;
  const double cosine = std::cos(angle);
  const double sine = std::sin(angle);
  pose.pad_centre_mm = linkage.pad.ball(cosine, sine);
  const double pad_lever = linkage.pad.radius;
  pose.pad_direction = linkage.pad.ball_rate(cosine, sine) / pad_lever;
  if (!linkage.has_rod) return;

  // Pin by pin from the pedal: where it is and how it moves per radian of pedal.
  Vec3 pin = linkage.pin.ball(cosine, sine);
  Vec3 pin_rate = linkage.pin.ball_rate(cosine, sine);
  pose.rod_pin_mm = pin;
  bool first = true;
  for (const BellCrankStage& stage : linkage.bell_cranks) {
    const LoopAnswer answer = solve_loop(stage.loop, pin);
    pose.closes = pose.closes && answer.closes;
    const Crank& input = stage.loop.driven;
    const Vec3 rod =
        along_rod(pin, input.ball(answer.cosine, answer.sine), stage.loop.length, answer.closes);
    if (first) pose.leverage = rod.dot(pin_rate) / linkage.pin.radius;
    first = false;
    const double rate = link_ratio(rod, pin_rate, input.ball_rate(answer.cosine, answer.sine));
    pin = stage.output.ball(answer.cosine, answer.sine);
    pin_rate = rate * stage.output.ball_rate(answer.cosine, answer.sine);
  }

  const SliderAnswer slider = solve_slider(linkage.slider, pin);
  pose.closes = pose.closes && slider.closes;
  pose.rod_travel = slider.slide;
  pose.cylinder_pin_mm = linkage.slider.start + slider.slide * linkage.slider.along;
  const Vec3 last_rod = along_rod(pin, pose.cylinder_pin_mm, linkage.slider.length, slider.closes);
  const double pushed = last_rod.dot(pin_rate);
  if (first) pose.leverage = pushed / linkage.pin.radius;
  const double along = last_rod.dot(linkage.slider.along);
  pose.rod_swing = angle_of(last_rod.cross(linkage.slider.along).norm(), along);
  const double rod_rate = along != 0.0 ? pushed / along : 0.0;
  pose.ratio = std::abs(rod_rate) * kMostPedalRatio > pad_lever
                   ? pad_lever / rod_rate
                   : std::copysign(kMostPedalRatio, rod_rate);
}

}  // namespace tackbench
