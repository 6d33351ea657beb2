// What stands on the sheet: the views of the posed truck and where each has its place.
#pragma once

#include <QString>
#include <array>
#include <memory>
#include <optional>
#include <vector>

#include "core/drawing/truck_view.h"
#include "ui/session/truck_state.h"

namespace tackbench::ui {

// Least free paper between two views, mm; their titles stand in it.
constexpr double kLeastViewGap = 300.0;

inline constexpr std::array kSheetViews{SheetView::side, SheetView::front, SheetView::plan};

// "Side, seen from the left".
QString view_title(SheetView view);

struct ViewBox {
  ViewPoint least;
  ViewPoint greatest;

  bool holds(const ViewPoint& p, double margin = 0.0) const;
};

class SheetScene {
 public:
  SheetScene();

  // `keep_layout`: the views stay where they are on the sheet, as during a drag.
  void show(const PosedTruck& truck, Projection projection, bool keep_layout);

  // The next truck is laid out afresh.
  void forget_layout() { laid_out_ = false; }

  const TruckView& view(SheetView view) const { return views_[index(view)]; }
  // Last view of a truck whose loops closed; to be drawn faint while they do not.
  const TruckView& last_good(SheetView view) const { return good_[index(view)]; }
  bool closes() const { return why_not_.isEmpty(); }
  const QString& why_not() const { return why_not_; }
  // The views show the last truck that could be posed at all, not the project.
  bool is_stale() const { return stale_; }
  bool nothing_drawn() const;
  // Whether a place lies where the view is drawn, or near it; a rail cut short by a break line goes
  // on beyond.
  bool is_near(SheetView view, const Vec3& chassis_mm) const;

  // Views to paint: all, or the one that fills the sheet.
  void fill_with(std::optional<SheetView> view) { filling_ = view; }
  std::optional<SheetView> filling() const { return filling_; }
  bool is_shown(SheetView view) const { return !filling_ || *filling_ == view; }

  const ViewPoint& origin(SheetView view) const { return layout_.origin(view); }
  ViewPoint on_sheet(SheetView view, const Vec3& chassis_mm) const;
  // Where the view has its place, sheet mm.
  ViewBox box(SheetView view) const;
  ViewBox all_boxes() const;  // of those shown
  // Shown view nearest to a point of the sheet.
  SheetView view_at(const ViewPoint& sheet) const;

 private:
  static std::size_t index(SheetView view) { return static_cast<std::size_t>(view); }
  void lay_out(Projection projection);

  std::array<TruckView, 3> views_;
  std::array<TruckView, 3> good_;
  std::array<ViewBox, 3> rooms_;  // in view mm, as at the last layout
  SheetLayout layout_;
  Projection projection_ = Projection::first_angle;
  bool laid_out_ = false;
  std::optional<SheetView> filling_;
  QString why_not_;
  bool stale_ = false;
};

}  // namespace tackbench::ui
