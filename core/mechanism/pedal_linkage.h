// Pedal compiled: a crank in the cab, its rod through any bell-cranks to a piston that slides.
#pragma once

#include "core/basics/result.h"
#include "core/mechanism/loop_crank_link_crank.h"
#include "core/mechanism/loop_slider.h"
#include "core/project/pedals.h"

namespace tackbench {

struct BellCrankStage {
  LinkLoop loop;  // holds the input pin
  Crank output;   // carries the output pin
};

// Cab frame, mm, rad. Angle 0 = at rest; positive = pressed.
struct PedalLinkage {
  Pedal pedal;
  Crank pad;  // carries the pad's centre
  Crank pin;  // carries the rod's pin; absent rod: unused
  bool has_rod = false;
  std::vector<BellCrankStage> bell_cranks;
  SliderLoop slider;  // last rod to the piston
};

// Over centre the ratio grows without end; it is held at this size.
inline constexpr double kMostPedalRatio = 1e6;

struct PedalPose {
  double angle = 0.0;                   // turn from rest, rad
  Vec3 pad_centre_mm = Vec3::Zero();    // cab
  Vec3 pad_direction = Vec3::UnitX();   // unit, the way the pad's centre moves when pressed, cab
  Vec3 rod_pin_mm = Vec3::Zero();       // pedal end of the first rod, cab
  Vec3 cylinder_pin_mm = Vec3::Zero();  // cylinder end of the last rod, cab
  double rod_travel = 0.0;  // of the rod's cylinder end along the cylinder's axis from rest, mm;
                            // the rod's free play is the first part of it
  double ratio = 0.0;       // pad centre's travel along its arc per rod travel along the cylinder's
                            // axis; negative when pressing pulls the rod back; 0 without rod
  double rod_swing = 0.0;   // last rod from the cylinder's axis, rad
  double leverage = 1.0;    // sine of the effective angle at the pedal's pin, positive while
                            // pressing pushes the first rod, 0 = over centre
  bool closes = true;       // false: the rod cannot follow
};

// Every fault of the pedal; its `place` starts at the pedal's own members.
Result<PedalLinkage> compile_pedal(const Pedal& pedal);
// Any angle, also beyond the pedal's own stop. Never NaN.
PedalPose pose_pedal(const PedalLinkage& linkage, double angle);
// The same into a pose of this very linkage: without a rod, the rod's members stay as they are.
void pose_pedal(const PedalLinkage& linkage, double angle, PedalPose& pose);

}  // namespace tackbench
