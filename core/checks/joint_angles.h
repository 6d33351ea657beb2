// Angles of the project's joints from those of their crosses: a double joint that is not centred
// counts the sum of its two.
#pragma once

#include <cstddef>
#include <vector>

#include "core/mechanism/shaft_line.h"

namespace tackbench {

// One angle a joint of the project, rad. `angle_at(i)`: of cross i of ShaftLine::crosses, rad.
template <class AngleAt>
std::vector<double> angles_of_joints(const ShaftLine& line, AngleAt&& angle_at) {
  std::vector<double> angles(line.station.joints.size(), 0.0);
  for (std::size_t i = 0; i < line.crosses.size(); ++i) {
    angles[static_cast<std::size_t>(line.crosses[i].joint)] += angle_at(i);
  }
  return angles;
}

inline std::vector<double> drawn_angles_of_joints(const ShaftLine& line) {
  return angles_of_joints(line, [&](std::size_t i) { return line.crosses[i].angle; });
}

}  // namespace tackbench
