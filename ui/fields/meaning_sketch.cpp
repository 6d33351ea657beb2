#include "ui/fields/meaning_sketch.h"

#include <QPainter>
#include <QPainterPath>
#include <cmath>

#include "ui/look/palette.h"
#include "ui/look/type.h"

namespace tackbench::ui {

namespace {

bool has(const FieldEntry& entry, const char* word) {
  return entry.words.contains(QLatin1String(word), Qt::CaseInsensitive) ||
         entry.path.find(word) != std::string::npos;
}

MeaningKind length_kind(const FieldEntry& entry) {
  if (has(entry, "diameter") || has(entry, "bore")) return MeaningKind::diameter;
  if (has(entry, "radius") || has(entry, "rounding")) return MeaningKind::radius;
  if (has(entry, "wall")) return MeaningKind::wall;
  if (has(entry, "travel") || has(entry, "stroke") || has(entry, "slide") || has(entry, "bump") ||
      has(entry, "droop") || has(entry, "heave") || has(entry, "shake") || has(entry, "adjustment"))
    return MeaningKind::travel;
  return entry.least < 0.0 ? MeaningKind::distance : MeaningKind::length;
}

// Pens and the few shapes that sketches are made of.
class Sketcher {
 public:
  explicit Sketcher(QPainter& painter) : painter_(painter) {
    painter_.setRenderHint(QPainter::Antialiasing);
    painter_.setBrush(Qt::NoBrush);
  }

  void ink(double width = 1.4) { painter_.setPen(pen(palette().ink, width)); }
  void soft() { painter_.setPen(pen(palette().soft, 1.0)); }
  void moves() { painter_.setPen(pen(palette().moves, 1.6)); }

  void line(double x1, double y1, double x2, double y2) {
    painter_.drawLine(QPointF(x1, y1), QPointF(x2, y2));
  }
  void ring(double x, double y, double r) { painter_.drawEllipse(QPointF(x, y), r, r); }
  void dot(double x, double y) {
    painter_.setBrush(painter_.pen().color());
    ring(x, y, 2.2);
    painter_.setBrush(Qt::NoBrush);
  }
  void arrow(double x1, double y1, double x2, double y2) {
    line(x1, y1, x2, y2);
    head(x1, y1, x2, y2);
  }
  // A dimension: heads at both ends.
  void measure(double x1, double y1, double x2, double y2) {
    arrow(x1, y1, x2, y2);
    head(x2, y2, x1, y1);
  }
  // Arc about a centre, degrees anticlockwise from three o'clock.
  void arc(double x, double y, double r, double from, double span) {
    painter_.drawArc(QRectF(x - r, y - r, 2 * r, 2 * r), qRound(from * 16), qRound(span * 16));
  }
  void arc_arrow(double x, double y, double r, double from, double span) {
    arc(x, y, r, from, span);
    const double end = (from + span) * kPi / 180.0;
    const double before = end - std::copysign(0.25, span);
    head(x + r * std::cos(before), y - r * std::sin(before), x + r * std::cos(end),
         y - r * std::sin(end));
  }
  void letters(double x, double y, const QString& text) {
    painter_.setFont(type_font(TypeSize::small));
    painter_.drawText(QPointF(x, y), text);
  }

 private:
  static QPen pen(const QColor& colour, double width) {
    QPen made(colour, width);
    made.setCapStyle(Qt::RoundCap);
    return made;
  }
  void head(double x1, double y1, double x2, double y2) {
    const double angle = std::atan2(y2 - y1, x2 - x1);
    constexpr double kLong = 6.0;
    constexpr double kOpen = 0.42;
    for (const double side : {kOpen, -kOpen})
      line(x2, y2, x2 - kLong * std::cos(angle + side), y2 - kLong * std::sin(angle + side));
  }

