// The view in space as a loose card pinned on the sheet: moved by its head, sized by its borders,
// spread over the whole sheet or put away.
#pragma once

#include <QPointer>
#include <QWidget>
#include <vector>

#include "ui/session/session.h"
#include "ui/space/space_view.h"

namespace tackbench::ui {

class LooseCard : public QWidget {
  Q_OBJECT

 public:
  // Lies on `sheet` and keeps inside it; until a hand has moved it, in the corner that the
  // projection leaves free.
  LooseCard(Session& session, ShownMotion& motion, QWidget* sheet,
            SpaceDrawing drawing = SpaceDrawing::best);

  SpaceView& view() const { return *view_; }
  bool spread() const { return spread_; }
  void set_spread(bool on);
  // Place on the sheet as shares of its size: left, top, width, height. Once given it is kept,
  // whatever the projection.
  QRectF place() const { return place_; }
  void set_place(const QRectF& shares);
  // Widgets of the window that stay in sight where they overlap the card; those that lie on the
  // sheet beside it when it is made do so of themselves.
  void stay_beneath(QWidget& over);

 Q_SIGNALS:
  void spread_changed(bool on);
  void put_away();
  void placed_by_hand(const QRectF& shares);

 protected:
  bool event(QEvent* event) override;
  bool eventFilter(QObject* watched, QEvent* event) override;
  void paintEvent(QPaintEvent* event) override;
  void mousePressEvent(QMouseEvent* event) override;
  void mouseMoveEvent(QMouseEvent* event) override;
  void mouseReleaseEvent(QMouseEvent* event) override;
  void mouseDoubleClickEvent(QMouseEvent* event) override;
  void changeEvent(QEvent* event) override;

 private:
  Qt::Edges edges_at(const QPoint& at) const;
  void follow_project();
  void lay_out();
  void give_way();
  QRect room() const;  // of the sheet that a card may cover

  Session& session_;
  SpaceView* view_;
  QAbstractButton* spread_button_;
  QRectF place_;
  std::vector<QPointer<QWidget>> over_;
  bool place_given_ = false;
  bool spread_ = false;
  bool in_hand_ = false;
  Qt::Edges edges_;  // that the hand moves; none: all of the card
  QPoint pressed_;   // global
  QRect before_;
};

}  // namespace tackbench::ui
