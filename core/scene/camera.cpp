#include "core/scene/camera.h"

#include <Eigen/Geometry>
#include <algorithm>
#include <cmath>

#include "core/basics/units.h"

namespace tackbench {

namespace {

constexpr double kNearest = 60.0;  // mm
constexpr double kFarthest = 60000.0;
constexpr double kMostRise = 0.5 * kPi;

double pixels_a_unit(const Camera& camera, const PictureSize& size) {
  return 0.5 * size.height / std::tan(0.5 * camera.field_of_view);
}

}  // namespace

Vec3 Camera::backward() const {
  return {std::cos(rise) * std::cos(turn), std::cos(rise) * std::sin(turn), std::sin(rise)};
}

Vec3 Camera::right() const {
  return {-std::sin(turn), std::cos(turn), 0.0};
}

Vec3 Camera::up() const {
  return backward().cross(right());
}

std::optional<Camera::Seen> Camera::seen(const Vec3& chassis_mm, const PictureSize& size) const {
  const Vec3 from_eye = chassis_mm - eye_mm();
  const double depth = -backward().dot(from_eye);
  if (!(depth > 1.0)) return std::nullopt;
  const double scale = pixels_a_unit(*this, size) / depth;
  return Seen{{0.5 * size.width + scale * right().dot(from_eye),
               0.5 * size.height - scale * up().dot(from_eye)},
              depth};
}

SightRay Camera::ray(const PicturePoint& at, const PictureSize& size) const {
  const double scale = pixels_a_unit(*this, size);
  const Vec3 along = -backward() + (at.x - 0.5 * size.width) / scale * right() -
                     (at.y - 0.5 * size.height) / scale * up();
  return {eye_mm(), along.normalized()};
}

double Camera::mm_a_pixel(const PictureSize& size) const {
  return distance / pixels_a_unit(*this, size);
}

void Camera::orbit(double dx, double dy, const PictureSize& size) {
  const double per_pixel = kPi / std::max(1.0, size.height);
  turn = wrapped(turn - dx * per_pixel);
  rise = std::clamp(rise + dy * per_pixel, -kMostRise, kMostRise);
}

void Camera::pan(double dx, double dy, const PictureSize& size) {
  target_mm += mm_a_pixel(size) * (dy * up() - dx * right());
}

void Camera::zoom(double factor, const PicturePoint& about, const PictureSize& size) {
  if (!(factor > 0.0)) return;
  const double wanted = std::clamp(distance * factor, kNearest, kFarthest);
  const Vec3 offset = mm_a_pixel(size) * ((about.x - 0.5 * size.width) * right() -
                                          (about.y - 0.5 * size.height) * up());
  target_mm += (1.0 - wanted / distance) * offset;
  distance = wanted;
}

void Camera::look(StandardView view) {
  switch (view) {
    case StandardView::front:
      turn = 0.0;
      rise = 0.0;
      break;
    case StandardView::left:
      turn = 0.5 * kPi;
      rise = 0.0;
      break;
    case StandardView::plan:  // front to the left, as on the sheet
      turn = 0.5 * kPi;
      rise = kMostRise;
      break;
    case StandardView::front_left_above:
      turn = radians_from_degrees(52.0);
      rise = radians_from_degrees(24.0);
      break;
  }
}

void Camera::fit(const Bounds& bounds, const PictureSize& size) {
  if (bounds.empty()) return;
  std::vector<Vec3> corners;
  for (unsigned i = 0; i < 8; ++i)
    corners.emplace_back((i & 1U) != 0 ? bounds.greatest.x() : bounds.least.x(),
                         (i & 2U) != 0 ? bounds.greatest.y() : bounds.least.y(),
                         (i & 4U) != 0 ? bounds.greatest.z() : bounds.least.z());
  fit(corners, size);
}

void Camera::fit(const std::vector<Vec3>& places_mm, const PictureSize& size) {
  if (places_mm.empty()) return;
  constexpr double kMargin = 0.94;
  Bounds bounds;
  for (const Vec3& place : places_mm) bounds.take(place);
  target_mm = bounds.middle();
  const Vec3 back = backward();
  const Vec3 across = right();
  const Vec3 upward = up();
  // Each place asks for a distance; then the middle of what is seen is brought to the picture's.
  for (int pass = 0; pass < 4; ++pass) {
    const double tall = std::tan(0.5 * field_of_view) * kMargin;
    const double wide = tall * size.width / std::max(1.0, size.height);
    double needed = kNearest;
    for (const Vec3& place : places_mm) {
      const Vec3 off = place - target_mm;
      const double before = back.dot(off);
      needed = std::max({needed, before + std::abs(across.dot(off)) / wide,
                         before + std::abs(upward.dot(off)) / tall});
    }
    distance = std::clamp(needed, kNearest, kFarthest);
    Eigen::Vector2d least = Eigen::Vector2d::Constant(1e30);
    Eigen::Vector2d greatest = -least;
    for (const Vec3& place : places_mm) {
      const Vec3 off = place - target_mm;
      const double depth = std::max(distance - back.dot(off), 1.0);
      const Eigen::Vector2d at(across.dot(off) / depth, upward.dot(off) / depth);
      least = least.cwiseMin(at);
      greatest = greatest.cwiseMax(at);
    }
    // The last distance stands for the target it was found for.
    if (pass == 3) break;
    const Eigen::Vector2d middle = 0.5 * (least + greatest) * distance;
    target_mm += middle.x() * across + middle.y() * upward;
  }
}

}  // namespace tackbench
