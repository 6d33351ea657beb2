// Measuring between points: a distance with its plumb offset from two, an angle from three.
#pragma once

#include <QPainter>
#include <QString>
#include <optional>
#include <string>
#include <vector>

#include "core/basics/shown_number.h"
#include "ui/look/palette.h"
#include "ui/sheet/grip_layer.h"

namespace tackbench::ui {

// A point that was picked: one of the truck's, or any place on a view, which has no depth.
struct Picked {
  std::string path;  // empty for a place on the paper
  QString words;
  SheetView view = SheetView::side;
  ViewPoint in_view;          // mm
  std::optional<Vec3> at_mm;  // chassis, when it is a point of the truck
};

struct Measured {
  double distance = 0.0;  // mm; in space between two points of the truck, else as seen in the view
  bool in_space = false;
  ViewPoint across;                 // as seen: sideways and up, mm
  std::optional<double> level_off;  // horizontal distance in space, mm
  std::optional<double> drop;       // of the second below the first, mm
  std::optional<double> angle;      // at the second of three, rad
};

// Two or three points; empty for fewer.
std::optional<Measured> measure(const std::vector<Picked>& points);
// "803.6 between A and B; plumb 12.0 lower, 801.2 away level".
QString measured_words(const std::vector<Picked>& points, const Measured& measured, ShownUnit unit);

class MeasureTool {
 public:
  bool active() const { return active_; }
  void set_active(bool active);
  const std::vector<Picked>& points() const { return points_; }
  // A fourth starts anew.
  void pick(Picked point);
  void take_back();
  // Points of the truck go on with it.
  void follow(const GripLayer& grips);
  // As kept in the project: empty unless there are two points of the truck or more.
  std::optional<SheetNote> note(ShownUnit unit) const;

  void paint(QPainter& painter, const SheetScene& scene, const SheetTransform& transform,
             const Palette& colours, ShownUnit unit) const;

 private:
  bool active_ = false;
  std::vector<Picked> points_;
};

// A kept distance or angle between points that are still there, with what it is now, in the view
// where its ends lie farthest apart.
void paint_note(QPainter& painter, const SheetNote& note, const GripLayer& grips,
                const SheetScene& scene, const SheetTransform& transform, const Palette& colours,
                ShownUnit unit);

}  // namespace tackbench::ui
