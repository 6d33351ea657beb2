// The yard-only mock-up link: two lengths of tube in an outer sleeve, plug-welded once the length
// is found. A template, never a part of a vehicle on the road.
// Rules (references in the text they come with): least hole = t + 8 mm, as AISC/AWS D1.1 limits are
// quoted; spacing 4 d centre to centre from memory; overlap 1.5 to 2 diameters, staggered, from
// memory.
#pragma once

#include "core/fabrication/drag_link_part.h"

namespace tackbench {

// Least diameter of a plug-weld hole in a plate or sleeve of thickness t, mm.
double least_plug_hole(double thickness);
// Least distance of two holes' centres, mm.
double least_plug_spacing(double hole);

struct MockUpSettings {
  double sleeve_wall = 4.0;        // mm; what the yard has, 3 to 6
  double overlap_diameters = 2.0;  // of the tube, each side
  double least_overlap_diameters = 1.5;
};

struct MockUpLink {
  double ball_to_ball = 0.0;  // to set it to first
  double tube_diameter = 0.0;
  double piece_length = 0.0;  // of each of the two lengths of tube
  double gap = 0.0;           // between them inside the sleeve: what it can still close
  double sleeve_bore = 0.0;   // slides on the tube
  double sleeve_outside = 0.0;
  double sleeve_length = 0.0;
  double overlap = 0.0;        // each side, as set
  double longer = 0.0;         // slides out with the least overlap kept on both sides
  double hole = 0.0;           // plug-weld hole diameter
  double spacing = 0.0;        // least, centre to centre
  double first_hole = 0.0;     // from the sleeve's end along it
  double second_hole = 0.0;    // half way round from the first
  double hole_distance = 0.0;  // between the two over the sleeve's surface
  bool spacing_kept = false;
};

MockUpLink mock_up_link(const DragLinkPart& link, const MockUpSettings& settings = {});

}  // namespace tackbench
