// Triangle meshes of solids. Vertices in mm of whatever frame the maker was given; normals unit and
// outward; triangles anticlockwise seen from outside. A vertex is shared between triangles where
// the surface is smooth and doubled where it has an edge.
#pragma once

#include <array>
#include <cstdint>
#include <vector>

#include "core/basics/frames.h"

namespace tackbench {

// Between two triangles. Sharp edges are always drawn; smooth ones only where they are an outline,
// one triangle facing the eye and the other not.
struct MeshEdge {
  std::array<std::uint32_t, 2> ends{};                     // vertices
  std::array<Vec3, 2> facing{Vec3::Zero(), Vec3::Zero()};  // unit normals of the two triangles
  bool sharp = false;
};

struct Mesh {
  std::vector<Vec3> vertices;
  std::vector<Vec3> normals;  // one a vertex
  std::vector<std::array<std::uint32_t, 3>> triangles;
  std::vector<MeshEdge> edges;  // filled by find_edges

  bool empty() const { return triangles.empty(); }
};

struct Bounds {
  Vec3 least = Vec3::Constant(1e30);
  Vec3 greatest = Vec3::Constant(-1e30);

  bool empty() const { return least.x() > greatest.x(); }
  void take(const Vec3& point) {
    least = least.cwiseMin(point);
    greatest = greatest.cwiseMax(point);
  }
  Vec3 middle() const { return 0.5 * (least + greatest); }
};

// Every edge between two triangles that meet at the same two places; an edge with one triangle
// only, of a surface that is not closed, is sharp with both normals that triangle's.
void find_edges(Mesh& mesh);

void append(Mesh& mesh, const Mesh& more);
Bounds bounds_of(const Mesh& mesh);

// Enclosed by a closed mesh, mm3, by the divergence theorem.
double volume(const Mesh& mesh);
// Whether every edge is shared by exactly two triangles that run along it in opposite senses.
bool is_closed(const Mesh& mesh);

}  // namespace tackbench
