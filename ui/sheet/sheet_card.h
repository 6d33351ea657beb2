// The drawing sheet: side, front and plan of the truck in projection on one sheet of paper. Points
// are dragged, nudged and typed here.
#pragma once

#include <QPixmap>
#include <QPointF>
#include <QWidget>
#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "core/findings/finding.h"
#include "ui/motion/shown_motion.h"
#include "ui/session/session.h"
#include "ui/sheet/backdrop_layer.h"
#include "ui/sheet/backdrop_panel.h"
#include "ui/sheet/backdrop_placing.h"
#include "ui/sheet/bare_sheet.h"
#include "ui/sheet/exact_entry.h"
#include "ui/sheet/finding_marks.h"
#include "ui/sheet/gap_layer.h"
#include "ui/sheet/grip_layer.h"
#include "ui/sheet/measure_tool.h"
#include "ui/sheet/sheet_hand.h"
#include "ui/sheet/sheet_scene.h"
#include "ui/sheet/sheet_transform.h"
#include "ui/sheet/view_layers.h"

class QTouchEvent;

namespace tackbench::ui {

class SheetCard : public QWidget {
  Q_OBJECT

 public:
  SheetCard(Session& session, ShownMotion& motion, QWidget* parent = nullptr);
  ~SheetCard() override;

  // The paper itself, without its border.
  QRectF paper() const;
  void fit();
  void zoom_in();
  void zoom_out();
  // One view over the whole sheet; none: all three again.
  void fill_with(std::optional<SheetView> view);
  std::optional<SheetView> filling() const { return scene_.filling(); }
  // The view whose axes the arrow keys follow.
  SheetView focused_view() const { return focused_; }
  void focus_view(SheetView view);

  // Frames the place of a finding and rings it, by its verdict as it is from then on; nothing moves
  // for one about no one place.
  void show_finding(const Finding& finding);
  void clear_finding();

  bool measuring() const { return measure_.active(); }
  void set_measuring(bool on);
  // What is measured, as a note in the project; nothing without two points of the truck.
  void keep_measured();
  bool grid() const { return grid_; }
  void set_grid(bool on);

  // Lines between the nearest points of what comes near in this position.
  bool gaps() const { return gaps_.on(); }
  void set_gaps(bool on);
  const GapLayer& gap_layer() const { return gaps_; }

  // Panel of the photographs behind the views.
  bool photographs() const { return photographs_->isVisibleTo(this); }
  void show_photographs(bool on);

  // Opens exact entry for the selected point.
  void enter_exactly(const QString& first = {});

  // Where a chassis place is on the widget; where a point that a hand can take stands.
  QPointF place_in(SheetView view, const Vec3& chassis_mm) const;
  std::optional<QPointF> grip_place(const std::string& path, SheetView view) const;
  const SheetTransform& transform() const { return transform_; }
  const MeasureTool& measure_tool() const { return measure_; }
  const std::vector<SnapGuide>& snap_guides() const { return hand_.guides(); }
  const FindingMarks& finding_marks() const { return findings_; }
  // As last painted.
  const std::vector<PlacedTag>& placed_tags() const { return placed_tags_; }

  QSize sizeHint() const override { return {900, 600}; }
  QSize minimumSizeHint() const override { return {360, 240}; }

 Q_SIGNALS:
  void measuring_changed(bool on);
  void filling_changed();
  void grid_changed(bool on);
  void photographs_changed(bool on);
  void begin_wanted(const QString& path);  // of the seven things, on a bare sheet

 protected:
  bool event(QEvent* event) override;
  bool eventFilter(QObject* watched, QEvent* event) override;
  void paintEvent(QPaintEvent* event) override;
  void resizeEvent(QResizeEvent* event) override;
  void changeEvent(QEvent* event) override;
  void mousePressEvent(QMouseEvent* event) override;
  void mouseMoveEvent(QMouseEvent* event) override;
  void mouseReleaseEvent(QMouseEvent* event) override;
  void mouseDoubleClickEvent(QMouseEvent* event) override;
  void leaveEvent(QEvent* event) override;
  void wheelEvent(QWheelEvent* event) override;
  void keyPressEvent(QKeyEvent* event) override;
  void keyReleaseEvent(QKeyEvent* event) override;
  void focusOutEvent(QFocusEvent* event) override;

