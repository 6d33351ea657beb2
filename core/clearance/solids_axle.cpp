// Tyres. The beam is a solid where the document has it as a shape.
#include <algorithm>

#include "core/clearance/solids_maker.h"

namespace tackbench {

namespace {

void add_tyre(SolidsMaker& maker, Side side) {
  const FrontAxleStation& axle = *maker.project.front_axle;
  const Tyre& tyre = axle.tyre;
  const Vec3 centre(0.0, side_sign(side) * (0.5 * axle.track + axle.hub_offset),
                    axle.wheel_centre_height);
  const Vec3 half = 0.5 * tyre.width * spindle_straight(axle, side).along;
  SolidPart part{side_word(side) + " tyre", "front_axle.tyre", {}, {}};
  part.pieces.push_back(
      {rounded_cylinder(centre - half, centre + half, 0.5 * tyre.diameter, tyre.shoulder_radius),
       rides(knuckle_body(side)), false});
  maker.add(std::move(part));
}

}  // namespace

void add_axle_solids(SolidsMaker& maker) {
  if (!maker.project.front_axle || !maker.mechanism.suspension) return;
  for (const Side side : {Side::left, Side::right}) add_tyre(maker, side);
}

}  // namespace tackbench
