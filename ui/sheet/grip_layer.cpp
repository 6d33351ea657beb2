#include "ui/sheet/grip_layer.h"

#include <cmath>

namespace tackbench::ui {

namespace {

constexpr double kReach = 9.0;  // pixels

}  // namespace

void GripLayer::show(const Project& project, const PosedTruck& truck) {
  places_.clear();
  for (Grip& grip : grips(project)) {
    GripPlace place;
    place.moved = moved_from_drawn(*truck.mechanism, truck.pose, grip.body, grip.body_index);
    place.posed_mm = (place.moved * Point<Chassis>{grip.at_mm}).mm;
    place.grip = std::move(grip);
    if (place.posed_mm.allFinite()) places_.push_back(std::move(place));
  }
}

const GripPlace* GripLayer::find(const std::string& path) const {
  for (const GripPlace& place : places_)
    if (place.grip.path == path) return &place;
  return nullptr;
}

std::string GripLayer::beside(const std::string& path, int step) const {
  if (places_.empty()) return {};
  const auto count = static_cast<int>(places_.size());
  for (int i = 0; i < count; ++i) {
    if (places_[static_cast<std::size_t>(i)].grip.path != path) continue;
    return places_[static_cast<std::size_t>((i + step + count) % count)].grip.path;
  }
  return (step > 0 ? places_.front() : places_.back()).grip.path;
}

std::optional<GripHit> GripLayer::hit(const QPointF& pointer, const SheetScene& scene,
                                      const SheetTransform& transform,
                                      const std::string& selected) const {
  std::optional<GripHit> found;
  double least = kReach;
  for (const SheetView view : kSheetViews) {
    if (!scene.is_shown(view)) continue;
    for (const GripPlace& place : places_) {
      if (!scene.is_near(view, place.posed_mm)) continue;
      const QPointF off = transform.to_screen(scene.on_sheet(view, place.posed_mm)) - pointer;
      const double away = std::hypot(off.x(), off.y());
      if (away > kReach) continue;
      if (place.grip.path == selected) return GripHit{selected, view};
      if (away >= least) continue;
      least = away;
      found = GripHit{place.grip.path, view};
    }
  }
  return found;
}

void GripLayer::paint(QPainter& painter, const SheetScene& scene, const SheetTransform& transform,
                      const Palette& colours, const std::optional<GripHit>& hovered,
                      const std::string& selected) const {
  QColor quiet = colours.soft;
  quiet.setAlphaF(0.75F);
  for (const SheetView view : kSheetViews) {
    if (!scene.is_shown(view)) continue;
    for (const GripPlace& place : places_) {
      if (!scene.is_near(view, place.posed_mm)) continue;
      const QPointF at = transform.to_screen(scene.on_sheet(view, place.posed_mm));
      const bool lifted = hovered && hovered->path == place.grip.path;
      const bool chosen = place.grip.path == selected;
      if (!lifted && !chosen) {
        painter.setPen(QPen(quiet, 0.9));
        painter.setBrush(colours.paper);
        painter.drawEllipse(at, 1.9, 1.9);
        continue;
      }
      const bool here = lifted && hovered->view == view;
      painter.setPen(QPen(chosen ? colours.ink : colours.moves, here || chosen ? 2.2 : 1.4));
      painter.setBrush(colours.card);
      painter.drawEllipse(at, here ? 7.5 : 5.5, here ? 7.5 : 5.5);
      painter.setBrush(colours.moves);
      painter.setPen(Qt::NoPen);
      painter.drawEllipse(at, 2.4, 2.4);
    }
  }
}

}  // namespace tackbench::ui
