#include "ui/sheet/sheet_scene.h"

#include <QCoreApplication>
#include <algorithm>
#include <cmath>
#include <limits>

#include "core/mechanism/solve.h"
#include "core/project/starting_truck.h"
#include "ui/look/station_title.h"
#include "ui/sheet/sheet_transform.h"

namespace tackbench::ui {

namespace {

// A room of common size for a view in which nothing stands yet.
constexpr ViewBox kBareRoom{{-1500.0, -900.0}, {1500.0, 900.0}};

ViewBox room_of(const TruckView& view) {
  const bool bare = view.lines.empty() && view.rounds.empty() && view.symbols.empty();
  return bare ? kBareRoom : ViewBox{view.least, view.greatest};
}

bool fits(const ViewBox& inner, const ViewBox& outer, double slack) {
  return outer.holds(inner.least, slack) && outer.holds(inner.greatest, slack);
}

QString reason_against(const PosedTruck& truck) {
  if (!truck.problems.empty()) {
    const Problem& problem = truck.problems.front();
    QString words = QString::fromStdString(problem.found + "; " + problem.wanted);
    const auto station = station_of(problem.place);
    if (!station) return words;
    words = QCoreApplication::translate("Sheet", "%1: %2").arg(station_title(*station), words);
    const bool left_out = !has_station(truck.mechanism->project, *station);
    return left_out ? QCoreApplication::translate("Sheet", "Not drawn yet. %1").arg(words) : words;
  }
  const Outcome outcome = truck.pose.outcome;
  if (outcome == Outcome::solved || outcome == Outcome::not_compiled) return {};
  return QString::fromStdString(outcome_words(*truck.mechanism, truck.pose));
}

}  // namespace

QString view_title(SheetView view) {
  switch (view) {
    case SheetView::side:
      return QCoreApplication::translate("Sheet", "Side, seen from the left");
    case SheetView::front:
      return QCoreApplication::translate("Sheet", "Front");
    case SheetView::plan:
      return QCoreApplication::translate("Sheet", "Plan");
  }
  return {};
}

bool ViewBox::holds(const ViewPoint& p, double margin) const {
  return p.x >= least.x - margin && p.x <= greatest.x + margin && p.y >= least.y - margin &&
         p.y <= greatest.y + margin;
}

SheetScene::SheetScene() {
  rooms_.fill(kBareRoom);
}

void SheetScene::show(const PosedTruck& truck, Projection projection, bool keep_layout) {
  for (const SheetView view : kSheetViews)
    views_[index(view)] = truck_view(*truck.mechanism, truck.pose, view);
  why_not_ = reason_against(truck);
  stale_ = !truck.problems.empty();
  if (why_not_.isEmpty()) good_ = views_;
  // A few millimetres more or less are no reason to push the views about.
  constexpr double kSlack = 150.0;
  const bool roomy = std::all_of(kSheetViews.begin(), kSheetViews.end(), [&](SheetView view) {
    return fits(room_of(views_[index(view)]), rooms_[index(view)], kSlack);
  });
  if (!laid_out_ || projection != projection_ || (!keep_layout && !roomy)) lay_out(projection);
}

bool SheetScene::nothing_drawn() const {
  return std::all_of(views_.begin(), views_.end(), [](const TruckView& view) {
    return view.lines.empty() && view.rounds.empty() && view.symbols.empty();
  });
}

bool SheetScene::is_near(SheetView view, const Vec3& chassis_mm) const {
  constexpr double kBeyond = 400.0;  // mm
  return filling_ == view || rooms_[index(view)].holds(seen(view, chassis_mm), kBeyond);
}

void SheetScene::lay_out(Projection projection) {
  laid_out_ = true;
  projection_ = projection;
  std::array<TruckView, 3> rooms = views_;
  for (const SheetView view : kSheetViews) {
    rooms_[index(view)] = room_of(views_[index(view)]);
    rooms[index(view)].least = rooms_[index(view)].least;
    rooms[index(view)].greatest = rooms_[index(view)].greatest;
  }
  // Room for titles and for the hand between the views.
  const ViewBox& side = rooms_[index(SheetView::side)];
  const double gap_mm = std::max(kLeastViewGap, 0.11 * (side.greatest.x - side.least.x));
  layout_ = sheet_layout(rooms[0], rooms[1], rooms[2], projection, gap_mm);
}

ViewPoint SheetScene::on_sheet(SheetView view, const Vec3& chassis_mm) const {
  return origin(view) + seen(view, chassis_mm);
}

ViewBox SheetScene::box(SheetView view) const {
  const ViewBox& room = rooms_[index(view)];
  return {origin(view) + room.least, origin(view) + room.greatest};
}

ViewBox SheetScene::all_boxes() const {
  constexpr double kFar = std::numeric_limits<double>::max();
  ViewBox all{{kFar, kFar}, {-kFar, -kFar}};
  for (const SheetView view : kSheetViews) {
    if (!is_shown(view)) continue;
    const ViewBox one = box(view);
    all.least = {std::min(all.least.x, one.least.x), std::min(all.least.y, one.least.y)};
    all.greatest = {std::max(all.greatest.x, one.greatest.x),
                    std::max(all.greatest.y, one.greatest.y)};
  }
  return all;
}

SheetView SheetScene::view_at(const ViewPoint& sheet) const {
  if (filling_) return *filling_;
  SheetView nearest = SheetView::side;
  double least = std::numeric_limits<double>::max();
  for (const SheetView view : kSheetViews) {
    const ViewBox room = box(view);
    const double dx = std::max({room.least.x - sheet.x, sheet.x - room.greatest.x, 0.0});
    const double dy = std::max({room.least.y - sheet.y, sheet.y - room.greatest.y, 0.0});
    const double away = std::hypot(dx, dy);
    if (away >= least) continue;
    least = away;
    nearest = view;
  }
  return nearest;
}

}  // namespace tackbench::ui
