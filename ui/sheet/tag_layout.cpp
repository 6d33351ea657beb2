#include "ui/sheet/tag_layout.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <limits>
#include <numbers>
#include <numeric>

#include "core/basics/units.h"

namespace tackbench::ui {

namespace {

constexpr double kCell = 5.0;       // pixels
constexpr double kOwnPlace = 11.0;  // about the place itself, pixels
// A tag's length lies over a faint line (60 cells) as readily as it stands 40 pixels farther off.
constexpr double kCostOfPixel = 1.5;
constexpr double kCostOfMoving = 60.0;  // by which another spot has to be better than the kept one
constexpr int kFaintAtMost = 90;        // what a number may hide
constexpr std::array kCloseRings{14.0, 30.0, 52.0, 80.0, 115.0};
constexpr std::array kFarRings{160.0, 215.0, 280.0, 360.0, 450.0, 560.0, 700.0, 900.0};

int weight(TagLayout::Cover cover) {
  return static_cast<int>(cover);
}

}  // namespace

double distance_to(const QRectF& tag, const QPointF& place) {
  const double dx = std::max({tag.left() - place.x(), place.x() - tag.right(), 0.0});
  const double dy = std::max({tag.top() - place.y(), place.y() - tag.bottom(), 0.0});
  return std::hypot(dx, dy);
}

TagLayout::TagLayout(const QRectF& room)
    : room_(room),
      columns_(std::max(1, static_cast<int>(std::ceil(room.width() / kCell)))),
      rows_(std::max(1, static_cast<int>(std::ceil(room.height() / kCell)))),
      cells_(static_cast<std::size_t>(columns_) * static_cast<std::size_t>(rows_), 0) {}

void TagLayout::take(double x, double y, Cover cover) {
  const int column = static_cast<int>(std::floor((x - room_.left()) / kCell));
  const int row = static_cast<int>(std::floor((y - room_.top()) / kCell));
  if (column < 0 || row < 0 || column >= columns_ || row >= rows_) return;
  std::uint16_t& cell = cells_[static_cast<std::size_t>(row) * static_cast<std::size_t>(columns_) +
                               static_cast<std::size_t>(column)];
  cell = std::max(cell, static_cast<std::uint16_t>(cover));
}

void TagLayout::avoid_line(const QPointF& from, const QPointF& to, Cover cover) {
  // Clipped to the room (Liang and Barsky), since a zoomed line may be very long.
  const QPointF step = to - from;
  double first = 0.0;
  double last = 1.0;
  const auto clip = [&](double along, double room) {
    if (along == 0.0) return room >= 0.0;
    const double t = room / along;
    if (along < 0.0) first = std::max(first, t);
    if (along > 0.0) last = std::min(last, t);
    return true;
  };
  if (!clip(-step.x(), from.x() - room_.left()) || !clip(step.x(), room_.right() - from.x()) ||
      !clip(-step.y(), from.y() - room_.top()) || !clip(step.y(), room_.bottom() - from.y()) ||
      first > last)
    return;
  const double length = std::hypot(step.x(), step.y()) * (last - first);
  const int steps = std::max(1, static_cast<int>(length / (kCell * 0.6)));
  for (int i = 0; i <= steps; ++i) {
    const QPointF p = from + step * (first + (last - first) * i / steps);
    take(p.x(), p.y(), cover);
  }
}

void TagLayout::avoid_round(const QPointF& centre, double radius, Cover cover) {
  if (radius > 4000.0) return;
  const int steps = std::max(8, static_cast<int>(kRadiansPerTurn * radius / (kCell * 0.8)));
  for (int i = 0; i < steps; ++i) {
    const double angle = kRadiansPerTurn * i / steps;
    take(centre.x() + radius * std::cos(angle), centre.y() + radius * std::sin(angle), cover);
  }
}

void TagLayout::avoid(const QRectF& rect, Cover cover) {
  const QRectF inside = rect.intersected(room_);
  if (inside.isEmpty()) return;
  for (double y = inside.top(); y < inside.bottom() + kCell; y += kCell)
    for (double x = inside.left(); x < inside.right() + kCell; x += kCell)
      take(std::min(x, inside.right()), std::min(y, inside.bottom()), cover);
}

int TagLayout::covered(const QRectF& rect) const {
  const auto cell = [](double from, double at, int most) {
    return std::clamp(static_cast<int>(std::floor((at - from) / kCell)), 0, most - 1);
  };
  const int first_column = cell(room_.left(), rect.left(), columns_);
  const int last_column = cell(room_.left(), rect.right(), columns_);
  const int first_row = cell(room_.top(), rect.top(), rows_);
  const int last_row = cell(room_.top(), rect.bottom(), rows_);
  int sum = 0;
  for (int row = first_row; row <= last_row; ++row) {
    const auto start = cells_.begin() + static_cast<std::ptrdiff_t>(row) * columns_;
    sum = std::accumulate(start + first_column, start + last_column + 1, sum);
  }
  return sum;
}

// What it costs to stand there, moved into the room.
TagLayout::Spot TagLayout::spot(QRectF rect, const QPointF& beside) const {
  rect.moveLeft(
      std::clamp(rect.left(), room_.left(), std::max(room_.left(), room_.right() - rect.width())));
  rect.moveTop(
      std::clamp(rect.top(), room_.top(), std::max(room_.top(), room_.bottom() - rect.height())));
  const double away = distance_to(rect, beside);
  int cost = covered(rect);
  if (away < kOwnPlace) cost += weight(Cover::never);
  return {rect, cost + kCostOfPixel * away, cost};
}

void TagLayout::look_round(const QPointF& beside, const QSizeF& size, double ring,
                           Spot& best) const {
  const auto consider = [&](double left, double top) {
    const Spot here = spot(QRectF(QPointF(left, top), size), beside);
    if (here.cost < best.cost) best = here;
  };
  // Its near corner or side stands at the ring, shifted along it; below and to the right first, as
  // a hand at work leaves it free.
  const double corner = ring / std::numbers::sqrt2;
  for (const double top : {beside.y() + corner, beside.y() - corner - size.height()}) {
    consider(beside.x() + corner, top);
    consider(beside.x() - corner - size.width(), top);
  }
  for (const double share : {0.0, 0.25, 0.5, 0.75, 1.0}) {
    const double left = beside.x() - share * size.width();
    const double top = beside.y() - (1.0 - share) * size.height();
    consider(left, beside.y() + ring);
    consider(beside.x() + ring, top);
    consider(left, beside.y() - ring - size.height());
    consider(beside.x() - ring - size.width(), top);
  }
}

TagLayout::Spot TagLayout::best_close(const QPointF& beside, const QSizeF& size) const {
  Spot best{QRectF(beside, size), std::numeric_limits<double>::max(), 0};
  for (const double ring : kCloseRings) {
    if (best.cost <= kCostOfPixel * ring) break;  // nothing farther off can be better
    look_round(beside, size, ring, best);
  }
  return best;
}

QRectF TagLayout::taken(const QRectF& rect) {
  avoid(rect.adjusted(-3.0, -3.0, 3.0, 3.0));
  return rect;
}

QRectF TagLayout::place(const QPointF& beside, const QSizeF& size, const QPointF* preferred) {
  Spot best = best_close(beside, size);
  for (const double ring : kFarRings) {
    if (best.covered < weight(Cover::never)) break;
    look_round(beside, size, ring, best);
  }
  if (preferred) {
    const Spot kept = spot(QRectF(*preferred, size), beside);
    if (kept.cost <= best.cost + kCostOfMoving && distance_to(kept.rect, beside) <= kClose)
      best = kept;
  }
  return taken(best.rect);
}

std::optional<QRectF> TagLayout::place_close(const QPointF& beside, const QSizeF& size) {
  const Spot best = best_close(beside, size);
  if (best.covered > kFaintAtMost || distance_to(best.rect, beside) > kClose) return std::nullopt;
  return taken(best.rect);
}

}  // namespace tackbench::ui
