#include "ui/sheet/sheet_transform.h"

#include <algorithm>
#include <cmath>

namespace tackbench::ui {

namespace {

constexpr double kLeastScale = 0.004;  // a whole yard on the paper
constexpr double kMostScale = 40.0;    // a sixteenth of an inch as wide as a thumb

}  // namespace

void SheetTransform::zoom_about(const QPointF& at, double factor) {
  if (!std::isfinite(factor) || factor <= 0.0) return;
  const ViewPoint under = to_sheet(at);
  scale_ = std::clamp(scale_ * factor, kLeastScale, kMostScale);
  shift_ += at - to_screen(under);
}

void SheetTransform::fit(const ViewPoint& least, const ViewPoint& greatest, const QRectF& into) {
  const double width = std::max(greatest.x - least.x, 1.0);
  const double height = std::max(greatest.y - least.y, 1.0);
  const double scale =
      std::min(std::max(into.width(), 1.0) / width, std::max(into.height(), 1.0) / height);
  if (!std::isfinite(scale)) return;
  scale_ = std::clamp(scale, kLeastScale, kMostScale);
  const ViewPoint middle{(least.x + greatest.x) / 2.0, (least.y + greatest.y) / 2.0};
  shift_ += into.center() - to_screen(middle);
}

}  // namespace tackbench::ui
