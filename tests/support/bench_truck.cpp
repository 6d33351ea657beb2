#include "tests/support/bench_truck.h"

#include <cmath>
#include <stdexcept>

#include "core/basics/units.h"

namespace tackbench {

BenchTruck::BenchTruck() {
  constexpr double kHubHeight = -250.0;

  box.output_point.mm = Vec3(-850.0, 470.0, 0.0);
  box.output_axis.along = Vec3::UnitY();
  box.arm.length = 190.0;
  box.arm.offset = 60.0;
  box.left_turns_arm = TurnSense::clockwise;  // bottom of the arm goes forward
  box.ratio = 20.0;
  box.travel_left = radians_from_degrees(45.0);
  box.travel_right = radians_from_degrees(45.0);

  link.knuckle = Side::left;
  link.knuckle_ball.mm = Vec3(10.0, 615.0, -190.0);
  link.arm_end.swing_limit = radians_from_degrees(28.0);
  link.knuckle_end.swing_limit = radians_from_degrees(28.0);

  axle.track = 1800.0;
  axle.wheel_centre_height = kHubHeight;
  KnuckleSide& knuckle = axle.left_knuckle;
  knuckle.kingpin_point.mm = Vec3(0.0, 800.0, kHubHeight);
  knuckle.kingpin_inclination = radians_from_degrees(6.0);
  knuckle.caster = radians_from_degrees(3.0);
  knuckle.tie_rod_ball.mm = Vec3(-170.0, 770.0, kHubHeight - 30.0);
  knuckle.stops = {square_stop(knuckle, Side::left, radians_from_degrees(36.0), kHubHeight)};

  axle.suspension.kind = SuspensionKind::leaf;
  LeafSpring leaf;
  leaf.seat.mm = Vec3(0.0, 425.0, kHubHeight + 50.0);
  leaf.fixed_half = 600.0;
  leaf.shackle_half = 600.0;
  leaf.fixed_eye.mm = leaf.seat.mm + Vec3(-600.0, 0.0, 0.0);
  axle.suspension.leaf = leaf;
  axle.suspension.roll = radians_from_degrees(4.0);
  axle.suspension.wind_up = radians_from_degrees(2.0);
  axle.road.wheelbase = 3400.0;
}

Project BenchTruck::project() const {
  Project project;
  project.name = "bench truck";
  project.steering_box = std::make_shared<const SteeringBoxStation>(box);
  project.drag_link = std::make_shared<const DragLinkStation>(link);
  project.front_axle = std::make_shared<const FrontAxleStation>(axle);
  return project;
}

Mechanism BenchTruck::mechanism() const {
  return compiled(project());
}

LockStop square_stop(const KnuckleSide& knuckle, Side side, double swivel, double axle_height) {
  const Vec3 kingpin = kingpin_axis(knuckle, side).along;
  const Vec3 pivot = knuckle.kingpin_point.mm;
  const Vec3 tip = Vec3(110.0, pivot.y(), axle_height - 40.0);
  const Vec3 tip_then = pivot + turned(tip - pivot, kingpin, swivel);
  const double way = swivel > 0.0 ? 1.0 : -1.0;
  const Vec3 motion_then = way * kingpin.cross(tip_then - pivot).normalized();
  LockStop stop;
  stop.lock = swivel > 0.0 ? Side::left : Side::right;
  stop.name = "lock stop";
  stop.tip_centre.mm = tip;
  stop.bolt_axis = turned(motion_then, kingpin, -swivel);
  stop.tip_radius = 8.0;
  stop.pad_normal = -motion_then;
  stop.pad_centre.mm = tip_then + stop.tip_radius * motion_then;
  return stop;
}

Pedal bench_brake() {
  Pedal pedal;
  pedal.name = "brake";
  pedal.use = PedalUse::brake;
  pedal.pivot.mm = Vec3(300.0, 0.0, 400.0);
  pedal.axis.along = Vec3::UnitY();
  pedal.pressed_turns = TurnSense::clockwise;  // the pad hangs and goes forward
  pedal.pad_centre.mm = pedal.pivot.mm - 300.0 * Vec3::UnitZ();
  pedal.full_travel = radians_from_degrees(60.0);
  PedalRod rod;
  rod.pedal_pin.mm = pedal.pivot.mm - 60.0 * Vec3::UnitZ();
  rod.cylinder_pin.mm = rod.pedal_pin.mm + 150.0 * Vec3::UnitX();
  rod.cylinder_axis.along = Vec3::UnitX();
  rod.free_play = 1.0;
  rod.full_stroke = 30.0;
  pedal.rod = rod;
  return pedal;
}

Mechanism pedals_alone(const std::vector<Pedal>& pedals, std::optional<double> floor_height) {
  Project project;
  PedalsStation station;
  station.pedals = pedals;
  project.pedals = std::make_shared<const PedalsStation>(station);
  if (floor_height) {
    DriverStation driver;
    driver.floor_height = *floor_height;
    project.driver = std::make_shared<const DriverStation>(driver);
  }
  return compiled(project);
}

Mechanism compiled(const Project& project) {
  Result<Mechanism> made = compile(project);
  if (made) return std::move(made).value();
  std::string faults = "does not compile:";
  for (const Problem& problem : made.problems()) faults += "\n" + one_line(problem);
  throw std::runtime_error(faults);
}

}  // namespace tackbench
