#include "ui/space/space_colours.h"

#include <algorithm>

#include "ui/look/style.h"

namespace tackbench::ui {

SolidColours solid_colours(const Palette& from, SceneRole role, bool selected) {
  // On a dark ground a solid has to be lighter than on a light one to stand off it.
  const double more = from.card.lightness() < 128 ? 0.16 : 0.0;
  SolidColours made{tint(from.ink, from.card, 0.07 + more), from.ink, 1.0};
  switch (role) {
    case SceneRole::fixed:
      break;
    case SceneRole::moving:
      made.face = tint(from.moves, from.card, 0.34 + more);
      made.line = from.moves;
      break;
    case SceneRole::tyre:
      made.face = tint(from.ink, from.card, 0.3 + more);
      break;
    case SceneRole::soft:
      made.face = tint(from.soft, from.card, 0.3);
      made.line = from.soft;
      made.cover = 0.22;
      break;
  }
  if (selected) {
    made.face = tint(from.moves, from.card, 0.7);
    made.line = from.ink;
    made.cover = std::max(made.cover, 0.5);
  }
  return made;
}

QColor ghost_colour(const Palette& from) {
  return tint(from.moves, from.card, 0.8);
}

QColor shadow_colour(const Palette& from) {
  return from.card.lightness() < 128 ? tint(QColor(Qt::black), from.card, 0.38)
                                     : tint(from.ink, from.card, 0.11);
}

QColor ground_line_colour(const Palette& from) {
  return tint(from.hair, from.card, 0.55);
}

Vec3 light_direction() {
  return Vec3(-0.42, 0.62, 0.66).normalized();
}

double light_on(const Vec3& normal) {
  // Half-way between a hard edge of shadow and none: form shows on the dark side too.
  const double towards = 0.5 + 0.5 * normal.dot(light_direction());
  return kLeastLight + (1.0 - kLeastLight) * towards;
}

}  // namespace tackbench::ui