  QPainter& painter_;
};

void sketch_axes(Sketcher& s) {
  s.soft();
  s.line(18, 50, 84, 50);
  s.line(18, 50, 18, 10);
  s.line(18, 50, 34, 36);
  s.letters(78, 62, QStringLiteral("X"));
  s.letters(6, 16, QStringLiteral("Z"));
  s.letters(36, 36, QStringLiteral("Y"));
}

void sketch_place(Sketcher& s) {
  sketch_axes(s);
  s.line(64, 50, 64, 22);
  s.line(64, 22, 18, 22);
  s.moves();
  s.dot(64, 22);
  s.ring(64, 22, 5);
}

void sketch_size(Sketcher& s) {
  s.ink();
  s.line(16, 26, 60, 26);
  s.line(60, 26, 60, 56);
  s.line(60, 56, 16, 56);
  s.line(16, 56, 16, 26);
  s.line(16, 26, 32, 12);
  s.line(32, 12, 76, 12);
  s.line(76, 12, 60, 26);
  s.line(76, 12, 76, 42);
  s.line(76, 42, 60, 56);
  s.moves();
  s.measure(18, 49, 58, 49);
}

void sketch_dimension(Sketcher& s, bool signed_distance) {
  s.ink();
  if (signed_distance) {
    s.soft();
    s.line(20, 12, 20, 56);
    s.ink();
  } else {
    s.line(20, 14, 20, 34);
  }
  s.line(76, 14, 76, 34);
  s.line(20, 24, 76, 24);
  s.moves();
  s.measure(20, 46, 76, 46);
  s.soft();
  s.line(76, 36, 76, 52);
  if (!signed_distance) s.line(20, 36, 20, 52);
  if (signed_distance) s.letters(8, 62, QStringLiteral("0"));
}

void sketch_wall(Sketcher& s) {
  s.ink();
  s.ring(44, 32, 24);
  s.ring(44, 32, 17);
  s.moves();
  s.arrow(88, 32, 69, 32);
  s.arrow(48, 32, 60, 32);
}

void sketch_travel(Sketcher& s) {
  s.ink();
  s.line(10, 50, 86, 50);
  s.line(14, 50, 14, 24);
  s.line(14, 24, 30, 24);
  s.line(30, 24, 30, 50);
  s.soft();
  s.line(62, 50, 62, 24);
  s.line(62, 24, 78, 24);
  s.line(78, 24, 78, 50);
  s.moves();
  s.arrow(32, 37, 60, 37);
}

void sketch_angle(Sketcher& s) {
  s.soft();
  s.line(14, 50, 84, 50);
  s.ink(2.0);
  s.line(14, 50, 74, 16);
  s.moves();
  s.arc_arrow(14, 50, 46, 0, 28);
}

void sketch_clocking(Sketcher& s) {
  s.ink();
  s.ring(48, 34, 22);
  s.line(48, 12, 48, 56);
  s.soft();
  s.line(35, 16, 61, 52);
  s.moves();
  s.arc_arrow(48, 34, 27, 90, -36);
}

void sketch_teeth(Sketcher& s) {
  s.ink();
  constexpr int kTeeth = 18;
  s.ring(48, 32, 18);
  for (int i = 0; i < kTeeth; ++i) {
    const double at = 2.0 * kPi * i / kTeeth;
    s.line(48 + 18 * std::cos(at), 32 + 18 * std::sin(at), 48 + 23 * std::cos(at),
           32 + 23 * std::sin(at));
  }
}

void sketch_ratio(Sketcher& s) {
  s.ink();
  s.ring(28, 32, 12);
  s.ring(66, 32, 22);
  s.dot(28, 32);
  s.dot(66, 32);
  s.moves();
  s.arc_arrow(28, 32, 16, 40, 250);
  s.arc_arrow(66, 32, 26, 100, -34);
}

void sketch_share(Sketcher& s) {
  s.ink();
  s.line(12, 26, 84, 26);
  s.line(12, 40, 84, 40);
  s.line(12, 26, 12, 40);
  s.line(84, 26, 84, 40);
  s.moves();
  for (int x = 15; x < 54; x += 4) s.line(x, 29, x, 37);
}

void sketch_spring(Sketcher& s) {
  s.ink();
  for (int i = 0; i < 5; ++i) {
    s.line(14 + 10 * i, 22, 19 + 10 * i, 42);
    s.line(19 + 10 * i, 42, 24 + 10 * i, 22);
  }
  s.moves();
  s.arrow(66, 32, 88, 32);
}

void sketch_choice(Sketcher& s) {
  s.soft();
  s.line(14, 32, 40, 32);
  s.line(40, 32, 76, 52);
  s.moves();
  s.arrow(40, 32, 76, 14);
}

}  // namespace

MeaningKind meaning_of(const FieldEntry& entry) {
  switch (entry.kind) {
    case EntryKind::text:
      return MeaningKind::text;
    case EntryKind::flag:
      return MeaningKind::flag;
    case EntryKind::choice:
      return MeaningKind::choice;
    case EntryKind::direction:
      return MeaningKind::direction;
    case EntryKind::point:
      if (entry.unit == Unit::degree) return MeaningKind::turn;
      return entry.least < 0.0 ? MeaningKind::place : MeaningKind::size;
    case EntryKind::whole:
      return has(entry, "teeth") ? MeaningKind::teeth : MeaningKind::count;
    case EntryKind::number:
      break;
  }
  switch (entry.unit) {
    case Unit::millimetre:
      return length_kind(entry);
    case Unit::degree:
    case Unit::turn:
      return has(entry, "clocking") || has(entry, "fork") ? MeaningKind::clocking
                                                          : MeaningKind::angle;
    case Unit::newton:
    case Unit::newton_metre:
    case Unit::kilogram:
      return MeaningKind::force;
    case Unit::newton_per_mm:
      return MeaningKind::spring_rate;
    case Unit::megapascal:
      return MeaningKind::strength;
    case Unit::percent:
      return MeaningKind::share;
    case Unit::count:
      return MeaningKind::count;
    default:
      return entry.least >= 0.0 && entry.most <= 1.0 ? MeaningKind::share : MeaningKind::ratio;
  }
}

void paint_meaning(QPainter& painter, MeaningKind kind) {
  Sketcher s(painter);
  switch (kind) {
    case MeaningKind::place:
      return sketch_place(s);
    case MeaningKind::direction:
      sketch_axes(s);
      s.moves();
      return s.arrow(18, 50, 66, 22);
    case MeaningKind::size:
      return sketch_size(s);
    case MeaningKind::turn:
      sketch_axes(s);
      s.moves();
      return s.arc_arrow(46, 50, 12, 200, -230);
    case MeaningKind::length:
      return sketch_dimension(s, false);
    case MeaningKind::distance:
      return sketch_dimension(s, true);
    case MeaningKind::diameter:
      s.ink();
      s.ring(48, 32, 24);
      s.moves();
      return s.measure(24, 32, 72, 32);
    case MeaningKind::radius:
      s.ink();
      s.arc(48, 40, 28, 20, 140);
      s.dot(48, 40);
      s.moves();
      return s.arrow(48, 40, 69, 22);
    case MeaningKind::wall:
      return sketch_wall(s);
    case MeaningKind::travel:
      return sketch_travel(s);
    case MeaningKind::angle:
      return sketch_angle(s);
    case MeaningKind::clocking:
      return sketch_clocking(s);
    case MeaningKind::teeth:
      return sketch_teeth(s);
    case MeaningKind::count:
      s.ink();
      for (int i = 0; i < 4; ++i) s.line(26 + 12 * i, 16, 26 + 12 * i, 48);
      s.moves();
      return s.line(18, 44, 70, 20);
    case MeaningKind::ratio:
      return sketch_ratio(s);
    case MeaningKind::share:
      return sketch_share(s);
    case MeaningKind::force:
      s.ink(2.0);
      s.line(10, 32, 56, 32);
      s.ring(8, 32, 2.5);
      s.moves();
      return s.arrow(90, 32, 60, 32);
    case MeaningKind::spring_rate:
      return sketch_spring(s);
    case MeaningKind::strength:
      s.ink();
      s.line(20, 24, 76, 24);
      s.line(20, 40, 76, 40);
      s.moves();
      s.arrow(20, 32, 4, 32);
      return s.arrow(76, 32, 92, 32);
    case MeaningKind::choice:
      return sketch_choice(s);
    case MeaningKind::flag:
      s.ink();
      s.ring(48, 32, 20);
      s.moves();
      s.line(38, 33, 45, 41);
      return s.line(45, 41, 60, 22);
    case MeaningKind::text:
      s.soft();
      for (int i = 0; i < 4; ++i) s.line(16, 16 + 11 * i, i == 3 ? 52 : 80, 16 + 11 * i);
      return;
  }
}

MeaningSketch::MeaningSketch(QWidget* parent) : QWidget(parent) {
  setFixedSize(sizeHint());
  setAccessibleName(tr("Sketch of what the member means"));
}

void MeaningSketch::show_meaning(MeaningKind kind) {
  kind_ = kind;
  update();
}

void MeaningSketch::paintEvent(QPaintEvent*) {
  QPainter painter(this);
  paint_meaning(painter, kind_);
}

}  // namespace tackbench::ui
