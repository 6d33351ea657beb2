#include "ui/sheet/sheet_painter.h"

#include <algorithm>
#include <cmath>

#include "core/basics/units.h"

namespace tackbench::ui {

namespace {

// Half sizes of the symbols, pixels.
constexpr double kBall = 4.2;
constexpr double kFork = 6.5;
constexpr double kForkDepth = 4.5;

void draw_forks(QPainter& painter, double middle) {
  // Two yokes that hold the same cross, seen from the side.
  for (const double side : {-1.0, 1.0}) {
    const double back = middle + side * kForkDepth;
    painter.drawPolyline(QPolygonF({QPointF(middle - side * 0.6, -kFork), QPointF(back, -kFork),
                                    QPointF(back, kFork), QPointF(middle - side * 0.6, kFork)}));
  }
}

void draw_bearing(QPainter& painter) {
  for (const double side : {-1.0, 1.0}) {
    const QRectF half(-6.0, side > 0 ? 3.0 : -7.0, 12.0, 4.0);
    painter.drawRect(half);
    painter.drawLine(half.bottomLeft(), half.topRight());
  }
}

void draw_pivot(QPainter& painter) {
  painter.drawPolygon(QPolygonF({QPointF(0, 0), QPointF(-6, 9), QPointF(6, 9)}));
  painter.drawEllipse(QPointF(0, 0), 3.4, 3.4);
}

void draw_datum(QPainter& painter) {
  painter.drawEllipse(QPointF(0, 0), 5.0, 5.0);
  painter.drawLine(QPointF(-8, 0), QPointF(8, 0));
  painter.drawLine(QPointF(0, -8), QPointF(0, 8));
}

}  // namespace

QPen ink_pen(Ink ink, const Palette& colours) {
  // Round joins are dear and cannot be seen on thin lines.
  const auto solid = [](const QColor& colour, double width) {
    return width < 2.0 ? QPen(colour, width, Qt::SolidLine, Qt::FlatCap, Qt::BevelJoin)
                       : QPen(colour, width, Qt::SolidLine, Qt::RoundCap, Qt::RoundJoin);
  };
  const auto dashed = [](const QColor& colour, double width, const QList<qreal>& dashes) {
    QPen pen(colour, width, Qt::CustomDashLine, Qt::FlatCap, Qt::BevelJoin);
    pen.setDashPattern(dashes);
    return pen;
  };
  switch (ink) {
    case Ink::fixed:
      return solid(colours.ink, 1.4);
    case Ink::arm:
      return solid(colours.moves, 5.0);
    case Ink::link:
      return solid(colours.moves, 3.4);
    case Ink::tyre:
      return solid(colours.ink, 2.4);
    case Ink::soft:
      return solid(colours.soft, 1.0);
    case Ink::hidden:
      return dashed(colours.soft, 1.0, {6.0, 3.0});
    case Ink::ghost: {
      QColor faint = colours.moves;
      faint.setAlphaF(0.55F);
      return dashed(faint, 1.2, {4.0, 3.0});
    }
    case Ink::centre:
      return dashed(colours.soft, 0.8, {12.0, 3.0, 2.0, 3.0});
    case Ink::ground:
      return solid(colours.ink, 1.4);
  }
  return solid(colours.ink, 1.0);
}

bool belongs_to(const std::string& part, const std::string& selected) {
  if (selected.empty() || part.empty()) return false;
  const auto begins = [](const std::string& whole, const std::string& start) {
    return whole.starts_with(start) && (whole.size() == start.size() ||
                                        whole[start.size()] == '.' || whole[start.size()] == '[');
  };
  return begins(part, selected) || begins(selected, part);
}

QPointF SheetPainter::at(const ViewPoint& p, const ViewPoint& origin) const {
  return transform_.to_screen(origin + p);
}

QPolygonF SheetPainter::polygon(const DrawnLine& line, const ViewPoint& origin) const {
  // Points closer than this cannot be told apart, and each one costs a join of the stroke.
  constexpr double kApart = 0.8;  // pixels
  QPolygonF made;
  made.reserve(static_cast<qsizetype>(line.through.size()));
  for (std::size_t i = 0; i < line.through.size(); ++i) {
    const QPointF here = at(line.through[i], origin);
    const bool end = i + 1 == line.through.size();
    if (!made.isEmpty() && !end && (here - made.back()).manhattanLength() < kApart) continue;
    made.append(here);
  }
  return made;
}

QBrush SheetPainter::fill(bool filled) const {
  return filled ? QBrush(colours_.paper) : QBrush(Qt::NoBrush);
}

void SheetPainter::hatch_ground(const QPolygonF& line) {
  constexpr double kStep = 9.0;
  constexpr double kLong = 6.0;
  painter_.setPen(QPen(colours_.soft, 0.8));
  for (qsizetype i = 0; i + 1 < line.size(); ++i) {
    const QPointF from = line[i].x() < line[i + 1].x() ? line[i] : line[i + 1];
    const QPointF to = line[i].x() < line[i + 1].x() ? line[i + 1] : line[i];
    const double length = to.x() - from.x();
    if (!(length > 1.0)) continue;
    // Only what can be on a screen: a zoomed line is very long.
    const double first = std::max(from.x(), -50.0 + std::fmod(from.x(), kStep));
    const double last = std::min(to.x(), 6000.0);
    for (double x = first; x < last; x += kStep) {
      const double y = from.y() + (to.y() - from.y()) * (x - from.x()) / length;
      painter_.drawLine(QPointF(x, y), QPointF(x - kLong, y + kLong));
    }
  }
}

void SheetPainter::wash(const DrawnLine& line, const QPolygonF& through) {
  // A solid: a thin edge round a wash of its ink over paper.
  constexpr double kEdge = 1.2;
  QPen pen = painter_.pen();
  QColor tint = pen.color();
  const bool moves = line.ink == Ink::arm || line.ink == Ink::link;
  tint.setAlphaF(moves ? 0.2F : line.ink == Ink::soft ? 0.05F : 0.09F);
  if (line.filled) {
    painter_.setPen(Qt::NoPen);
    painter_.drawPolygon(through);
  }
  pen.setWidthF(std::min(pen.widthF(), kEdge));
  pen.setJoinStyle(Qt::BevelJoin);
  pen.setCapStyle(Qt::FlatCap);
  painter_.setPen(pen);
  painter_.setBrush(tint);
}

void SheetPainter::draw(const DrawnLine& line, const ViewPoint& origin) {
  const QPolygonF through = polygon(line, origin);
  if (line.ink == Ink::ground) hatch_ground(through);
  painter_.setPen(ink_pen(line.ink, colours_));
  painter_.setBrush(fill(line.filled));
  if (line.body) wash(line, through);
  if (line.closed) {
    painter_.drawPolygon(through);
  } else {
    painter_.drawPolyline(through);
  }
}

void SheetPainter::draw(const DrawnRound& round, const ViewPoint& origin) {
  painter_.setPen(ink_pen(round.ink, colours_));
  painter_.setBrush(fill(round.filled));
  const double radius = round.radius * transform_.scale();
  painter_.drawEllipse(at(round.centre, origin), radius, radius);
}

void SheetPainter::draw(const DrawnSymbol& symbol, const ViewPoint& origin) {
  painter_.save();
  painter_.translate(at(symbol.at, origin));
  const QColor colour = ink_pen(symbol.ink, colours_).color();
  painter_.setPen(QPen(colour, 1.6, Qt::SolidLine, Qt::RoundCap, Qt::RoundJoin));
  painter_.setBrush(colours_.paper);
  if (symbol.symbol != JointSymbol::pivot && symbol.symbol != JointSymbol::datum)
    painter_.rotate(-degrees_from_radians(symbol.turn));
  switch (symbol.symbol) {
    case JointSymbol::ball:
      painter_.setPen(QPen(colour, 2.0));
      painter_.drawEllipse(QPointF(0, 0), kBall, kBall);
      painter_.setBrush(colour);
      painter_.drawEllipse(QPointF(0, 0), 0.9, 0.9);
      break;
    case JointSymbol::universal_joint:
      painter_.setBrush(Qt::NoBrush);
      draw_forks(painter_, 0.0);
      break;
    case JointSymbol::double_joint:
      painter_.setBrush(Qt::NoBrush);
      draw_forks(painter_, -kForkDepth - 1.0);
      draw_forks(painter_, kForkDepth + 1.0);
      break;
    case JointSymbol::coupling_disc:
      for (const double x : {-2.5, 0.0, 2.5}) painter_.drawLine(QPointF(x, -7), QPointF(x, 7));
      break;
    case JointSymbol::bearing:
      draw_bearing(painter_);
      break;
    case JointSymbol::pivot:
      draw_pivot(painter_);
      break;
    case JointSymbol::datum:
      painter_.setBrush(Qt::NoBrush);
      draw_datum(painter_);
      break;
  }
  painter_.restore();
}

void SheetPainter::outline_selected(const TruckView& view, const ViewPoint& origin,
                                    const std::string& selected) {
  // Opaque, so that outlines that cross do not darken each other.
  const auto mixed = [](int paper, int ink) { return (3 * paper + ink) / 4; };
  const QColor halo(mixed(colours_.paper.red(), colours_.ink.red()),
                    mixed(colours_.paper.green(), colours_.ink.green()),
                    mixed(colours_.paper.blue(), colours_.ink.blue()));
  painter_.setBrush(Qt::NoBrush);
  const auto pen = [&](Ink ink) {
    return QPen(halo, ink_pen(ink, colours_).widthF() + 6.0, Qt::SolidLine, Qt::RoundCap,
                Qt::RoundJoin);
  };
  for (const DrawnLine& line : view.lines) {
    if (!belongs_to(line.part, selected)) continue;
    painter_.setPen(pen(line.ink));
    const QPolygonF through = polygon(line, origin);
    if (line.closed) {
      painter_.drawPolygon(through);
    } else {
      painter_.drawPolyline(through);
    }
  }
  for (const DrawnRound& round : view.rounds) {
    if (!belongs_to(round.part, selected)) continue;
    painter_.setPen(pen(round.ink));
    const double radius = round.radius * transform_.scale();
    painter_.drawEllipse(at(round.centre, origin), radius, radius);
  }
}

void SheetPainter::draw_lines(const TruckView& view, const ViewPoint& origin, std::size_t first,
                              std::size_t last) {
  for (std::size_t i = first; i < std::min(last, view.lines.size()); ++i)
    draw(view.lines[i], origin);
}

void SheetPainter::draw_selected(const TruckView& view, const ViewPoint& origin,
                                 const std::string& selected) {
  for (const DrawnLine& line : view.lines)
    if (belongs_to(line.part, selected)) draw(line, origin);
}

void SheetPainter::draw_marks(const TruckView& view, const ViewPoint& origin) {
  for (const DrawnRound& round : view.rounds) draw(round, origin);
  for (const DrawnSymbol& symbol : view.symbols) draw(symbol, origin);
  for (const DrawnWords& words : view.words) {
    painter_.setPen(ink_pen(words.ink, colours_).color());
    painter_.drawText(at(words.at, origin), QString::fromStdString(words.words));
  }
}

void SheetPainter::draw(const TruckView& view, const ViewPoint& origin) {
  draw_lines(view, origin, 0, view.lines.size());
  draw_marks(view, origin);
}

}  // namespace tackbench::ui
