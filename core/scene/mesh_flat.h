// Solids with flat faces: boxes, bars, plates and whatever else an outline makes.
#pragma once

#include <array>
#include <vector>

#include "core/scene/mesh_round.h"

namespace tackbench {

// A closed outline in its own plane, anticlockwise, mm.
using Outline = std::vector<Eigen::Vector2d>;

// Axes of a box or plate: centre and three unit axes, right-handed.
struct BoxPlace {
  Vec3 centre = Vec3::Zero();
  Mat3 axes = Mat3::Identity();  // columns
};

// `rounding` of every edge, drawn as a chamfer shaded round; at most half the least size.
Mesh box(const BoxPlace& place, const Vec3& size, double rounding = 0.0);
// The box with that middle and the chassis' axes.
Mesh box(const Vec3& centre, const Vec3& size, double rounding = 0.0);

// A bar of rectangular section between two points, `width` along the direction nearest to
// `across`, `depth` square to it.
Mesh bar(const Vec3& from, const Vec3& to, const Vec3& across, double width, double depth);

// The outline swept from the plane at `origin` (its x and y along the first two axes) by `depth`
// along the third. Holes are clockwise outlines inside it that touch nothing.
Mesh prism(const BoxPlace& origin, const Outline& outline, const std::vector<Outline>& holes,
           double depth);

// A lever: two rounded ends joined by their common tangents, `thickness` square to its flat.
// `axis` is the direction of its bores; the lever lies square to it as nearly as the two ends
// allow.
Mesh lever(const Vec3& from, const Vec3& to, const Vec3& axis, double from_radius, double to_radius,
           double thickness, Detail detail);

struct RoundHole {
  Eigen::Vector2d centre;
  double radius;
};
// A plate of `size` (X, Y, thickness along its own axes). A hole that would cross the plate's
// border or another hole is left out.
Mesh plate(const BoxPlace& place, const Vec3& size, const std::vector<RoundHole>& holes,
           Detail detail);

// Triangles of an outline with holes, as indices into the outline's points followed by each
// hole's. Ear clipping with bridges to the holes (Eberly's description, from memory).
std::vector<std::array<std::uint32_t, 3>> triangles_of(const Outline& outline,
                                                       const std::vector<Outline>& holes);

}  // namespace tackbench
