// Faults that are planted in the tender for checks of clearance: measured here by brute force on
// the solved poses, so that the samples keep them.
#include <gtest/gtest.h>

#include <cmath>
#include <limits>

#include "core/mechanism/solve.h"
#include "tests/samples/sample.h"

namespace tackbench {
namespace {

// Gap of a point to a tyre with rounded shoulders, mm; negative inside.
double tyre_gap(const Vec3& point, const Vec3& centre, const Vec3& spindle, const Tyre& tyre) {
  const Vec3 from = point - centre;
  const double along = std::abs(from.dot(spindle));
  const double out = std::sqrt(std::max(0.0, from.squaredNorm() - along * along));
  const double over_side = along - (0.5 * tyre.width - tyre.shoulder_radius);
  const double over_tread = out - (0.5 * tyre.diameter - tyre.shoulder_radius);
  const double inside = std::min(0.0, std::max(over_side, over_tread));
  return std::hypot(std::max(0.0, over_side), std::max(0.0, over_tread)) + inside -
         tyre.shoulder_radius;
}

struct Wheel {
  Vec3 centre;
  Vec3 spindle;
};

Wheel left_wheel(const Mechanism& mechanism, const Pose& pose) {
  const KnucklePose& knuckle = pose.steering.left;
  const double out =
      0.5 * mechanism.project.front_axle->track + mechanism.project.front_axle->hub_offset;
  const Vec3 at_rest(0.0, out, 0.0);  // knuckle frame: axle axes, origin between the wheels
  return {(knuckle.chassis_from_knuckle * Point<Knuckle>{at_rest}).mm, knuckle.spindle};
}

struct Worst {
  double gap = std::numeric_limits<double>::infinity();
  double steer_deg = 0.0;
  double from_deg = 90.0;  // least left steer at which the gap is under `wanted`
};

// Least gap of left tyre and drag link over the left lock at that bump. The stop bounds the swivel,
// the box bounds the hand wheel; which comes first changes with bump.
Worst tyre_on_link(const Sample& from, double bump, double wanted) {
  Worst worst;
  const LockSide& lock = from.results.locks->left;
  double end = 0.0;
  for (const LockEvent& event : lock.events)
    if (event.kind == LockEventKind::box_end) end = event.hand_wheel;
  const double radius = 0.5 * from.project.drag_link->tube->outside_diameter;
  for (int i = 0; i <= 400; ++i) {
    Controls controls;
    controls.hand_wheel = end * i / 400.0;
    controls.bump_left = controls.bump_right = bump;
    const Pose pose = solved_pose(from.mechanism, controls);
    if (pose.outcome != Outcome::solved || pose.steering.left.swivel > lock.stop->swivel) continue;
    const Wheel wheel = left_wheel(from.mechanism, pose);
    const LinkPose& link = pose.steering.drag_link;
    for (int k = 0; k <= 400; ++k) {
      const Vec3 point = link.from_mm + (link.to_mm - link.from_mm) * (k / 400.0);
      const double gap =
          tyre_gap(point, wheel.centre, wheel.spindle, from.project.front_axle->tyre) - radius;
      const double steer = degrees_from_radians(pose.steering.left.steer);
      if (gap < wanted) worst.from_deg = std::min(worst.from_deg, steer);
      if (gap < worst.gap) {
        worst.gap = gap;
        worst.steer_deg = steer;
      }
    }
  }
  return worst;
}

// 25 mm wanted (a state rule) and 15 mm of growth (common practice).
constexpr double kTyreGapWanted = 40.0;

TEST(PlantedClearance, TyreShoulderOnTheDragLink) {
  const Sample first = sample("tender-as-first-tacked");
  const double bump = first.project.front_axle->suspension.bump;
  const Worst at_bump = tyre_on_link(first, bump, kTyreGapWanted);
  const Worst at_ride = tyre_on_link(first, 0.0, kTyreGapWanted);
  EXPECT_LT(at_bump.gap, kTyreGapWanted);
  EXPECT_NEAR(at_bump.from_deg, 32.0, 0.6);
  EXPECT_LT(at_bump.gap, at_ride.gap);
  for (const double either : {-80.0, 0.0, 70.0})
    EXPECT_GT(tyre_on_link(sample("tender-sorted"), either, kTyreGapWanted).gap, kTyreGapWanted);
  RecordProperty("gap_at_bump", std::to_string(at_bump.gap));
  RecordProperty("gap_at_ride", std::to_string(at_ride.gap));
  RecordProperty("from_deg", std::to_string(at_bump.from_deg));
}

// Plain side faces of boxes: clutch arm (half its thickness off its middle line) to the bracket.
double arm_to_bracket(const Sample& from) {
  for (const Pedal& pedal : from.project.pedals->pedals) {
    if (pedal.use != PedalUse::clutch) continue;
    for (const Shape& shape : from.project.shapes->shapes)
      if (shape.name == "column bracket")
        return pedal.pivot.mm.y() - 0.5 * pedal.arm_thickness -
               (shape.place.y() + 0.5 * shape.size.y());
  }
  return std::numeric_limits<double>::quiet_NaN();
}

TEST(PlantedClearance, ClutchArmAtTheColumnBracket) {
  EXPECT_NEAR(arm_to_bracket(sample("tender-as-first-tacked")), 8.0, 1e-9);
  EXPECT_GE(arm_to_bracket(sample("tender-sorted")), 25.0);
}

double cable_in_tyre(const Sample& from) {
  double least = std::numeric_limits<double>::infinity();
  const Suspension& suspension = from.project.front_axle->suspension;
  const LockResult& locks = *from.results.locks;
  for (const Pedal& pedal : from.project.pedals->pedals) {
    if (!pedal.cable) continue;
    for (int i = 0; i <= 60; ++i)
      for (int j = 0; j <= 10; ++j) {
        Controls controls;
        const double left = locks.left.events[locks.left.end].hand_wheel;
        const double right = -locks.right.events[locks.right.end].hand_wheel;
        controls.hand_wheel = right + (left - right) * i / 60.0;
        controls.bump_left = controls.bump_right =
            -suspension.droop + (suspension.bump + suspension.droop) * j / 10.0;
        const Pose pose = solved_pose(from.mechanism, controls);
        if (pose.outcome != Outcome::solved) continue;
        const Wheel wheel = left_wheel(from.mechanism, pose);
        const auto& route = pedal.cable->route;
        for (std::size_t k = 0; k + 1 < route.size(); ++k)
          for (int m = 0; m <= 50; ++m)
            least = std::min(least,
                             tyre_gap(route[k].mm + (route[k + 1].mm - route[k].mm) * m / 50.0,
                                      wheel.centre, wheel.spindle, from.project.front_axle->tyre));
      }
  }
  return least;
}

TEST(PlantedClearance, AcceleratorCableInsideTheTyresTravel) {
  EXPECT_NEAR(cable_in_tyre(sample("tender-as-first-tacked")), -20.0, 3.0);
  EXPECT_GT(cable_in_tyre(sample("tender-sorted")), 40.0);
}

}  // namespace
}  // namespace tackbench
