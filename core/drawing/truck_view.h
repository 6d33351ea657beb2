// A pose seen in a view, as plain lines: what the window paints, paper prints and tests read.
// Orthographic projection (ISO 128-3): side is seen from the vehicle's left, front from ahead, plan
// from above. Millimetres of the truck, x to the right and y up on the view.
#pragma once

#include <string>
#include <vector>

#include "core/mechanism/pose.h"
#include "core/project/sheet_settings.h"

namespace tackbench {

struct ViewPoint {
  double x = 0.0;
  double y = 0.0;
};

// side: x = -X, y = Z (the front is to the left); front: x = Y, y = Z; plan: x = -X, y = -Y.
ViewPoint seen(SheetView view, const Vec3& chassis_mm);
// The chassis vector of a movement on the view; nothing along the line of sight.
Vec3 movement_of(SheetView view, const ViewPoint& step);
// Unit, chassis, towards the eye.
Vec3 sight(SheetView view);

// What a line stands for, which says how it is drawn (looks: ink is fixed, marking blue moves).
enum class Ink {
  fixed,   // rails, box, brackets, axle beam
  arm,     // levers: pitman arm, relays, steering arms, pedal arms
  link,    // drag link, tie rod, shafts, rods: what moves
  tyre,    //
  soft,    // cab, driver, what is only around
  hidden,  // behind something
  ghost,   // where a moving thing was or can go
  centre,  // axes, chain thin
  ground,  //
};

// `part` on each: member path of the record or grip that it draws ("steering_box.arm",
// "drag_link"); picking a line selects it. Empty for what cannot be chosen.
struct DrawnLine {
  std::vector<ViewPoint> through;
  Ink ink = Ink::fixed;
  bool closed = false;
  bool filled = false;  // with paper, so that it covers what lies behind
  bool body = false;    // of a solid: a thin edge, round a wash of its ink when closed; without it
                        // one stroke of the ink's own weight
  std::string part;
};
struct DrawnRound {
  ViewPoint centre;
  double radius = 1.0;
  Ink ink = Ink::fixed;
  bool filled = false;
  std::string part;
};
// A symbol of fixed size on the screen or paper, not in mm of the truck (after ISO 3952 where one
// exists).
enum class JointSymbol {
  ball,
  universal_joint,
  double_joint,
  coupling_disc,
  bearing,
  pivot,
  datum
};
struct DrawnSymbol {
  JointSymbol symbol = JointSymbol::ball;
  ViewPoint at;
  double turn = 0.0;  // of the shaft through it from +x, anticlockwise, rad
  Ink ink = Ink::link;
  std::string part;
};
struct DrawnWords {
  ViewPoint at;
  std::string words;
  Ink ink = Ink::soft;
};

// Painted lines first, then rounds, symbols and words; in each list later ones cover earlier ones.
struct TruckView {
  SheetView view = SheetView::side;
  std::vector<DrawnLine> lines;
  std::vector<DrawnRound> rounds;
  std::vector<DrawnSymbol> symbols;
  std::vector<DrawnWords> words;
  ViewPoint least;  // of everything drawn
  ViewPoint greatest;
};

// The truck at a solved pose; parts that are not measured or not posed are left out.
TruckView truck_view(const Mechanism& mechanism, const Pose& pose, SheetView view);

// Only what moves, in Ink::ghost: for old positions, extremes and envelopes.
TruckView ghost_view(const Mechanism& mechanism, const Pose& pose, SheetView view);

// Where the views stand on one sheet so that a place lines up across them, in mm of the truck.
// First angle: front to the right of the side view, plan below it. Third angle: front to the left,
// plan above (ISO 128-3).
struct SheetLayout {
  ViewPoint side;
  ViewPoint front;
  ViewPoint plan;

  const ViewPoint& origin(SheetView view) const;
};
SheetLayout sheet_layout(const TruckView& side, const TruckView& front, const TruckView& plan,
                         Projection projection, double gap_mm);

}  // namespace tackbench
