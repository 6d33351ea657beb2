// Grid and rulers in round numbers of the shown unit, counted from the datum: X = 0 at the front
// wheel centres, Y = 0 on the centreline, Z = 0 on top of the rails.
#pragma once

#include <QPainter>
#include <QRectF>

#include "core/basics/shown_number.h"
#include "ui/look/palette.h"
#include "ui/sheet/sheet_scene.h"
#include "ui/sheet/sheet_transform.h"

namespace tackbench::ui {

// mm; the least step of 1, 2 or 5 times a power of ten (of the unit; below an inch its halves) that
// takes at least `least_pixels`.
double round_step(double pixels_per_mm, ShownUnit unit, double least_pixels);

class Rulers {
 public:
  // Width of a ruler at the paper's edge, pixels.
  static constexpr double kWidth = 22.0;

  // Everything inside `paper`.
  Rulers(const SheetScene& scene, const SheetTransform& transform, ShownUnit unit,
         const QRectF& paper);

  void paint_grid(QPainter& painter, const Palette& colours) const;
  void paint(QPainter& painter, const Palette& colours) const;
  // Bottom left, with its length in words.
  void paint_scale_bar(QPainter& painter, const Palette& colours, const QPointF& at) const;

 private:
  // One axis of a view at one edge of the paper.
  struct Scale {
    SheetView view;
    bool lying;   // along the top edge
    double sign;  // chassis coordinate = sign * view coordinate
    const char* axis;
  };
  void paint_scale(QPainter& painter, const Palette& colours, const Scale& scale) const;

  const SheetScene& scene_;
  const SheetTransform& transform_;
  ShownUnit unit_;
  QRectF paper_;
};

}  // namespace tackbench::ui
