// How the stations put their grips on the list; inside this room only.
#pragma once

#include <string>
#include <utility>
#include <vector>

#include "core/project/grips.h"

namespace tackbench::grip_list {

inline Grip grip(std::string path, std::string words, Station station, Body body,
                 const Vec3& at_mm) {
  Grip made;
  made.path = std::move(path);
  made.words = std::move(words);
  made.station = station;
  made.body = body;
  made.at_mm = at_mm;
  return made;
}

// `along` need not be unit; a zero vector leaves the grip without a line.
inline void give_line(Grip& grip, const Vec3& along) {
  const double length = along.norm();
  if (!(length > 1e-9)) return;
  grip.along = along / length;
  grip.has_along = true;
}

inline std::string item(const std::string& list, std::size_t index) {
  return list + '[' + std::to_string(index) + ']';
}

void add_column_grips(const Project& project, std::vector<Grip>& list);
void add_shaft_line_grips(const Project& project, std::vector<Grip>& list);
void add_steering_box_grips(const Project& project, std::vector<Grip>& list);
void add_drag_link_grips(const Project& project, std::vector<Grip>& list);
void add_front_axle_grips(const Project& project, std::vector<Grip>& list);
void add_pedal_grips(const Project& project, std::vector<Grip>& list);
void add_driver_grips(const Project& project, std::vector<Grip>& list);
void add_shape_grips(const Project& project, std::vector<Grip>& list);

// Cab as drawn; identity without a cab.
Placement<Chassis, Cab> drawn_cab(const Project& project);

// Grips that stand for several members: what they write. Null when the path names none.
std::optional<Result<Project>> with_whole_moved(const Project& project, const Grip& grip,
                                                const Vec3& to_mm);

}  // namespace tackbench::grip_list
