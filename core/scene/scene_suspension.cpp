// Leaf springs in lengths that follow their bend, radius arms, lateral rod.
#include <Eigen/Geometry>
#include <algorithm>
#include <array>
#include <cmath>

#include "core/scene/scene_maker.h"

namespace tackbench {

namespace {

// Sizes of what is drawn but not measured, mm.
constexpr double kLeafWidth = 64.0;
constexpr double kLeafThickness = 8.0;
constexpr double kLeafPitch = 9.0;  // one leaf under the other
constexpr std::array kLeafShare{1.0, 0.82, 0.6, 0.38};
constexpr double kLeafEyeRadius = 20.0;
constexpr double kShackle = 95.0;  // eye to hanger
constexpr double kArmRadius = 26.0;
constexpr int kPieces = 5;  // of one half, each straight

const char* const kLeafPart = "front_axle.suspension.leaf";

// The leaves' cut between two shares of the half's length. Ends that go on in the next piece keep
// no line across the leaf.
Mesh leaf_piece(const LeafDrawing& leaf, double from, double to) {
  const Placement<Chassis, Chassis> frame =
      leaf_frame(leaf, leaf.seat_mm, 0.0, leaf.bend_at_ride, 0.5 * (from + to));
  Mesh mesh;
  for (std::size_t k = 0; k < kLeafShare.size(); ++k) {
    const double end = std::min(to, kLeafShare[k]);
    if (end <= from) continue;
    const double first = leaf.length * (from - 0.5 * (from + to)) - 0.5;
    const double last = leaf.length * (end - 0.5 * (from + to)) + (end < to ? 0.0 : 0.5);
    BoxPlace place;
    place.axes = frame.turn;
    const Vec3 middle(leaf.towards * 0.5 * (first + last), 0.0,
                      -kLeafPitch * static_cast<double>(k));
    place.centre = (frame * Point<Chassis>{middle}).mm;
    Mesh strip = box(place, {last - first, kLeafWidth, kLeafThickness});
    const auto along = [&](std::uint32_t vertex) {
      return leaf.towards * frame.turn.col(0).dot(strip.vertices[vertex] - frame.shift_mm);
    };
    const bool goes_on = end == to && to < 1.0;
    std::erase_if(strip.edges, [&](const MeshEdge& edge) {
      const double a = along(edge.ends[0]);
      const double b = along(edge.ends[1]);
      if (std::abs(a - b) > 1e-6) return false;
      return std::abs(a - first) < 1e-6 || goes_on;
    });
    append(mesh, strip);
  }
  return mesh;
}

Mesh eye_roll(const Vec3& centre, Detail detail) {
  const Vec3 half = 0.5 * (kLeafWidth + 4.0) * Vec3::UnitY();
  return cylinder(centre - half, centre + half, kLeafEyeRadius, detail);
}

void add_half(SceneMaker& maker, Side side, bool shackle_half) {
  const LeafDrawing leaf = leaf_drawing(*maker.mechanism.suspension, side, shackle_half);
  for (int i = 0; i < kPieces; ++i) {
    const double from = static_cast<double>(i) / kPieces;
    const double to = static_cast<double>(i + 1) / kPieces;
    maker.add(BendsWithLeaf{side, shackle_half, 0.5 * (from + to)}, kLeafPart, SceneRole::fixed,
              [&](Detail) { return leaf_piece(leaf, from, to); });
  }
  const Vec3 eye = (leaf_frame(leaf, leaf.seat_mm, 0.0, leaf.bend_at_ride, 1.0) *
                    Point<Chassis>{Vec3(0.0, 0.0, leaf.eye_offset)})
                       .mm;
  maker.add(BendsWithLeaf{side, shackle_half, 1.0}, kLeafPart, SceneRole::fixed,
            [&](Detail detail) { return eye_roll(eye, detail); });
  if (!shackle_half) return;
  const Vec3 hanger = eye + kShackle * Vec3::UnitZ();
  maker.add(HangsShackle{side, hanger}, kLeafPart, SceneRole::fixed, [&](Detail detail) {
    Mesh mesh;
    for (const double way : {1.0, -1.0}) {
      const Vec3 out = way * (0.5 * kLeafWidth + 8.0) * Vec3::UnitY();
      append(mesh, lever(eye + out, hanger + out, Vec3::UnitY(), 17.0, 17.0, 8.0, detail));
    }
    return mesh;
  });
  maker.add(RidesBody{}, kLeafPart, SceneRole::fixed,
            [&](Detail detail) { return eye_roll(hanger, detail); });
}

void add_leaf_springs(SceneMaker& maker, const LeafSpring& given) {
  for (const Side side : {Side::left, Side::right}) {
    add_half(maker, side, false);
    add_half(maker, side, true);
    // The hanger bracket of the fixed eye, the clamp plate and its bolts at the seat.
    const Vec3 eye = mirrored_if(given.fixed_eye.mm, side);
    maker.add(RidesBody{}, "front_axle.suspension.leaf.fixed_eye_mm", SceneRole::fixed,
              [&](Detail detail) {
                Mesh mesh;
                for (const double way : {1.0, -1.0}) {
                  const Vec3 out = way * (0.5 * kLeafWidth + 9.0) * Vec3::UnitY();
                  append(mesh, lever(eye + out, eye + out + 70.0 * Vec3::UnitZ(), Vec3::UnitY(),
                                     24.0, 34.0, 8.0, detail));
                }
                return mesh;
              });
    const Vec3 seat = mirrored_if(given.seat.mm, side);
    maker.add(RidesBody{Body::axle, 0}, "front_axle.suspension.leaf.seat_mm", SceneRole::fixed,
              [&](Detail detail) {
                Mesh mesh = box(seat + Vec3(0.0, 0.0, 10.0), Vec3(130.0, 84.0, 12.0));
                append(mesh, box(seat - Vec3(0.0, 0.0, 37.0), Vec3(120.0, 80.0, 8.0)));
                for (const double x : {-46.0, 46.0}) {
                  for (const double y : {-37.0, 37.0})
                    append(mesh, cylinder(seat + Vec3(x, y, -90.0), seat + Vec3(x, y, 26.0), 7.0,
                                          Detail::coarse));
                }
                static_cast<void>(detail);
                return mesh;
              });
  }
}

void add_radius_arms(SceneMaker& maker, const RadiusArms& arms) {
  const std::string part = "front_axle.suspension.radius_arms";
  const double height = maker.project.front_axle->wheel_centre_height;
  const auto reach = [](const Vec3& chassis, const Vec3& axle) {
    return Reaches{{ScenePlace::Carrier::body, chassis, Body::chassis, 0, 0},
                   {ScenePlace::Carrier::body, axle, Body::axle, 0, 0}};
  };
  for (const Side side : {Side::left, Side::right}) {
    const Vec3 pivot = mirrored_if(arms.chassis_pivot.mm, side);
    const Vec3 at_axle(0.0, pivot.y(), height);
    maker.add(reach(pivot, at_axle), part, SceneRole::fixed, [&](Detail detail) {
      Mesh mesh = cone(pivot, at_axle, 0.8 * kArmRadius, 1.3 * kArmRadius, detail);
      append(mesh, eye_roll(pivot, detail));
      return mesh;
    });
  }
  const Vec3 from = arms.lateral_rod_chassis.mm;
  const Vec3 to = arms.lateral_rod_axle.mm;
  maker.add(reach(from, to), part, SceneRole::fixed, [&](Detail detail) {
    Mesh mesh = cylinder(from, to, 15.0, detail);
    for (const Vec3& end : {from, to})
      append(mesh, cylinder(end - 26.0 * Vec3::UnitX(), end + 26.0 * Vec3::UnitX(), 24.0, detail));
    return mesh;
  });
}

}  // namespace

void add_suspension(SceneMaker& maker) {
  if (!maker.project.front_axle || !maker.mechanism.suspension) return;
  const Suspension& suspension = maker.project.front_axle->suspension;
  if (suspension.kind == SuspensionKind::leaf && suspension.leaf)
    add_leaf_springs(maker, *suspension.leaf);
  if (suspension.kind == SuspensionKind::radius_arms && suspension.radius_arms)
    add_radius_arms(maker, *suspension.radius_arms);
}

}  // namespace tackbench
