#include "ui/sheet/view_layers.h"

#include <algorithm>

#include "ui/sheet/sheet_painter.h"

namespace tackbench::ui {

namespace {

bool same_line(const DrawnLine& a, const DrawnLine& b) {
  return a.ink == b.ink && a.closed == b.closed && a.filled == b.filled && a.body == b.body &&
         std::equal(
             a.through.begin(), a.through.end(), b.through.begin(), b.through.end(),
             [](const ViewPoint& p, const ViewPoint& q) { return p.x == q.x && p.y == q.y; });
}

}  // namespace

void ViewLayers::forget_motion() {
  kept_ = {};
  stale_ = true;
}

bool ViewLayers::look_at(const TruckView& now, Kept& kept) const {
  const std::vector<DrawnLine>& before = kept.view.lines;
  if (before.size() != now.lines.size()) {
    // Lines came or went: which is which is not known any more.
    const bool begins = before.empty();
    kept.first = 0;
    kept.last = begins ? 0 : now.lines.size();
    kept.view = now;
    return true;
  }
  bool widened = false;
  for (std::size_t i = 0; i < before.size(); ++i) {
    if (i >= kept.first && i < kept.last) continue;
    if (same_line(before[i], now.lines[i])) continue;
    const bool first_to_move = kept.first == kept.last;
    kept.first = first_to_move ? i : std::min(kept.first, i);
    kept.last = first_to_move ? i + 1 : std::max(kept.last, i + 1);
    widened = true;
  }
  if (widened) kept.view = now;
  return widened;
}

void ViewLayers::make_pictures(const QPixmap& ground, const SheetScene& scene,
                               const SheetTransform& transform, const Palette& colours,
                               const QRectF& paper, const std::vector<TruckView>& ghosts) {
  under_ = ground;
  over_ = QPixmap(ground.size());
  over_.setDevicePixelRatio(ground.devicePixelRatio());
  over_.fill(Qt::transparent);
  QPainter below(&under_);
  QPainter above(&over_);
  for (QPainter* painter : {&below, &above}) {
    painter->setRenderHint(QPainter::Antialiasing);
    painter->setClipRect(paper);
  }
  SheetPainter under_ink(below, transform, colours);
  SheetPainter over_ink(above, transform, colours);
  for (const SheetView which : kSheetViews) {
    if (!scene.is_shown(which)) continue;
    const TruckView& view = scene.view(which);
    const Kept& kept = kept_[static_cast<std::size_t>(which)];
    // While nothing has moved, all of it lies below.
    const std::size_t first = kept.first == kept.last ? view.lines.size() : kept.first;
    under_ink.draw_lines(view, scene.origin(which), 0, first);
    if (first < view.lines.size())
      over_ink.draw_lines(view, scene.origin(which), kept.last, view.lines.size());
  }
  for (const TruckView& ghost : ghosts)
    if (scene.is_shown(ghost.view))
      over_ink.draw_lines(ghost, scene.origin(ghost.view), 0, ghost.lines.size());
}

void ViewLayers::paint(QPainter& painter, const QPixmap& ground, const SheetScene& scene,
                       const SheetTransform& transform, const Palette& colours, const QRectF& paper,
                       const std::string& selected, const std::vector<TruckView>& ghosts) {
  for (const SheetView which : kSheetViews)
    if (look_at(scene.view(which), kept_[static_cast<std::size_t>(which)])) stale_ = true;
  if (stale_) make_pictures(ground, scene, transform, colours, paper, ghosts);
  stale_ = false;

  SheetPainter ink(painter, transform, colours);
  painter.drawPixmap(QPointF(0, 0), under_);
  for (const SheetView which : kSheetViews) {
    if (!scene.is_shown(which)) continue;
    const Kept& kept = kept_[static_cast<std::size_t>(which)];
    if (!selected.empty()) {
      ink.outline_selected(scene.view(which), scene.origin(which), selected);
      ink.draw_selected(scene.view(which), scene.origin(which), selected);
    }
    ink.draw_lines(scene.view(which), scene.origin(which), kept.first, kept.last);
  }
  painter.drawPixmap(QPointF(0, 0), over_);
  for (const SheetView which : kSheetViews)
    if (scene.is_shown(which)) ink.draw_marks(scene.view(which), scene.origin(which));
}

}  // namespace tackbench::ui
