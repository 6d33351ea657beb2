#include "ui/sheet/paper_marks.h"

#include <QFontDatabase>
#include <QFontMetricsF>
#include <algorithm>

namespace tackbench::ui {

QFont lettering(double pixels, const QFont& otherwise) {
  static const bool installed =
      QFontDatabase::families().contains(QStringLiteral("osifont"), Qt::CaseInsensitive);
  QFont font = otherwise;
  if (installed) font.setFamily(QStringLiteral("osifont"));
  font.setPixelSize(std::max(6, static_cast<int>(pixels)));
  if (installed) font.setLetterSpacing(QFont::AbsoluteSpacing, 1.0);
  return font;
}

QRectF title_place(const SheetScene& scene, const SheetTransform& transform, SheetView view,
                   const QFont& font, const QRectF& paper) {
  const ViewBox box = scene.box(view);
  const QFontMetricsF metrics(font);
  const QSizeF size(metrics.horizontalAdvance(view_title(view)) + 8.0, metrics.height() + 4.0);
  const double gap = kLeastViewGap * transform.scale();  // a small sheet has little between views
  const double below = scene.filling() ? 14.0 : std::clamp(0.4 * gap, 1.0, 14.0);
  const QPointF foot = transform.to_screen({(box.least.x + box.greatest.x) / 2.0, box.least.y});
  QRectF place(QPointF(foot.x() - size.width() / 2.0, foot.y() + below), size);
  // The title of the view that fills the sheet is the way back: it stays on the paper.
  if (scene.filling()) {
    place.moveBottom(std::min(place.bottom(), paper.bottom() - 6.0));
    place.moveLeft(std::clamp(place.left(), paper.left() + 6.0,
                              std::max(paper.left() + 6.0, paper.right() - size.width() - 6.0)));
  }
  return place;
}

void paint_title(QPainter& painter, const Palette& colours, const QRectF& place, SheetView view,
                 bool hovered) {
  painter.setPen(hovered ? colours.ink : colours.soft);
  painter.drawText(place, Qt::AlignCenter, view_title(view));
  if (hovered) painter.drawLine(place.bottomLeft(), place.bottomRight());
}

void paint_projection_symbol(QPainter& painter, const Palette& colours, const QPointF& at,
                             Projection projection) {
  // Cone of 20 long, ends of 8 and 16; the end view stands on the side that the method gives.
  painter.save();
  painter.translate(at);
  painter.setBrush(Qt::NoBrush);
  // First angle: seen from the small end at the left, the end view to the right of the cone.
  const double cone = projection == Projection::first_angle ? -18.0 : 18.0;
  const double rings = -cone;
  painter.setPen(QPen(colours.soft, 1.2));
  painter.drawPolygon(QPolygonF({QPointF(cone - 10.0, -4.0), QPointF(cone + 10.0, -8.0),
                                 QPointF(cone + 10.0, 8.0), QPointF(cone - 10.0, 4.0)}));
  painter.drawEllipse(QPointF(rings, 0.0), 4.0, 4.0);
  painter.drawEllipse(QPointF(rings, 0.0), 8.0, 8.0);
  QPen centre(colours.soft, 0.7, Qt::CustomDashLine);
  centre.setDashPattern({9.0, 3.0, 2.0, 3.0});
  painter.setPen(centre);
  painter.drawLine(QPointF(-32.0, 0.0), QPointF(32.0, 0.0));
  painter.drawLine(QPointF(rings, -11.0), QPointF(rings, 11.0));
  painter.restore();
}

}  // namespace tackbench::ui
