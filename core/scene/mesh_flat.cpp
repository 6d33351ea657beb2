#include "core/scene/mesh_flat.h"

#include <Eigen/Geometry>
#include <algorithm>
#include <cmath>

#include "core/basics/units.h"

namespace tackbench {

namespace {

constexpr double kNothing = 1e-9;

void add_quad(Mesh& mesh, const std::array<Vec3, 4>& corners, const std::array<Vec3, 4>& normals) {
  const auto first = static_cast<std::uint32_t>(mesh.vertices.size());
  mesh.vertices.insert(mesh.vertices.end(), corners.begin(), corners.end());
  mesh.normals.insert(mesh.normals.end(), normals.begin(), normals.end());
  mesh.triangles.push_back({first, first + 1, first + 2});
  mesh.triangles.push_back({first, first + 2, first + 3});
}

// Corner of the face of direction `face` (0 to 5: +x, -x, +y ...) towards signs s and t of the two
// other axes, drawn in by the rounding along them.
struct RoundedBox {
  BoxPlace place;
  Vec3 half;
  double rounding;

  Vec3 normal(int axis, double sign) const { return sign * place.axes.col(axis); }
  Vec3 corner(int axis, const Vec3& signs) const {
    Vec3 local;
    for (int i = 0; i < 3; ++i) local[i] = signs[i] * (half[i] - (i == axis ? 0.0 : rounding));
    return place.centre + place.axes * local;
  }
};

Vec3 signs_of(int axis, double sign, int second, double s, int third, double t) {
  Vec3 signs;
  signs[axis] = sign;
  signs[second] = s;
  signs[third] = t;
  return signs;
}

void add_faces(Mesh& mesh, const RoundedBox& of) {
  for (int axis = 0; axis < 3; ++axis) {
    const int second = (axis + 1) % 3;
    const int third = (axis + 2) % 3;
    for (const double sign : {1.0, -1.0}) {
      // Anticlockwise seen from outside: the other way round on the far face.
      std::array<Vec3, 4> corners;
      constexpr std::array<std::array<double, 2>, 4> kRound{
          {{-1.0, -1.0}, {1.0, -1.0}, {1.0, 1.0}, {-1.0, 1.0}}};
      for (std::size_t i = 0; i < 4; ++i) {
        const auto& [s, t] = kRound[sign > 0.0 ? i : 3 - i];
        corners[i] = of.corner(axis, signs_of(axis, sign, second, s, third, t));
      }
      const Vec3 out = of.normal(axis, sign);
      add_quad(mesh, corners, {out, out, out, out});
    }
  }
}

void add_chamfers(Mesh& mesh, const RoundedBox& of) {
  for (int axis = 0; axis < 3; ++axis) {  // the edges along this axis
    const int second = (axis + 1) % 3;
    const int third = (axis + 2) % 3;
    for (const double s : {1.0, -1.0}) {
      for (const double t : {1.0, -1.0}) {
        const Vec3 low = signs_of(axis, -1.0, second, s, third, t);
        const Vec3 high = signs_of(axis, 1.0, second, s, third, t);
        std::array<Vec3, 4> corners{of.corner(second, low), of.corner(third, low),
                                    of.corner(third, high), of.corner(second, high)};
        const Vec3 a = of.normal(second, s);
        const Vec3 b = of.normal(third, t);
        std::array<Vec3, 4> normals{a, b, b, a};
        // From the second axis' face to the third's, then along: outward when both signs agree.
        if (s * t < 0.0) {
          std::reverse(corners.begin(), corners.end());
          std::reverse(normals.begin(), normals.end());
        }
        add_quad(mesh, corners, normals);
      }
    }
  }
}

void add_corners(Mesh& mesh, const RoundedBox& of) {
  for (const double x : {1.0, -1.0}) {
    for (const double y : {1.0, -1.0}) {
      for (const double z : {1.0, -1.0}) {
        const Vec3 signs(x, y, z);
        const auto first = static_cast<std::uint32_t>(mesh.vertices.size());
        for (int axis = 0; axis < 3; ++axis) {
          mesh.vertices.push_back(of.corner(axis, signs));
          mesh.normals.push_back(of.normal(axis, signs[axis]));
        }
        if (x * y * z > 0.0) {
          mesh.triangles.push_back({first, first + 1, first + 2});
        } else {
          mesh.triangles.push_back({first, first + 2, first + 1});
        }
      }
    }
  }
}

}  // namespace

Mesh box(const BoxPlace& place, const Vec3& size, double rounding) {
  RoundedBox of{place, 0.5 * size, std::clamp(rounding, 0.0, 0.5 * size.minCoeff())};
  Mesh mesh;
  if (!(size.minCoeff() > kNothing)) return mesh;
  // A rounding of half a side leaves faces of no width.
  if (of.rounding >= of.half.minCoeff()) of.rounding = 0.999 * of.half.minCoeff();
  add_faces(mesh, of);
  if (of.rounding > kNothing) {
    add_chamfers(mesh, of);
    add_corners(mesh, of);
  }
  find_edges(mesh);
  return mesh;
}

Mesh box(const Vec3& centre, const Vec3& size, double rounding) {
  return box(BoxPlace{centre, Mat3::Identity()}, size, rounding);
}

Mesh bar(const Vec3& from, const Vec3& to, const Vec3& across, double width, double depth) {
  const Vec3 along = to - from;
  const double length = along.norm();
  if (length < kNothing) return {};
  BoxPlace place;
  place.centre = 0.5 * (from + to);
  place.axes.col(0) = along / length;
  place.axes.col(1) = square_to(place.axes.col(0), across);
  place.axes.col(2) = place.axes.col(0).cross(place.axes.col(1));
  return box(place, {length, width, depth});
}

Mesh prism(const BoxPlace& origin, const Outline& outline, const std::vector<Outline>& holes,
           double depth) {
  const Vec3 out = origin.axes.col(2);
  const auto in_space = [&](const Eigen::Vector2d& p, double height) {
    return Vec3(origin.centre + p.x() * origin.axes.col(0) + p.y() * origin.axes.col(1) +
                height * out);
  };
  std::vector<const Outline*> loops{&outline};
  for (const Outline& hole : holes) loops.push_back(&hole);
  Mesh mesh;
  const auto triangles = triangles_of(outline, holes);
  for (const bool far : {false, true}) {
    const auto first = static_cast<std::uint32_t>(mesh.vertices.size());
    for (const Outline* loop : loops) {
      for (const Eigen::Vector2d& p : *loop) {
        mesh.vertices.push_back(in_space(p, far ? depth : 0.0));
        mesh.normals.push_back(far ? out : Vec3(-out));
      }
    }
    for (const auto& [a, b, c] : triangles) {
      if (far) {
        mesh.triangles.push_back({first + a, first + b, first + c});
      } else {
        mesh.triangles.push_back({first + a, first + c, first + b});
      }
    }
  }
  for (const Outline* loop : loops) {
    const std::size_t count = loop->size();
    const auto step = [&](std::size_t i) -> Eigen::Vector2d {
      return ((*loop)[(i + 1) % count] - (*loop)[i % count]).normalized();
    };
    const auto outward = [&](const Eigen::Vector2d& d) {
      return Vec3(d.y() * origin.axes.col(0) - d.x() * origin.axes.col(1));
    };
    // Round where the outline turns by less than 30 degrees.
    const auto normal_at = [&](std::size_t side, std::size_t other) {
      const Eigen::Vector2d own = step(side);
      const Eigen::Vector2d next = step(other);
      return outward(own.dot(next) > 0.866 ? Eigen::Vector2d((own + next).normalized()) : own);
    };
    for (std::size_t i = 0; i < count; ++i) {
      const Vec3 start = normal_at(i, i + count - 1);
      const Vec3 end = normal_at(i, i + 1);
      const Eigen::Vector2d& a = (*loop)[i];
      const Eigen::Vector2d& b = (*loop)[(i + 1) % count];
      add_quad(mesh, {in_space(a, 0.0), in_space(b, 0.0), in_space(b, depth), in_space(a, depth)},
               {start, end, end, start});
    }
  }
  find_edges(mesh);
  return mesh;
}

Mesh lever(const Vec3& from, const Vec3& to, const Vec3& axis, double from_radius, double to_radius,
           double thickness, Detail detail) {
  const Vec3 along = to - from;
  const double length = along.norm();
  if (length <= std::abs(from_radius - to_radius) + kNothing) {
    const Vec3 half = 0.5 * thickness * axis;
    return cylinder(from - half, from + half, std::max(from_radius, to_radius), detail);
  }
  BoxPlace place;
  place.axes.col(0) = along / length;
  place.axes.col(2) = square_to(place.axes.col(0), axis);
  place.axes.col(1) = place.axes.col(2).cross(place.axes.col(0));
  place.centre = from - 0.5 * thickness * place.axes.col(2);
  // Half angle at which the common tangents touch.
  const double touch = std::acos((from_radius - to_radius) / length);
  const int steps = detail == Detail::coarse ? 4 : 10;
  Outline outline;
  for (int i = 0; i <= steps; ++i) {  // far end, from its lower touching point round to the upper
    const double angle = -touch + 2.0 * touch * i / steps;
    outline.emplace_back(length + to_radius * std::cos(angle), to_radius * std::sin(angle));
  }
  for (int i = 0; i <= steps; ++i) {
    const double angle = touch + 2.0 * (kPi - touch) * i / steps;
    outline.emplace_back(from_radius * std::cos(angle), from_radius * std::sin(angle));
  }
  return prism(place, outline, {}, thickness);
}

Mesh plate(const BoxPlace& place, const Vec3& size, const std::vector<RoundHole>& holes,
           Detail detail) {
  if (!(size.minCoeff() > kNothing)) return {};
  const double half_x = 0.5 * size.x();
  const double half_y = 0.5 * size.y();
  const Outline outline{{-half_x, -half_y}, {half_x, -half_y}, {half_x, half_y}, {-half_x, half_y}};
  std::vector<RoundHole> cut;
  for (const RoundHole& hole : holes) {
    const bool inside = hole.radius > kNothing &&
                        std::abs(hole.centre.x()) + hole.radius < half_x &&
                        std::abs(hole.centre.y()) + hole.radius < half_y;
    const bool apart = std::all_of(cut.begin(), cut.end(), [&](const RoundHole& other) {
      return (other.centre - hole.centre).norm() > other.radius + hole.radius;
    });
    if (inside && apart) cut.push_back(hole);
  }
  std::vector<Outline> loops;
  for (const RoundHole& hole : cut) {
    const int sides = sides_of_circle(detail, hole.radius);
    Outline& loop = loops.emplace_back();
    for (int i = 0; i < sides; ++i) {
      const double angle = -kRadiansPerTurn * i / sides;
      loop.push_back(hole.centre + hole.radius * Eigen::Vector2d(std::cos(angle), std::sin(angle)));
    }
  }
  BoxPlace origin = place;
  origin.centre -= 0.5 * size.z() * place.axes.col(2);
  return prism(origin, outline, loops, size.z());
}

}  // namespace tackbench
