// Mechanism: a Project compiled once, constant after. Parts whose stations are left out or not
// measured are empty; what they still need is listed in `missing`.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/basics/result.h"
#include "core/mechanism/box_ratio.h"
#include "core/mechanism/loop_crank_link_crank.h"
#include "core/mechanism/pedal_linkage.h"
#include "core/mechanism/shaft_line.h"
#include "core/mechanism/suspension_path.h"
#include "core/project/project.h"

namespace tackbench {

// One lever between arm and drag link. Chassis frame.
struct RelayStage {
  std::string name;
  LinkLoop from_arm;   // the link that drives its input ball, solved hand to road
  Crank output;        // carries its output ball
  LinkLoop from_road;  // the same lever solved road to hand: held at its output ball by the next
                       // link (the drag link for the last relay)
  double link_drawn = 0.0;  // length of the driving link as drawn, mm
};

// One knuckle. Axle frame: chassis axes, origin midway between the wheel centres.
struct KnuckleBody {
  Side side = Side::left;
  Crank tie_rod_arm;                     // carries its tie-rod ball about the kingpin
  Vec3 kingpin_point_mm = Vec3::Zero();  // the point of the kingpin axis nearest the spindle line
  Vec3 wheel_centre_mm = Vec3::Zero();   // swivel 0
  Vec3 spindle = Vec3::UnitY();          // unit, swivel 0; points to the left on both sides
};

// From box to road wheels.
struct Steering {
  BoxRatio box;
  double travel_left = 0.0;  // output angles at the box's ends from its centre, rad, positive
  double travel_right = 0.0;
  std::optional<double> assist_cut_left;
  std::optional<double> assist_cut_right;

  Crank arm;                      // chassis; positive = as a left turn of the hand wheel moves it
  Vec3 arm_stud = Vec3::UnitZ();  // stud of the drag link's first ball, out of its housing, on
                                  // the last lever as drawn, unit, chassis
  std::vector<RelayStage> relays;

  Side driven_side = Side::left;      // knuckle that the drag link drives
  LinkLoop drag_link;                 // axle frame: holds the driven knuckle's steering-arm ball
  LinkLoop arm_from_road;             // chassis: the arm held by the first link (road to hand)
  double drag_link_drawn = 0.0;       // ball to ball, box at its centre and wheels straight, mm
  Vec3 knuckle_stud = Vec3::UnitZ();  // unit, axle frame, swivel 0

  KnuckleBody left;
  KnuckleBody right;
  LinkLoop tie_rod;            // axle frame: holds the other knuckle's tie-rod ball
  double tie_rod_drawn = 0.0;  // mm

  double stud_clocking = 0.0;  // about the link, arm housing to knuckle housing, rad
  bool stud_clocking_given = false;

  // Hand-wheel zero: wheels straight at ride height.
  double straight_arm = 0.0;     // arm angle from the box's centre, rad
  double straight_input = 0.0;   // box input from its centre, rad
  double straight_swivel = 0.0;  // of the driven knuckle, rad

  const KnuckleBody& driven() const { return driven_side == Side::left ? left : right; }
  const KnuckleBody& follower() const { return driven_side == Side::left ? right : left; }
};

// Something that a person still has to measure or look up before a part can be solved.
struct MissingInput {
  std::string place;  // member path
  std::string words;  // "read off the box which way the arm goes"
};

struct Mechanism {
  Project project;  // what it was compiled from
  Placement<Chassis, Cab> chassis_from_cab;
  std::optional<ShaftLine> shaft_line;       // wants column and steering box
  std::optional<SuspensionPath> suspension;  // wants front axle
  std::optional<Steering> steering;          // wants box, drag link and front axle
  std::vector<PedalLinkage> pedals;          // in project order, at most kMostPedals
  std::vector<MissingInput> missing;
};

// Every fault, each with its member path.
Result<Mechanism> compile(const Project& project);

}  // namespace tackbench
