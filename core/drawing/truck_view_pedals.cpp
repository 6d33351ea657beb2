// Pedals with their rods, cylinders, cables and return springs.
#include <algorithm>
#include <array>
#include <cmath>

#include "core/basics/units.h"
#include "core/drawing/truck_parts.h"

namespace tackbench {

namespace {

// Sizes of what is drawn but not measured.
constexpr double kPivotRadius = 14.0;
constexpr double kRodRadius = 6.0;
constexpr double kCylinderLength = 130.0;
constexpr double kCrankThickness = 5.0;

class PedalDrawing {
 public:
  PedalDrawing(const TruckAtPose& truck, std::size_t index, TruckPen& pen)
      : truck_(truck),
        pedal_(truck.project.pedals->pedals[index]),
        part_(item("pedals.pedals", index)),
        pen_(pen),
        pressed_(
            moved_from_drawn(truck.mechanism, truck.pose, Body::pedal, static_cast<int>(index))),
        axis_(truck.cab.turn * truck.mechanism.chassis_from_cab.turn * pedal_.axis.along) {
    if (index < truck.mechanism.pedals.size()) {
      linkage_ = &truck.mechanism.pedals[index];
      pose_ = &truck.pose.pedals[index];
    }
  }

  void draw() const {
    if (!pen_.is_ghost()) draw_springs();
    draw_arm();
    draw_pad();
    if (pedal_.rod) draw_rod(*pedal_.rod);
    if (pedal_.cable && !pen_.is_ghost()) draw_cable(*pedal_.cable);
  }

 private:
  Vec3 on_pedal(const Point<Cab>& place) const {
    return moved(pressed_, (truck_.mechanism.chassis_from_cab * place).mm);
  }

  void draw_arm() const {
    Vec3 before = on_pedal(pedal_.pivot);
    const double radius = pedal_.arm_width / 2.0;
    const double half = pedal_.arm_thickness / 2.0;
    const Vec3 pad = on_pedal(pedal_.pad_centre);
    bool any = false;
    for (const Point<Cab>& place : pedal_.arm_path) {
      const Vec3 next = on_pedal(place);
      if ((next - before).norm() > 1.0) {
        pen_.lever(before, radius, next, radius, axis_, half, Ink::arm, part_);
        any = true;
      }
      before = next;
    }
    if (!any) pen_.lever(before, radius, pad, radius, axis_, half, Ink::arm, part_);
    if (pedal_.rod)
      pen_.lever(on_pedal(pedal_.pivot), kPivotRadius, on_pedal(pedal_.rod->pedal_pin), radius,
                 axis_, half, Ink::arm, part_);
    if (pedal_.cable)
      pen_.lever(on_pedal(pedal_.pivot), kPivotRadius, on_pedal(pedal_.cable->pedal_pin), radius,
                 axis_, half, Ink::arm, part_);
    const Vec3 pivot = truck_.in_cab(pedal_.pivot);
    pen_.rod(pivot - 22.0 * axis_, pivot + 22.0 * axis_, kPivotRadius, Ink::fixed, part_);
    pen_.symbol(JointSymbol::pivot, pivot, axis_, Ink::fixed, part_);
  }

  void draw_pad() const {
    // In the pad's own axes: out of its face to the foot, across, along the foot. The face points
    // rearward; its top leans forward by the pad's angle.
    Placement<Chassis, Chassis> own;
    own.turn =
        pressed_.turn * truck_.mechanism.chassis_from_cab.turn * pitch_turn(pedal_.pad_angle);
    own.shift_mm = on_pedal(pedal_.pad_centre);
    const Vec3 half(0.0, pedal_.pad_width / 2.0, pedal_.pad_height / 2.0);
    pen_.block(own, -half, half + Vec3(pedal_.pad_thickness, 0.0, 0.0), Ink::arm,
               part_ + ".pad_centre_mm");
  }

  void draw_springs() const {
    for (std::size_t i = 0; i < pedal_.springs.size(); ++i) {
      const ReturnSpring& spring = pedal_.springs[i];
      pen_.coil(on_pedal(spring.pedal_point), truck_.in_cab(spring.fixed_point), 7.0, Ink::soft,
                item((part_ + ".springs").c_str(), i));
    }
  }

  void draw_rod(const PedalRod& rod) const {
    const std::string part = part_ + ".rod";
    if (linkage_ == nullptr || !linkage_->has_rod) return;
    Vec3 driving = linkage_->pin.ball(pose_->angle);  // cab
    for (std::size_t i = 0; i < linkage_->bell_cranks.size() && i < rod.bell_cranks.size(); ++i) {
      const BellCrankStage& stage = linkage_->bell_cranks[i];
      const BellCrank& crank = rod.bell_cranks[i];
      const LoopAnswer answer = solve_loop(stage.loop, driving);
      const Vec3 input = stage.loop.driven.ball(answer.cosine, answer.sine);
      const Vec3 output = stage.output.ball(answer.cosine, answer.sine);
      pen_.rod(in_cab(driving), in_cab(input), kRodRadius, Ink::link, part);
      const Vec3 axis = truck_.pose.chassis_from_cab.turn * crank.axis.along;
      const std::string crank_part = item((part + ".bell_cranks").c_str(), i);
      for (const Vec3& pin : {input, output})
        pen_.lever(
            in_cab(crank.pivot.mm + crank.axis.along.dot(pin - crank.pivot.mm) * crank.axis.along),
            kPivotRadius, in_cab(pin), 9.0, axis, kCrankThickness, Ink::arm, crank_part);
      pen_.symbol(JointSymbol::pivot, in_cab(crank.pivot.mm), axis, Ink::fixed,
                  crank_part + ".pivot_mm");
      driving = output;
    }
    const Vec3 pin = in_cab(pose_->cylinder_pin_mm);
    draw_cylinder(rod, part);
    pen_.rod(in_cab(driving), pin, kRodRadius, pose_->closes ? Ink::link : Ink::ghost, part);
    const Vec3 half = 9.0 * axis_;
    const Vec3 first = on_pedal(rod.pedal_pin);
    pen_.rod(first - half, first + half, 8.0, Ink::link, part + ".pedal_pin_mm");
    pen_.rod(pin - half, pin + half, 8.0, Ink::link, part + ".cylinder_pin_mm");
  }

