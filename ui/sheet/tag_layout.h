// Finds each tag a spot beside what it measures and never over lines.
#pragma once

#include <QColor>
#include <QPointF>
#include <QRectF>
#include <QString>
#include <optional>
#include <vector>

namespace tackbench::ui {

// Words on a slip of their own beside what they are about.
struct Tag {
  QPointF beside;
  QString heading;
  QString under;
  QString change;  // of a number, within `under`
  bool fresh = true;
  std::optional<QColor> edge;  // else marking blue
  bool leader = true;          // a line to what it is about
  bool is_point = false;       // of the point in the hand
  bool is_number = false;      // one that the point changes
};

class TagLayout {
 public:
  // Tags stay inside `room`, pixels.
  explicit TagLayout(const QRectF& room);

  void avoid_line(const QPointF& from, const QPointF& to);
  void avoid_round(const QPointF& centre, double radius);
  void avoid(const QRectF& rect);

  // The first free spot in growing rings about `beside`; the least bad one when all are taken. The
  // spot counts as taken from then on. `preferred`: top left corner that is kept while it is free,
  // so that a tag does not jump about under a moving hand.
  QRectF place(const QPointF& beside, const QSizeF& size, const QPointF* preferred = nullptr);
  // The first free spot close by, or none.
  std::optional<QRectF> place_close(const QPointF& beside, const QSizeF& size);

 private:
  struct Spot {
    QRectF rect;
    int taken = 0;
  };
  Spot best_spot(const QPointF& beside, const QSizeF& size, const QPointF* preferred,
                 double furthest) const;
  int taken(const QRectF& rect) const;  // cells
  void take(double x, double y);

  QRectF room_;
  int columns_ = 0;
  int rows_ = 0;
  std::vector<unsigned char> cells_;
};

}  // namespace tackbench::ui
