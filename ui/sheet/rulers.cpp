#include "ui/sheet/rulers.h"

#include <QFontMetricsF>
#include <algorithm>
#include <cmath>
#include <optional>

#include "core/basics/units.h"
#include "ui/motion/hand_steps.h"

namespace tackbench::ui {

namespace {

// A mark's number without its unit: "1200", "47.5", "1/16".
QString mark_words(double mm, ShownUnit unit) {
  if (unit == ShownUnit::inch_fraction) {
    QString words = QString::fromStdString(shown_bare(std::abs(mm), Unit::millimetre, unit));
    return mm < -1e-9 ? QChar(0x2212) + words : words;
  }
  const double value = unit == ShownUnit::millimetre ? mm : mm / kMillimetresPerInch;
  const double settled = std::abs(value) < 1e-9 ? 0.0 : value;
  return QString::number(settled, 'g', 7).replace('-', QChar(0x2212));
}

// The stretch of the paper's edge that belongs to one view, pixels.
struct Edge {
  bool lying = true;
  double edge = 0.0;  // where it lies, across
  double from = 0.0;
  double to = 0.0;

  QPointF point(double along, double across) const {
    return lying ? QPointF(along, edge + across) : QPointF(edge + across, along);
  }
  // Where a mark's words begin; none where they would leave the stretch or meet the axis' name.
  std::optional<QPointF> words_place(double along, double width, double ascent) const {
    if (lying) {
      if (along - width / 2.0 < from || along + width / 2.0 > to - 14.0) return std::nullopt;
      return point(along - width / 2.0, 8.0 + ascent);
    }
    if (along - ascent < from + 16.0 || along > to - 4.0) return std::nullopt;
    return point(along + ascent / 2.0 - 1.0, 10.0);
  }
  QPointF axis_place(double ascent) const {
    return lying ? point(to - 10.0, 8.0 + ascent) : point(from + ascent, 10.0);
  }
};

}  // namespace

double round_step(double pixels_per_mm, ShownUnit unit, double least_pixels) {
  const double wanted = least_pixels / std::max(pixels_per_mm, 1e-9);  // mm
  const double one = unit == ShownUnit::millimetre ? 1.0 : kMillimetresPerInch;
  if (unit != ShownUnit::millimetre && wanted < one) {
    double step = one;
    while (step / 2.0 >= wanted && step > unit_step(unit) * 1.5) step /= 2.0;
    return step;
  }
  double power = one * std::pow(10.0, std::floor(std::log10(wanted / one)));
  if (unit == ShownUnit::millimetre) power = std::max(power, 0.1);
  for (const double times : {1.0, 2.0, 5.0})
    if (power * times >= wanted * (1.0 - 1e-9)) return power * times;
  return power * 10.0;
}

Rulers::Rulers(const SheetScene& scene, const SheetTransform& transform, ShownUnit unit,
               const QRectF& paper)
    : scene_(scene), transform_(transform), unit_(unit), paper_(paper) {}

void Rulers::paint_grid(QPainter& painter, const Palette& colours) const {
  const double step = round_step(transform_.scale(), unit_, 46.0);
  QColor faint = colours.hair;
  faint.setAlphaF(0.34F);
  painter.setPen(QPen(faint, 0.8));
  for (const SheetView view : kSheetViews) {
    if (!scene_.is_shown(view)) continue;
    const ViewPoint& origin = scene_.origin(view);
    const ViewBox box = scene_.box(view);
    const QRectF room = QRectF(transform_.to_screen({box.least.x, box.greatest.y}),
                               transform_.to_screen({box.greatest.x, box.least.y}))
                            .intersected(paper_);
    if (room.isEmpty()) continue;
    const ViewPoint least = transform_.to_sheet(room.bottomLeft()) - origin;
    const ViewPoint greatest = transform_.to_sheet(room.topRight()) - origin;
    for (double n = std::ceil(least.x / step); n * step <= greatest.x; ++n) {
      const double x = transform_.to_screen(origin + ViewPoint{n * step, 0.0}).x();
      painter.drawLine(QPointF(x, room.top()), QPointF(x, room.bottom()));
    }
    for (double n = std::ceil(least.y / step); n * step <= greatest.y; ++n) {
      const double y = transform_.to_screen(origin + ViewPoint{0.0, n * step}).y();
      painter.drawLine(QPointF(room.left(), y), QPointF(room.right(), y));
    }
  }
}

void Rulers::paint(QPainter& painter, const Palette& colours) const {
  using enum SheetView;
  const auto filling = scene_.filling();
  if (!filling || *filling == side) {
    paint_scale(painter, colours, {side, true, -1.0, "X"});
    paint_scale(painter, colours, {side, false, 1.0, "Z"});
  }
  if (!filling || *filling == front) paint_scale(painter, colours, {front, true, 1.0, "Y"});
  if (filling && *filling == front) paint_scale(painter, colours, {front, false, 1.0, "Z"});
  if (!filling || *filling == plan) paint_scale(painter, colours, {plan, false, -1.0, "Y"});
  if (filling && *filling == plan) paint_scale(painter, colours, {plan, true, -1.0, "X"});
}

void Rulers::paint_scale(QPainter& painter, const Palette& colours, const Scale& scale) const {
  const ViewPoint& origin = scene_.origin(scale.view);
  const ViewBox box = scene_.box(scale.view);
  const QPointF least = transform_.to_screen(box.least);
  const QPointF greatest = transform_.to_screen(box.greatest);
  const Edge edge = scale.lying ? Edge{true, paper_.top(), std::max(least.x(), paper_.left()),
                                       std::min(greatest.x(), paper_.right())}
                                : Edge{false, paper_.left(), std::max(greatest.y(), paper_.top()),
                                       std::min(least.y(), paper_.bottom())};
  if (!(edge.to - edge.from > 30.0)) return;
  const auto coordinate = [&](double along) {
    const ViewPoint p = transform_.to_sheet(scale.lying ? QPointF(along, 0) : QPointF(0, along));
    return scale.sign * (scale.lying ? p.x - origin.x : p.y - origin.y);
  };
  const auto along_of = [&](double value) {
    const ViewPoint p{scale.sign * value, scale.sign * value};
    const QPointF screen = transform_.to_screen(origin + p);
    return scale.lying ? screen.x() : screen.y();
  };

  painter.setPen(QPen(colours.hair, 0.8));
  painter.drawLine(edge.point(edge.from, 0.0), edge.point(edge.to, 0.0));
  const QFontMetricsF metrics(painter.font());
  const double words_room =
      scale.lying ? metrics.horizontalAdvance(mark_words(-12345.0, unit_)) + 14.0 : 46.0;
  const double step = round_step(transform_.scale(), unit_, words_room);
  const double minor = step / 5.0;
  const double low = std::min(coordinate(edge.from), coordinate(edge.to));
  const double high = std::max(coordinate(edge.from), coordinate(edge.to));
  for (double n = std::ceil(low / minor); n * minor <= high; ++n) {
    const bool major = std::abs(std::remainder(n, 5.0)) < 0.5;
    const double along = along_of(n * minor);
    painter.setPen(QPen(major ? colours.soft : colours.hair, 0.8));
    painter.drawLine(edge.point(along, 0.0), edge.point(along, major ? 7.0 : 4.0));
    if (!major) continue;
    const QString words = mark_words(n * minor, unit_);
    const auto place = edge.words_place(along, metrics.horizontalAdvance(words), metrics.ascent());
    if (!place) continue;
    painter.setPen(colours.soft);
    painter.drawText(*place, words);
  }
  painter.setPen(colours.ink);
  painter.drawText(edge.axis_place(metrics.ascent()), QString::fromLatin1(scale.axis));
}

void Rulers::paint_scale_bar(QPainter& painter, const Palette& colours, const QPointF& at) const {
  const double length_mm = round_step(transform_.scale(), unit_, 70.0);
  const double length = length_mm * transform_.scale();
  painter.setPen(QPen(colours.ink, 1.4));
  painter.drawLine(at, at + QPointF(length, 0.0));
  painter.setPen(QPen(colours.ink, 1.0));
  for (const double end : {0.0, 0.5, 1.0})
    painter.drawLine(at + QPointF(end * length, -4.0), at + QPointF(end * length, 4.0));
  const QString words = mark_words(length_mm, unit_) + ' ' +
                        QString::fromStdString(unit_words(Unit::millimetre, unit_));
  painter.setPen(colours.soft);
  painter.drawText(at + QPointF(length + 8.0, 4.0), words);
}

}  // namespace tackbench::ui
