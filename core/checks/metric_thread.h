// Metric thread geometry, mm. ISO 724 basic dimensions and the ISO 898-1 stress area:
// d2 = d - 0.649519 P, d1 = d - 1.082532 P, d3 = d - 1.226869 P, As = pi/4 ((d2 + d3)/2)^2.
#pragma once

#include <string>

#include "core/project/common.h"

namespace tackbench {

double pitch_diameter(const Thread& thread);  // d2 = D2
double inner_diameter(const Thread& thread);  // D1 of the tapped hole: what it is drilled to
double core_diameter(const Thread& thread);   // d3 of the shank
double stress_area(const Thread& thread);     // of the shank, mm^2

// Largest bore that still carries the thread: D1 plus its 6H tolerance, 0.23 P^0.7 mm
// (ISO 965-1, grade 6, formula from memory).
double largest_tapping_bore(const Thread& thread);

// "M20x1.5", left-handed "M20x1.5-LH" (ISO 965-1 designation).
std::string designation(const Thread& thread);

}  // namespace tackbench
