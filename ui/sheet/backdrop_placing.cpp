#include "ui/sheet/backdrop_placing.h"

#include <QCoreApplication>
#include <cmath>

#include "core/basics/units.h"

namespace tackbench::ui {

namespace {

struct Texts {
  Q_DECLARE_TR_FUNCTIONS(BackdropPlacing)
};

bool coincide(const QPointF& a, const QPointF& b) {
  return (a - b).manhattanLength() < 1.0;
}

Vec3 as_pixel(const QPointF& p) {
  return {p.x(), p.y(), 0.0};
}

}  // namespace

Backdrop levelled(Backdrop backdrop, const QPointF& from_pixel, const QPointF& to_pixel) {
  const QPointF step = to_pixel - from_pixel;
  // Pixels count downwards.
  double rise = std::atan2(-step.y(), step.x());
  if (rise > kPi / 2.0) rise -= kPi;
  if (rise < -kPi / 2.0) rise += kPi;
  backdrop.level_angle = -rise;
  return backdrop;
}

void BackdropPlacing::begin_points(std::size_t index) {
  index_ = index;
  step_ = Step::first_pixel;
}

void BackdropPlacing::begin_level(std::size_t index) {
  index_ = index;
  step_ = Step::level_from;
}

QString BackdropPlacing::asks() const {
  switch (step_) {
    case Step::none:
      return {};
    case Step::first_pixel:
      return Texts::tr("Choose the first of two points on the photograph");
    case Step::second_pixel:
      return Texts::tr("Choose the second point, the known distance away");
    case Step::first_place:
      return Texts::tr("Choose where the first point lies on the drawing");
    case Step::level_from:
      return Texts::tr("Choose one end of a line that is level on the truck");
    case Step::level_to:
      return Texts::tr("Choose the other end of the level line");
  }
  return {};
}

std::optional<Backdrop> BackdropPlacing::choose(const QPointF& screen,
                                                const std::optional<Vec3>& chassis_mm,
                                                const Backdrop& backdrop, const SheetScene& scene,
                                                const SheetTransform& transform) {
  const QPointF pixel = backdrop_to_screen(backdrop, scene, transform).inverted().map(screen);
  switch (step_) {
    case Step::none:
      return std::nullopt;
    case Step::first_pixel:
      first_ = pixel;
      step_ = Step::second_pixel;
      return std::nullopt;
    case Step::second_pixel:
      second_ = pixel;
      step_ = coincide(first_, second_) ? Step::none : Step::first_place;
      return std::nullopt;
    case Step::first_place: {
      step_ = Step::none;
      Backdrop placed = backdrop;
      placed.first_pixel = as_pixel(first_);
      placed.second_pixel = as_pixel(second_);
      const ViewPoint in_view = transform.to_sheet(screen) - scene.origin(backdrop.view);
      placed.first_point = chassis_mm.value_or(movement_of(backdrop.view, in_view));
      return placed;
    }
    case Step::level_from:
      first_ = pixel;
      step_ = Step::level_to;
      return std::nullopt;
    case Step::level_to:
      step_ = Step::none;
      if (coincide(first_, pixel)) return std::nullopt;
      return levelled(backdrop, first_, pixel);
  }
  return std::nullopt;
}

}  // namespace tackbench::ui
