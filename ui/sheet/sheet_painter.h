// Paints a view's plain lines with pen and colour: ink is fixed, marking blue moves.
#pragma once

#include <QPainter>
#include <QPen>
#include <string>

#include "core/drawing/truck_view.h"
#include "ui/look/palette.h"
#include "ui/sheet/sheet_transform.h"

namespace tackbench::ui {

// Pen of an ink on a screen of 100 %: widths in pixels at any zoom.
QPen ink_pen(Ink ink, const Palette& colours);

// Whether `part` is the selected record or grip, or belongs to it.
bool belongs_to(const std::string& part, const std::string& selected);

class SheetPainter {
 public:
  // `painter` outlives it.
  SheetPainter(QPainter& painter, const SheetTransform& transform, const Palette& colours)
      : painter_(painter), transform_(transform), colours_(colours) {}

  // `origin`: of the view on the sheet.
  void draw(const TruckView& view, const ViewPoint& origin);
  // Lines [first, last) of the view; its rounds, symbols and words.
  void draw_lines(const TruckView& view, const ViewPoint& origin, std::size_t first,
                  std::size_t last);
  void draw_marks(const TruckView& view, const ViewPoint& origin);
  // A heavier outline round what belongs to `selected`.
  void outline_selected(const TruckView& view, const ViewPoint& origin,
                        const std::string& selected);
  // Those lines again, over their outline.
  void draw_selected(const TruckView& view, const ViewPoint& origin, const std::string& selected);

 private:
  QPointF at(const ViewPoint& p, const ViewPoint& origin) const;
  QPolygonF polygon(const DrawnLine& line, const ViewPoint& origin) const;
  void draw(const DrawnLine& line, const ViewPoint& origin);
  void draw(const DrawnRound& round, const ViewPoint& origin);
  void draw(const DrawnSymbol& symbol, const ViewPoint& origin);
  void wash(const DrawnLine& line, const QPolygonF& through);
  void hatch_ground(const QPolygonF& line);
  QBrush fill(bool filled) const;

  QPainter& painter_;
  const SheetTransform& transform_;
  const Palette& colours_;
};

}  // namespace tackbench::ui
