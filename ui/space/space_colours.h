// Colours of solids and their edges, made from the palette: what is fixed in ink, what moves in
// marking blue, people and cab softer.
#pragma once

#include <QColor>

#include "core/scene/scene.h"
#include "ui/look/palette.h"

namespace tackbench::ui {

struct SolidColours {
  QColor face;         // in full light
  QColor line;         // of its edges
  double cover = 1.0;  // of its faces, 1 = nothing shines through
};

SolidColours solid_colours(const Palette& from, SceneRole role, bool selected);
QColor ghost_colour(const Palette& from);   // of what could be there
QColor shadow_colour(const Palette& from);  // on the ground
QColor ground_line_colour(const Palette& from);

// Share of full light on a face: 1 where it looks into the light. `normal` unit, in the eye's own
// axes (right, up, towards the eye); the light stands over the eye's left shoulder.
double light_on(const Vec3& normal);
// From the eye towards the light, unit, in the eye's own axes.
Vec3 light_direction();
inline constexpr double kLeastLight = 0.56;  // on a face that is turned away

}  // namespace tackbench::ui
