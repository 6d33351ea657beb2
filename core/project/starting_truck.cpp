#include "core/project/starting_truck.h"

#include <algorithm>

#include "core/basics/units.h"

namespace tackbench {

namespace {

constexpr double kColumnY = 500.0;
constexpr double kBoxY = 480.0;
constexpr double kHubHeight = -300.0;

// Everything is written for left-hand drive; `sideways` puts it on its side.
class StartingTruck {
 public:
  explicit StartingTruck(const StartAnswers& answers)
      : answers_(answers), sideways_(side_sign(answers.drive)) {}

  Project project() const {
    Project made;
    made.cab = std::make_shared<const CabStation>();
    made.column = std::make_shared<const ColumnStation>(column());
    made.shaft_line = std::make_shared<const ShaftLineStation>(shaft_line());
    made.steering_box = std::make_shared<const SteeringBoxStation>(box());
    made.drag_link = std::make_shared<const DragLinkStation>(drag_link());
    made.front_axle = std::make_shared<const FrontAxleStation>(front_axle());
    made.pedals = std::make_shared<const PedalsStation>(pedals());
    made.driver = std::make_shared<const DriverStation>(driver());
    made.shapes = std::make_shared<const ShapesStation>(shapes());
    return made;
  }

 private:
  Vec3 at(double x, double y, double z) const { return {x, sideways_ * y, z}; }

  ColumnStation column() const {
    ColumnStation column;
    column.hand_wheel_centre.mm = at(-1880, kColumnY, 700);
    column.output_end.mm = at(-1390, kColumnY, 300);
    column.bearings.resize(2);
    column.bearings[0].name = "upper";
    column.bearings[0].from_hand_wheel = 90.0;
    column.bearings[1].name = "lower";
    column.bearings[1].from_hand_wheel = 590.0;
    return column;
  }

  double box_x() const { return answers_.box_ahead ? 560.0 : -870.0; }

  ShaftLineStation shaft_line() const {
    ShaftLineStation line;
    line.joints.resize(2);
    line.joints[0].name = "upper joint";
    line.joints[0].rides_on = RidesOn::cab;
    line.joints[0].centre = at(-1365, kColumnY, 280);
    line.joints[1].name = "lower joint";
    line.joints[1].centre = at(box_x() - 26.0, kBoxY, -4);
    line.shafts.resize(1);
    line.shafts[0].name = "shaft";
    line.shafts[0].slip = SlipKind::spline;
    return line;
  }

  SteeringBoxStation box() const {
    SteeringBoxStation box;
    box.input_end.mm = at(box_x(), kBoxY, -10);
    box.input_axis.along = Vec3(0.98, 0.0, -0.2).normalized();
    box.output_point.mm = at(box_x() + 155.0, kBoxY, -45);
    box.output_axis.along = at(0, 1, 0);
    box.arm.length = 190.0;
    box.ratio = 20.0;
    box.travel_left = radians_from_degrees(42.0);
    box.travel_right = radians_from_degrees(42.0);
    return box;
  }

  DragLinkStation drag_link() const {
    DragLinkStation link;
    link.knuckle = answers_.drive;
    link.knuckle_ball.mm = at(80, 580, -260);
    return link;
  }

  FrontAxleStation front_axle() const {
    FrontAxleStation axle;
    axle.track = 1880.0;
    axle.wheel_centre_height = kHubHeight;
    axle.left_knuckle.kingpin_point.mm = Vec3(0, 790, kHubHeight);
    axle.left_knuckle.kingpin_inclination = radians_from_degrees(7.0);
    axle.left_knuckle.caster = radians_from_degrees(3.0);
    axle.left_knuckle.tie_rod_ball.mm = Vec3(-165, 760, -320);
    LeafSpring leaf;
    leaf.seat.mm = Vec3(0, 395, -260);
    leaf.fixed_eye.mm = Vec3(-600, 395, -250);
    axle.suspension.leaf = leaf;
    axle.road.wheelbase = 3700.0;
    return axle;
  }

