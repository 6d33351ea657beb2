#include "ui/sheet/backdrop_layer.h"

#include <QCoreApplication>
#include <QImageReader>
#include <QMetaObject>
#include <algorithm>
#include <cmath>
#include <utility>

#include "core/basics/units.h"

namespace tackbench::ui {

namespace {

constexpr int kMostPixels = 3000;  // of the longer side: enough for a large screen filled with it

}  // namespace

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

qsizetype BackdropLayer::kept_bytes() const {
  qsizetype bytes = 0;
  for (const auto& [key, photograph] : photographs_) bytes += photograph.picture.sizeInBytes();
  return bytes;
}

BackdropLayer::Photograph BackdropLayer::read(const std::string& file) {
  QImageReader reader(QString::fromStdString(file));
  Photograph photograph;
  photograph.read = true;
  photograph.pixels = reader.size();
  const int longest = std::max(photograph.pixels.width(), photograph.pixels.height());
  if (longest > kMostPixels)
    reader.setScaledSize(photograph.pixels.scaled(kMostPixels, kMostPixels, Qt::KeepAspectRatio));
  photograph.picture = reader.read();
  if (!photograph.pixels.isValid()) photograph.pixels = photograph.picture.size();
  return photograph;
}

void BackdropLayer::read_missing() {
  std::vector<Key> wanted;
  for (const auto& [key, photograph] : photographs_)
    if (!photograph.read) wanted.push_back(key);
  if (wanted.empty()) return;
  reader_.submit(
      [this, wanted = std::move(wanted)](const std::stop_token& token) {
        for (const Key& key : wanted) {
          if (token.stop_requested()) return;
          QMetaObject::invokeMethod(
              this,
              [this, key, photograph = read(key.file)] {
                const auto known = photographs_.find(key);
                if (known == photographs_.end()) return;
                known->second = photograph;
                Q_EMIT arrived();
              },
              Qt::QueuedConnection);
        }
      },
      false);
}

void BackdropLayer::paint(QPainter& painter, const SheetSettings& settings,
                          const std::filesystem::path& folder, const SheetScene& scene,
                          const SheetTransform& transform, const Palette& colours) {
  std::map<Key, Photograph> before = std::exchange(photographs_, {});
  for (const Backdrop& backdrop : settings.backdrops) {
    std::error_code absent;
    const std::filesystem::path file = folder / backdrop.file.path;
    const Key key{file.string(), std::filesystem::last_write_time(file, absent)};
    // What the project has is kept even where it is not shown just now.
    if (!absent) photographs_.emplace(key, before[key]);
    if (!scene.is_shown(backdrop.view) || backdrop.fade <= 0.0) continue;
    const QTransform to_screen = backdrop_to_screen(backdrop, scene, transform);
    const Photograph* photograph = absent ? nullptr : &photographs_.at(key);
    if (absent || (photograph->read && photograph->picture.isNull())) {
      painter.setPen(colours.past);
      painter.drawText(transform.to_screen(scene.on_sheet(backdrop.view, backdrop.first_point)),
                       QCoreApplication::translate("Backdrop", "the photograph %1 cannot be read")
                           .arg(QString::fromStdString(backdrop.file.path)));
      continue;
    }
    if (!photograph->read || !to_screen.isInvertible()) continue;
    painter.save();
    painter.setOpacity(backdrop.fade);
    painter.setTransform(to_screen, true);
    painter.setRenderHint(QPainter::SmoothPixmapTransform);
    painter.drawImage(QRectF(QPointF(0, 0), photograph->pixels), photograph->picture);
    painter.restore();
  }
  read_missing();
}

}  // namespace tackbench::ui
