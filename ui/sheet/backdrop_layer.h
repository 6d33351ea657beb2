// Photographs behind the views.
#pragma once

#include <QImage>
#include <QPainter>
#include <QTransform>
#include <filesystem>
#include <map>
#include <string>

#include "core/project/project.h"
#include "ui/look/palette.h"
#include "ui/sheet/sheet_scene.h"
#include "ui/sheet/sheet_transform.h"

namespace tackbench::ui {

// mm of the truck for each pixel of the photograph; 0 while its two points coincide.
double backdrop_scale(const Backdrop& backdrop);

// From pixels of the photograph to the screen: the first pixel lies on the first point, the two
// points lie their known distance apart, and the photograph is turned by its level angle,
// anticlockwise. Not invertible while the two points coincide.
QTransform backdrop_to_screen(const Backdrop& backdrop, const SheetScene& scene,
                              const SheetTransform& transform);

class BackdropLayer {
 public:
  // `folder`: of the project's file, which the photographs' paths are relative to.
  void paint(QPainter& painter, const SheetSettings& settings, const std::filesystem::path& folder,
             const SheetScene& scene, const SheetTransform& transform, const Palette& colours);
  // The photograph; null when it cannot be read.
  const QImage& image(const std::filesystem::path& file);

 private:
  std::map<std::string, QImage> images_;
};

}  // namespace tackbench::ui
