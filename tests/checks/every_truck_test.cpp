// Properties of the checks that hold for every truck.
#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <algorithm>
#include <cmath>

#include "core/basics/units.h"
#include "core/checks/bump_check.h"
#include "core/checks/link_check.h"
#include "core/checks/lock_check.h"
#include "tests/support/bench_truck.h"
#include "tests/support/mirror_image.h"
#include "tests/support/random_truck.h"

namespace tackbench {
namespace {

// --- every event against a brute sweep in steps of a twentieth of a degree of arm--------------

// What the brute sweep watches, computed from the project's own records and full vectors.
class BruteSweep {
 public:
  BruteSweep(const Mechanism& mechanism, const LockSide& side) : mechanism_(mechanism) {
    constexpr double kStep = 0.05 * kRadiansPerDegree;
    const Steering& steering = *mechanism.steering;
    axle_ = chassis_from_axle(*mechanism.suspension, AxlePose{});
    pose_ = blank_pose(mechanism).steering;
    const double way = side_sign(side.side);
    for (int i = 0; i * kStep <= 100.0 * kRadiansPerDegree; ++i) {
      const double arm = steering.straight_arm + way * i * kStep;
      const Outcome outcome = solve_steering(steering, axle_, arm, pose_);
      if (outcome != Outcome::solved) {
        note("toggle", arm);
        break;
      }
      for (const Side knuckle : {Side::left, Side::right}) look_at_stops(knuckle, side, arm);
      look_at_studs(arm);
    }
  }
  std::optional<double> first(const std::string& what) const {
    for (const auto& [name, arm] : found_)
      if (name == what) return arm;
    return std::nullopt;
  }

 private:
  void note(const std::string& what, double arm) {
    if (!first(what)) found_.emplace_back(what, arm);
  }
  void look_at_stops(Side knuckle, const LockSide& side, double arm) {
    const FrontAxleStation& axle = *mechanism_.project.front_axle;
    const Vec3 origin = mechanism_.suspension->origin_mm;
    for (const LockStop& stop : knuckle_side(axle, knuckle).stops) {
      if (stop.lock != side.steers) continue;
      const Vec3 tip = (pose_.knuckle(knuckle).chassis_from_knuckle *
                        Point<Knuckle>{stop.tip_centre.mm - origin})
                           .mm;
      const Vec3 pad = (axle_ * Point<Axle>{stop.pad_centre.mm - origin}).mm;
      if ((tip - pad).dot(stop.pad_normal) <= stop.tip_radius) note("axle_stop", arm);
    }
  }
  void look_at_studs(double arm) {
    const DragLinkStation& link = *mechanism_.project.drag_link;
    const BallSwing swing = ball_swing(*mechanism_.steering, pose_, link.arm_end.swing_limit,
                                       link.knuckle_end.swing_limit);
    if (swing.arm_end >= *link.arm_end.swing_limit) note("arm end", arm);
    if (swing.knuckle_end >= *link.knuckle_end.swing_limit) note("knuckle end", arm);
  }

