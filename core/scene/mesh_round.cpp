#include "core/scene/mesh_round.h"

#include <Eigen/Geometry>
#include <algorithm>
#include <cmath>

#include "core/basics/units.h"

namespace tackbench {

namespace {

constexpr double kNothing = 1e-9;

struct ProfileStep {
  std::size_t from;
  std::size_t to;
  double along_normal;  // unit normal, out of the solid
  double radial_normal;
};

std::vector<ProfileStep> steps_of(const std::vector<ProfilePoint>& profile, bool ring) {
  std::vector<ProfileStep> steps;
  const std::size_t count = profile.size();
  for (std::size_t i = 0; i + 1 < count + (ring ? 1 : 0); ++i) {
    const std::size_t next = (i + 1) % count;
    const double along = profile[next].along - profile[i].along;
    const double radial = profile[next].radius - profile[i].radius;
    const double length = std::hypot(along, radial);
    if (length < kNothing) continue;
    steps.push_back({i, next, -radial / length, along / length});
  }
  return steps;
}

struct Turning {
  Vec3 origin;
  Vec3 axis;
  Vec3 first;
  Vec3 second;
  int sides;

  Vec3 outward(int side) const {
    const double angle = kRadiansPerTurn * (side % sides) / sides;
    return std::cos(angle) * first + std::sin(angle) * second;
  }
};

// One circle of vertices; one vertex a side on the axis too, since a tip has a normal a side.
std::uint32_t add_circle(Mesh& mesh, const Turning& turning, const ProfilePoint& point,
                         double along_normal, double radial_normal) {
  const auto first = static_cast<std::uint32_t>(mesh.vertices.size());
  for (int side = 0; side < turning.sides; ++side) {
    const Vec3 outward = turning.outward(side);
    mesh.vertices.emplace_back(turning.origin + point.along * turning.axis +
                               point.radius * outward);
    mesh.normals.push_back((along_normal * turning.axis + radial_normal * outward).normalized());
  }
  return first;
}

}  // namespace

int sides_of_circle(Detail detail, double radius_mm) {
  if (detail == Detail::coarse) return radius_mm > 120.0 ? 20 : radius_mm > 40.0 ? 10 : 6;
  return radius_mm > 250.0 ? 56 : radius_mm > 80.0 ? 36 : radius_mm > 25.0 ? 24 : 14;
}

Mesh turned_solid(const Vec3& origin, const Vec3& axis, const std::vector<ProfilePoint>& profile,
                  bool ring, int sides) {
  const Vec3 first = square_to(axis, Vec3::UnitZ());
  const Turning turning{origin, axis, first, axis.cross(first), sides};
  const std::vector<ProfileStep> steps = steps_of(profile, ring);
  Mesh mesh;
  // The normal at a step's end: shared with its neighbour where the profile is smooth there.
  const auto normal_at = [&](std::size_t step, std::size_t point, std::size_t neighbour) {
    double along = steps[step].along_normal;
    double radial = steps[step].radial_normal;
    if (profile[point].smooth) {
      along += steps[neighbour].along_normal;
      radial += steps[neighbour].radial_normal;
    }
    return std::pair{along, radial};
  };
  for (std::size_t i = 0; i < steps.size(); ++i) {
    const ProfileStep& step = steps[i];
    const std::size_t before = i > 0 ? i - 1 : (ring ? steps.size() - 1 : i);
    const std::size_t after = i + 1 < steps.size() ? i + 1 : (ring ? 0 : i);
    const auto [from_along, from_radial] = normal_at(i, step.from, before);
    const auto [to_along, to_radial] = normal_at(i, step.to, after);
    const std::uint32_t low =
        add_circle(mesh, turning, profile[step.from], from_along, from_radial);
    const std::uint32_t high = add_circle(mesh, turning, profile[step.to], to_along, to_radial);
    const bool from_tip = profile[step.from].radius < kNothing;
    const bool to_tip = profile[step.to].radius < kNothing;
    for (std::uint32_t side = 0; side < static_cast<std::uint32_t>(sides); ++side) {
      const std::uint32_t next = (side + 1) % static_cast<std::uint32_t>(sides);
      if (!from_tip) mesh.triangles.push_back({low + side, low + next, high + next});
      if (!to_tip) mesh.triangles.push_back({low + side, high + next, high + side});
    }
  }
  find_edges(mesh);
  return mesh;
}

Mesh cone(const Vec3& from, const Vec3& to, double from_radius, double to_radius, Detail detail) {
  const Vec3 along = to - from;
  const double length = along.norm();
  if (length < kNothing) return {};
  return turned_solid(from, along / length,
                      {{0, 0}, {0, from_radius}, {length, to_radius}, {length, 0}}, false,
                      sides_of_circle(detail, std::max(from_radius, to_radius)));
}

Mesh cylinder(const Vec3& from, const Vec3& to, double radius, Detail detail) {
  return cone(from, to, radius, radius, detail);
}

Mesh tube(const Vec3& from, const Vec3& to, double radius, double wall, Detail detail) {
  if (!(wall > 0.0) || wall >= radius) return cylinder(from, to, radius, detail);
  const Vec3 along = to - from;
  const double length = along.norm();
  if (length < kNothing) return {};
  const double bore = radius - wall;
  return turned_solid(from, along / length,
                      {{0, bore}, {0, radius}, {length, radius}, {length, bore}}, true,
                      sides_of_circle(detail, radius));
}

Mesh sphere(const Vec3& centre, double radius, Detail detail) {
  const int steps = detail == Detail::coarse ? 4 : 8;
  std::vector<ProfilePoint> profile;
  for (int i = 0; i <= steps; ++i) {
    const double angle = kPi * i / steps;
    // Exactly on the axis at both ends: a tip is told from a circle by its radius.
    const double off_axis = i == 0 || i == steps ? 0.0 : radius * std::sin(angle);
    profile.push_back({-radius * std::cos(angle), off_axis, true});
  }
  return turned_solid(centre, Vec3::UnitZ(), profile, false, sides_of_circle(detail, radius));
}

Mesh torus(const Vec3& centre, const Vec3& axis, double radius, double thickness, Detail detail) {
  const int steps = detail == Detail::coarse ? 6 : 10;
  std::vector<ProfilePoint> profile;
  for (int i = 0; i < steps; ++i) {
    const double angle = -kRadiansPerTurn * i / steps;  // clockwise: the solid is on the right
    profile.push_back({thickness * std::cos(angle), radius + thickness * std::sin(angle), true});
  }
  return turned_solid(centre, axis, profile, true, sides_of_circle(detail, radius));
}

Mesh ring(const Vec3& centre, const Vec3& axis, double outside_radius, double inside_radius,
          double width, Detail detail) {
  const double half = 0.5 * width;
  return turned_solid(centre, axis,
                      {{-half, inside_radius},
                       {-half, outside_radius},
                       {half, outside_radius},
                       {half, inside_radius}},
                      true, sides_of_circle(detail, outside_radius));
}

Mesh cable(const std::vector<Vec3>& points, double radius, Detail detail) {
  Mesh mesh;
  for (std::size_t i = 0; i + 1 < points.size(); ++i)
    append(mesh, cylinder(points[i], points[i + 1], radius, detail));
  for (std::size_t i = 1; i + 1 < points.size(); ++i)
    append(mesh, sphere(points[i], radius, Detail::coarse));
  return mesh;
}

}  // namespace tackbench