 private:
  // --- following the session (sheet_card.cpp)
  void follow_project(const Change& change);
  void follow_pose();
  void follow_selection();
  void follow_findings();
  void pose_before();
  void describe(const QString& words);
  void describe_selected();
  void make_ghosts();
  void add_ghost(const Mechanism& mechanism, const Pose& pose);
  ShownUnit unit() const { return session_.shown_unit(); }
  Projection projection() const;
  void view_moved();

  // --- hand and keys (sheet_card_hand.cpp)
  void forget_hand();
  void start_moving(const SheetHand::Pressed& pressed, const QPointF& pointer);
  void start_drag(const SheetHand::Pressed& pressed);
  void begin_drag_of(const GripPlace& place);
  void drag_to(const QPointF& pointer, Qt::KeyboardModifiers held);
  void end_drag();
  void cancel_drag();
  void drag_control(const SheetHand::MovesControl& moves, const QPointF& pointer);
  void nudge(int right, int up, Qt::KeyboardModifiers held);
  void take(DragStep step);
  void hover(const QPointF& pointer);
  std::string part_at(const QPointF& pointer) const;
  std::optional<SheetView> title_at(const QPointF& pointer) const;
  bool place_photograph(const QPointF& pointer);
  Picked picked_at(const QPointF& pointer) const;
  void step_selection(int step);
  bool arrow_key(QKeyEvent* event);
  bool wants_shortcut(const QKeyEvent& event) const;
  bool plain_key(QKeyEvent* event);
  void zoom_by(const QPointF& at, double factor);
  bool gesture(QEvent* event);  // true when it was a pinch
  bool touch(const QTouchEvent& event);

  // --- painting (sheet_card_paint.cpp)
  void paint_ground_layer(QPainter& painter);
  void paint_views(QPainter& painter);
  void paint_wandering(QPainter& painter);
  void paint_guides(QPainter& painter);
  void paint_path(QPainter& painter, const Path& path);
  void paint_findings(QPainter& painter);
  const GripPlace* place_in_hand() const;
  void paint_titles(QPainter& painter);
  void paint_tags(QPainter& painter, bool whole);
  void place_gap_tags(TagLayout& layout, std::vector<PlacedTag>& placed) const;
  std::vector<Tag> tags() const;
  Tag point_tag(const GripPlace& place) const;
  std::vector<PlacedTag> lay_out_tags();
  void avoid_drawing(TagLayout& layout) const;
  void avoid_widgets(TagLayout& layout) const;
  QSizeF tag_size(const Tag& tag) const;
  static void paint_leader(QPainter& painter, const Tag& tag, const QRectF& place);
  void paint_tag(QPainter& painter, const Tag& tag, const QRectF& place);
  QFont sized(double pixels, bool heavy = false) const;
  QFont title_font() const;

  Session& session_;
  ShownMotion& motion_;
  SheetScene scene_;
  SheetTransform transform_;
  SheetTransform before_filling_;
  GripLayer grips_;
  BackdropLayer backdrops_;
  GapLayer gaps_;
  MeasureTool measure_;
  BackdropPlacing placing_;
  BackdropPanel* photographs_;
  ExactEntry* entry_;
  BareSheet* bare_;

  SheetView focused_ = SheetView::side;
  bool fitted_ = false;  // nobody has panned or zoomed since it was last fitted
  bool grid_ = true;
  std::vector<TruckView> ghosts_;  // old position in a drag, swept places

  SheetHand hand_;
  QPointF last_;  // where the pointer was
  std::optional<GripHit> hovered_;
  std::optional<SheetView> hovered_title_;
  // The truck before the drag whose changes are shown, at the controls of now.
  std::optional<PosedTruck> before_;
  std::vector<PlacedTag> placed_tags_;
  std::optional<QPointF> tag_spot_;  // where the point's tag stood, from its point

  struct Fingers {
    QPointF centre;  // pixels
    double apart = 1.0;
  };
  std::optional<Fingers> fingers_;  // two on the screen

  FindingMarks findings_;

  ViewLayers layers_;
  QPixmap ground_layer_;  // paper, photographs, grid: what a drag leaves alone
  bool ground_layer_stale_ = true;
};

}  // namespace tackbench::ui
