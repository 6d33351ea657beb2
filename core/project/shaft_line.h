// Shaft line: 0 to 4 joints between the column's end and the box input, the shafts between them
// and the supports along those shafts. Order is the order of motion, hand to road.
#pragma once

#include "core/project/column.h"

namespace tackbench {

enum class JointKind {
  universal,       // one cross
  double_joint,    // two crosses on a short middle piece that is not centred
  double_centred,  // two crosses held at equal angles by a centring socket: constant velocity
  coupling_disc,   // flexible disc: taken as constant velocity at its small angles
};

struct ShaftJoint {
  std::string name;
  JointKind kind = JointKind::universal;
  RidesOn rides_on = RidesOn::chassis;  // frame of `centre`: chassis or cab; the first joint
                                        // rides in the cab by nature
  Vec3 centre = Vec3::Zero();           // mm in that frame; required
  double cross_spacing = 40.0;          // double joints: between the two crosses, mm
  std::optional<double> angle_limit;    // from the maker's sheet, rad; no default
  double yoke_depth = 25.0;             // joint centre to the end face of the shaft in its yoke:
                                        // nearer than this the shaft enters the cross, mm
  double grip_length = 30.0;            // length of shaft inside the yoke's bore, mm
  UnknownMembers unknown;
};

enum class SlipKind { none, spline, double_d, tube };

// The shaft between joint k and joint k + 1.
struct Shaft {
  std::string name;
  SlipKind slip = SlipKind::none;   // whether the two halves can slide, and what slides
  ShaftSection section;             // where the yokes grip
  double outside_diameter = 19.05;  // of its plain length (tube or bar), mm
  double inside_diameter = 0.0;     // 0 for a bar, mm
  double fork_offset = 0.0;  // from the pin of the hand-side yoke to the pin of the road-side yoke,
                             // right-handed about the shaft from hand to road, rad; 0 = aligned
  std::optional<double> engagement;        // slip: length of overlap as drawn, mm
  std::optional<double> engagement_least;  // slip: least overlap wanted, mm; without it 1.5
                                           // diameters are judged (common practice)
  std::optional<double> slide_in_left;     // slip: how far it can still close as drawn, mm
  UnknownMembers unknown;
};

enum class SupportKind { rod_end, self_aligning, bearing_block };

// A bearing that holds a point (or the line) of a shaft.
struct ShaftSupport {
  std::string name;
  SupportKind kind = SupportKind::rod_end;
  int shaft = 0;                        // index of the shaft it carries, 0 = after the first joint
  bool collar = false;                  // also holds the shaft lengthways
  bool on_road_half = false;            // slip shafts: on the half at the road end
  RidesOn rides_on = RidesOn::chassis;  // frame of eye and base: chassis or cab
  Vec3 eye = Vec3::Zero();              // centre of the eye, mm in that frame; required
  Vec3 base = Vec3::Zero();             // middle of its bracket's foot, mm in that frame
  double bore = 19.05;                  // of the eye, mm; a spacer sleeve fills what is over
  double width = 21.0;                  // of the eye along the shaft, mm
  std::optional<double> swing_limit;    // tilt of the shaft in the eye from the maker, rad
  UnknownMembers unknown;
};

struct ShaftLineStation {
  std::vector<ShaftJoint> joints;
  std::vector<Shaft> shafts;  // one fewer than joints (none without joints)
  std::vector<ShaftSupport> supports;
  // Pin of the first joint's hand-side yoke at hand-wheel zero, right-handed about the column axis
  // (hand to road) from the direction square to it nearest to up; rad.
  double first_yoke_clocking = 0.0;
  std::optional<double> push_back;  // how far box and firewall are pushed rearward in the check
                                    // of that name, mm; the builder's choice, no default
  UnknownMembers unknown;
};

}  // namespace tackbench
