#include "ui/sheet/backdrop_layer.h"

#include <QCoreApplication>
#include <cmath>

#include "core/basics/units.h"

namespace tackbench::ui {

double backdrop_scale(const Backdrop& backdrop) {
  const Vec3 step = backdrop.second_pixel - backdrop.first_pixel;
  const double pixels = std::hypot(step.x(), step.y());
  return pixels > 1e-6 ? backdrop.known_distance / pixels : 0.0;
}

QTransform backdrop_to_screen(const Backdrop& backdrop, const SheetScene& scene,
                              const SheetTransform& transform) {
  const QPointF at = transform.to_screen(scene.on_sheet(backdrop.view, backdrop.first_point));
  const double scale = backdrop_scale(backdrop) * transform.scale();
  QTransform made;
  made.translate(at.x(), at.y());
  made.rotate(-degrees_from_radians(backdrop.level_angle));
  made.scale(scale, scale);
  made.translate(-backdrop.first_pixel.x(), -backdrop.first_pixel.y());
  return made;
}

const QImage& BackdropLayer::image(const std::filesystem::path& file) {
  const auto known = images_.find(file.string());
  if (known != images_.end()) return known->second;
  return images_.emplace(file.string(), QImage(QString::fromStdString(file.string())))
      .first->second;
}

void BackdropLayer::paint(QPainter& painter, const SheetSettings& settings,
                          const std::filesystem::path& folder, const SheetScene& scene,
                          const SheetTransform& transform, const Palette& colours) {
  for (const Backdrop& backdrop : settings.backdrops) {
    if (!scene.is_shown(backdrop.view) || backdrop.fade <= 0.0) continue;
    const QTransform to_screen = backdrop_to_screen(backdrop, scene, transform);
    const QImage& photograph = image(folder / backdrop.file.path);
    if (photograph.isNull()) {
      painter.setPen(colours.past);
      painter.drawText(transform.to_screen(scene.on_sheet(backdrop.view, backdrop.first_point)),
                       QCoreApplication::translate("Backdrop", "the photograph %1 cannot be read")
                           .arg(QString::fromStdString(backdrop.file.path)));
      continue;
    }
    if (!to_screen.isInvertible()) continue;
    painter.save();
    painter.setOpacity(backdrop.fade);
    painter.setTransform(to_screen, true);
    painter.drawImage(QPointF(0, 0), photograph);
    painter.restore();
  }
}

}  // namespace tackbench::ui
