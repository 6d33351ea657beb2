// Finds each tag a spot beside what it measures: off what it has to keep off, and rather over faint
// lines than far away.
#pragma once

#include <QColor>
#include <QPointF>
#include <QRectF>
#include <QString>
#include <cstdint>
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

struct PlacedTag {
  Tag tag;
  QRectF place;
};

// Shortest way from a tag to what it is about, pixels; 0 when it lies over it.
double distance_to(const QRectF& tag, const QPointF& place);

class TagLayout {
 public:
  // How far from its place a tag that belongs to it may stand, pixels.
  static constexpr double kClose = 120.0;

  // Tags stay inside `room`, pixels.
  explicit TagLayout(const QRectF& room);

  // What a tag would cover. Faint: soft, hidden, centre lines; it hides little.
  enum class Cover : std::uint16_t { faint = 1, line = 10, never = 30000 };
  void avoid_line(const QPointF& from, const QPointF& to, Cover cover = Cover::line);
  void avoid_round(const QPointF& centre, double radius, Cover cover = Cover::line);
  void avoid(const QRectF& rect, Cover cover = Cover::never);

  // The best spot close by, farther ones only when every close one lies over what must never be
  // covered; never over `beside`. The spot counts as taken from then on. `preferred`: top left
  // corner that is kept while it is about as good, so that a tag does not jump about under a moving
  // hand.
  QRectF place(const QPointF& beside, const QSizeF& size, const QPointF* preferred = nullptr);
  // The best spot close by, or none where it would hide more than faint lines.
  std::optional<QRectF> place_close(const QPointF& beside, const QSizeF& size);

 private:
  struct Spot {
    QRectF rect;
    double cost = 0.0;
    int covered = 0;
  };
  Spot spot(QRectF rect, const QPointF& beside) const;
  void look_round(const QPointF& beside, const QSizeF& size, double ring, Spot& best) const;
  Spot best_close(const QPointF& beside, const QSizeF& size) const;
  int covered(const QRectF& rect) const;
  void take(double x, double y, Cover cover);
  QRectF taken(const QRectF& rect);

  QRectF room_;
  int columns_ = 0;
  int rows_ = 0;
  std::vector<std::uint16_t> cells_;
};

}  // namespace tackbench::ui
