// Gap lines: between the nearest points of what comes near in the pose shown, in every view. They
// say nothing about other positions.
#pragma once

#include <QPainter>
#include <QString>
#include <memory>
#include <string>
#include <vector>

#include "core/basics/shown_number.h"
#include "core/clearance/gaps.h"
#include "ui/look/palette.h"
#include "ui/session/truck_state.h"
#include "ui/sheet/sheet_scene.h"
#include "ui/sheet/sheet_transform.h"
#include "ui/sheet/tag_layout.h"

namespace tackbench::ui {

class GapLayer {
 public:
  bool on() const { return on_; }
  void set_on(bool on) { on_ = on; }

  // The nearest few, and those of the chosen part. Nothing while it is off.
  void show(const PosedTruck& truck, const std::string& chosen);
  const std::vector<PairGap>& shown() const { return shown_; }
  const SolidPart& part(std::size_t index) const { return solids_->parts[index]; }

  // "8.0", "~16.5", "overlaps by 6.7 mm".
  static QString number(const PairGap& pair, ShownUnit unit);
  // "clutch pedal arm, column bracket".
  QString names(const PairGap& pair) const;
  // "; gap in this position: clutch pedal arm, column bracket 8.0"; empty without one.
  QString nearest_words(ShownUnit unit) const;
  // What the lines are.
  QString caption() const;

  void paint(QPainter& painter, const SheetScene& scene, const SheetTransform& transform,
             const Palette& colours, bool fresh) const;
  void avoid_lines(TagLayout& layout, const SheetScene& scene, const SheetTransform& transform,
                   SheetView view) const;
  // One a gap: the number with its names under it.
  std::vector<Tag> tags(const SheetScene& scene, const SheetTransform& transform, SheetView view,
                        ShownUnit unit) const;

 private:
  bool on_ = false;
  std::shared_ptr<const Mechanism> of_;  // that the solids are of
  std::shared_ptr<const TruckSolids> solids_;
  std::vector<PairGap> shown_;
};

}  // namespace tackbench::ui
