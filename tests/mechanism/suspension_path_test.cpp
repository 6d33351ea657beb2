#include "core/mechanism/suspension_path.h"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <cmath>

#include "core/basics/units.h"

namespace tackbench {
namespace {

FrontAxleStation leaf_axle(double fixed_half, double shackle_half, double eye_offset, double camber,
                           bool eye_ahead = true) {
  FrontAxleStation axle;
  axle.track = 1700.0;
  axle.wheel_centre_height = -200.0;
  axle.suspension.kind = SuspensionKind::leaf;
  LeafSpring leaf;
  leaf.seat.mm = Vec3(0.0, 425.0, -150.0);
  leaf.fixed_half = fixed_half;
  leaf.shackle_half = shackle_half;
  leaf.eye_offset = eye_offset;
  leaf.camber = camber;
  leaf.fixed_eye.mm =
      leaf.seat.mm + Vec3((eye_ahead ? 1.0 : -1.0) * fixed_half, 0.0, camber + eye_offset);
  axle.suspension.leaf = leaf;
  return axle;
}

FrontAxleStation arm_axle() {
  FrontAxleStation axle;
  axle.track = 1700.0;
  axle.wheel_centre_height = -210.0;
  axle.suspension.kind = SuspensionKind::radius_arms;
  RadiusArms arms;
  arms.chassis_pivot.mm = Vec3(-850.0, 380.0, -120.0);
  arms.lateral_rod_chassis.mm = Vec3(90.0, 430.0, -90.0);
  arms.lateral_rod_axle.mm = Vec3(85.0, -410.0, -140.0);
  axle.suspension.radius_arms = arms;
  return axle;
}

AxlePose posed(const FrontAxleStation& axle, double left, double right, double wind_up = 0.0) {
  EXPECT_TRUE(suspension_faults(axle).empty());
  const AxleAnswer answer = axle_pose(compile_suspension(axle), left, right, wind_up);
  EXPECT_TRUE(answer.closes);
  return answer.pose;
}

void expect_same(const AxlePose& a, const AxlePose& b, double mm, double rad) {
  EXPECT_NEAR(a.dx, b.dx, mm);
  EXPECT_NEAR(a.dy, b.dy, mm);
  EXPECT_NEAR(a.dz, b.dz, mm);
  EXPECT_NEAR(a.roll, b.roll, rad);
  EXPECT_NEAR(a.pitch, b.pitch, rad);
  EXPECT_NEAR(a.yaw, b.yaw, rad);
}

// The arc of one half leaf, from its own integral: a beam of constant curvature p / l, laid off in
// many short chords, with the eye standing square off its end.
EyePlace eye_by_chords(double length, double eye_offset, double bend) {
  constexpr int kChords = 20000;
  EyePlace eye;
  for (int i = 0; i < kChords; ++i) {
    const double slope = bend * (i + 0.5) / kChords;
    eye.along += length / kChords * std::cos(slope);
    eye.height += length / kChords * std::sin(slope);
  }
  eye.along -= eye_offset * std::sin(bend);
  eye.height += eye_offset * std::cos(bend);
  return eye;
}

TEST(EyeFromSeat, IsTheEndOfABeamOfConstantCurvature) {
  for (const double bend : {-0.6, -0.02, -0.009, -1e-5, 0.0, 1e-7, 0.005, 0.0101, 0.3, 1.2}) {
    const EyePlace exact = eye_by_chords(600.0, 25.0, bend);
    const EyePlace eye = eye_from_seat(600.0, 25.0, bend);
    EXPECT_NEAR(eye.along, exact.along, 1e-6) << bend;
    EXPECT_NEAR(eye.height, exact.height, 1e-6) << bend;
  }
}

TEST(BendForHeight, UndoesEyeFromSeat) {
  for (double bend = -1.2; bend < 1.25; bend += 0.1) {
    const auto found = bend_for_height(600.0, 25.0, eye_from_seat(600.0, 25.0, bend).height);
    ASSERT_TRUE(found);
    EXPECT_NEAR(*found, bend, 1e-13);
  }
}

TEST(BendForHeight, IsEmptyWhenTheLeafIsTooShort) {
  EXPECT_FALSE(bend_for_height(600.0, 0.0, 500.0));
  EXPECT_FALSE(bend_for_height(600.0, 0.0, -1e6));
}

// Seat path as a link of radius 0.75 l whose centre lies 0.25 l + 1.5 e e / l along from the eye
// towards the seat and e / 2 beyond it on its offset side. Source: derived from the arc; 0.75 of
// the active length as in SAE HS-788 (from memory).
TEST(LeafPath, IsNearlyALinkOfThreeQuartersOfTheLength) {
  constexpr double l = 600.0;
  for (const double e : {0.0, 25.0, -25.0, 40.0}) {
    // Seen from the fixed eye, towards the seat and up.
    const double centre_along = 0.25 * l + 1.5 * e * e / l;
    const double centre_up = 0.5 * e;
    for (double bend = -0.3; bend < 0.31; bend += 0.05) {
      const EyePlace eye = eye_from_seat(l, e, bend);
      const double radius = std::hypot(eye.along - centre_along, -eye.height - centre_up);
      EXPECT_NEAR(radius, 0.75 * l, 0.1) << "e " << e << " bend " << bend;
    }
    // A link centred at the eye's own height or without the quadratic term is worse by far.
    if (e == 40.0) {
      const EyePlace up = eye_from_seat(l, e, 0.2);
      const EyePlace down = eye_from_seat(l, e, -0.2);
      EXPECT_GT(std::abs(std::hypot(up.along - centre_along, up.height) -
                         std::hypot(down.along - centre_along, down.height)),
                1.0);
    }
  }
}

TEST(LeafPath, DrawnPlaceIsExact) {
  for (const bool ahead : {true, false}) {
    const AxlePose pose = posed(leaf_axle(550.0, 650.0, 25.0, 45.0, ahead), 0.0, 0.0);
    EXPECT_EQ(pose, AxlePose{});
  }
}

// The two numbers are worked by hand in the project's notes on mechanics: 550 ahead, 650 behind,
// 50 mm of rise gives 50 (650 - 550) / (550 x 650) = 0.80 degrees to first order.
TEST(LeafPath, UnequalHalvesPitchTheAxle) {
  // Small rise: the first-order rule.
  for (const bool ahead : {true, false}) {
    const double fixed = ahead ? 550.0 : 650.0;
    const AxlePose small = posed(leaf_axle(fixed, 1200.0 - fixed, 0.0, 0.0, ahead), 0.01, 0.01);
    EXPECT_NEAR(small.pitch, 0.01 * 100.0 / (550.0 * 650.0), 1e-10);
    const AxlePose pose = posed(leaf_axle(fixed, 1200.0 - fixed, 0.0, 0.0, ahead), 50.0, 50.0);
    EXPECT_NEAR(degrees_from_radians(pose.pitch), 0.80, 0.01);
    EXPECT_GT(pose.pitch, 0.0);
  }
}

// Independent reckoning of the same equilibrium: bisection on the shared curvature.
TEST(LeafPath, UnequalHalvesKeepBothEyesWithOneCurvature) {
  const double a = 520.0;
  const double b = 690.0;
  const double e = 20.0;
  const double camber = 40.0;
  const SuspensionPath path = compile_suspension(leaf_axle(a, b, e, camber));
  for (const double rise : {-80.0, -30.0, 25.0, 80.0}) {
    const AxleAnswer answer = axle_pose(path, rise, rise, 0.0);
    ASSERT_TRUE(answer.closes);
    const double pitch = answer.pose.pitch;
    const auto chassis_height = [&](const EyePlace& eye, double towards) {
      return std::cos(pitch) * eye.height - towards * std::sin(pitch) * eye.along;
    };
    // Seat rises by dz and by what pitch does to its place against the axle's origin.
    const double seat_rise = rise + (std::cos(pitch) - 1.0) * 50.0;
    const double ride = *bend_for_height(a, 0.0, camber);
    const double wanted = eye_from_seat(a, e, ride).height - seat_rise;
    double low = -1.0;
    double high = 1.0;
    for (int i = 0; i < 80; ++i) {
      const double middle = 0.5 * (low + high);
      (chassis_height(eye_from_seat(a, e, middle), 1.0) < wanted ? low : high) = middle;
    }
    const double shackle_height = chassis_height(eye_from_seat(b, e, low * b / a), -1.0);
    EXPECT_NEAR(shackle_height, eye_from_seat(b, e, ride * b / a).height - seat_rise, 1e-9);
    // Fore-aft: the fixed eye stays where it is.
    const EyePlace eye = eye_from_seat(a, e, low);
    const double seat_x = std::sin(pitch) * 50.0 + answer.pose.dx;
    EXPECT_NEAR(seat_x + std::cos(pitch) * eye.along + std::sin(pitch) * eye.height,
                eye_from_seat(a, e, ride).along, 1e-9);
  }
}

// Halves 600, e = 0, 60 of camber, spring centres 850 apart, +-50 at the seats: 13.55 mm, 0.91
// degrees (worked in the project's notes on mechanics from the arc's formula).
TEST(LeafPath, UnequalShiftOfTheSeatsYawsTheAxleInRoll) {
  FrontAxleStation axle = leaf_axle(600.0, 600.0, 0.0, 60.0);
  axle.suspension.leaf->seat.mm.z() = axle.wheel_centre_height;  // so that roll lifts them alike
  const double sine_of_roll = 50.0 / 425.0;                      // +-50 at the seats
  const double bump = sine_of_roll * 850.0;
  const AxlePose pose = posed(axle, bump, -bump);
  EXPECT_NEAR(std::sin(pose.roll), sine_of_roll, 1e-14);
  const SuspensionPath path = compile_suspension(axle);
  const auto placed = chassis_from_axle(path, pose);
  const Vec3 left = (placed * Point<Axle>{{0.0, 425.0, 0.0}}).mm;
  const Vec3 right = (placed * Point<Axle>{{0.0, -425.0, 0.0}}).mm;
  EXPECT_NEAR(right.x() - left.x(), 13.55, 0.01);
  EXPECT_NEAR(degrees_from_radians(pose.yaw), 0.91, 0.01);
  EXPECT_NEAR(left.y() + right.y(), 0.0, 1e-9);  // the springs hold the axle sideways at its seats
}

TEST(LeafPath, FixedEyeBehindMirrorsTheShift) {
  const AxlePose ahead = posed(leaf_axle(600.0, 600.0, 25.0, 30.0, true), 60.0, 20.0);
  const AxlePose behind = posed(leaf_axle(600.0, 600.0, 25.0, 30.0, false), 60.0, 20.0);
  EXPECT_NEAR(ahead.dx, -behind.dx, 1e-10);
  EXPECT_NEAR(ahead.yaw, -behind.yaw, 1e-13);
  EXPECT_NE(ahead.dx, 0.0);
}

TEST(LeafPath, WindUpAddsToTheOwnPitch) {
  const AxlePose without = posed(leaf_axle(550.0, 650.0, 25.0, 45.0), 30.0, 30.0);
  const AxlePose with = posed(leaf_axle(550.0, 650.0, 25.0, 45.0), 30.0, 30.0, 0.05);
  // The seat's place hardly changes with pitch, so its own pitch stays within a hair.
  EXPECT_NEAR(with.pitch - without.pitch, 0.05, 1e-4);
}

TEST(LeafPath, SaysWhenItCannotReach) {
  const SuspensionPath path = compile_suspension(leaf_axle(600.0, 600.0, 0.0, 0.0));
  for (const double bump : {-2000.0, 700.0, 1e9}) {
    const AxleAnswer answer = axle_pose(path, bump, bump, 0.0);
    EXPECT_FALSE(answer.closes);
    EXPECT_TRUE(std::isfinite(answer.pose.dx));
    EXPECT_TRUE(std::isfinite(answer.pose.pitch));
  }
  EXPECT_FALSE(axle_pose(path, 1000.0, -1000.0, 0.0).closes);
}

TEST(RadiusArms, HeaveTurnsArmsAndAxleAboutTheirPivots) {
  const FrontAxleStation axle = arm_axle();
  const SuspensionPath path = compile_suspension(axle);
  for (const double bump : {-80.0, 35.0, 90.0}) {
    const AxlePose pose = posed(axle, bump, bump);
    const auto placed = chassis_from_axle(path, pose);
    // The pivot, taken as a point of the axle, has not moved fore-aft or up.
    const Vec3 pivot = axle.suspension.radius_arms->chassis_pivot.mm;
    const Vec3 carried = (placed * Point<Axle>{pivot - path.origin_mm}).mm;
    EXPECT_NEAR(carried.x(), pivot.x(), 1e-9);
    EXPECT_NEAR(carried.z(), pivot.z(), 1e-9);
    EXPECT_LT(pose.pitch * bump, 0.0);  // pivot behind: a rising axle leans its top rearward
    EXPECT_NEAR(pose.yaw, 0.0, 1e-15);
  }
}

TEST(RadiusArms, LateralRodKeepsItsLength) {
  const FrontAxleStation axle = arm_axle();
  const SuspensionPath path = compile_suspension(axle);
  const RadiusArms& arms = *axle.suspension.radius_arms;
  const double drawn = (arms.lateral_rod_axle.mm - arms.lateral_rod_chassis.mm).norm();
  for (const double left : {-70.0, 0.0, 80.0}) {
    for (const double right : {-70.0, 0.0, 80.0}) {
      const auto placed = chassis_from_axle(path, posed(axle, left, right, 0.03));
      const Vec3 end = (placed * Point<Axle>{arms.lateral_rod_axle.mm - path.origin_mm}).mm;
      EXPECT_NEAR((end - arms.lateral_rod_chassis.mm).norm(), drawn, 1e-9);
    }
  }
  expect_same(posed(axle, 0.0, 0.0), AxlePose{}, 1e-10, 1e-14);
}

// Each arm keeps its length in side view, wherever roll takes the axle's middle line.
TEST(RadiusArms, EachArmSwingsOnItsOwnArcInRoll) {
  const FrontAxleStation axle = arm_axle();
  const SuspensionPath path = compile_suspension(axle);
  const auto placed = chassis_from_axle(path, posed(axle, 60.0, -30.0));
  const Vec3 pivot = axle.suspension.radius_arms->chassis_pivot.mm;
  for (const double side : {1.0, -1.0}) {
    const Vec3 crossing = (placed * Point<Axle>{{0.0, side * pivot.y(), 0.0}}).mm;
    EXPECT_NEAR(std::hypot(crossing.x() - pivot.x(), crossing.z() - pivot.z()),
                std::hypot(pivot.x(), pivot.z() + 210.0), 1e-9);
  }
}

TEST(StraightPath, OnlyRisesAndRolls) {
  FrontAxleStation axle;
  axle.suspension.kind = SuspensionKind::straight;
  const AxlePose pose = posed(axle, 50.0, 10.0, 0.02);
  EXPECT_EQ(pose.dx, 0.0);
  EXPECT_EQ(pose.dy, 0.0);
  EXPECT_EQ(pose.yaw, 0.0);
  EXPECT_EQ(pose.pitch, 0.02);
  EXPECT_EQ(pose.dz, 30.0);
}

TEST(SuspensionFaults, NameEveryMember) {
  FrontAxleStation axle = leaf_axle(600.0, 600.0, 0.0, 0.0);
  axle.suspension.leaf->fixed_half = -3.0;
  axle.suspension.leaf->shackle_half = 0.0;
  axle.suspension.leaf->seat.mm.y() = 0.0;
  const Problems problems = suspension_faults(axle);
  ASSERT_EQ(problems.size(), 3U);
  EXPECT_EQ(problems[0].place, "suspension.leaf.fixed_half_mm");
  EXPECT_EQ(problems[1].place, "suspension.leaf.shackle_half_mm");
  EXPECT_EQ(problems[2].place, "suspension.leaf.seat_mm");

  axle.suspension.leaf.reset();
  ASSERT_EQ(suspension_faults(axle).size(), 1U);
  axle = arm_axle();
  axle.suspension.radius_arms->lateral_rod_axle = axle.suspension.radius_arms->lateral_rod_chassis;
  axle.suspension.radius_arms->chassis_pivot.mm.x() = 0.0;
  EXPECT_EQ(suspension_faults(axle).size(), 2U);
}

// --- properties -----------------------------------------------------------------------------

struct Case {
  FrontAxleStation axle;
  double left = 0.0;
  double right = 0.0;
  double wind_up = 0.0;
};

double between(int low, int high) {
  return *rc::gen::inRange(low * 1000, high * 1000) / 1000.0;
}

Case any_case() {
  Case c;
  if (*rc::gen::arbitrary<bool>()) {
    c.axle = leaf_axle(between(450, 700), between(450, 700), between(-30, 45), between(-40, 90),
                       *rc::gen::arbitrary<bool>());
    c.axle.suspension.leaf->seat.mm.x() += between(-30, 30);
  } else {
    c.axle = arm_axle();
    c.axle.suspension.radius_arms->chassis_pivot.mm +=
        Vec3(between(-100, 100), between(-50, 50), between(-80, 80));
  }
  c.left = between(-90, 90);
  c.right = between(-90, 90);
  c.wind_up = between(-100, 100) / 2000.0;
  return c;
}

RC_GTEST_PROP(AxlePoseProperties, WheelCentresRiseByTheirBumps, ()) {
  const Case c = any_case();
  const SuspensionPath path = compile_suspension(c.axle);
  const AxleAnswer answer = axle_pose(path, c.left, c.right, c.wind_up);
  RC_ASSERT(answer.closes);
  const auto placed = chassis_from_axle(path, answer.pose);
  const double left = (placed * Point<Axle>{{0.0, 850.0, 0.0}}).mm.z() - path.origin_mm.z();
  const double right = (placed * Point<Axle>{{0.0, -850.0, 0.0}}).mm.z() - path.origin_mm.z();
  RC_ASSERT(std::abs(left - c.left) < 1e-10);
  RC_ASSERT(std::abs(right - c.right) < 1e-10);
}

RC_GTEST_PROP(AxlePoseProperties, MirrorImageMirrorsThePose, ()) {
  const Case c = any_case();
  FrontAxleStation mirrored = c.axle;
  if (mirrored.suspension.radius_arms) {
    mirrored.suspension.radius_arms->lateral_rod_axle.mm.y() *= -1.0;
    mirrored.suspension.radius_arms->lateral_rod_chassis.mm.y() *= -1.0;
  }
  const AxlePose pose = axle_pose(compile_suspension(c.axle), c.left, c.right, c.wind_up).pose;
  const AxlePose image = axle_pose(compile_suspension(mirrored), c.right, c.left, c.wind_up).pose;
  RC_ASSERT(std::abs(pose.dx - image.dx) < 1e-10);
  RC_ASSERT(std::abs(pose.dy + image.dy) < 1e-10);
  RC_ASSERT(std::abs(pose.roll + image.roll) < 1e-13);
  RC_ASSERT(std::abs(pose.pitch - image.pitch) < 1e-13);
  RC_ASSERT(std::abs(pose.yaw + image.yaw) < 1e-13);
}

// Seen from the chassis, a fixed eye that rides with the seat's half leaf has not moved.
RC_GTEST_PROP(AxlePoseProperties, FixedEyesStay, ()) {
  const Case c = any_case();
  RC_PRE(c.axle.suspension.kind == SuspensionKind::leaf);
  const SuspensionPath path = compile_suspension(c.axle);
  const AxlePose pose = axle_pose(path, c.left, c.right, c.wind_up).pose;
  const auto placed = chassis_from_axle(path, pose);
  for (const LeafPath& leaf : path.leaf) {
    const Vec3 seat = (placed * Point<Axle>{leaf.seat_offset_mm}).mm - path.origin_mm;
    // Where the eye should be, seen from the seat in the pitched seat plane.
    const double x =
        leaf.seat_offset_mm.x() + leaf.towards_fixed * leaf.fixed_eye_at_ride.along - seat.x();
    const double z = leaf.seat_offset_mm.z() + leaf.fixed_eye_at_ride.height - seat.z();
    const double along = leaf.towards_fixed * (std::cos(pose.pitch) * x - std::sin(pose.pitch) * z);
    const double height = std::sin(pose.pitch) * x + std::cos(pose.pitch) * z;
    const auto bend = bend_for_height(leaf.fixed_half, leaf.eye_offset, height);
    RC_ASSERT(bend.has_value());
    RC_ASSERT(std::abs(eye_from_seat(leaf.fixed_half, leaf.eye_offset, *bend).along - along) <
              1e-9);
  }
}

}  // namespace
}  // namespace tackbench
