#include "core/fabrication/mock_up_link.h"

#include <cmath>

#include "core/basics/units.h"

namespace tackbench {

double least_plug_hole(double thickness) {
  return thickness + 8.0;
}

double least_plug_spacing(double hole) {
  return 4.0 * hole;
}

MockUpLink mock_up_link(const DragLinkPart& link, const MockUpSettings& settings) {
  constexpr double kSlideFit = 0.5;  // on the diameter, mm; common practice
  MockUpLink mock_up;
  const double diameter = link.tube.outside_diameter;
  mock_up.ball_to_ball = link.ball_to_ball;
  mock_up.tube_diameter = diameter;
  mock_up.gap = 2.0 * link.adjustment_wanted;
  mock_up.piece_length = 0.5 * (link.tube_length - mock_up.gap);
  mock_up.sleeve_bore = diameter + kSlideFit;
  mock_up.sleeve_outside = mock_up.sleeve_bore + 2.0 * settings.sleeve_wall;
  mock_up.overlap = settings.overlap_diameters * diameter;
  mock_up.sleeve_length = 2.0 * mock_up.overlap + mock_up.gap;
  mock_up.longer = 2.0 * (settings.overlap_diameters - settings.least_overlap_diameters) * diameter;
  mock_up.hole = least_plug_hole(settings.sleeve_wall);
  mock_up.spacing = least_plug_spacing(mock_up.hole);
  mock_up.first_hole = mock_up.overlap / 3.0;
  mock_up.second_hole = 2.0 * mock_up.overlap / 3.0;
  const double along = mock_up.second_hole - mock_up.first_hole;
  const double around = 0.5 * kPi * mock_up.sleeve_outside;
  mock_up.hole_distance = std::hypot(along, around);
  mock_up.spacing_kept = mock_up.hole_distance >= mock_up.spacing;
  return mock_up;
}

}  // namespace tackbench
