// Sizes that no station gives, as such parts commonly are (common practice), mm: one place for what
// is drawn and for what gaps are measured to.
#pragma once

#include "core/project/drag_link.h"

namespace tackbench {

inline constexpr double kUsualBall = 24.0;        // radius of a ball's housing
inline constexpr double kUsualStud = 12.0;        // radius
inline constexpr double kUsualStudReach = 34.0;   // ball to the middle of the lever's eye
inline constexpr double kUsualLeverWidth = 42.0;  // of a lever at its eye
inline constexpr double kUsualLeverThickness = 26.0;
inline constexpr double kUsualLink = 15.0;  // radius of a tie rod
inline constexpr double kUsualShank = 60.0;
inline constexpr double kUsualShankRadius = 11.0;
inline constexpr double kUsualYoke = 21.0;    // joint's centre to the outside of a yoke's ear
inline constexpr double kUsualHubWall = 6.0;  // of a yoke's hub about its shaft
inline constexpr double kUsualJacket = 26.0;  // radius of the column's
inline constexpr double kUsualRailPlate = 10.0;

struct LinkSizes {
  double radius = kUsualLink;  // of the tube, outside
  double wall = 0.0;           // of the tube; 0: not given
  bool tube_given = false;
  double from_shank = kUsualShank;  // ball to the tube's end
  double to_shank = kUsualShank;
  double shank_radius = kUsualShankRadius;
  double bend_offset = 0.0;  // of the tube's middle from the line of the balls, 0 or more
};

LinkSizes drag_link_sizes(const DragLinkStation& link);

}  // namespace tackbench
