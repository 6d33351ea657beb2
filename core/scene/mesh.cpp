#include "core/scene/mesh.h"

#include <Eigen/Geometry>
#include <cmath>
#include <map>
#include <tuple>

namespace tackbench {

namespace {

// Places nearer than this are one corner, mm.
constexpr double kSamePlace = 1e-4;

using Place = std::tuple<std::int64_t, std::int64_t, std::int64_t>;

Place place_of(const Vec3& v) {
  return {std::llround(v.x() / kSamePlace), std::llround(v.y() / kSamePlace),
          std::llround(v.z() / kSamePlace)};
}

// Number of each vertex's place.
std::vector<std::uint32_t> corner_numbers(const Mesh& mesh) {
  std::map<Place, std::uint32_t> numbers;
  std::vector<std::uint32_t> of_vertex;
  of_vertex.reserve(mesh.vertices.size());
  for (const Vec3& vertex : mesh.vertices) {
    const auto next = static_cast<std::uint32_t>(numbers.size());
    of_vertex.push_back(numbers.try_emplace(place_of(vertex), next).first->second);
  }
  return of_vertex;
}

Vec3 facing(const Mesh& mesh, const std::array<std::uint32_t, 3>& triangle) {
  const Vec3& a = mesh.vertices[triangle[0]];
  const Vec3 square = (mesh.vertices[triangle[1]] - a).cross(mesh.vertices[triangle[2]] - a);
  const double length = square.norm();
  return length > 0.0 ? Vec3(square / length) : mesh.normals[triangle[0]];
}

}  // namespace

void find_edges(Mesh& mesh) {
  // Below this the surface is smooth: shared normals differ by rounding alone.
  constexpr double kSmoothCosine = 0.99;
  mesh.edges.clear();
  const std::vector<std::uint32_t> corner = corner_numbers(mesh);
  std::map<std::pair<std::uint32_t, std::uint32_t>, std::size_t> waiting;
  for (const auto& triangle : mesh.triangles) {
    const Vec3 normal = facing(mesh, triangle);
    for (std::size_t i = 0; i < 3; ++i) {
      const std::uint32_t from = triangle[i];
      const std::uint32_t to = triangle[(i + 1) % 3];
      const auto key = std::minmax(corner[from], corner[to]);
      const auto met = waiting.find(key);
      if (met == waiting.end()) {
        waiting.emplace(key, mesh.edges.size());
        mesh.edges.push_back({{from, to}, {normal, normal}, true});
        continue;
      }
      MeshEdge& edge = mesh.edges[met->second];
      edge.facing[1] = normal;
      const bool same_way = corner[edge.ends[0]] == corner[from];
      const std::uint32_t first = same_way ? from : to;
      const std::uint32_t second = same_way ? to : from;
      edge.sharp = mesh.normals[edge.ends[0]].dot(mesh.normals[first]) < kSmoothCosine ||
                   mesh.normals[edge.ends[1]].dot(mesh.normals[second]) < kSmoothCosine;
      waiting.erase(met);
    }
  }
}

void append(Mesh& mesh, const Mesh& more) {
  const auto first = static_cast<std::uint32_t>(mesh.vertices.size());
  mesh.vertices.insert(mesh.vertices.end(), more.vertices.begin(), more.vertices.end());
  mesh.normals.insert(mesh.normals.end(), more.normals.begin(), more.normals.end());
  for (const auto& [a, b, c] : more.triangles)
    mesh.triangles.push_back({a + first, b + first, c + first});
  for (MeshEdge edge : more.edges) {
    for (std::uint32_t& end : edge.ends) end += first;
    mesh.edges.push_back(edge);
  }
}

Bounds bounds_of(const Mesh& mesh) {
  Bounds bounds;
  for (const Vec3& vertex : mesh.vertices) bounds.take(vertex);
  return bounds;
}

double volume(const Mesh& mesh) {
  double six_volumes = 0.0;
  for (const auto& [a, b, c] : mesh.triangles)
    six_volumes += mesh.vertices[a].dot(mesh.vertices[b].cross(mesh.vertices[c]));
  return six_volumes / 6.0;
}

bool is_closed(const Mesh& mesh) {
  const std::vector<std::uint32_t> corner = corner_numbers(mesh);
  // Times that an edge is run along from its lower corner to its higher, and back.
  std::map<std::pair<std::uint32_t, std::uint32_t>, std::array<int, 2>> runs;
  for (const auto& triangle : mesh.triangles) {
    for (std::size_t i = 0; i < 3; ++i) {
      const std::uint32_t from = corner[triangle[i]];
      const std::uint32_t to = corner[triangle[(i + 1) % 3]];
      if (from == to) return false;
      ++runs[std::minmax(from, to)][from < to ? 0 : 1];
    }
  }
  for (const auto& [edge, times] : runs)
    if (times[0] != 1 || times[1] != 1) return false;
  return !mesh.triangles.empty();
}

}  // namespace tackbench
