// Photographs behind the views.
#pragma once

#include <QImage>
#include <QObject>
#include <QPainter>
#include <QTransform>
#include <filesystem>
#include <map>
#include <string>
#include <vector>

#include "core/project/project.h"
#include "core/runner/runner.h"
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

// Reads photographs away from the window's thread, keeps them no larger than a screen can show, and
// only while the project has them.
class BackdropLayer : public QObject {
  Q_OBJECT

 public:
  // `folder`: of the project's file, which the photographs' paths are relative to. One that is
  // being read is left out until then.
  void paint(QPainter& painter, const SheetSettings& settings, const std::filesystem::path& folder,
             const SheetScene& scene, const SheetTransform& transform, const Palette& colours);
  // Pictures kept.
  std::size_t kept() const { return photographs_.size(); }
  qsizetype kept_bytes() const;

 Q_SIGNALS:
  void arrived();  // there is more to paint

 private:
  // A file as it was when it was last changed.
  struct Key {
    std::string file;
    std::filesystem::file_time_type changed;
    auto operator<=>(const Key&) const = default;
  };
  struct Photograph {
    bool read = false;
    QSize pixels;    // of the file
    QImage picture;  // perhaps smaller; null when the file is no picture
  };

  static Photograph read(const std::string& file);
  void read_missing();

  std::map<Key, Photograph> photographs_;
  Runner reader_;  // last: its jobs post to this object
};

}  // namespace tackbench::ui
