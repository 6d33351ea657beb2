#include "core/mechanism/usual_sizes.h"

#include <algorithm>
#include <cmath>

namespace tackbench {

LinkSizes drag_link_sizes(const DragLinkStation& link) {
  LinkSizes sizes;
  if (link.tube) {
    sizes.radius = 0.5 * link.tube->outside_diameter;
    sizes.wall = link.tube->wall;
    sizes.tube_given = true;
  }
  const auto shank = [](const LinkEnd& end) {
    return end.shank_length
               ? std::max(20.0, *end.shank_length - end.thread_engagement.value_or(0.0))
               : kUsualShank;
  };
  sizes.from_shank = shank(link.arm_end);
  sizes.to_shank = shank(link.knuckle_end);
  if (link.arm_end.thread) sizes.shank_radius = 0.5 * link.arm_end.thread->diameter;
  sizes.bend_offset = std::abs(link.bend_offset);
  return sizes;
}

}  // namespace tackbench
