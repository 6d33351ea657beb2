// Placing a photograph behind its view by hand: two points of known distance and where the first
// of them lies, or a line that is level on the truck.
#pragma once

#include <QPointF>
#include <QString>
#include <cstddef>
#include <optional>

#include "ui/sheet/backdrop_layer.h"

namespace tackbench::ui {

class BackdropPlacing {
 public:
  void begin_points(std::size_t index);
  void begin_level(std::size_t index);
  void stop() { step_ = Step::none; }
  bool active() const { return step_ != Step::none; }
  std::size_t index() const { return index_; }
  // What to choose next.
  QString asks() const;

  // One choice on the sheet. `chassis_mm`: the truck's point that was hit, else the place on the
  // paper counts. The placed photograph after the last choice; two
  // choices in one place end it without one.
  std::optional<Backdrop> choose(const QPointF& screen, const std::optional<Vec3>& chassis_mm,
                                 const Backdrop& backdrop, const SheetScene& scene,
                                 const SheetTransform& transform);

 private:
  enum class Step { none, first_pixel, second_pixel, first_place, level_from, level_to };

  Step step_ = Step::none;
  std::size_t index_ = 0;
  QPointF first_;  // pixels of the photograph
  QPointF second_;
};

// The same photograph with its line between two pixels level, the lesser way round.
Backdrop levelled(Backdrop backdrop, const QPointF& from_pixel, const QPointF& to_pixel);

}  // namespace tackbench::ui
