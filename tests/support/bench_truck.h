// A truck of round numbers, the same in every test that wants to be followed by hand: a left-hand
// drive 5-tonne chassis with the box behind the axle, the arm down, a fore-aft drag link to the
// left knuckle and leaf springs fixed behind. Invented; no column or shaft line, so the hand wheel
// turns the box input directly.
#pragma once

#include "core/mechanism/mechanism.h"
#include "core/project/project.h"

namespace tackbench {

struct BenchTruck {
  SteeringBoxStation box;
  DragLinkStation link;
  FrontAxleStation axle;

  BenchTruck();
  Project project() const;
  Mechanism mechanism() const;  // throws std::runtime_error with the problems
};

// The stop's bolt lies along its path with its tip just touching the pad, square to it and on its
// middle, when `knuckle` of that side has turned to `swivel` (left positive, rad).
LockStop square_stop(const KnuckleSide& knuckle, Side side, double swivel, double axle_height);

// Hanging brake pedal: pivot at (300, 0, 400) in the cab, pad 300 below it, pin 60 below it, rod
// straight forward to the cylinder; 60 degrees of travel unless changed.
Pedal bench_brake();

// A mechanism of pedals alone, over a floor at `floor_height` when given.
Mechanism pedals_alone(const std::vector<Pedal>& pedals, std::optional<double> floor_height);

// Throws std::runtime_error with the problems when the project does not compile.
Mechanism compiled(const Project& project);

}  // namespace tackbench