  Pedal pedal(const char* name, PedalUse use, double y) const {
    Pedal pedal;
    pedal.name = name;
    pedal.use = use;
    pedal.pivot.mm = at(-1405, y, 370);
    pedal.pressed_turns = TurnSense::clockwise;
    pedal.pad_centre.mm = at(-1605, y, 110);
    pedal.pad_angle = radians_from_degrees(35.0);
    pedal.full_travel = radians_from_degrees(28.0);
    pedal.arm_path = {pedal.pivot, pedal.pad_centre};
    return pedal;
  }

  // Seen by the driver the clutch is to the left and the accelerator to the right on either drive.
  PedalsStation pedals() const {
    const double outward = sideways_;
    return {{pedal("clutch", PedalUse::clutch, 500.0 + outward * 75.0),
             pedal("brake", PedalUse::brake, 500.0 - outward * 75.0),
             pedal("accelerator", PedalUse::accelerator, 500.0 - outward * 190.0)},
            {}};
  }

  DriverStation driver() const {
    DriverStation driver;
    driver.seat_reference.mm = at(-2280, kColumnY, 430);
    driver.heel_point.mm = at(-1640, 420, 20);
    driver.floor_height = 20.0;
    driver.seat_fore_aft = 160.0;
    driver.seat_height = 40.0;
    driver.back_angle = radians_from_degrees(18.0);
    return driver;
  }

  static ShapesStation shapes() {
    ShapesStation shapes;
    shapes.rails.emplace();
    return shapes;
  }

  StartAnswers answers_;
  double sideways_;
};

}  // namespace

Project starting_truck(const StartAnswers& answers) {
  return StartingTruck(answers).project();
}

StartAnswers start_answers(const Project& project) {
  if (!project.sheet || !project.sheet->start) return {};
  return {project.sheet->start->drive, project.sheet->start->box_ahead};
}

bool has_station(const Project& project, Station station) {
  switch (station) {
    case Station::column:
      return project.column != nullptr;
    case Station::shaft_line:
      return project.shaft_line != nullptr;
    case Station::steering_box:
      return project.steering_box != nullptr;
    case Station::drag_link:
      return project.drag_link != nullptr;
    case Station::front_axle:
      return project.front_axle != nullptr;
    case Station::pedals:
      return project.pedals != nullptr;
    case Station::driver:
      return project.driver != nullptr;
    case Station::shapes:
      return project.shapes != nullptr;
  }
  return false;
}

Project with_station_begun(const Project& project, Station station) {
  if (has_station(project, station)) return project;
  const Project start = starting_truck(start_answers(project));
  Project begun = project;
  switch (station) {
    case Station::column:
      begun.column = start.column;
      break;
    case Station::shaft_line:
      begun.shaft_line = start.shaft_line;
      break;
    case Station::steering_box:
      begun.steering_box = start.steering_box;
      break;
    case Station::drag_link:
      begun.drag_link = start.drag_link;
      break;
    case Station::front_axle:
      begun.front_axle = start.front_axle;
      break;
    case Station::pedals:
      begun.pedals = start.pedals;
      break;
    case Station::driver:
      begun.driver = start.driver;
      break;
    case Station::shapes:
      begun.shapes = start.shapes;
      break;
  }
  // A first station is begun on bare ground: the project remembers it, so that what the starting
  // truck put in is known from what was measured.
  const bool first = std::none_of(kStations.begin(), kStations.end(),
                                  [&](Station other) { return has_station(project, other); });
  if (first && (!project.sheet || !project.sheet->start)) {
    auto sheet = project.sheet ? std::make_shared<SheetSettings>(*project.sheet)
                               : std::make_shared<SheetSettings>();
    sheet->start.emplace();
    begun.sheet = std::move(sheet);
  }
  if (!begun.cab &&
      (station == Station::column || station == Station::pedals || station == Station::driver))
    begun.cab = start.cab;
  return begun;
}

}  // namespace tackbench
