// The search against closed forms written down here: plane and solid geometry of school books, and
// Ericson, Real-Time Collision Detection (2005), 5.1, for points and segments.
#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>

#include "core/geometry/closed_gaps.h"
#include "core/geometry/solid_gap.h"
#include "core/geometry/support.h"
#include "tests/geometry/random_solid.h"

namespace tackbench {
namespace {

constexpr double kTolerance = 1e-3;  // as asked of the search, mm
constexpr int kScenes = 400;

void expect_gap(const SolidGap& gap, double expected, const char* what, int scene) {
  ASSERT_EQ(gap.outcome, GapOutcome::measured) << what << ", scene " << scene;
  EXPECT_LE(gap.low_mm, expected + 1e-7) << what << ", scene " << scene;
  EXPECT_GE(gap.high_mm, expected - 1e-7) << what << ", scene " << scene;
  EXPECT_LE(gap.high_mm - gap.low_mm, kTolerance) << what << ", scene " << scene;
}

// Distances of a point from cores at the origin, in the core's own frame.
double to_box(const Vec3& p, const Vec3& half) {
  return (p.cwiseAbs() - half).cwiseMax(0.0).norm();
}
double to_cylinder(const Vec3& p, double radius, double half) {
  const double out = std::max(0.0, std::hypot(p.x(), p.y()) - radius);
  return std::hypot(out, std::max(0.0, std::abs(p.z()) - half));
}

TEST(GapAgainstClosedForms, PointAndEveryRoundCoreAndBox) {
  RandomSolids random(1);
  for (int scene = 0; scene < kScenes; ++scene) {
    const Vec3 point = random.vector(300.0);
    const Mat3 turn = random.turn();
    const Vec3 centre = random.vector(100.0);
    const Vec3 own = turn.transpose() * (point - centre);
    const double radius = random.between(1.0, 150.0);
    const double half = random.between(1.0, 150.0);
    const double from = random.between(0.0, 20.0);
    const ConvexSolid small = ball(point, from);

    if (const double distance = to_cylinder(own, radius, 0.0); distance > 0.0)
      expect_gap(searched_gap(small, rounded_disc(centre, turn.col(2), radius, 7.0)),
                 distance - 7.0 - from, "disc", scene);
    if (const double distance = to_cylinder(own, radius, half); distance > 0.0) {
      const Vec3 step = (half + 5.0) * turn.col(2);
      expect_gap(
          searched_gap(rounded_cylinder(centre - step, centre + step, radius + 5.0, 5.0), small),
          distance - 5.0 - from, "cylinder", scene);
    }
    const Vec3 sides(half, radius, 0.5 * radius + 10.0);
    if (const double distance = to_box(own, sides); distance > 0.0)
      expect_gap(searched_gap(small, rounded_box(centre, turn, 2.0 * sides)), distance - from,
                 "box", scene);
    const Vec3 step = half * turn.col(2);
    const Vec3 foot(0.0, 0.0, std::clamp(own.z(), -half, half));
    const ConvexSolid bar = capsule(centre - step, centre + step, 9.0);
    const double distance = (own - foot).norm() - 9.0 - from;
    expect_gap(searched_gap(small, bar), distance, "segment, searched", scene);
    expect_gap(gap_between(small, bar), distance, "segment, closed", scene);
  }
}

// Nearest of two segments over all their parts: inside against inside, end against segment.
double between_segments(const Vec3& a, const Vec3& b, const Vec3& c, const Vec3& d) {
  const auto end_to = [](const Vec3& p, const Vec3& from, const Vec3& to) {
    const Vec3 along = to - from;
    const double part = std::clamp((p - from).dot(along) / along.squaredNorm(), 0.0, 1.0);
    return (from + part * along - p).norm();
  };
  double least = std::min({end_to(a, c, d), end_to(b, c, d), end_to(c, a, b), end_to(d, a, b)});
  const Vec3 normal = (b - a).cross(d - c);
  if (normal.norm() < 1e-9) return least;
  // Common perpendicular, when both its feet are inside.
  const double on_first = (c - a).cross(d - c).dot(normal) / normal.squaredNorm();
  const double on_second = (c - a).cross(b - a).dot(normal) / normal.squaredNorm();
  if (on_first > 0.0 && on_first < 1.0 && on_second > 0.0 && on_second < 1.0)
    least = std::min(least, std::abs((c - a).dot(normal)) / normal.norm());
  return least;
}

TEST(GapAgainstClosedForms, Segments) {
  RandomSolids random(2);
  for (int scene = 0; scene < kScenes; ++scene) {
    const Vec3 a = random.vector(100.0);
    const Vec3 b = random.vector(100.0);
    const Vec3 c = random.vector(100.0);
    // Some parallel, some nearly.
    Vec3 d = random.vector(100.0);
    if (scene % 4 == 1) d = c + random.between(-2.0, 2.0) * (b - a);
    if (scene % 4 == 2) d = c + (b - a) + random.vector(1e-6);
    const double expected = between_segments(a, b, c, d) - 12.0;
    const SolidGap closed = gap_between(capsule(a, b, 5.0), capsule(c, d, 7.0));
    ASSERT_EQ(closed.rounds, 0);
    EXPECT_NEAR(closed.high_mm, expected, 1e-6) << scene;
    EXPECT_NEAR((closed.on_second - closed.on_first).dot(closed.normal), expected, 1e-6) << scene;
    expect_gap(searched_gap(capsule(a, b, 5.0), capsule(c, d, 7.0)), expected, "searched", scene);
  }
}

TEST(GapAgainstClosedForms, BoxesWithTheSameAxes) {
  RandomSolids random(3);
  for (int scene = 0; scene < kScenes; ++scene) {
    const Mat3 turn = random.turn();
    const Vec3 step = random.vector(300.0);
    const Vec3 first(random.between(1, 200), random.between(1, 200), random.between(1, 200));
    const Vec3 second(random.between(1, 200), random.between(1, 200), random.between(1, 200));
    const double expected = to_box(step, 0.5 * (first + second));
    const SolidGap gap = searched_gap(rounded_box(Vec3::Zero(), turn, first),
                                      rounded_box(turn * step, turn, second));
    if (expected > 0.0) {
      expect_gap(gap, expected, "boxes", scene);
    } else {
      EXPECT_EQ(gap.outcome, GapOutcome::deeper_than) << scene;
      // Least way out of two boxes with the same axes: along the axis of the least overlap.
      const double depth = (0.5 * (first + second) - step.cwiseAbs()).minCoeff();
      EXPECT_LE(gap.low_mm, -depth + 1e-7) << scene;
      EXPECT_EQ(gap.high_mm, 0.0) << scene;
    }
  }
}

TEST(GapAgainstClosedForms, DiscsAndCylindersOnOneAxisOrInOnePlane) {
  RandomSolids random(4);
  for (int scene = 0; scene < kScenes; ++scene) {
    const Vec3 axis = random.direction();
    const Vec3 across = square_to(axis, random.direction());
    const double first = random.between(1.0, 200.0);
    const double second = random.between(1.0, 200.0);
    const double apart = random.between(1.0, 100.0);
    const Vec3 centre = random.vector(500.0);
    expect_gap(searched_gap(rounded_disc(centre, axis, first, 3.0),
                            rounded_disc(centre + apart * axis, axis, second, 4.0)),
               apart - 7.0, "one axis", scene);
    const Vec3 beside = centre + (first + second + apart) * across;
    expect_gap(searched_gap(rounded_disc(centre, axis, first, 3.0),
                            rounded_disc(beside, axis, second, 4.0)),
               apart - 7.0, "one plane", scene);
    const double half = random.between(1.0, 90.0);
    expect_gap(
        searched_gap(rounded_cylinder(centre - half * axis, centre + half * axis, first),
                     rounded_cylinder(beside - half * axis, beside + half * axis, second, 2.0)),
        apart, "parallel cylinders", scene);
    // Square to each other, the second one's edge towards the first one's face.
    const Vec3 above = centre + (apart + second) * axis;
    expect_gap(searched_gap(rounded_disc(centre, axis, first, 3.0),
                            rounded_disc(above, across, second, 4.0)),
               apart - 7.0, "edge over face", scene);
  }
}

TEST(GapAgainstClosedForms, HalfSpaceAtAnyDepth) {
  RandomSolids random(5);
  for (int scene = 0; scene < kScenes; ++scene) {
    const Vec3 outward = random.direction();
    const Vec3 face = random.vector(100.0);
    const ConvexSolid ground = half_space(face, outward);
    const double height = random.between(-300.0, 300.0);
    const Vec3 centre = face + height * outward + 50.0 * square_to(outward, random.direction());
    const Vec3 axis = random.direction();
    const double cosine = std::abs(axis.dot(outward));
    const double sine = std::sqrt(1.0 - cosine * cosine);
    // Lowest point of each below its centre.
    expect_gap(gap_between(ground, ball(centre, 30.0)), height - 30.0, "ball", scene);
    expect_gap(gap_between(ground, capsule(centre - 80.0 * axis, centre + 80.0 * axis, 10.0)),
               height - 80.0 * cosine - 10.0, "capsule", scene);
    expect_gap(gap_between(rounded_disc(centre, axis, 60.0, 5.0), ground),
               height - 60.0 * sine - 5.0, "disc", scene);
    expect_gap(
        gap_between(ground, rounded_cylinder(centre - 40.0 * axis, centre + 40.0 * axis, 25.0)),
        height - 40.0 * cosine - 25.0 * sine, "cylinder", scene);
    const Mat3 turn = random.turn();
    const Vec3 size(40.0, 90.0, 20.0);
    expect_gap(gap_between(ground, rounded_box(centre, turn, size)),
               height - 0.5 * (turn.transpose() * outward).cwiseAbs().dot(size), "box", scene);
  }
  const ConvexSolid floor = half_space(Vec3(0, 0, 10), Vec3::UnitZ());
  const ConvexSolid roof = half_space(Vec3(500, 0, 35), -Vec3::UnitZ());
  expect_gap(gap_between(floor, roof), 25.0, "facing", 0);
  const SolidGap meeting = gap_between(floor, half_space(Vec3::Zero(), Vec3::UnitX()));
  EXPECT_EQ(meeting.outcome, GapOutcome::deeper_than);
}

TEST(GapAgainstClosedForms, OverlapIsExactDownToTheRoundings) {
  // Two crossed capsules 3 apart at their middles, radii 10 and 6: 13 deep.
  const SolidGap crossed =
      searched_gap(capsule({-50, 0, 0}, {50, 0, 0}, 10.0), capsule({0, -50, 3}, {0, 50, 3}, 6.0));
  expect_gap(crossed, -13.0, "crossed capsules", 0);
  EXPECT_NEAR(crossed.normal.z(), 1.0, 1e-6);
  EXPECT_NEAR(crossed.on_first.z(), 10.0, 1e-6);
  EXPECT_NEAR(crossed.on_second.z(), -3.0, 1e-6);
  const SolidGap deeper = searched_gap(rounded_box({0, 0, 0}, Mat3::Identity(), {40, 40, 40}, 5.0),
                                       rounded_disc({12, 0, 0}, Vec3::UnitZ(), 30.0, 4.0));
  EXPECT_EQ(deeper.outcome, GapOutcome::deeper_than);
  EXPECT_NEAR(deeper.high_mm, -9.0, 1e-9);
  EXPECT_LE(deeper.low_mm, deeper.high_mm);
  // A long beam through a plate: the place told is where they are in each other.
  const SolidGap through = searched_gap(rounded_box({0, 0, 0}, Mat3::Identity(), {5000, 40, 60}),
                                        rounded_box({1200, 0, 0}, Mat3::Identity(), {8, 900, 900}));
  EXPECT_EQ(through.outcome, GapOutcome::deeper_than);
  for (const Vec3& place : {through.on_first, through.on_second}) {
    EXPECT_LE(std::abs(place.x() - 1200.0), 4.0 + 1e-6);
    EXPECT_LE(std::abs(place.y()), 20.0 + 1e-6);
    EXPECT_LE(std::abs(place.z()), 30.0 + 1e-6);
  }
}

}  // namespace
}  // namespace tackbench