  const Mechanism& mechanism_;
  Placement<Chassis, Axle> axle_;
  SteeringPose pose_;
  std::vector<std::pair<std::string, double>> found_;
};

RC_GTEST_PROP(EveryTruck, NoLockEventIsMissedOrInvented, ()) {
  const auto seed = *rc::gen::arbitrary<std::uint64_t>();
  const Mechanism mechanism = compiled(random_truck(seed));
  const auto locks = check_locks(mechanism, {});
  RC_ASSERT(locks.has_value());
  const double tolerance = 0.0501 * kRadiansPerDegree;
  for (const LockSide* side : {&locks->left, &locks->right}) {
    const BruteSweep brute(mechanism, *side);
    const auto compare = [&](const std::string& what, const auto& is_it) {
      const auto found = std::find_if(side->events.begin(), side->events.end(), is_it);
      const auto expected = brute.first(what);
      // A peak lower than the brute step resolves may be found by the check alone.
      if (found == side->events.end()) RC_ASSERT(!expected.has_value());
      if (found != side->events.end() && expected)
        RC_ASSERT(std::abs(found->arm - *expected) <= tolerance);
    };
    compare("axle_stop", [](const LockEvent& e) { return e.kind == LockEventKind::axle_stop; });
    compare("arm end", [](const LockEvent& e) {
      return e.kind == LockEventKind::ball_stud && e.name == "arm end";
    });
    compare("knuckle end", [](const LockEvent& e) {
      return e.kind == LockEventKind::ball_stud && e.name == "knuckle end";
    });
    const auto& last = side->events;
    if (const auto toggle = brute.first("toggle")) {
      RC_ASSERT(std::any_of(last.begin(), last.end(), [&](const LockEvent& e) {
        return e.kind == LockEventKind::toggle && std::abs(e.arm - *toggle) <= tolerance;
      }));
    }
  }
}

// Drag link and tie rod that cannot close for less than a degree of arm: between two samples, and
// between the last sample and where the relay's link stops closing.
TEST(EveryTruck, GapNarrowerThanAStepEndsTheSweep) {
  for (const std::uint64_t seed : {std::uint64_t{7153719}, std::uint64_t{10377551750281291}}) {
    const Mechanism mechanism = compiled(random_truck(seed));
    const auto locks = check_locks(mechanism, {});
    ASSERT_TRUE(locks);
    const std::optional<double> expected = BruteSweep(mechanism, locks->right).first("toggle");
    ASSERT_TRUE(expected);
    const LockEvent& last = locks->right.events.back();
    EXPECT_EQ(last.kind, LockEventKind::toggle);
    EXPECT_THAT(last.name, testing::Not(testing::StartsWith("link to relay")));
    EXPECT_NEAR(last.arm, *expected, 0.0501 * kRadiansPerDegree);
  }
}

// A stud that passes its limit and comes back within the last step before toggle.
TEST(EveryTruck, StudPastItsLimitShortlyBeforeToggleIsFound) {
  const Mechanism mechanism = compiled(random_truck(1924));
  const auto locks = check_locks(mechanism, {});
  ASSERT_TRUE(locks);
  const BruteSweep brute(mechanism, locks->right);
  const std::optional<double> expected = brute.first("knuckle end");
  ASSERT_TRUE(expected);
  const auto& events = locks->right.events;
  const auto found = std::find_if(events.begin(), events.end(), [](const LockEvent& event) {
    return event.kind == LockEventKind::ball_stud && event.name == "knuckle end";
  });
  ASSERT_NE(found, events.end());
  EXPECT_NEAR(found->arm, *expected, 0.0501 * kRadiansPerDegree);
}

RC_GTEST_PROP(EveryTruck, EventsComeInOrderAndNothingIsNotANumber, ()) {
  const auto seed = *rc::gen::arbitrary<std::uint64_t>();
  const Mechanism mechanism = compiled(random_truck(seed));
  const auto locks = check_locks(mechanism, {});
  RC_ASSERT(locks.has_value());
  for (const LockSide* side : {&locks->left, &locks->right}) {
    RC_ASSERT(side->found);
    RC_ASSERT(std::is_sorted(
        side->events.begin(), side->events.end(),
        [](const LockEvent& a, const LockEvent& b) { return a.hand_wheel < b.hand_wheel - 1e-9; }));
    for (const double number :
         {side->turns, side->inner_steer, side->outer_steer, side->least_effective_angle,
          side->overall_ratio_end, locks->best_stud_clocking, locks->swing_at_best_clocking,
          locks->circles_left->kerb_by_outer, locks->circles_right->kerb_by_inner})
      RC_ASSERT(std::isfinite(number));
    RC_ASSERT(side->turns >= -1e-9);
    if (side->stop) RC_ASSERT(side->stop->degrees_per_mm > 0.0);
  }
  for (const LockRow& row : locks->rows)
    for (const double number : {row.hand_wheel, row.ratio, row.steer_left, row.swing_arm_end})
      RC_ASSERT(std::isfinite(number));
}

RC_GTEST_PROP(EveryTruck, LeftSteersLeft, ()) {
  const auto seed = *rc::gen::arbitrary<std::uint64_t>();
  const auto direction = check_direction(compiled(random_truck(seed)));
  RC_ASSERT(direction.has_value());
  RC_ASSERT(direction->left_steers_left);
}

bool alike(double a, double b, double tolerance) {
  return std::abs(a - b) <= tolerance;
}

RC_GTEST_PROP(EveryTruck, MirroredTruckSwapsItsLocks, ()) {
  const auto seed = *rc::gen::arbitrary<std::uint64_t>();
  const Project project = random_truck(seed);
  const auto locks = check_locks(compiled(project), {});
  const auto mirrored = check_locks(compiled(mirror_image(project)), {});
  RC_ASSERT(locks.has_value() && mirrored.has_value());
  constexpr double kTolerance = 1e-7;
  const LockSide& left = locks->left;
  const LockSide& right = mirrored->right;
  RC_ASSERT(left.events.size() == right.events.size());
  for (std::size_t i = 0; i < left.events.size(); ++i) {
    RC_ASSERT(left.events[i].kind == right.events[i].kind);
    RC_ASSERT(alike(left.events[i].hand_wheel, right.events[i].hand_wheel, 1e-5));
    RC_ASSERT(alike(left.events[i].arm, -right.events[i].arm, 1e-6));
  }
  RC_ASSERT(left.end == right.end);
  RC_ASSERT(alike(left.inner_steer, right.inner_steer, 1e-6));
  RC_ASSERT(alike(locks->ratio_on_centre, mirrored->ratio_on_centre, kTolerance));
  RC_ASSERT(alike(locks->swing_used_arm_end, mirrored->swing_used_arm_end, 1e-6));
  RC_ASSERT(alike(locks->circles_left->kerb_by_outer, mirrored->circles_right->kerb_by_outer,
                  1e-4 * locks->circles_left->kerb_by_outer));
  RC_ASSERT(left.stop.has_value() == right.stop.has_value());
  if (left.stop) {
    RC_ASSERT(alike(left.stop->swivel, -right.stop->swivel, kTolerance));
    RC_ASSERT(alike(left.stop->degrees_per_mm, right.stop->degrees_per_mm, kTolerance));
  }
  if (left.before_others && right.before_others)
    RC_ASSERT(alike(left.before_others->screw_out, right.before_others->screw_out, 1e-3));
}

RC_GTEST_PROP(EveryTruck, MirroredTruckMirrorsItsBumpSteer, ()) {
  const auto seed = *rc::gen::arbitrary<std::uint64_t>();
  const Project project = random_truck(seed);
  const auto bump = check_bump(compiled(project), {});
  const auto mirrored = check_bump(compiled(mirror_image(project)), {});
  RC_ASSERT(bump.has_value() && mirrored.has_value());
  RC_ASSERT(bump->heave.rows.size() == mirrored->heave.rows.size());
  for (std::size_t i = 0; i < bump->heave.rows.size(); ++i) {
    const BumpRow& row = bump->heave.rows[i];
    const BumpRow& image = mirrored->heave.rows[i];
    RC_ASSERT(row.solved == image.solved);
    RC_ASSERT(alike(row.steer_left, -image.steer_right, 1e-8));
    RC_ASSERT(row.hand_wheel.has_value() == image.hand_wheel.has_value());
    if (row.hand_wheel) RC_ASSERT(alike(*row.hand_wheel, -*image.hand_wheel, 1e-6));
  }
  RC_ASSERT(alike(bump->heave.rate_per_25.value(), -mirrored->heave.rate_per_25.value(), 1e-7));
  RC_ASSERT(alike(bump->roll.roll_rate.value(), mirrored->roll.roll_rate.value(), 1e-6));
  RC_ASSERT(bump->best_ball.has_value() == mirrored->best_ball.has_value());
  if (bump->best_ball) {
    RC_ASSERT(alike(bump->best_ball->best_mm.z(), mirrored->best_ball->best_mm.z(), 0.2));
    // Never worse than as drawn, save what the search's 0.1 mm leaves.
    RC_ASSERT(bump->best_ball->greatest <= std::abs(bump->heave.greatest) + 1e-3);
  }
}

RC_GTEST_PROP(EveryTruck, CentringLengthCentresTheBox, ()) {
  const auto seed = *rc::gen::arbitrary<std::uint64_t>();
  Project project = random_truck(seed);
  const auto link = check_link(compiled(project));
  RC_ASSERT(link.has_value());
  DragLinkStation station = *project.drag_link;
  station.given_length = link->centring_length;
  project.drag_link = std::make_shared<const DragLinkStation>(station);
  const auto cured = check_link(compiled(project));
  RC_ASSERT(cured.has_value());
  RC_ASSERT(std::abs(cured->arm_offset) < 1e-9);
  RC_ASSERT(std::abs(cured->centring_length - link->centring_length) < 1e-9);
}

}  // namespace
}  // namespace tackbench
