// Solids against the formulas of a table of volumes (any engineer's handbook).
#include <gtest/gtest.h>

#include <Eigen/Geometry>
#include <cmath>
#include <random>

#include "core/basics/units.h"
#include "core/scene/mesh_flat.h"

namespace tackbench {
namespace {

// Area of the regular polygon with that many corners on a circle of radius 1.
double polygon_area(int sides) {
  return 0.5 * sides * std::sin(kRadiansPerTurn / sides);
}

// Normals are unit, on the outer side of the triangles they belong to.
void expect_solid(const Mesh& mesh, const char* what) {
  SCOPED_TRACE(what);
  ASSERT_FALSE(mesh.empty());
  EXPECT_TRUE(is_closed(mesh));
  EXPECT_GT(volume(mesh), 0.0);
  ASSERT_EQ(mesh.vertices.size(), mesh.normals.size());
  for (const Vec3& normal : mesh.normals) EXPECT_NEAR(normal.norm(), 1.0, 1e-9);
  for (const auto& [a, b, c] : mesh.triangles) {
    const Vec3 out = (mesh.vertices[b] - mesh.vertices[a])
                         .cross(mesh.vertices[c] - mesh.vertices[a])
                         .normalized();
    for (const std::uint32_t corner : {a, b, c}) EXPECT_GT(out.dot(mesh.normals[corner]), 0.3);
  }
}

const Vec3 kFrom(10.0, -20.0, 30.0);
const Vec3 kAlong = Vec3(2.0, 1.0, -0.5).normalized();

class Detailed : public testing::TestWithParam<Detail> {};

TEST_P(Detailed, CylinderIsAPrismOnItsPolygon) {
  const Mesh mesh = cylinder(kFrom, kFrom + 250.0 * kAlong, 40.0, GetParam());
  expect_solid(mesh, "cylinder");
  const int sides = sides_of_circle(GetParam(), 40.0);
  EXPECT_NEAR(volume(mesh), polygon_area(sides) * 40.0 * 40.0 * 250.0, 1e-6 * volume(mesh));
  if (GetParam() == Detail::fine) {
    EXPECT_NEAR(volume(mesh), kPi * 40.0 * 40.0 * 250.0, 0.02 * volume(mesh));
  }
}

TEST_P(Detailed, TubeIsTheDifferenceOfTwoCylinders) {
  const Mesh mesh = tube(kFrom, kFrom + 100.0 * kAlong, 30.0, 8.0, GetParam());
  expect_solid(mesh, "tube");
  const int sides = sides_of_circle(GetParam(), 30.0);
  EXPECT_NEAR(volume(mesh), polygon_area(sides) * (30.0 * 30.0 - 22.0 * 22.0) * 100.0, 1e-3);
}

TEST_P(Detailed, ConeHasItsFrustum) {
  const Mesh mesh = cone(kFrom, kFrom + 90.0 * kAlong, 30.0, 12.0, GetParam());
  expect_solid(mesh, "cone");
  const int sides = sides_of_circle(GetParam(), 30.0);
  // Frustum: h/3 (A + a + sqrt(A a)).
  const double expected =
      polygon_area(sides) * 90.0 / 3.0 * (30.0 * 30.0 + 12.0 * 12.0 + 30.0 * 12.0);
  EXPECT_NEAR(volume(mesh), expected, 1e-6 * expected);
}

TEST_P(Detailed, TorusFollowsPappus) {
  // Pappus: area of the section times the way of its middle. Turned in steps, the way is the
  // polygon's: sides/2 sin(2 pi/sides) / pi of the circle's.
  const Mesh mesh = torus(kFrom, kAlong, 200.0, 14.0, GetParam());
  expect_solid(mesh, "torus");
  const double exact = 2.0 * kPi * kPi * 200.0 * 14.0 * 14.0;
  const int section = GetParam() == Detail::coarse ? 6 : 10;
  const int sides = sides_of_circle(GetParam(), 200.0);
  const double polygons = polygon_area(section) / kPi * polygon_area(sides) / kPi;
  EXPECT_NEAR(volume(mesh), exact * polygons, 1e-6 * exact);
}

TEST_P(Detailed, SphereIsClosedAndNearItsFormula) {
  const Mesh mesh = sphere(kFrom, 25.0, GetParam());
  expect_solid(mesh, "sphere");
  const double exact = 4.0 / 3.0 * kPi * 25.0 * 25.0 * 25.0;
  EXPECT_LT(volume(mesh), exact);
  EXPECT_GT(volume(mesh), (GetParam() == Detail::fine ? 0.9 : 0.6) * exact);
}

TEST_P(Detailed, LeverIsTwoEndsAndTheTrapeziumBetweenTheirTangents) {
  const Mesh mesh =
      lever(kFrom, kFrom + 200.0 * kAlong, Vec3::UnitZ(), 34.0, 20.0, 26.0, GetParam());
  expect_solid(mesh, "lever");
  // Area under the common tangents: two sectors and two right trapezia of side sqrt(L2 - (R-r)2).
  const double touch = std::acos((34.0 - 20.0) / 200.0);
  const double tangent = std::sqrt(200.0 * 200.0 - 14.0 * 14.0);
  const double area = (kPi - touch) * 34.0 * 34.0 + touch * 20.0 * 20.0 + tangent * (34.0 + 20.0);
  EXPECT_NEAR(volume(mesh), 26.0 * area, (GetParam() == Detail::fine ? 0.01 : 0.06) * 26.0 * area);
}

TEST_P(Detailed, PlateLosesItsHoles) {
  BoxPlace place;
  place.centre = kFrom;
  place.axes = roll_pitch_yaw_turn(0.3, -0.8, 1.1);
  const std::vector<RoundHole> holes{
      {{100.0, 40.0}, 45.0}, {{-150.0, -60.0}, 30.0}, {{-20.0, 10.0}, 20.0}};
  const Mesh mesh = plate(place, {500.0, 300.0, 3.0}, holes, GetParam());
  expect_solid(mesh, "plate");
  double area = 500.0 * 300.0;
  for (const RoundHole& hole : holes)
    area -= polygon_area(sides_of_circle(GetParam(), hole.radius)) * hole.radius * hole.radius;
  EXPECT_NEAR(volume(mesh), 3.0 * area, 1e-3);
}

TEST_P(Detailed, HolesThatCannotBeCutAreLeftOut) {
  const std::vector<RoundHole> holes{{{0.0, 0.0}, 40.0}, {{30.0, 0.0}, 20.0}, {{245.0, 0.0}, 20.0}};
  const Mesh mesh = plate({}, {500.0, 300.0, 3.0}, holes, GetParam());
  expect_solid(mesh, "plate");
  const int sides = sides_of_circle(GetParam(), 40.0);
  EXPECT_NEAR(volume(mesh), 3.0 * (500.0 * 300.0 - polygon_area(sides) * 40.0 * 40.0), 1e-3);
}

INSTANTIATE_TEST_SUITE_P(Both, Detailed, testing::Values(Detail::coarse, Detail::fine));

TEST(Mesh, PlainBox) {
  BoxPlace place;
  place.centre = kFrom;
  place.axes = roll_pitch_yaw_turn(0.2, 0.5, -2.0);
  const Mesh mesh = box(place, {120.0, 60.0, 30.0});
  expect_solid(mesh, "box");
  EXPECT_NEAR(volume(mesh), 120.0 * 60.0 * 30.0, 1e-6);
  // Twelve edges of a box, six diagonals that are none.
  int sharp = 0;
  for (const MeshEdge& edge : mesh.edges) sharp += edge.sharp ? 1 : 0;
  EXPECT_EQ(sharp, 12);
  EXPECT_EQ(mesh.edges.size(), 18U);
}

TEST(Mesh, RoundedBoxLosesItsChamfers) {
  const double r = 8.0;
  const Vec3 size(120.0, 60.0, 30.0);
  const Mesh mesh = box(kFrom, size, r);
  expect_solid(mesh, "rounded box");
  // Chamfered at 45 degrees: each edge loses r2/2 of its length between the corners, each corner a
  // cube of r less the tetrahedron-cut piece that stays, r3/6 ... 5/6 r3 goes.
  const double edges = 4.0 * (size.sum() - 6.0 * r);
  EXPECT_NEAR(volume(mesh), size.prod() - 0.5 * r * r * edges - 8.0 * 5.0 / 6.0 * r * r * r, 1e-6);
  for (const MeshEdge& edge : mesh.edges) EXPECT_FALSE(edge.sharp);
}

TEST(Mesh, CylinderHasTwoEdgesRoundItsEnds) {
  const Mesh mesh = cylinder(Vec3::Zero(), 50.0 * Vec3::UnitX(), 20.0, Detail::coarse);
  for (const MeshEdge& edge : mesh.edges) {
    const Vec3& a = mesh.vertices[edge.ends[0]];
    const Vec3& b = mesh.vertices[edge.ends[1]];
    const bool round_end = std::abs(a.x() - b.x()) < 1e-9 && std::hypot(a.y(), a.z()) > 19.0 &&
                           std::hypot(b.y(), b.z()) > 19.0;
    EXPECT_EQ(edge.sharp, round_end);
  }
}

TEST(Mesh, OpenSurfaceIsNotClosed) {
  Mesh mesh = box(Vec3::Zero(), Vec3(1.0, 2.0, 3.0));
  mesh.triangles.pop_back();
  EXPECT_FALSE(is_closed(mesh));
}

// Triangles of an outline cover exactly its area, whatever its shape: a random star polygon with
// holes.
TEST(Mesh, TrianglesCoverTheOutline) {
  std::mt19937_64 random(7);
  std::uniform_real_distribution<double> reach(60.0, 100.0);
  for (int trial = 0; trial < 50; ++trial) {
    Outline star;
    double area = 0.0;
    const int corners = 5 + trial % 17;
    for (int i = 0; i < corners; ++i) {
      const double angle = kRadiansPerTurn * i / corners;
      star.push_back(reach(random) * Eigen::Vector2d(std::cos(angle), std::sin(angle)));
    }
    for (std::size_t i = 0; i < star.size(); ++i) {
      const auto& a = star[i];
      const auto& b = star[(i + 1) % star.size()];
      area += 0.5 * (a.x() * b.y() - a.y() * b.x());
    }
    const Outline left{{-20.0, -5.0}, {-20.0, 5.0}, {-10.0, 5.0}, {-10.0, -5.0}};
    const Outline right{{10.0, -5.0}, {10.0, 5.0}, {20.0, 5.0}, {20.0, -5.0}};
    area -= 200.0;
    std::vector<Eigen::Vector2d> points = star;
    for (const Outline* hole : {&left, &right})
      points.insert(points.end(), hole->begin(), hole->end());
    double covered = 0.0;
    for (const auto& [a, b, c] : triangles_of(star, {left, right})) {
      const Eigen::Vector2d ab = points[b] - points[a];
      const Eigen::Vector2d ac = points[c] - points[a];
      const double own = 0.5 * (ab.x() * ac.y() - ab.y() * ac.x());
      EXPECT_GE(own, -1e-9);
      covered += own;
    }
    EXPECT_NEAR(covered, area, 1e-6) << "trial " << trial;
  }
}

}  // namespace
}  // namespace tackbench
