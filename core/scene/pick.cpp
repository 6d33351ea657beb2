#include "core/scene/pick.h"

#include <Eigen/Geometry>
#include <algorithm>
#include <cmath>
#include <limits>

#include "core/basics/units.h"

namespace tackbench {

namespace {

constexpr double kNone = std::numeric_limits<double>::infinity();

// Distance along the ray to a triangle from either side, or infinity. Moller and Trumbore 1997
// (from memory).
double meets_triangle(const SightRay& ray, const Vec3& a, const Vec3& b, const Vec3& c) {
  const Vec3 ab = b - a;
  const Vec3 ac = c - a;
  const Vec3 p = ray.along.cross(ac);
  const double determinant = ab.dot(p);
  if (std::abs(determinant) < 1e-12) return kNone;
  const Vec3 from_a = ray.origin - a;
  const double u = from_a.dot(p) / determinant;
  if (u < 0.0 || u > 1.0) return kNone;
  const Vec3 q = from_a.cross(ab);
  const double v = ray.along.dot(q) / determinant;
  if (v < 0.0 || u + v > 1.0) return kNone;
  const double distance = ac.dot(q) / determinant;
  return distance > 0.0 ? distance : kNone;
}

bool meets_bounds(const SightRay& ray, const Bounds& bounds) {
  double nearest = 0.0;
  double farthest = kNone;
  for (int i = 0; i < 3; ++i) {
    if (std::abs(ray.along[i]) < 1e-12) {
      if (ray.origin[i] < bounds.least[i] || ray.origin[i] > bounds.greatest[i]) return false;
      continue;
    }
    const double a = (bounds.least[i] - ray.origin[i]) / ray.along[i];
    const double b = (bounds.greatest[i] - ray.origin[i]) / ray.along[i];
    nearest = std::max(nearest, std::min(a, b));
    farthest = std::min(farthest, std::max(a, b));
  }
  return nearest <= farthest;
}

double meets_mesh(const SightRay& ray, const Mesh& mesh) {
  if (!meets_bounds(ray, bounds_of(mesh))) return kNone;
  double nearest = kNone;
  for (const auto& [a, b, c] : mesh.triangles)
    nearest = std::min(nearest,
                       meets_triangle(ray, mesh.vertices[a], mesh.vertices[b], mesh.vertices[c]));
  return nearest;
}

}  // namespace

std::optional<SightHit> pick(const Scene& scene, const std::vector<SceneMotion>& motions,
                             const SightRay& ray) {
  std::optional<SightHit> solid;
  std::optional<SightHit> soft;
  for (std::size_t i = 0; i < scene.bodies.size() && i < motions.size(); ++i) {
    const SceneMotion drawn_from_posed = motions[i].inverse();
    const SightRay own{(drawn_from_posed * Point<Chassis>{ray.origin}).mm,
                       (drawn_from_posed * Direction<Chassis>{ray.along}).along};
    for (std::size_t k = 0; k < scene.bodies[i].pieces.size(); ++k) {
      const ScenePiece& piece = scene.bodies[i].pieces[k];
      const double distance = meets_mesh(own, piece.fine);
      if (distance == kNone) continue;
      std::optional<SightHit>& nearest = piece.role == SceneRole::soft ? soft : solid;
      if (nearest && nearest->distance <= distance) continue;
      nearest = SightHit{i, k, distance, ray.origin + distance * ray.along};
    }
  }
  return solid ? solid : soft;
}

std::optional<SightHit> pick_near(const Scene& scene, const std::vector<SceneMotion>& motions,
                                  const Camera& camera, const PictureSize& size,
                                  const PicturePoint& at, double reach) {
  const auto is_soft = [&](const SightHit& hit) {
    return scene.bodies[hit.body].pieces[hit.piece].role == SceneRole::soft;
  };
  auto under = pick(scene, motions, camera.ray(at, size));
  if (under && !is_soft(*under)) return under;
  constexpr int kAround = 8;
  for (const double part : {0.5, 1.0}) {
    std::optional<SightHit> nearest;
    for (int i = 0; i < kAround; ++i) {
      const double angle = kRadiansPerTurn * i / kAround;
      const PicturePoint beside{at.x + part * reach * std::cos(angle),
                                at.y + part * reach * std::sin(angle)};
      const auto hit = pick(scene, motions, camera.ray(beside, size));
      if (hit && !is_soft(*hit) && (!nearest || hit->distance < nearest->distance)) nearest = hit;
    }
    if (nearest) return nearest;
  }
  return under;
}

std::optional<Vec3> on_plane(const SightRay& ray, const Vec3& point, const Vec3& normal) {
  const double rate = normal.dot(ray.along);
  if (std::abs(rate) < 1e-6) return std::nullopt;
  const double distance = normal.dot(point - ray.origin) / rate;
  if (!(distance > 0.0)) return std::nullopt;
  return ray.origin + distance * ray.along;
}

bool shows_selected(const std::string& part, const std::string& selected) {
  if (part.empty() || selected.empty()) return false;
  if (part == selected) return true;
  const auto within = [](const std::string& inner, const std::string& outer) {
    return inner.size() > outer.size() && inner.starts_with(outer) &&
           (inner[outer.size()] == '.' || inner[outer.size()] == '[');
  };
  return within(part, selected);
}

Bounds bounds_of_part(const Scene& scene, const std::vector<SceneMotion>& motions,
                      const std::string& part) {
  // "steering_box.arm.length_mm" has no piece of its own: try "steering_box.arm".
  for (std::string sought = part; !sought.empty();) {
    Bounds bounds;
    for (std::size_t i = 0; i < scene.bodies.size() && i < motions.size(); ++i) {
      for (const ScenePiece& piece : scene.bodies[i].pieces) {
        if (!shows_selected(piece.part, sought)) continue;
        for (const Vec3& vertex : piece.coarse.vertices)
          bounds.take((motions[i] * Point<Chassis>{vertex}).mm);
      }
    }
    if (!bounds.empty()) return bounds;
    const std::size_t dot = sought.rfind('.');
    if (dot == std::string::npos) break;
    sought.resize(dot);
  }
  return {};
}

}  // namespace tackbench
