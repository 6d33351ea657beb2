// The graphs that a truck can be shown by, and how each hangs on the controls.
#pragma once

#include <QString>
#include <vector>

#include "core/basics/shown_number.h"
#include "core/checks/curves.h"
#include "ui/look/meaning.h"

namespace tackbench::ui {

enum class GraphKind {
  wheel_angles,
  bump_steer,
  roll_steer,
  shaft_ratio,
  pedal_ratio,
  effective_angles,
};

struct GraphChoice {
  GraphKind kind = GraphKind::wheel_angles;
  int pedal = 0;  // of a pedal ratio

  bool operator==(const GraphChoice&) const = default;
};

// One axis in words, with the unit that its inside numbers have.
struct GraphAxis {
  QString words;
  Unit unit = Unit::number;
};

struct GraphWords {
  QString title;
  GraphAxis across;
  GraphAxis up;
  QString held;  // how the other controls stand for the curves, whatever the truck does now
};

// What each kind of graph shows and how it is read; a pedal's name is left as %1.
std::vector<Meaning> graph_meanings();
QString graph_meaning(GraphKind kind);

// Every graph, the pedals that have a rod one by one; also those that this truck cannot fill yet.
std::vector<GraphChoice> graph_choices(const Mechanism& mechanism);
GraphWords graph_words(const GraphChoice& choice, const Mechanism& mechanism);
// Empty when the truck has not got the parts.
std::vector<Curve> graph_curves(const GraphChoice& choice, const Mechanism& mechanism,
                                const ControlReach& reach);

// Where the controls stand on the graph's x axis, inside unit.
double place_of(const GraphChoice& choice, const Mechanism& mechanism, const Controls& controls);
// The controls set to a place of the x axis, held within the reach; the others stay.
Controls set_to_place(const GraphChoice& choice, const Mechanism& mechanism,
                      const ControlReach& reach, Controls controls, double place);

// An inside number as an axis counts it: inches when lengths are shown in them.
double axis_number(double inside, Unit unit, ShownUnit lengths);
double inside_number(double shown, Unit unit, ShownUnit lengths);
// "bump, both wheels (mm)"
QString axis_title(const GraphAxis& axis, ShownUnit lengths);

}  // namespace tackbench::ui
