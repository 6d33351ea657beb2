// The points that a hand can take, where they stand in the pose.
#pragma once

#include <QPainter>
#include <optional>
#include <string>
#include <vector>

#include "core/mechanism/body_motion.h"
#include "core/project/grips.h"
#include "ui/look/palette.h"
#include "ui/session/truck_state.h"
#include "ui/sheet/sheet_scene.h"
#include "ui/sheet/sheet_transform.h"

namespace tackbench::ui {

struct GripPlace {
  Grip grip;
  Placement<Chassis, Chassis> moved;  // of its body, drawn to posed
  Vec3 posed_mm = Vec3::Zero();       // chassis
};

struct GripHit {
  std::string path;
  SheetView view = SheetView::side;

  bool operator==(const GripHit&) const = default;
};

class GripLayer {
 public:
  void show(const Project& project, const PosedTruck& truck);

  const std::vector<GripPlace>& places() const { return places_; }
  const GripPlace* find(const std::string& path) const;
  // Next or previous in the order of motion, round and round; the first when nothing is selected.
  // Empty without points.
  std::string beside(const std::string& path, int step) const;

  // The point under the pointer; of several the selected one, else the nearest.
  std::optional<GripHit> hit(const QPointF& pointer, const SheetScene& scene,
                             const SheetTransform& transform, const std::string& selected) const;

  void paint(QPainter& painter, const SheetScene& scene, const SheetTransform& transform,
             const Palette& colours, const std::optional<GripHit>& hovered,
             const std::string& selected) const;

 private:
  std::vector<GripPlace> places_;
};

}  // namespace tackbench::ui
