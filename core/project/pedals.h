// Pedals: each a crank in the cab with a pad, stops, springs, and a rod or a cable.
// Points are in the cab frame with the pedal at rest.
#pragma once

#include "core/project/common.h"
#include "core/project/steering_box.h"

namespace tackbench {

enum class PedalUse { brake, clutch, accelerator };

struct ReturnSpring {
  std::string name;
  Point<Cab> pedal_point;  // turns with the pedal
  Point<Cab> fixed_point;
  std::optional<double> rate;         // N per mm
  std::optional<double> free_length;  // mm
  UnknownMembers unknown;
};

// A lever between pedal rod and cylinder.
struct BellCrank {
  std::string name;
  Point<Cab> pivot;
  Direction<Cab> axis{Vec3::UnitY()};
  Point<Cab> input_pin;
  Point<Cab> output_pin;
  UnknownMembers unknown;
};

// Push rod to a master cylinder or booster.
struct PedalRod {
  Point<Cab> pedal_pin;  // turns with the pedal; required
  std::vector<BellCrank> bell_cranks;
  Point<Cab> cylinder_pin;               // rod's far end at rest; required
  Direction<Cab> cylinder_axis;          // the way the piston is pushed; unit; required
  std::optional<double> free_play;       // rod end travels this far before the piston moves, mm
  std::optional<double> full_stroke;     // of the piston, from the maker, mm
  std::optional<double> bore;            // mm
  std::optional<double> booster_gain;    // force out over force in
  std::optional<double> release_stroke;  // clutch: stroke at which it is released, mm
  std::optional<double> swing_limit;     // rod from the cylinder's axis, from the maker, rad
  UnknownMembers unknown;
};

struct EngineLever {
  Point<Chassis> pivot;
  Direction<Chassis> axis{Vec3::UnitY()};
  Point<Chassis> pin;                // closed throttle
  std::optional<double> full_angle;  // turn from closed to full, rad
  UnknownMembers unknown;
};

// Cable in an outer sheath.
struct PedalCable {
  Point<Cab> pedal_pin;               // where the inner is held on the pedal; turns with it
  Point<Cab> cab_exit;                // where the outer starts
  std::vector<Point<Chassis>> route;  // points that the outer passes, in order
  Point<Chassis> engine_exit;         // where the outer ends
  EngineLever engine_lever;
  std::optional<double> least_bend_radius;  // from the maker, mm
  std::optional<double> friction;           // inner in outer, from the maker
  std::optional<double> inner_length;       // mm
  std::optional<double> outer_length;       // mm
  UnknownMembers unknown;
};

struct Pedal {
  std::string name;
  PedalUse use = PedalUse::brake;
  Point<Cab> pivot;                    // required
  Direction<Cab> axis{Vec3::UnitY()};  // unit; positive turn (right-handed) = pressed when
                                       // `pressed_turns` says so
  TurnSense pressed_turns = TurnSense::anticlockwise;  // sense of pressing, seen with the axis
                                                       // pointing at the eye
  Point<Cab> pad_centre;                               // middle of the pad's face; required
  double pad_width = 70.0;                             // across the foot, mm
  double pad_height = 50.0;                            // along the foot, mm
  double pad_angle = 0.0;            // face from vertical, top forward positive, rad
  double pad_thickness = 8.0;        // mm
  double full_travel = 0.0;          // turn from rest to its own stop, rad; 0: not measured yet
  std::vector<Point<Cab>> arm_path;  // middle line of the arm from pivot to pad
  double arm_width = 12.0;           // across the middle line, mm
  double arm_thickness = 12.0;
  std::vector<ReturnSpring> springs;
  std::optional<PedalRod> rod;
  std::optional<PedalCable> cable;
  UnknownMembers unknown;
};

struct PedalsStation {
  std::vector<Pedal> pedals;  // one brake, at most one clutch, one accelerator
  UnknownMembers unknown;
};

}  // namespace tackbench
