// Pedal check: pad arc, ratio through the stroke, rod swing, and whether the brake can drive its
// cylinder to its full stroke before pad, arm or stop meets anything.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/mechanism/solve.h"

namespace tackbench {

struct PedalRow {
  double angle = 0.0;       // turn from rest, rad
  double pad_travel = 0.0;  // along the pad's arc, mm
  double rod_travel = 0.0;  // mm
  double ratio = 0.0;
  double rod_swing = 0.0;  // rad
};

enum class PedalEndKind { own_stop, floor, over_centre, rod_cannot_follow };

struct PedalEnd {
  PedalEndKind kind = PedalEndKind::own_stop;
  double angle = 0.0;          // turn from rest, rad
  double pad_travel = 0.0;     // mm
  double piston_stroke = 0.0;  // rod travel less free play, mm; the whole rod travel, which the
                               // piston cannot exceed, while the free play is not measured
};

struct PedalResult {
  std::string name;
  PedalUse use = PedalUse::brake;
  double pad_arc_radius = 0.0;   // mm
  double pad_travel_full = 0.0;  // along the arc to the pedal's own stop, mm
  double push_angle_rest = 0.0;  // direction in which the pad moves, below forward, rad
  double push_angle_full = 0.0;
  std::vector<PedalRow> rows;  // rest to the pedal's own stop
  std::vector<PedalEnd> ends;  // everything that can end the travel, first first
  // Ratios are positive where pressing pushes the piston. Empty without a rod, or where it cannot
  // follow.
  std::optional<double> ratio_rest;
  std::optional<double> ratio_middle;  // half way to the pedal's own stop
  std::optional<double> ratio_full;    // at the pedal's own stop
  // What the foot can meet, rest to the first end: a negative one if there is any, else the
  // greatest.
  std::optional<double> ratio_worst;
  double ratio_worst_at = 0.0;            // turn from rest, rad
  std::optional<double> pad_free_travel;  // along the arc until the free play is taken up, mm
  double greatest_rod_swing = 0.0;        // rad
  std::optional<double> stroke_wanted;    // brake: the cylinder's full stroke; clutch: release, mm
  double stroke_reached = 0.0;            // piston stroke at the first end, mm
  std::optional<double> angle_at_wanted;  // pedal turn at which the wanted stroke is reached
  double pad_over_floor = 0.0;            // lowest edge of the pad over the floor there (or at the
                                          // pedal's own stop), mm; meaningful when floor_known
  bool floor_known = false;
};

// One result a pedal, in project order. Floor from the driver's station when there is one.
std::vector<PedalResult> check_pedals(const Mechanism& mechanism);

}  // namespace tackbench
