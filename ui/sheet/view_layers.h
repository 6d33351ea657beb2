// The drawing in layers, so that a moving hand repaints only what moves: lines that lie under the
// first one that changed and over the last one are kept as pictures.
#pragma once

#include <QPainter>
#include <QPixmap>
#include <array>
#include <string>
#include <vector>

#include "ui/look/palette.h"
#include "ui/sheet/sheet_scene.h"
#include "ui/sheet/sheet_transform.h"

namespace tackbench::ui {

class ViewLayers {
 public:
  // The pictures are made anew at the next paint: other paper, colours, place or ghosts.
  void forget_pictures() { stale_ = true; }
  // Nothing has moved yet, as when a drag begins.
  void forget_motion();

  // The shown views over `ground`, which has the widget's size. `ghosts` lie over the lines.
  void paint(QPainter& painter, const QPixmap& ground, const SheetScene& scene,
             const SheetTransform& transform, const Palette& colours, const QRectF& paper,
             const std::string& selected, const std::vector<TruckView>& ghosts);

 private:
  struct Kept {
    TruckView view;
    std::size_t first = 0;  // lines that have moved: [first, last)
    std::size_t last = 0;
  };
  // Takes note of what moved; true when the pictures no longer hold.
  bool look_at(const TruckView& now, Kept& kept) const;
  void make_pictures(const QPixmap& ground, const SheetScene& scene,
                     const SheetTransform& transform, const Palette& colours, const QRectF& paper,
                     const std::vector<TruckView>& ghosts);

  std::array<Kept, 3> kept_;
  QPixmap under_;  // ground and the lines below what moves
  QPixmap over_;   // lines above it, ghosts
  bool stale_ = true;
};

}  // namespace tackbench::ui
