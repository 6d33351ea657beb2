#include "tests/support/random_truck.h"

#include <cmath>
#include <memory>

#include "core/basics/units.h"

namespace tackbench {

namespace {

using Random = std::mt19937_64;

double between(Random& random, double low, double high) {
  return std::uniform_real_distribution<double>(low, high)(random);
}
double degrees_between(Random& random, double low, double high) {
  return radians_from_degrees(between(random, low, high));
}
bool either(Random& random) {
  return std::uniform_int_distribution<int>(0, 1)(random) == 1;
}
int one_of(Random& random, int count) {
  return std::uniform_int_distribution<int>(0, count - 1)(random);
}
Vec3 jitter(Random& random, double size) {
  return {between(random, -size, size), between(random, -size, size), between(random, -size, size)};
}

// --- front axle -----------------------------------------------------------------------------

// A bolt on the knuckle that meets its pad when the knuckle has turned to `lock_swivel`.
LockStop stop_at(Random& random, const KnuckleSide& knuckle, Side side, double lock_swivel) {
  const Vec3 kingpin = kingpin_axis(knuckle, side).along;
  const Vec3 spoke = square_to(kingpin, Vec3::UnitX());
  const Vec3 tip_now = knuckle.kingpin_point.mm + between(random, 90.0, 130.0) * spoke +
                       between(random, -60.0, -20.0) * kingpin;
  const Vec3 lever = tip_now - knuckle.kingpin_point.mm;
  const double sense = lock_swivel > 0.0 ? 1.0 : -1.0;
  const Vec3 tip_then = knuckle.kingpin_point.mm + turned(lever, kingpin, lock_swivel);
  const Vec3 motion_then =
      (sense * kingpin.cross(tip_then - knuckle.kingpin_point.mm)).normalized();
  LockStop stop;
  stop.name = lock_swivel > 0.0 ? "left stop" : "right stop";
  stop.lock = lock_swivel > 0.0 ? Side::left : Side::right;
  stop.tip_centre.mm = tip_now;
  stop.bolt_axis = turned(motion_then, kingpin, -lock_swivel);
  stop.tip_radius = 8.0;
  stop.pad_normal = -motion_then;
  stop.pad_centre.mm = tip_then + stop.tip_radius * motion_then;
  return stop;
}

KnuckleSide random_knuckle(Random& random, const FrontAxleStation& axle, Side side,
                           bool tie_rod_behind) {
  KnuckleSide knuckle;
  const double half_pins = 0.5 * axle.track - between(random, 90.0, 160.0);
  knuckle.kingpin_point.mm =
      Vec3(between(random, -3.0, 3.0), side_sign(side) * half_pins, axle.wheel_centre_height);
  knuckle.kingpin_inclination = degrees_between(random, 3.0, 9.0);
  knuckle.caster = degrees_between(random, 0.0, 6.0);
  knuckle.camber = degrees_between(random, -0.5, 1.5);
  const double arm = between(random, 150.0, 200.0);
  // Inward behind the axle, outward ahead of it: towards Ackermann's condition.
  const double inward = (tie_rod_behind ? 1.0 : -1.0) * between(random, 15.0, 35.0);
  knuckle.tie_rod_ball.mm =
      knuckle.kingpin_point.mm +
      Vec3(tie_rod_behind ? -arm : arm, -side_sign(side) * inward, between(random, -60.0, -20.0));
  const double inner_lock = degrees_between(random, 30.0, 40.0);
  knuckle.stops.push_back(stop_at(random, knuckle, side, side_sign(side) * inner_lock));
  return knuckle;
}

LeafSpring random_leaf(Random& random, double wheel_centre_height) {
  LeafSpring leaf;
  leaf.seat.mm = Vec3(between(random, -20.0, 20.0), between(random, 390.0, 450.0),
                      wheel_centre_height + between(random, 0.0, 70.0));
  leaf.fixed_half = between(random, 500.0, 700.0);
  leaf.shackle_half = leaf.fixed_half + between(random, -80.0, 80.0);
  leaf.eye_offset = between(random, 0.0, 30.0);
  leaf.camber = between(random, -20.0, 70.0);
  leaf.fixed_eye.mm = leaf.seat.mm + Vec3((either(random) ? 1.0 : -1.0) * leaf.fixed_half, 0.0,
                                          leaf.camber + leaf.eye_offset);
  return leaf;
}

RadiusArms random_radius_arms(Random& random, double wheel_centre_height) {
  RadiusArms arms;
  const double behind = either(random) ? -1.0 : 1.0;
  arms.chassis_pivot.mm =
      Vec3(behind * between(random, 700.0, 1000.0), between(random, 350.0, 450.0),
           wheel_centre_height + between(random, 20.0, 120.0));
  const double side = either(random) ? 1.0 : -1.0;
  arms.lateral_rod_chassis.mm =
      Vec3(between(random, 80.0, 150.0), side * between(random, 380.0, 460.0),
           wheel_centre_height + between(random, 40.0, 110.0));
  arms.lateral_rod_axle.mm =
      arms.lateral_rod_chassis.mm + Vec3(between(random, -15.0, 15.0),
                                         -side * between(random, 700.0, 900.0),
                                         between(random, -60.0, 0.0));
  return arms;
}

FrontAxleStation random_axle(const TruckChoices& choices, Random& random) {
  FrontAxleStation axle;
  axle.track = between(random, 1650.0, 2000.0);
  axle.wheel_centre_height = between(random, -280.0, -120.0);
  axle.toe = degrees_between(random, -0.1, 0.3);
  const bool tie_rod_behind = either(random);
  axle.left_knuckle = random_knuckle(random, axle, Side::left, tie_rod_behind);
  if (choices.right_knuckle_differs) {
    axle.right_knuckle = random_knuckle(random, axle, Side::right, tie_rod_behind);
  }
  if (choices.real_lengths_differ) {
    const KnuckleSide right = knuckle_side(axle, Side::right);
    axle.tie_rod_length = (axle.left_knuckle.tie_rod_ball.mm - right.tie_rod_ball.mm).norm() +
                          between(random, -3.0, 3.0);
  }
  axle.suspension.kind = choices.suspension;
  if (choices.suspension == SuspensionKind::leaf) {
    axle.suspension.leaf = random_leaf(random, axle.wheel_centre_height);
  } else if (choices.suspension == SuspensionKind::radius_arms) {
    axle.suspension.radius_arms = random_radius_arms(random, axle.wheel_centre_height);
  }
  axle.suspension.roll = degrees_between(random, 2.0, 5.0);
  axle.suspension.wind_up = degrees_between(random, 0.0, 3.0);
  axle.suspension.heave_empty = between(random, -30.0, 0.0);
  axle.suspension.heave_laden = between(random, 0.0, 40.0);
  axle.road.wheelbase = between(random, 2800.0, 4500.0);
  axle.road.rear_track = between(random, 1600.0, 1900.0);
  return axle;
}

// --- box, relays and drag link, laid from the knuckle back to the hand ------------------------

// Levers square to their links as drawn, so that every loop is far from toggle straight ahead.
struct Linkage {
  SteeringBoxStation box;
  DragLinkStation link;
};

// Movement of a ball per radian about an axis through `pivot`.
Vec3 ball_rate(const Vec3& pivot, const Vec3& axis, const Vec3& ball) {
  return axis.cross(ball - pivot);
}

// Hangs a relay so that its output ball is at `hand_ball` and pulls along `along`: upright when it
// turns the motion from across to fore-aft (a bell-crank), swinging otherwise. Returns the lever of
// its input ball.
Vec3 hang_relay(bool turns, const Vec3& along, const Vec3& hand_ball, Random& random,
                Relay& relay) {
  const double up = either(random) ? 1.0 : -1.0;
  const double out_length = between(random, 130.0, 200.0);
  const double in_length = between(random, 130.0, 200.0);
  relay.output_ball.mm = hand_ball;
  relay.pivot.mm = hand_ball - out_length * up * (turns ? Vec3::UnitX() : Vec3::UnitZ());
  relay.axis.along = turns ? Vec3(Vec3::UnitZ()) : Vec3(along.cross(Vec3::UnitZ()));
  const double sense = either(random) ? 1.0 : -1.0;
  return in_length * sense * (turns ? Vec3::UnitY() : Vec3::UnitZ());
}

Linkage random_linkage(const TruckChoices& choices, const FrontAxleStation& axle, Random& random) {
  Linkage made;
  DragLinkStation& link = made.link;
  SteeringBoxStation& box = made.box;
  link.knuckle = choices.knuckle;
  const KnuckleSide knuckle = knuckle_side(axle, choices.knuckle);
  const bool fore_aft = choices.lay == DragLinkLay::fore_aft;
  const double inboard = -side_sign(choices.knuckle);
  const double towards_road = choices.box_ahead ? -1.0 : 1.0;

  // Last link hand to road, and the steering arm square to it.
  Vec3 along = fore_aft ? Vec3(towards_road, 0.0, 0.0) : Vec3(0.0, -inboard, 0.0);
  const double steering_arm = between(random, 160.0, 230.0);
  const Vec3 arm_direction =
      fore_aft ? Vec3(0.0, inboard, 0.0) : Vec3(either(random) ? 1.0 : -1.0, 0.0, 0.0);
  link.knuckle_ball.mm = knuckle.kingpin_point.mm + steering_arm * arm_direction +
                         Vec3(0.0, 0.0, between(random, 20.0, 90.0)) + jitter(random, 10.0);

  const Vec3 kingpin = kingpin_axis(knuckle, choices.knuckle).along;
  Vec3 road_ball = link.knuckle_ball.mm;
  // Signed turn of the driven body for a turn of the body before it, told by the drawn rates.
  double left_sense = 1.0;
  Vec3 driven_rate = ball_rate(knuckle.kingpin_point.mm, kingpin, road_ball);

  for (int i = choices.relays; i > 0; --i) {
    const Vec3 hand_ball = road_ball - between(random, 450.0, 800.0) * along + jitter(random, 15.0);
    // Each relay may turn the motion from across to fore-aft, never back.
    const bool turns = std::abs(along.x()) < 0.5 && either(random);
    const Vec3 along_before = turns ? Vec3(towards_road, 0.0, 0.0) : along;
    Relay relay;
    relay.name = "relay " + std::to_string(i);
    const Vec3 input_lever = hang_relay(turns, along, hand_ball, random, relay);
    relay.axis.along = (relay.axis.along + jitter(random, 0.04)).normalized();
    relay.input_ball.mm = relay.pivot.mm + input_lever + jitter(random, 8.0);

    const Vec3 link_direction = (road_ball - hand_ball).normalized();
    const Vec3 output_rate = ball_rate(relay.pivot.mm, relay.axis.along, hand_ball);
    left_sense *=
        link_direction.dot(driven_rate) * link_direction.dot(output_rate) > 0.0 ? 1.0 : -1.0;
    driven_rate = ball_rate(relay.pivot.mm, relay.axis.along, relay.input_ball.mm);
    road_ball = relay.input_ball.mm;
    along = along_before;
    box.relays.insert(box.relays.begin(), relay);
  }

  const Vec3 arm_ball = road_ball - between(random, 550.0, 1000.0) * along + jitter(random, 20.0);
  const Vec3 lever_direction = Vec3(0.0, 0.0, choices.arm_up ? 1.0 : -1.0);
  const double outward = either(random) ? 1.0 : -1.0;
  box.output_axis.along =
      (outward * along.cross(Vec3::UnitZ()) + jitter(random, 0.04)).normalized();
  box.arm.length = between(random, 160.0, 220.0);
  box.arm.offset = between(random, 20.0, 60.0);
  const Vec3 lever = square_to(box.output_axis.along, lever_direction);
  box.output_point.mm = arm_ball - box.arm.length * lever - box.arm.offset * box.output_axis.along;
  box.arm.clocking = angle_about(box.output_axis.along, arm_zero_direction(box).along, lever) +
                     degrees_between(random, -4.0, 4.0);
  const Vec3 link_direction = (road_ball - arm_ball).normalized();
  const Vec3 arm_rate = ball_rate(box.output_point.mm, box.output_axis.along, arm_ball);
  left_sense *= link_direction.dot(driven_rate) * link_direction.dot(arm_rate) > 0.0 ? 1.0 : -1.0;
  box.left_turns_arm = left_sense > 0.0 ? TurnSense::anticlockwise : TurnSense::clockwise;

  box.ratio = between(random, 16.0, 26.0);
  if (choices.ratio_table) {
    const double end = radians_from_degrees(900.0);
    box.ratio_table = {{-end, *box.ratio + between(random, 0.0, 3.0)},
                       {between(random, -1.0, 0.5), *box.ratio},
                       {end, *box.ratio + between(random, 0.0, 3.0)}};
  }
  box.travel_left = degrees_between(random, 42.0, 48.0);
  box.travel_right = degrees_between(random, 42.0, 48.0);
  const double side = side_sign(choices.drive);
  box.input_end.mm = box.output_point.mm + Vec3(between(random, -120.0, -60.0),
                                                -side * between(random, 60.0, 120.0),
                                                between(random, 60.0, 140.0));
  if (either(random)) link.stud_clocking = degrees_between(random, -30.0, 30.0);
  if (choices.real_lengths_differ) {
    const Vec3 drawn_from =
        box.relays.empty() ? arm_ball_at_centre(box).mm : box.relays.back().output_ball.mm;
    link.given_length = (link.knuckle_ball.mm - drawn_from).norm() + between(random, -4.0, 4.0);
  }
  link.arm_end.swing_limit = degrees_between(random, 15.0, 28.0);
  link.knuckle_end.swing_limit = degrees_between(random, 15.0, 28.0);
  return made;
}

// --- cab, column, shaft line, pedals ----------------------------------------------------------

Vec3 tilted(Random& random, const Vec3& direction, double least_degrees, double most_degrees) {
  const Vec3 about = square_to(direction, jitter(random, 1.0));
  return turned(direction, about, degrees_between(random, least_degrees, most_degrees));
}

void random_column_and_shafts(const TruckChoices& choices, const Placement<Cab, Chassis>& in_cab,
                              Random& random, SteeringBoxStation& box, ColumnStation& column,
                              ShaftLineStation& line) {
  const Vec3 down =
      Vec3(between(random, 0.2, 0.7), between(random, -0.15, 0.15), -1.0).normalized();
  const Vec3 road_end = box.input_end.mm;
  // A single joint stands in the line of the box's input shaft.
  box.input_axis.along = choices.joints <= 1 ? down : tilted(random, down, 5.0, 22.0);
  const Vec3 hand_end = road_end - between(random, 450.0, 700.0) * down;
  const Vec3 column_axis = choices.joints == 0 ? down : tilted(random, down, 5.0, 22.0);
  const Vec3 column_end = choices.joints == 0 ? road_end : hand_end;
  column.output_end = in_cab * Point<Chassis>{column_end};
  column.hand_wheel_centre =
      in_cab * Point<Chassis>{column_end - between(random, 650.0, 850.0) * column_axis};
  column.bearings = {{"upper", 80.0, ColumnBearingKind::ball, {}},
                     {"lower", 550.0, ColumnBearingKind::ball, {}}};

  for (int i = 0; i < choices.joints; ++i) {
    const double part = choices.joints == 1 ? 0.0 : i / (choices.joints - 1.0);
    Vec3 centre = hand_end + part * (road_end - hand_end);
    if (i > 0 && i + 1 < choices.joints) {
      centre += between(random, 30.0, 70.0) * square_to(down, jitter(random, 1.0));
    }
    ShaftJoint joint;
    joint.name = "joint " + std::to_string(i + 1);
    joint.rides_on = i == 0 ? RidesOn::cab : RidesOn::chassis;
    joint.centre = i == 0 ? (in_cab * Point<Chassis>{centre}).mm : centre;
    joint.angle_limit = radians_from_degrees(35.0);
    line.joints.push_back(joint);
    if (i == 0) continue;
    Shaft shaft;
    shaft.name = "shaft " + std::to_string(i);
    shaft.slip = i == 1 ? SlipKind::double_d : SlipKind::none;
    shaft.fork_offset = degrees_between(random, -60.0, 60.0);
    shaft.engagement = 80.0;
    shaft.slide_in_left = 60.0;
    line.shafts.push_back(shaft);
  }
  if (choices.joints == 3) {
    ShaftSupport support;
    support.name = "rod end";
    support.shaft = 1;
    support.eye = 0.5 * (line.joints[1].centre + line.joints[2].centre);
    support.base = support.eye + Vec3(0.0, 80.0, 0.0);
    line.supports.push_back(support);
  }
  line.first_yoke_clocking = degrees_between(random, -90.0, 90.0);
}

// Hanging pedal whose rod pushes forward, through a bell-crank or straight.
Pedal random_pedal(Random& random, PedalUse use, double y) {
  Pedal pedal;
  pedal.use = use;
  pedal.name = use == PedalUse::brake    ? "brake"
               : use == PedalUse::clutch ? "clutch"
                                         : "accelerator";
  const Vec3 hung(between(random, 300.0, 400.0), y, between(random, 550.0, 650.0));
  pedal.pivot.mm = hung;
  const bool along = either(random);
  pedal.axis.along = along ? Vec3::UnitY() : Vec3(-Vec3::UnitY());
  pedal.pressed_turns = along ? TurnSense::clockwise : TurnSense::anticlockwise;
  pedal.pad_centre.mm =
      hung + Vec3(between(random, -60.0, 0.0), between(random, -20.0, 20.0), -330.0);
  pedal.full_travel = degrees_between(random, 16.0, 28.0);
  pedal.arm_path = {pedal.pivot, pedal.pad_centre};
  if (use == PedalUse::accelerator) return pedal;
  PedalRod rod;
  rod.pedal_pin.mm = hung + Vec3(between(random, -5.0, 15.0), 0.0, -between(random, 60.0, 90.0));
  Vec3 pin = rod.pedal_pin.mm;
  rod.cylinder_axis.along = (Vec3::UnitX() + jitter(random, 0.05)).normalized();
  if (use == PedalUse::clutch) {
    BellCrank bell;
    bell.name = "bell-crank";
    bell.input_pin.mm = pin + Vec3(between(random, 140.0, 200.0), 0.0, 0.0) + jitter(random, 8.0);
    bell.pivot.mm = bell.input_pin.mm + Vec3(0.0, 0.0, between(random, 60.0, 90.0));
    bell.output_pin.mm = bell.pivot.mm + Vec3(between(random, 50.0, 80.0), 0.0, 0.0);
    bell.axis.along = (Vec3::UnitY() + jitter(random, 0.03)).normalized();
    rod.bell_cranks = {bell};
    pin = bell.output_pin.mm;
    rod.cylinder_axis.along = (Vec3::UnitZ() + jitter(random, 0.05)).normalized();
  }
  rod.cylinder_pin.mm =
      pin + between(random, 120.0, 180.0) * rod.cylinder_axis.along + jitter(random, 6.0);
  rod.free_play = 1.0;
  rod.full_stroke = between(random, 28.0, 36.0);
  rod.bore = 25.4;
  pedal.rod = rod;
  return pedal;
}

}  // namespace

TruckChoices random_choices(std::mt19937_64& random) {
  TruckChoices choices;
  choices.drive = either(random) ? Side::left : Side::right;
  choices.lay = either(random) ? DragLinkLay::fore_aft : DragLinkLay::across;
  choices.knuckle = choices.lay == DragLinkLay::fore_aft ? choices.drive : other(choices.drive);
  choices.box_ahead = either(random);
  choices.arm_up = either(random);
  choices.relays = one_of(random, 3);
  choices.suspension = static_cast<SuspensionKind>(one_of(random, 3));
  choices.joints = one_of(random, 4);
  choices.right_knuckle_differs = one_of(random, 4) == 0;
  choices.real_lengths_differ = either(random);
  choices.ratio_table = either(random);
  return choices;
}

Project random_truck(const TruckChoices& choices, std::mt19937_64& random) {
  FrontAxleStation axle = random_axle(choices, random);
  Linkage linkage = random_linkage(choices, axle, random);

  CabStation cab;
  cab.place = Vec3(between(random, -300.0, 300.0), between(random, -10.0, 10.0),
                   between(random, 100.0, 400.0));
  cab.pitch = degrees_between(random, -2.0, 2.0);
  cab.shake = {15.0, 15.0, 10.0, 10.0, 20.0, 20.0};
  const Placement<Cab, Chassis> in_cab = chassis_from_cab(cab).inverse();

  ColumnStation column;
  ShaftLineStation line;
  random_column_and_shafts(choices, in_cab, random, linkage.box, column, line);

  const double driver_y = side_sign(choices.drive) * between(random, 350.0, 450.0);
  PedalsStation pedals;
  pedals.pedals = {random_pedal(random, PedalUse::brake, driver_y),
                   random_pedal(random, PedalUse::clutch, driver_y + 120.0),
                   random_pedal(random, PedalUse::accelerator, driver_y - 120.0)};

  Project project;
  project.name = "random truck";
  project.cab = std::make_shared<const CabStation>(cab);
  project.column = std::make_shared<const ColumnStation>(column);
  project.shaft_line = std::make_shared<const ShaftLineStation>(line);
  project.steering_box = std::make_shared<const SteeringBoxStation>(linkage.box);
  project.drag_link = std::make_shared<const DragLinkStation>(linkage.link);
  project.front_axle = std::make_shared<const FrontAxleStation>(axle);
  project.pedals = std::make_shared<const PedalsStation>(pedals);
  return project;
}

Project random_truck(std::uint64_t seed) {
  std::mt19937_64 random(seed);
  const TruckChoices choices = random_choices(random);
  return random_truck(choices, random);
}

}  // namespace tackbench
