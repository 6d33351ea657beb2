// Leaf springs with their shackles, or radius arms with the lateral rod.
#include <algorithm>
#include <array>
#include <cmath>

#include "core/drawing/truck_parts.h"

namespace tackbench {

namespace {

// Sizes of what is drawn but not measured.
constexpr double kLeafWidthHalf = 32.0;
constexpr double kEyeRadius = 22.0;
constexpr double kShackle = 95.0;  // from the shackle eye up to its pin
constexpr double kArmRadius = 26.0;
constexpr double kRodRadius = 16.0;

struct LeafCurve {
  Vec3 seat_mm;
  Vec3 along;  // unit in the spring's plane, from the seat to the fixed eye
  Vec3 up;
};

// Main leaf of one half as an arc bent by `bend`; `share` of its length, `drop` under it.
Vec3 on_leaf(const LeafCurve& curve, double towards, double length, double bend, double share,
             double drop) {
  const double angle = bend * share;
  const double ahead = std::abs(bend) < 1e-6 ? length * share : length * std::sin(angle) / bend;
  const double rise = std::abs(bend) < 1e-6 ? 0.0 : length * (1.0 - std::cos(angle)) / bend;
  return curve.seat_mm + towards * ahead * curve.along + (rise - drop) * curve.up;
}

Vec3 mirrored_if(Vec3 v, Side side) {
  if (side == Side::right) v.y() = -v.y();
  return v;
}

void draw_leaf_side(const LeafSpring& leaf, const LeafCurve& curve, double fixed_bend,
                    double shackle_bend, Ink ink, TruckPen& pen) {
  constexpr int kSteps = 9;
  constexpr double kNext = 13.0;  // one leaf under the other
  for (int k = 0; k < 4; ++k) {
    const double share = 1.0 - 0.22 * k;
    std::vector<Vec3> points;
    points.reserve(2 * kSteps + 1);
    for (int i = kSteps; i > 0; --i)
      points.push_back(
          on_leaf(curve, 1.0, leaf.fixed_half, fixed_bend, share * i / kSteps, kNext * k));
    for (int i = 0; i <= kSteps; ++i)
      points.push_back(
          on_leaf(curve, -1.0, leaf.shackle_half, shackle_bend, share * i / kSteps, kNext * k));
    pen.path(points, k == 0 || ink == Ink::hidden ? ink : Ink::soft, "front_axle.suspension.leaf");
    if (ink == Ink::hidden) break;
  }
}

void draw_leaf(const TruckAtPose& truck, const LeafSpring& leaf, Side side, TruckPen& pen) {
  const Vec3 eye = mirrored_if(leaf.fixed_eye.mm, side);
  const Vec3 seat = moved(truck.axle, mirrored_if(leaf.seat.mm, side));
  const double towards = eye.x() >= leaf.seat.mm.x() ? 1.0 : -1.0;
  LeafCurve curve;
  curve.seat_mm = seat;
  curve.along = towards * (truck.axle.turn * Vec3::UnitX());
  curve.up = truck.axle.turn * Vec3::UnitZ();
  // Both halves share one curvature.
  const double height = curve.up.dot(eye - seat);
  const double bend = bend_for_height(leaf.fixed_half, leaf.eye_offset, height).value_or(0.0);
  const double shackle_bend =
      leaf.fixed_half > 0.0 ? bend * leaf.shackle_half / leaf.fixed_half : 0.0;
  const EyePlace far_eye = eye_from_seat(leaf.shackle_half, leaf.eye_offset, shackle_bend);
  const Vec3 shackle_eye = seat - far_eye.along * curve.along + far_eye.height * curve.up;

  // The shackle's pin is not measured: over the eye at ride height.
  double ride_bend =
      bend_for_height(leaf.fixed_half, leaf.eye_offset, leaf.fixed_eye.mm.z() - leaf.seat.mm.z())
          .value_or(0.0);
  if (leaf.fixed_half > 0.0) ride_bend *= leaf.shackle_half / leaf.fixed_half;
  const EyePlace at_ride = eye_from_seat(leaf.shackle_half, leaf.eye_offset, ride_bend);
  const Vec3 pin = mirrored_if(leaf.seat.mm, side) +
                   Vec3(-towards * at_ride.along, 0.0, at_ride.height + kShackle);

  const bool far = pen.sees(SheetView::side) && side == Side::right;
  const Ink ink = far ? Ink::hidden : Ink::fixed;
  const Vec3 width = kLeafWidthHalf * Vec3::UnitY();
  const char* const part = "front_axle.suspension.leaf";
  if (far) {
    // In line with the near one unless the axle rolls.
    if (std::abs(truck.pose.axle.roll) > 1e-3)
      draw_leaf_side(leaf, curve, bend, shackle_bend, ink, pen);
    return;
  }
  if (pen.sees(SheetView::side)) {
    draw_leaf_side(leaf, curve, bend, shackle_bend, ink, pen);
    const std::array shackle{Disc{shackle_eye, Vec3::UnitY(), 13.0},
                             Disc{pin, Vec3::UnitY(), 13.0}};
    pen.solid(shackle, 0.0, ink, part);
    // Clamp plate and bolts at the seat.
    pen.block(truck.axle, mirrored_if(leaf.seat.mm, side) + Vec3(-62, -2, 4),
              mirrored_if(leaf.seat.mm, side) + Vec3(62, 2, 16), ink,
              "front_axle.suspension.leaf.seat_mm");
  } else {
    pen.face({eye - width, eye + width, seat + width, shackle_eye + width, shackle_eye - width,
              seat - width},
             ink, part);
    if (pen.sees(SheetView::front))
      pen.block(truck.axle, mirrored_if(leaf.seat.mm, side) + Vec3(-60, -kLeafWidthHalf, -46),
                mirrored_if(leaf.seat.mm, side) + Vec3(60, kLeafWidthHalf, 16), ink,
                "front_axle.suspension.leaf.seat_mm");
  }
  for (const Vec3& centre : {eye, shackle_eye, pin}) {
    if (!pen.sees(SheetView::side) && &centre != &eye) continue;
    const std::array eye_body{Disc{centre + width, Vec3::UnitY(), kEyeRadius},
                              Disc{centre - width, Vec3::UnitY(), kEyeRadius}};
    pen.solid(eye_body, 0.0, ink,
              side == Side::left ? "front_axle.suspension.leaf.fixed_eye_mm" : part);
  }
}

void draw_radius_arms(const TruckAtPose& truck, const RadiusArms& arms, TruckPen& pen) {
  const char* const part = "front_axle.suspension.radius_arms";
  const double height = truck.project.front_axle->wheel_centre_height;
  for (const Side side : {Side::right, Side::left}) {
    const bool far = pen.sees(SheetView::side) && side == Side::right;
    if (far && std::abs(truck.pose.axle.roll) < 1e-3) continue;
    const Vec3 pivot = mirrored_if(arms.chassis_pivot.mm, side);
    const Vec3 at_axle = moved(truck.axle, Vec3(0.0, pivot.y(), height));
    pen.cone(pivot, 0.8 * kArmRadius, at_axle, 1.3 * kArmRadius, far ? Ink::hidden : Ink::fixed,
             part);
    if (far) continue;
    const Vec3 half = 30.0 * Vec3::UnitY();
    pen.rod(pivot - half, pivot + half, 1.3 * kArmRadius, Ink::fixed,
            "front_axle.suspension.radius_arms.chassis_pivot_mm");
  }
  const Vec3 from = arms.lateral_rod_chassis.mm;
  const Vec3 to = moved(truck.axle, arms.lateral_rod_axle.mm);
  pen.rod(from, to, kRodRadius, Ink::fixed, part);
  const auto eye = [&](const Vec3& centre, const char* end) {
    const Vec3 half = 20.0 * Vec3::UnitX();
    pen.rod(centre - half, centre + half, kEyeRadius, Ink::fixed, std::string(part) + end);
  };
  eye(from, ".lateral_rod_chassis_mm");
  eye(to, ".lateral_rod_axle_mm");
}

}  // namespace

void draw_suspension(const TruckAtPose& truck, TruckPen& pen) {
  if (!truck.project.front_axle) return;
  const Suspension& suspension = truck.project.front_axle->suspension;
  if (suspension.kind == SuspensionKind::leaf && suspension.leaf) {
    draw_leaf(truck, *suspension.leaf, Side::right, pen);
    draw_leaf(truck, *suspension.leaf, Side::left, pen);
  }
  if (suspension.kind == SuspensionKind::radius_arms && suspension.radius_arms)
    draw_radius_arms(truck, *suspension.radius_arms, pen);
}

}  // namespace tackbench
