#include "ui/sheet/measure_tool.h"

#include <QCoreApplication>
#include <QFontMetricsF>
#include <algorithm>
#include <cmath>

#include "ui/sheet/live_numbers.h"

namespace tackbench::ui {

namespace {

struct Texts {
  Q_DECLARE_TR_FUNCTIONS(Measure)
};

QString length(double mm, ShownUnit unit) {
  return shown_on_sheet(mm, Unit::millimetre, unit);
}

ViewPoint on_sheet(const Picked& point, SheetView view, const SheetScene& scene) {
  if (point.at_mm) return scene.on_sheet(view, *point.at_mm);
  return scene.origin(point.view) + point.in_view;
}

void paint_dimension(QPainter& painter, const QPointF& from, const QPointF& to,
                     const Palette& colours, const QString& words) {
  painter.setPen(QPen(colours.ink, 1.0));
  painter.drawLine(from, to);
  const QPointF step = to - from;
  const double size = std::hypot(step.x(), step.y());
  if (size > 1.0) {
    const QPointF along = step / size;
    const QPointF across(-along.y(), along.x());
    painter.setBrush(colours.ink);
    for (const auto& [tip, way] : {std::pair{from, 1.0}, {to, -1.0}})
      painter.drawPolygon(QPolygonF(
          {tip, tip + way * along * 9.0 + across * 2.4, tip + way * along * 9.0 - across * 2.4}));
  }
  const QFontMetricsF metrics(painter.font());
  QRectF place(0, 0, metrics.horizontalAdvance(words) + 8.0, metrics.height() + 2.0);
  place.moveCenter((from + to) / 2.0);
  painter.setPen(Qt::NoPen);
  painter.setBrush(colours.paper);
  painter.drawRect(place);
  painter.setPen(colours.ink);
  painter.drawText(place, Qt::AlignCenter, words);
}

// Near, corner and far end.
void paint_angle(QPainter& painter, const std::vector<QPointF>& at, const Palette& colours,
                 const QString& words) {
  painter.setPen(QPen(colours.ink, 1.0));
  painter.drawLine(at[1], at[0]);
  paint_dimension(painter, at[1], at[2], colours, words);
}

// The view where the points lie farthest apart.
std::optional<SheetView> clearest_view(const Vec3& from, const Vec3& to, const SheetScene& scene) {
  std::optional<SheetView> best;
  double longest = 0.0;
  for (const SheetView view : kSheetViews) {
    if (!scene.is_shown(view)) continue;
    const ViewPoint step = seen(view, to - from);
    if (std::hypot(step.x, step.y) <= longest) continue;
    longest = std::hypot(step.x, step.y);
    best = view;
  }
  return best;
}

}  // namespace

std::optional<Measured> measure(const std::vector<Picked>& points) {
  if (points.size() < 2) return std::nullopt;
  const Picked& a = points[0];
  const Picked& b = points[1];
  Measured measured;
  measured.in_space = a.at_mm && b.at_mm;
  measured.across = {b.in_view.x - a.in_view.x, b.in_view.y - a.in_view.y};
  const Vec3 step = measured.in_space ? Vec3(*b.at_mm - *a.at_mm)
                                      : Vec3(measured.across.x, 0.0, measured.across.y);
  measured.distance = step.norm();
  if (measured.in_space || a.view != SheetView::plan) {
    measured.level_off = std::hypot(step.x(), step.y());
    measured.drop = -step.z();
  }
  if (points.size() < 3) return measured;
  const Picked& c = points[2];
  const bool all_in_space = measured.in_space && c.at_mm;
  const Vec3 back =
      all_in_space ? Vec3(*a.at_mm - *b.at_mm) : Vec3(-measured.across.x, 0.0, -measured.across.y);
  const Vec3 on = all_in_space ? Vec3(*c.at_mm - *b.at_mm)
                               : Vec3(c.in_view.x - b.in_view.x, 0.0, c.in_view.y - b.in_view.y);
  if (back.norm() > 1e-6 && on.norm() > 1e-6) measured.angle = angle_between(back, on);
  return measured;
}

QString measured_words(const std::vector<Picked>& points, const Measured& measured,
                       ShownUnit unit) {
  if (measured.angle)
    return Texts::tr("%1 at %2, between %3 and %4")
        .arg(shown_on_sheet(*measured.angle, Unit::degree, unit), points[1].words, points[0].words,
             points[2].words);
  QString words = Texts::tr("%1 from %2 to %3")
                      .arg(length(measured.distance, unit), points[0].words, points[1].words);
  if (!measured.in_space) words += Texts::tr(", as seen here");
  if (measured.drop && measured.level_off) {
    const QString drop = length(std::abs(*measured.drop), unit);
    words += (*measured.drop >= 0.0 ? Texts::tr("; %1 lower, plumb offset %2")
                                    : Texts::tr("; %1 higher, plumb offset %2"))
                 .arg(drop, length(*measured.level_off, unit));
  }
  return words;
}

void MeasureTool::set_active(bool active) {
  active_ = active;
  points_.clear();
}

void MeasureTool::pick(Picked point) {
  if (points_.size() >= 3) points_.clear();
  // Places on the paper have to lie in one view.
  const bool apart = !points_.empty() && points_.front().view != point.view &&
                     !(points_.front().at_mm && point.at_mm);
  if (apart) points_.clear();
  points_.push_back(std::move(point));
}

void MeasureTool::take_back() {
  if (!points_.empty()) points_.pop_back();
}

void MeasureTool::follow(const GripLayer& grips) {
  for (Picked& point : points_) {
    const GripPlace* place = point.path.empty() ? nullptr : grips.find(point.path);
    if (!place) continue;
    point.at_mm = place->posed_mm;
    point.in_view = seen(point.view, place->posed_mm);
  }
}

std::optional<SheetNote> MeasureTool::note(ShownUnit unit) const {
  const auto measured = measure(points_);
  if (!measured || !std::all_of(points_.begin(), points_.end(),
                                [](const Picked& point) { return point.at_mm.has_value(); }))
    return std::nullopt;
  SheetNote note;
  note.from = points_.front().path;
  note.to = points_.back().path;
  note.text = measured_words(points_, *measured, unit).toStdString();
  if (measured->angle) note.corner = points_[1].path;
  const QString between = measured->angle
                              ? Texts::tr("angle at %1").arg(points_[1].words)
                              : Texts::tr("%1 to %2").arg(points_[0].words, points_[1].words);
  note.name = between.toStdString();
  std::erase_if(note.name, [](char c) { return c == '[' || c == ']'; });
  return note;
}

void MeasureTool::paint(QPainter& painter, const SheetScene& scene, const SheetTransform& transform,
                        const Palette& colours, ShownUnit unit) const {
  if (points_.empty()) return;
  const SheetView view = points_.back().view;
  std::vector<QPointF> at;
  for (const Picked& point : points_)
    at.push_back(transform.to_screen(on_sheet(point, view, scene)));
  painter.setPen(QPen(colours.ink, 1.6));
  painter.setBrush(Qt::NoBrush);
  for (const QPointF& p : at) painter.drawEllipse(p, 8.0, 8.0);
  const auto measured = measure(points_);
  if (!measured) return;
  if (measured->angle) {
    paint_angle(painter, at, colours, shown_on_sheet(*measured->angle, Unit::degree, unit));
    return;
  }
  // The plumb triangle, dotted.
  painter.setPen(QPen(colours.moves, 0.9, Qt::DotLine));
  const QPointF corner(at[1].x(), at[0].y());
  painter.drawLine(at[0], corner);
  painter.drawLine(corner, at[1]);
  paint_dimension(painter, at[0], at[1], colours, length(measured->distance, unit));
}

void paint_note(QPainter& painter, const SheetNote& note, const GripLayer& grips,
                const SheetScene& scene, const SheetTransform& transform, const Palette& colours,
                ShownUnit unit) {
  std::vector<std::string> paths{note.from, note.to};
  if (!note.corner.empty()) paths.insert(paths.begin() + 1, note.corner);
  std::vector<Picked> points;
  for (const std::string& path : paths) {
    const GripPlace* place = grips.find(path);
    if (!place) return;
    points.push_back({path, {}, SheetView::side, {}, place->posed_mm});
  }
  const auto view = clearest_view(*points.front().at_mm, *points.back().at_mm, scene);
  const auto measured = measure(points);
  if (!view || !measured) return;
  std::vector<QPointF> at;
  at.reserve(points.size());
  for (const Picked& point : points)
    at.push_back(transform.to_screen(scene.on_sheet(*view, *point.at_mm)));
  if (measured->angle) {
    paint_angle(painter, at, colours, shown_on_sheet(*measured->angle, Unit::degree, unit));
  } else if (note.corner.empty()) {
    paint_dimension(painter, at[0], at[1], colours, length(measured->distance, unit));
  }
}

}  // namespace tackbench::ui
