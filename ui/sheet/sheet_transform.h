// One pan and one zoom for the whole sheet.
#pragma once

#include <QPointF>
#include <QRectF>

#include "core/drawing/truck_view.h"

namespace tackbench::ui {

// Sheet: mm of the truck, y up. Screen: the widget's pixels, y down.
class SheetTransform {
 public:
  QPointF to_screen(const ViewPoint& sheet) const {
    return {shift_.x() + scale_ * sheet.x, shift_.y() - scale_ * sheet.y};
  }
  ViewPoint to_sheet(const QPointF& screen) const {
    return {(screen.x() - shift_.x()) / scale_, (shift_.y() - screen.y()) / scale_};
  }
  bool operator==(const SheetTransform&) const = default;
  double scale() const { return scale_; }  // pixels per mm

  void pan(const QPointF& by) { shift_ += by; }
  // What lies under `at` stays there. The scale keeps within what is of use.
  void zoom_about(const QPointF& at, double factor);
  // The box in the middle of `into`, as large as it goes.
  void fit(const ViewPoint& least, const ViewPoint& greatest, const QRectF& into);

 private:
  double scale_ = 0.1;
  QPointF shift_;
};

inline ViewPoint operator+(const ViewPoint& a, const ViewPoint& b) {
  return {a.x + b.x, a.y + b.y};
}
inline ViewPoint operator-(const ViewPoint& a, const ViewPoint& b) {
  return {a.x - b.x, a.y - b.y};
}

}  // namespace tackbench::ui
