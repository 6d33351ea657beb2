// Drag link: from the pitman arm (or the last relay) to one knuckle.
#pragma once

#include "core/project/common.h"

namespace tackbench {

enum class LinkEndKind { ball_stud, rod_end };

struct LinkEnd {
  LinkEndKind kind = LinkEndKind::ball_stud;
  // Sizes: no defaults, since a supplier would make what the cut list prints.
  std::optional<double> shank_length;        // ball centre to the end of the threaded shank, mm
  std::optional<Thread> thread;              // in the tube
  std::optional<double> thread_engagement;   // shank inside the tube as made, mm
  std::optional<double> lock_nut_thickness;  // mm
  std::optional<double> swing_limit;  // stud from its housing's axis, from the maker's sheet, rad
  // Stud axis on its lever with the box at its centre and the wheels straight, out of the housing.
  // Without it parallel to the lever's own turning axis: arm end from ball to arm (along the output
  // axis when the arm has no offset), relay along its axis, knuckle up its kingpin.
  std::optional<Vec3> stud_axis;
  std::optional<double> taper;  // stud cone: diameter change over length (0.1 for 1 in 10)
  std::optional<double> stud_large_diameter;  // of the cone, mm
  UnknownMembers unknown;
};

// What has to be known of an end before a tube can be made for it.
struct LinkEndSize {
  double shank_length = 0.0;  // mm, as in LinkEnd
  Thread thread;
  double thread_engagement = 0.0;
  double lock_nut_thickness = 0.0;
};
// Empty while one of the four is not given.
inline std::optional<LinkEndSize> link_end_size(const LinkEnd& end) {
  if (!end.shank_length || !end.thread || !end.thread_engagement || !end.lock_nut_thickness) {
    return std::nullopt;
  }
  return LinkEndSize{*end.shank_length, *end.thread, *end.thread_engagement,
                     *end.lock_nut_thickness};
}

struct LinkTube {
  double outside_diameter = 35.0;  // mm; required
  double wall = 5.0;               // mm; required
  std::optional<double> yield;     // MPa, from the certificate
  UnknownMembers unknown;
};

// Forces that might act along the link, newtons. No defaults that flatter: what is not given is
// said to be missing.
struct LinkForces {
  std::optional<double> assist_limit;    // greatest the assist can push
  std::optional<double> two_handed_rim;  // at the hand-wheel rim, sum of both hands
  std::optional<double> kerb_strike;
  UnknownMembers unknown;
};

struct DragLinkStation {
  Side knuckle = Side::left;    // which knuckle it drives
  Point<Chassis> knuckle_ball;  // steering-arm ball, wheels straight; required
  LinkEnd arm_end;
  LinkEnd knuckle_end;
  // Angle from the arm-end housing's axis to the knuckle-end housing's axis about the link, seen
  // along it from arm to knuckle, right-handed, rad. Without it: both studs centred straight ahead.
  std::optional<double> stud_clocking;
  std::optional<LinkTube> tube;
  double bend_offset = 0.0;            // of the tube's middle from the line of the balls, mm
  std::optional<double> given_length;  // ball to ball of the real link, mm; without it as drawn
  double adjustment = 15.0;            // wanted each way, mm
  std::optional<double> tolerance;     // plus-minus on the length, mm; without it "blank until
                                       // measured in"
  int quantity = 1;
  LinkForces forces;
  UnknownMembers unknown;
};

}  // namespace tackbench
