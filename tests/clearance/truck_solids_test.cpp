// Which parts are there, what they ride on and what they may touch.
#include "core/clearance/truck_solids.h"

#include <gtest/gtest.h>

#include <cmath>
#include <set>
#include <utility>

#include "core/basics/units.h"
#include "tests/clearance/tender.h"

namespace tackbench {
namespace {

std::set<std::pair<std::string, std::string>> pairs_of(const TruckSolids& solids) {
  std::set<std::pair<std::string, std::string>> names;
  for (const SolidPair& pair : solids.pairs) {
    names.emplace(solids.parts[pair.first].name, solids.parts[pair.second].name);
    names.emplace(solids.parts[pair.second].name, solids.parts[pair.first].name);
  }
  return names;
}

TEST(TruckSolids, WhatMeetsInAJointIsLeftOutAndNothingElse) {
  const auto pairs = pairs_of(*sample_solids("tender-as-first-tacked").solids);
  using Names = std::pair<std::string, std::string>;
  for (const Names& joined :
       {Names{"pitman arm", "drag link"}, Names{"drag link", "steering arm"},
        Names{"tie rod", "left tie-rod arm"}, Names{"tie rod", "right tie-rod arm"},
        Names{"steering arm", "axle beam"}, Names{"left spring", "left rail"},
        Names{"upper joint", "column"}, Names{"upper joint", "upper shaft"},
        Names{"middle joint", "lower shaft"}, Names{"upper joint", "middle joint"},
        Names{"brake pedal arm", "brake pedal pad"}, Names{"left tyre", "steering arm"},
        Names{"left rail", "engine"}, Names{"firewall", "left rail"}, Names{"column", "firewall"}})
    EXPECT_FALSE(pairs.contains(joined)) << joined.first << ", " << joined.second;
  for (const Names& judged :
       {Names{"left tyre", "drag link"}, Names{"left tyre", "left rail"},
        Names{"right tyre", "tie rod"}, Names{"drag link", "left spring"},
        Names{"pitman arm", "left rail"}, Names{"upper shaft", "firewall"},
        Names{"clutch pedal arm", "column bracket"}, Names{"upper shaft", "brake pedal arm"},
        Names{"brake pedal pad", "clutch pedal pad"}, Names{"axle beam", "engine"},
        Names{"tie rod", "engine"}})
    EXPECT_TRUE(pairs.contains(judged)) << judged.first << ", " << judged.second;
}

// Where the mechanism puts balls and joints, solved apart from the solids.
TEST(TruckSolids, LinksAndShaftsEndAtTheirPosedPlaces) {
  for (const char* name : {"tender-as-first-tacked", "timber-wagon"}) {
    const SampleSolids truck = sample_solids(name);
    Controls controls;
    controls.hand_wheel = 4.0;
    controls.bump_left = 40.0;
    controls.bump_right = -20.0;
    controls.cab_shake = Vec3(3.0, -2.0, 5.0);
    const Pose pose = solved_pose(truck.mechanism, controls);
    ASSERT_EQ(pose.outcome, Outcome::solved);
    const auto place = [&](const SolidPiece& piece) {
      const auto motion = solid_motion(truck.mechanism, pose, piece.body);
      EXPECT_NEAR(motion.turn.determinant(), 1.0, 1e-9);
      return Vec3(motion.turn * piece.solid.centre_mm + motion.shift_mm);
    };
    const auto& link = truck.part("drag link").pieces;
    EXPECT_LT((place(link[0]) - pose.steering.drag_link.from_mm).norm(), 1e-6) << name;
    EXPECT_LT((place(link[1]) - pose.steering.drag_link.to_mm).norm(), 1e-6) << name;
    const auto& rod = truck.part("tie rod").pieces;
    EXPECT_LT((place(rod[0]) - pose.steering.tie_rod.from_mm).norm(), 1e-6) << name;
    EXPECT_LT((place(rod[1]) - pose.steering.tie_rod.to_mm).norm(), 1e-6) << name;
    // A lever's stud starts at its ball.
    const SolidPiece& stud = truck.part("pitman arm").pieces[0];
    const auto motion = solid_motion(truck.mechanism, pose, stud.body);
    const Vec3 end =
        motion.turn * (stud.solid.centre_mm - stud.solid.half_mm.z() * stud.solid.axis()) +
        motion.shift_mm;
    EXPECT_LT((end - pose.steering.arm_ball_mm).norm(), 1e-6) << name;
    for (const SolidPart& part : truck.solids->parts) {
      if (!part.path.starts_with("shaft_line.joints")) continue;
      const Vec3 at = place(part.pieces.front());
      bool found = false;
      for (int i = 0; i < pose.shaft_line.cross_count; ++i)
        found |=
            (pose.shaft_line.crosses[static_cast<std::size_t>(i)].centre_mm - at).norm() < 1e-6;
      EXPECT_TRUE(found) << name << ' ' << part.name;
    }
  }
}

// The tender's firewall: a hole of 90 at y 498, z 651.3. A bar of 20 through its middle, square to
// it, has 45 - 10 = 35 about it, less the half per cent of the hole's polygon.
TEST(TruckSolids, ABarThroughAHoleHasTheHolesRoom) {
  const SampleSolids tender = sample_solids("tender-as-first-tacked");
  const SolidPart& firewall = tender.part("firewall");
  const auto least = [&](const ConvexSolid& solid) {
    double gap = 1e9;
    for (const SolidPiece& piece : firewall.pieces)
      gap = std::min(gap, gap_between(solid, piece.solid).high_mm);
    return gap;
  };
  const auto in_cab = [&](double x, double y, double z) {
    return (tender.mechanism.chassis_from_cab * Point<Cab>{Vec3(x, y, z)}).mm;
  };
  const auto bar = [&](double y, double z) {
    return capsule(in_cab(-1000.0, y, z), in_cab(-880.0, y, z), 10.0);
  };
  EXPECT_NEAR(least(bar(498.0, 651.3)), 35.0, 0.3);
  for (int i = 0; i < 24; ++i) {
    const double angle = kRadiansPerTurn * i / 24;
    const double gap = least(bar(498.0 + 20.0 * std::cos(angle), 651.3 + 20.0 * std::sin(angle)));
    EXPECT_LE(gap, 15.0 + 1e-3);
    EXPECT_GE(gap, 15.0 - 0.3);
  }
  EXPECT_LT(least(bar(558.0, 651.3)), 0.0);
  // Everywhere else it is whole.
  for (const double y : {-800.0, -300.0, 440.0, 700.0})
    EXPECT_LE(least(ball(in_cab(-940.0, y, 640.0), 1.0)), 0.0) << y;
}

TEST(TruckSolids, HolesThatCannotBeCutOutAreSaid) {
  SampleSolids tender = sample_solids("tender-as-first-tacked");
  auto shapes = std::make_shared<ShapesStation>(*tender.mechanism.project.shapes);
  shapes->shapes[0].holes.push_back(shapes->shapes[0].holes[0]);
  shapes->shapes[1].kind = ShapeKind::mesh;
  Project project = tender.mechanism.project;
  project.shapes = shapes;
  const Result<Mechanism> mechanism = compile(project);
  ASSERT_TRUE(mechanism);
  const auto solids = truck_solids(*mechanism);
  ASSERT_EQ(solids->left_out.size(), 2U);
  EXPECT_TRUE(solids->left_out[0].starts_with("firewall"));
  EXPECT_TRUE(solids->left_out[1].starts_with("cab floor"));
  for (const SolidPart& part : solids->parts) EXPECT_NE(part.name, "firewall");
}

// What nobody has measured makes no part, and an unfinished truck has no pairs of it.
TEST(TruckSolids, BareStartHasNothing) {
  EXPECT_TRUE(sample_solids("bare-start").solids->pairs.empty());
}

}  // namespace
}  // namespace tackbench
