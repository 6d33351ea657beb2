// Grips: the places of a build that a hand can take and move, each with what it writes. Some are
// members of the project (a joint's centre); some stand for several (the box as a whole, the arm's
// ball, the cab).
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "core/basics/result.h"
#include "core/project/project.h"
#include "core/project/station.h"

namespace tackbench {

// The body that a drawn place moves with.
enum class Body { chassis, cab, axle, left_knuckle, right_knuckle, arm, relay, pedal };

// The body that a RidesOn names.
Body body_of(RidesOn rides_on);

// Where a grip may go.
enum class GripFreedom {
  free,       // anywhere
  on_line,    // along `along` through its place: a support on its shaft
  on_circle,  // about `along` through `centre`: the arm's ball
};

struct Grip {
  std::string path;   // stable: the member path that it writes, or of the record that it moves
  std::string words;  // "drag-link ball on the knuckle"; undo says "Move " and these
  std::optional<Station> station;
  Body body = Body::chassis;
  int body_index = 0;         // which relay or pedal
  Vec3 at_mm = Vec3::Zero();  // chassis, drawn position: cab unshaken, wheels straight, box at its
                              // centre, pedals at rest
  GripFreedom freedom = GripFreedom::free;
  Vec3 along = Vec3::UnitX();  // unit, chassis: the line that it keeps, the circle's axis, or for a
                               // free grip the line that it can be told to keep
  bool has_along = false;      // whether a free grip has such a line
  Vec3 centre_mm = Vec3::Zero();  // of the circle, chassis
  bool moves_several = false;     // a whole record: box, cab, pedal ...
  bool mirrored = false;          // the right twin of a member that is given for the left only
};

// All of them, in order of motion, then the cab, pedals, driver, shapes.
std::vector<Grip> grips(const Project& project);
std::optional<Grip> grip_at(const Project& project, std::string_view path);

// Nearest place to `wanted_mm` (chassis, drawn position) that the grip may take. `keep_line`: a
// free grip that has a line stays on it.
Vec3 allowed_place(const Grip& grip, const Vec3& wanted_mm, bool keep_line = false);

// The project with the grip there. Faults in
// the words of the member that is out of its range.
Result<Project> with_grip_at(const Project& project, const Grip& grip, const Vec3& wanted_mm,
                             bool keep_line = false);

}  // namespace tackbench