  void draw_cylinder(const PedalRod& rod, const std::string& part) const {
    if (pen_.is_ghost()) return;
    const Vec3 axis = truck_.pose.chassis_from_cab.turn * rod.cylinder_axis.along;
    const double radius = rod.bore.value_or(22.0) / 2.0 + 9.0;
    const Vec3 mouth =
        truck_.in_cab(rod.cylinder_pin) + (rod.full_stroke.value_or(30.0) + 14.0) * axis;
    pen_.rod(mouth, mouth + kCylinderLength * axis, radius, Ink::fixed, part);
    pen_.rod(mouth + 8.0 * axis, mouth + 16.0 * axis, radius + 16.0, Ink::fixed, part);
    const Vec3 up = square_to(axis, Vec3::UnitZ());
    const Vec3 tank = mouth + 0.55 * kCylinderLength * axis + radius * up;
    pen_.rod(tank, tank + 34.0 * up, 24.0, Ink::fixed, part);
  }

  void draw_cable(const PedalCable& cable) const {
    const std::string part = part_ + ".cable";
    const Vec3 pin = on_pedal(cable.pedal_pin);
    const Vec3 exit = truck_.in_cab(cable.cab_exit);
    pen_.path({pin, exit}, Ink::soft, part);
    std::vector<Vec3> outer{exit};
    for (const Point<Chassis>& place : cable.route) outer.push_back(place.mm);
    outer.push_back(cable.engine_exit.mm);
    pen_.path(smooth(outer), Ink::soft, part);

    // The lever gives what the pedal pulls.
    const EngineLever& lever = cable.engine_lever;
    const Crank crank = crank_through(lever.pivot.mm, lever.axis.along, lever.pin.mm);
    const double drawn = (lever.pin.mm - cable.engine_exit.mm).norm();
    const Vec3 rest = truck_.in_cab(cable.pedal_pin);
    const double pulled = (pin - exit).norm() - (rest - exit).norm();
    LinkLoop loop = loop_as_drawn(crank, drawn, cable.engine_exit.mm);
    loop.length = std::max(1.0, drawn - std::max(0.0, pulled));
    const LoopAnswer answer = solve_loop(loop, cable.engine_exit.mm);
    const Vec3 end = crank.ball(answer.cosine, answer.sine);
    pen_.lever(lever.pivot.mm, kPivotRadius, end, 8.0, lever.axis.along, kCrankThickness, Ink::arm,
               part + ".engine_lever");
    pen_.path({cable.engine_exit.mm, end}, Ink::soft, part);
    pen_.symbol(JointSymbol::pivot, lever.pivot.mm, lever.axis.along, Ink::fixed,
                part + ".engine_lever.pivot_mm");
  }

  // A curve through all the places (Catmull-Rom, uniform; from memory).
  static std::vector<Vec3> smooth(const std::vector<Vec3>& places) {
    constexpr int kSteps = 6;
    std::vector<Vec3> curve;
    const std::size_t last = places.size() - 1;
    for (std::size_t i = 0; i < last; ++i) {
      const Vec3& p0 = places[i > 0 ? i - 1 : 0];
      const Vec3& p1 = places[i];
      const Vec3& p2 = places[i + 1];
      const Vec3& p3 = places[std::min(i + 2, last)];
      for (int k = 0; k < kSteps; ++k) {
        const double t = static_cast<double>(k) / kSteps;
        curve.emplace_back(0.5 * (2.0 * p1 + t * (p2 - p0) +
                                  t * t * (2.0 * p0 - 5.0 * p1 + 4.0 * p2 - p3) +
                                  t * t * t * (3.0 * p1 - p0 - 3.0 * p2 + p3)));
      }
    }
    curve.push_back(places.back());
    return curve;
  }

  Vec3 in_cab(const Vec3& cab_mm) const { return truck_.in_cab(Point<Cab>{cab_mm}); }

  const TruckAtPose& truck_;
  const Pedal& pedal_;
  std::string part_;
  TruckPen& pen_;
  Placement<Chassis, Chassis> pressed_;
  Vec3 axis_;
  const PedalLinkage* linkage_ = nullptr;
  const PedalPose* pose_ = nullptr;
};

}  // namespace

void draw_pedals(const TruckAtPose& truck, TruckPen& pen) {
  if (!truck.project.pedals) return;
  for (std::size_t i = 0; i < truck.project.pedals->pedals.size(); ++i)
    PedalDrawing(truck, i, pen).draw();
}

}  // namespace tackbench
