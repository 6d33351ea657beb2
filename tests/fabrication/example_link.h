// A drag link whose every dimension can be followed by hand.
#pragma once

#include <memory>

#include "core/fabrication/cut_items.h"
#include "core/fabrication/drag_link_part.h"

namespace tackbench {

// Box centred, wheels straight: 800 between balls. Tube 38 x 8, M24x1.5 right at the arm, left at
// the knuckle. Arm end: shank 90, 36 of it in the tube, nut 12. Knuckle end: 80, 40, 10.
inline DragLinkStation example_station() {
  DragLinkStation station;
  station.arm_end.shank_length = 90.0;
  station.arm_end.thread = Thread{24.0, 1.5, ThreadHand::right};
  station.arm_end.thread_engagement = 36.0;
  station.arm_end.lock_nut_thickness = 12.0;
  station.knuckle_end.shank_length = 80.0;
  station.knuckle_end.thread = Thread{24.0, 1.5, ThreadHand::left};
  station.knuckle_end.thread_engagement = 40.0;
  station.knuckle_end.lock_nut_thickness = 10.0;
  station.tube = LinkTube{38.0, 8.0, 355.0, {}};
  station.adjustment = 15.0;
  station.tolerance = 0.5;
  station.forces.assist_limit = 12000.0;
  return station;
}

inline LinkResult example_length() {
  LinkResult link;
  link.drawn_length = 797.0;  // the tie rod was set since: not what is ordered
  link.real_length = 800.0;
  link.centring_length = 800.0;
  return link;
}

inline LockResult example_locks() {
  LockResult locks;
  locks.swing_used_arm_end = radians_from_degrees(14.2);
  locks.swing_used_knuckle_end = radians_from_degrees(17.9);
  locks.best_stud_clocking = radians_from_degrees(-9.0);
  locks.swing_at_best_clocking = radians_from_degrees(12.5);
  LockRow row;
  row.least_leverage = 0.8;
  locks.rows = {row};
  return locks;
}

inline Mechanism example_mechanism(const DragLinkStation& station) {
  Mechanism mechanism;
  mechanism.project.name = "example";
  mechanism.project.drag_link = std::make_shared<DragLinkStation>(station);
  auto box = std::make_shared<SteeringBoxStation>();
  box->ratio = 20.0;
  box->arm.length = 190.0;
  mechanism.project.steering_box = box;
  auto column = std::make_shared<ColumnStation>();
  column->hand_wheel_diameter = 450.0;
  mechanism.project.column = column;
  mechanism.steering.emplace();
  mechanism.steering->stud_clocking = radians_from_degrees(20.0);
  mechanism.steering->stud_clocking_given = true;
  return mechanism;
}

inline DragLinkPart example_part(const DragLinkStation& station = example_station()) {
  return drag_link_part(example_mechanism(station), example_length(), example_locks());
}

}  // namespace tackbench
