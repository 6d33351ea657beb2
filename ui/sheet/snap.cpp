#include "ui/sheet/snap.h"

#include <QCoreApplication>
#include <algorithm>
#include <cmath>

namespace tackbench::ui {

namespace {

// Through `base` along the unit direction.
struct Line {
  ViewPoint base;
  ViewPoint along;
  QString words;

  double off(const ViewPoint& p) const {
    return (p.x - base.x) * -along.y + (p.y - base.y) * along.x;
  }
  ViewPoint nearest(const ViewPoint& p) const {
    const double t = (p.x - base.x) * along.x + (p.y - base.y) * along.y;
    return {base.x + t * along.x, base.y + t * along.y};
  }
};

struct Texts {
  Q_DECLARE_TR_FUNCTIONS(Snap)
};

void add_lines_through(const SnapNeighbour& one, SheetView view, std::vector<Line>& lines) {
  const bool plan = view == SheetView::plan;
  lines.push_back({one.at,
                   {1.0, 0.0},
                   (plan ? Texts::tr("in line fore and aft with %1") : Texts::tr("level with %1"))
                       .arg(one.words)});
  lines.push_back(
      {one.at,
       {0.0, 1.0},
       (plan ? Texts::tr("straight across from %1") : Texts::tr("plumb with %1")).arg(one.words)});
}

void add_lines_of_pair(const SnapNeighbour& a, const SnapNeighbour& b, std::vector<Line>& lines) {
  const double dx = b.at.x - a.at.x;
  const double dy = b.at.y - a.at.y;
  const double length = std::hypot(dx, dy);
  if (length < 1.0) return;
  const ViewPoint along{dx / length, dy / length};
  const ViewPoint square{-along.y, along.x};
  lines.push_back({a.at, along, Texts::tr("in line with %1 and %2").arg(a.words, b.words)});
  lines.push_back({a.at, square, Texts::tr("square at %1 with %2").arg(a.words, b.words)});
  lines.push_back({b.at, square, Texts::tr("square at %1 with %2").arg(b.words, a.words)});
}

std::optional<ViewPoint> crossing(const Line& a, const Line& b) {
  const double sine = a.along.x * b.along.y - a.along.y * b.along.x;
  if (std::abs(sine) < 0.05) return std::nullopt;
  const double t = ((b.base.x - a.base.x) * b.along.y - (b.base.y - a.base.y) * b.along.x) / sine;
  return ViewPoint{a.base.x + t * a.along.x, a.base.y + t * a.along.y};
}

// Whole units along a line that lies with an axis; other lines keep the nearest place.
ViewPoint whole_along(const Line& line, ViewPoint at, const SnapSettings& settings) {
  if (std::abs(line.along.y) < 1e-9)
    at.x = whole_units(at.x, settings.unit_mm, settings.unit_origin.x);
  if (std::abs(line.along.x) < 1e-9)
    at.y = whole_units(at.y, settings.unit_mm, settings.unit_origin.y);
  return at;
}

SnapGuide guide(const Line& line, const ViewPoint& at) {
  return {line.base, at, line.words};
}

}  // namespace

double whole_units(double mm, double unit_mm, double origin_mm) {
  return origin_mm + std::round((mm - origin_mm) / unit_mm) * unit_mm;
}

Snapped snap(const ViewPoint& wanted, const std::vector<SnapNeighbour>& neighbours,
             const SnapSettings& settings) {
  std::vector<Line> lines;
  for (const SnapNeighbour& one : neighbours) add_lines_through(one, settings.view, lines);
  for (std::size_t i = 0; i + 1 < neighbours.size(); ++i)
    add_lines_of_pair(neighbours[i], neighbours[i + 1], lines);
  std::erase_if(
      lines, [&](const Line& line) { return !(std::abs(line.off(wanted)) <= settings.catch_mm); });
  std::stable_sort(lines.begin(), lines.end(), [&](const Line& a, const Line& b) {
    return std::abs(a.off(wanted)) < std::abs(b.off(wanted));
  });

  Snapped snapped;
  if (lines.empty()) {
    snapped.at = {whole_units(wanted.x, settings.unit_mm, settings.unit_origin.x),
                  whole_units(wanted.y, settings.unit_mm, settings.unit_origin.y)};
    return snapped;
  }
  const Line& first = lines.front();
  for (std::size_t i = 1; i < lines.size(); ++i) {
    const auto both = crossing(first, lines[i]);
    if (!both || std::hypot(both->x - wanted.x, both->y - wanted.y) > 1.4 * settings.catch_mm)
      continue;
    snapped.at = *both;
    snapped.guides = {guide(first, *both), guide(lines[i], *both)};
    return snapped;
  }
  snapped.at = whole_along(first, first.nearest(wanted), settings);
  snapped.guides = {guide(first, snapped.at)};
  return snapped;
}

}  // namespace tackbench::ui
