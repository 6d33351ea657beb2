// Pose: where everything is for one setting of the controls. Chassis frame unless said.
#pragma once

#include <array>
#include <string>
#include <vector>

#include "core/mechanism/controls.h"
#include "core/mechanism/mechanism.h"

namespace tackbench {

enum class Outcome {
  solved,
  not_compiled,          // steering is not measured yet; other parts are posed
  relay_does_not_close,  // `place` says which
  drag_link_does_not_close,
  tie_rod_does_not_close,
  suspension_does_not_close,
  shaft_line_does_not_close,
  pedal_does_not_close,  // `place` says which
};

// A rigid link between two balls.
struct LinkPose {
  Vec3 from_mm = Vec3::Zero();  // hand-side ball
  Vec3 to_mm = Vec3::Zero();    // road-side ball
  Vec3 along = Vec3::UnitX();   // unit, hand to road
  double from_leverage = 0.0;   // sine of the effective angle at the hand-side lever, 0 to 1
  double to_leverage = 0.0;     // at the road-side lever
  double closure = 0.0;         // of the loop that it closes; 0 at toggle
};
// asin of a leverage: 90 degrees best, 0 toggle; rad.
double effective_angle(double leverage);

struct RelayPose {
  double angle = 0.0;  // from drawn, rad
  double rate = 0.0;   // d angle / d arm
  Vec3 input_ball_mm = Vec3::Zero();
  Vec3 output_ball_mm = Vec3::Zero();
  LinkPose link;  // the one that drives it
};

struct KnucklePose {
  double swivel = 0.0;           // about the kingpin from drawn, left positive, rad
  double steer = 0.0;            // X to the wheel plane's trace in chassis XY, left positive, rad
  double swivel_rate = 0.0;      // d swivel / d arm
  double steer_rate = 0.0;       // d steer / d arm
  Vec3 spindle = Vec3::UnitY();  // unit, pointing left
  Placement<Chassis, Knuckle> chassis_from_knuckle;
};
// Wheel top outward positive, against chassis Z, rad.
double camber(const KnucklePose& knuckle, Side side);

// From the box's arm to the road wheels.
struct SteeringPose {
  double arm = 0.0;  // from the box's centre, rad
  Vec3 arm_ball_mm = Vec3::Zero();
  std::vector<RelayPose> relays;  // sized by blank_pose
  LinkPose drag_link;
  LinkPose tie_rod;  // left ball to right ball
  KnucklePose left;
  KnucklePose right;

  const KnucklePose& knuckle(Side side) const { return side == Side::left ? left : right; }
};

// Stud against its housing's axis at both ends of the drag link, rad, with the link's spin chosen
// so that the worse use of the swing limits is least.
struct BallSwing {
  double arm_end = 0.0;
  double knuckle_end = 0.0;
  double spin = 0.0;           // of the link from studs-centred at the arm end, rad
  double spin_free = 0.0;      // width of the spins that keep both within their limits, rad; 0 when
                               // a limit is not known
  double least_arm_end = 0.0;  // whatever the spin: the stud against the link's cross plane
  double least_knuckle_end = 0.0;
  double natural_clocking = 0.0;  // stud clocking that would centre both at this pose, rad
};

struct Pose {
  Outcome outcome = Outcome::not_compiled;
  int place = 0;  // index of the relay or pedal that the outcome names
  bool beyond_box_travel = false;

  Placement<Chassis, Cab> chassis_from_cab;
  ShaftLinePose shaft_line;
  double box_input = 0.0;  // from the box's centre, left positive, rad
  double arm_rate = 0.0;   // d arm / d hand wheel

  AxlePose axle;
  Placement<Chassis, Axle> chassis_from_axle;
  SteeringPose steering;
  BallSwing ball_swing;

  std::array<PedalPose, kMostPedals> pedals;
  int pedal_count = 0;
};

// A pose with its lists sized for the mechanism: solve() then allocates nothing.
Pose blank_pose(const Mechanism& mechanism);

}  // namespace tackbench
