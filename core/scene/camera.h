// An eye that looks at a point of the truck and can be led round it. Chassis frame, mm, rad;
// pixels count from the picture's top left, y down.
#pragma once

#include <optional>
#include <vector>

#include "core/scene/mesh.h"

namespace tackbench {

struct PicturePoint {
  double x = 0.0;
  double y = 0.0;
};

struct PictureSize {
  double width = 1.0;  // at least 1
  double height = 1.0;
};

// Through a pixel, from the eye.
struct SightRay {
  Vec3 origin = Vec3::Zero();
  Vec3 along = Vec3::UnitX();  // unit
};

enum class StandardView { front, left, plan, front_left_above };

struct Camera {
  Vec3 target_mm = Vec3::Zero();
  double distance = 6000.0;    // eye to target, mm
  double turn = 0.0;           // of the eye about Z: 0 = ahead of the truck, left positive
  double rise = 0.0;           // of the eye over the target's level, -90 to 90 degrees
  double field_of_view = 0.4;  // of the picture's height, rad

  Vec3 backward() const;  // unit, target to eye
  Vec3 right() const;     // unit, to the right on the picture
  Vec3 up() const;        // unit, up on the picture
  Vec3 eye_mm() const { return target_mm + distance * backward(); }

  // Where a place appears, and how far before the eye it is along the line of sight, mm. Behind the
  // eye: empty.
  struct Seen {
    PicturePoint at;
    double depth = 0.0;
  };
  std::optional<Seen> seen(const Vec3& chassis_mm, const PictureSize& size) const;
  SightRay ray(const PicturePoint& at, const PictureSize& size) const;
  // Millimetres a pixel at the target.
  double mm_a_pixel(const PictureSize& size) const;

  // Led round the target by a movement on the picture: a picture's height is half a turn.
  void orbit(double dx, double dy, const PictureSize& size);
  // Target and eye shifted so that what lies at the target's depth goes with the pointer.
  void pan(double dx, double dy, const PictureSize& size);
  // Distance times `factor`; what lies under the pointer at the target's depth stays there.
  void zoom(double factor, const PicturePoint& about, const PictureSize& size);
  void look(StandardView view);
  // All of the bounds inside the picture, with a margin; the direction stays.
  void fit(const Bounds& bounds, const PictureSize& size);
  // The same for places alone, which may leave a box's corners empty.
  void fit(const std::vector<Vec3>& places_mm, const PictureSize& size);
};

}  // namespace tackbench
