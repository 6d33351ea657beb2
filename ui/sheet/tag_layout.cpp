#include "ui/sheet/tag_layout.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <limits>

#include "core/basics/units.h"

namespace tackbench::ui {

namespace {

constexpr double kCell = 5.0;  // pixels

}  // namespace

TagLayout::TagLayout(const QRectF& room)
    : room_(room),
      columns_(std::max(1, static_cast<int>(std::ceil(room.width() / kCell)))),
      rows_(std::max(1, static_cast<int>(std::ceil(room.height() / kCell)))),
      cells_(static_cast<std::size_t>(columns_) * static_cast<std::size_t>(rows_), 0) {}

void TagLayout::take(double x, double y) {
  const int column = static_cast<int>(std::floor((x - room_.left()) / kCell));
  const int row = static_cast<int>(std::floor((y - room_.top()) / kCell));
  if (column < 0 || row < 0 || column >= columns_ || row >= rows_) return;
  cells_[static_cast<std::size_t>(row) * static_cast<std::size_t>(columns_) +
         static_cast<std::size_t>(column)] = 1;
}

void TagLayout::avoid_line(const QPointF& from, const QPointF& to) {
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
    take(p.x(), p.y());
  }
}

void TagLayout::avoid_round(const QPointF& centre, double radius) {
  if (radius > 4000.0) return;
  const int steps = std::max(8, static_cast<int>(kRadiansPerTurn * radius / (kCell * 0.8)));
  for (int i = 0; i < steps; ++i) {
    const double angle = kRadiansPerTurn * i / steps;
    take(centre.x() + radius * std::cos(angle), centre.y() + radius * std::sin(angle));
  }
}

void TagLayout::avoid(const QRectF& rect) {
  const QRectF inside = rect.intersected(room_);
  for (double y = inside.top(); y < inside.bottom() + kCell; y += kCell)
    for (double x = inside.left(); x < inside.right() + kCell; x += kCell)
      take(std::min(x, inside.right()), std::min(y, inside.bottom()));
}

int TagLayout::taken(const QRectF& rect) const {
  if (!room_.contains(rect)) return std::numeric_limits<int>::max();
  const auto cell = [](double from, double at, int most) {
    return std::clamp(static_cast<int>(std::floor((at - from) / kCell)), 0, most - 1);
  };
  const int first_column = cell(room_.left(), rect.left(), columns_);
  const int last_column = cell(room_.left(), rect.right(), columns_);
  const int first_row = cell(room_.top(), rect.top(), rows_);
  const int last_row = cell(room_.top(), rect.bottom(), rows_);
  int count = 0;
  for (int row = first_row; row <= last_row; ++row) {
    const auto start = cells_.begin() + static_cast<std::ptrdiff_t>(row) * columns_;
    count += static_cast<int>(std::count(start + first_column, start + last_column + 1, 1));
  }
  return count;
}

TagLayout::Spot TagLayout::best_spot(const QPointF& beside, const QSizeF& size,
                                     const QPointF* preferred, double furthest) const {
  constexpr int kWays = 16;
  constexpr std::array kRings{14.0,  30.0,  52.0,  80.0,  115.0, 160.0,
                              215.0, 280.0, 360.0, 450.0, 560.0, 700.0};
  Spot best{QRectF(beside, size), std::numeric_limits<int>::max()};
  const auto consider = [&](const QRectF& rect) {
    const int count = taken(rect);
    if (count < best.taken) best = {rect, count};
    return best.taken == 0;
  };
  if (preferred && consider(QRectF(*preferred, size))) return best;
  for (const double ring : kRings) {
    if (ring > furthest) break;
    for (int i = 0; i < kWays; ++i) {
      // Below and to the right first, as a hand at work leaves it free.
      const double angle = kRadiansPerTurn * (i % 2 == 0 ? i / 2 : -(i + 1) / 2) / kWays + 0.6;
      // The tag's near edge stands at the ring.
      const QPointF middle = beside + QPointF(std::cos(angle) * (ring + size.width() / 2.0),
                                              std::sin(angle) * (ring + size.height() / 2.0));
      if (consider(QRectF(middle - QPointF(size.width() / 2.0, size.height() / 2.0), size)))
        return best;
    }
  }
  return best;
}

QRectF TagLayout::place(const QPointF& beside, const QSizeF& size, const QPointF* preferred) {
  Spot best = best_spot(beside, size, preferred, std::numeric_limits<double>::max());
  if (best.taken == std::numeric_limits<int>::max()) {
    // No ring lies in the room: as near as the room allows.
    best.rect.moveLeft(std::clamp(best.rect.left(), room_.left(),
                                  std::max(room_.left(), room_.right() - size.width())));
    best.rect.moveTop(std::clamp(best.rect.top(), room_.top(),
                                 std::max(room_.top(), room_.bottom() - size.height())));
  }
  avoid(best.rect.adjusted(-3.0, -3.0, 3.0, 3.0));
  return best.rect;
}

std::optional<QRectF> TagLayout::place_close(const QPointF& beside, const QSizeF& size) {
  constexpr double kClose = 120.0;  // pixels
  const Spot best = best_spot(beside, size, nullptr, kClose);
  if (best.taken > 0) return std::nullopt;
  avoid(best.rect.adjusted(-3.0, -3.0, 3.0, 3.0));
  return best.rect;
}

}  // namespace tackbench::ui
