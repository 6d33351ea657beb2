// One lock stop in the axle frame: a bolt with a rounded tip on a knuckle meets a pad on the axle.
// Signed gap = (centre of the bolt's rounded tip - pad) along the pad's normal - tip radius, mm.
// As the tip turns about the kingpin this is A cos t + B sin t + C in the swivel t (geometry).
#pragma once

#include <string>
#include <vector>

#include "core/mechanism/mechanism.h"

namespace tackbench {

struct AxleStop {
  std::string name;
  Side knuckle = Side::left;
  Side lock = Side::left;             // the lock that it ends
  Crank tip;                          // carries the tip's centre about the kingpin, axle frame
  Vec3 bolt_axis = Vec3::UnitX();     // unit, towards the tip, at swivel 0
  Vec3 pad_centre_mm = Vec3::Zero();  // axle frame
  Vec3 pad_normal = Vec3::UnitX();    // unit, out of the pad
  double tip_radius = 0.0;            // mm
  double pad_radius = 0.0;
  double bolt_adjustment = 0.0;

  // At a swivel of its own knuckle, rad.
  double gap(double swivel) const;       // mm
  double gap_rate(double swivel) const;  // mm per rad
  // Gap lost per mm that the bolt is screwed out: cosine of bolt to pad normal; 1 when square.
  double closing_per_mm(double swivel) const;
  // Contact place from the pad's centre in its face, mm.
  double off_centre(double swivel) const;
  // Bolt from the pad's normal, rad in [0, pi].
  double off_square(double swivel) const;
  // Bolt length change (out positive, mm) that brings the tip to the pad at that swivel. Empty
  // when the bolt lies within 1e-6 of the pad's face.
  std::optional<double> screw_out_for(double swivel) const;
};

// Every stop of both knuckles, left first.
std::vector<AxleStop> axle_stops(const FrontAxleStation& axle, const Steering& steering);

}  // namespace tackbench
