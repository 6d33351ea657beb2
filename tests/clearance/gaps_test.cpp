// Gaps of whole trucks against surfaces sampled point by point and sizes read off the file.
#include "core/clearance/gaps.h"

#include <gtest/gtest.h>

#include <Eigen/Geometry>
#include <algorithm>
#include <cmath>

#include "core/basics/units.h"
#include "tests/clearance/tender.h"
#include "tests/support/mirror_image.h"
#include "tests/support/random_truck.h"

namespace tackbench {
namespace {

const std::string kTender = "tender-as-first-tacked";

Controls turned_wheel(double degrees, double bump) {
  Controls controls;
  controls.hand_wheel = radians_from_degrees(degrees);
  controls.bump_left = controls.bump_right = bump;
  return controls;
}

// Of a point from a tyre with rounded shoulders, outside it, mm.
double to_tyre(const Vec3& point, const Vec3& centre, const Vec3& spindle, const Tyre& tyre) {
  const Vec3 from = point - centre;
  const double along = std::abs(from.dot(spindle));
  const double out = (from - from.dot(spindle) * spindle).norm();
  return std::hypot(std::max(0.0, along - 0.5 * tyre.width + tyre.shoulder_radius),
                    std::max(0.0, out - 0.5 * tyre.diameter + tyre.shoulder_radius)) -
         tyre.shoulder_radius;
}

// Every half millimetre along the link and every three degrees about it: tube, shanks, balls with
// the sizes in the file (90 mm shanks, 36 in the tube, M24; the ball's housing is 24 in radius).
double sampled_tyre_to_link(const SampleSolids& truck, const Controls& controls) {
  const Pose pose = solved_pose(truck.mechanism, controls);
  const FrontAxleStation& axle = *truck.mechanism.project.front_axle;
  const KnucklePose& knuckle = pose.steering.left;
  const Vec3 at_rest(0.0, 0.5 * axle.track + axle.hub_offset, 0.0);
  const Vec3 centre = (knuckle.chassis_from_knuckle * Point<Knuckle>{at_rest}).mm;
  const Vec3 from = pose.steering.drag_link.from_mm;
  const Vec3 to = pose.steering.drag_link.to_mm;
  const double length = (to - from).norm();
  const Vec3 along = (to - from) / length;
  const Vec3 first = square_to(along, Vec3::UnitZ());
  const Vec3 second = along.cross(first);
  const double shank = 90.0 - 36.0;
  double least = 1e9;
  const auto look = [&](double way, double radius) {
    for (int i = 0; i < 120; ++i) {
      const double angle = kRadiansPerTurn * i / 120;
      const Vec3 point =
          from + way * along + radius * (std::cos(angle) * first + std::sin(angle) * second);
      least = std::min(least, to_tyre(point, centre, knuckle.spindle, axle.tyre));
    }
  };
  for (double way = 0.0; way <= length; way += 0.5)
    look(way, way < shank || way > length - shank ? 12.0 : 19.0);
  for (const double end : {shank, length - shank}) look(end, 19.0);
  for (double angle = 0.0; angle <= kPi; angle += 0.02)
    for (const double ball : {0.0, length})
      look(ball + 24.0 * std::cos(angle), 24.0 * std::sin(angle));
  return least;
}

TEST(Gaps, TyreToDragLinkAsSampled) {
  const SampleSolids tender = sample_solids(kTender);
  for (const double wheel : {-500.0, 0.0, 300.0, 620.0, 760.0}) {
    for (const double bump : {-80.0, 0.0, 70.0}) {
      const Controls controls = turned_wheel(wheel, bump);
      const double expected = sampled_tyre_to_link(tender, controls);
      const auto list = tender.at(controls);
      const PairGap* pair = tender.pair(list, "left tyre", "drag link");
      ASSERT_NE(pair, nullptr);
      EXPECT_NEAR(pair->gap.high_mm, expected, 0.05) << wheel << " degrees, " << bump << " mm";
      EXPECT_LE(pair->gap.high_mm, expected + 1e-3) << "a sampled point is nearer";
      EXPECT_TRUE(pair->both_move);
    }
  }
}

// The clutch arm's side face and the bracket's, from the file: 570 - 12/2 - (505.5 + 101/2).
TEST(Gaps, ClutchArmToColumnBracketAsInTheFile) {
  const SampleSolids tender = sample_solids(kTender);
  for (const double pressed : {0.0, 0.5, 1.0}) {
    Controls controls;
    controls.pedals.fill(pressed);
    const auto list = tender.at(controls);
    const PairGap* pair = tender.pair(list, "clutch pedal arm", "column bracket");
    ASSERT_NE(pair, nullptr);
    EXPECT_NEAR(pair->gap.high_mm, 8.0, 1e-3);
    EXPECT_NEAR(pair->gap.on_first.y(), 564.0, 1e-6);
    EXPECT_NEAR(pair->gap.on_second.y(), 556.0, 1e-6);
    EXPECT_FALSE(pair->both_move);
    EXPECT_FALSE(pair->assumed);
  }
}

// Axle beam under the engine: 90 deep about -345, engine's underside at 60 - 280 = -220; the beam
// rises with the axle.
TEST(Gaps, BeamComesUpToTheEngineAsTheAxleRises) {
  const SampleSolids tender = sample_solids(kTender);
  for (const double bump : {-80.0, 0.0, 70.0}) {
    const auto list = tender.at(turned_wheel(0.0, bump));
    const PairGap* pair = tender.pair(list, "axle beam", "engine");
    ASSERT_NE(pair, nullptr);
    // A degree or less of spring pitch lifts the beam's corner by about a millimetre.
    EXPECT_NEAR(pair->gap.high_mm, 80.0 - bump, 1.5) << bump;
  }
}

TEST(Gaps, LeastFirstAndNoneBeyondWhatIsAsked) {
  const SampleSolids tender = sample_solids(kTender);
  const auto all = tender.at({});
  ASSERT_GT(all.size(), 50U);
  EXPECT_TRUE(std::is_sorted(all.begin(), all.end(), [](const PairGap& a, const PairGap& b) {
    return a.gap.high_mm < b.gap.high_mm;
  }));
  const auto near = tender.at({}, {60.0, "", 0.0});
  const auto under = std::count_if(all.begin(), all.end(),
                                   [](const PairGap& pair) { return pair.gap.high_mm <= 60.0; });
  ASSERT_EQ(near.size(), static_cast<std::size_t>(under));
  for (std::size_t i = 0; i < near.size(); ++i)
    EXPECT_NEAR(near[i].gap.high_mm, all[i].gap.high_mm, 1e-9);
  // The chosen part reaches further.
  const auto chosen = tender.at({}, {60.0, "drag_link", 400.0});
  EXPECT_GT(chosen.size(), near.size());
  for (const PairGap& pair : chosen) {
    const bool of_link = is_of(tender.solids->parts[pair.first], "drag_link") ||
                         is_of(tender.solids->parts[pair.second], "drag_link");
    EXPECT_LE(pair.gap.high_mm, of_link ? 400.0 : 60.0);
  }
}

TEST(Gaps, NoneWhereALoopDoesNotClose) {
  const SampleSolids tender = sample_solids(kTender);
  Controls controls;
  controls.axle_pose = AxlePose{0.0, 0.0, 1500.0, 0.0, 0.0, 0.0};
  const Outcome outcome = solved_pose(tender.mechanism, controls).outcome;
  ASSERT_EQ(outcome, Outcome::drag_link_does_not_close);
  EXPECT_TRUE(tender.at(controls).empty());
}

// A truck seen in a mirror has the same gaps, whatever its lay-out.
TEST(Gaps, MirroredTruckHasTheSame) {
  int compared = 0;
  for (std::uint64_t seed = 0; seed < 25; ++seed) {
    const Project project = random_truck(seed);
    const Result<Mechanism> here = compile(project);
    const Result<Mechanism> there = compile(mirror_image(project));
    ASSERT_TRUE(here && there);
    Controls controls = turned_wheel(150.0, 0.0);
    controls.bump_left = 30.0;
    controls.bump_right = -10.0;
    Controls other = controls;
    other.hand_wheel = -controls.hand_wheel;
    std::swap(other.bump_left, other.bump_right);
    const auto first =
        gaps(*truck_solids(*here), *here, solved_pose(*here, controls), {300.0, "", 0.0});
    const auto second =
        gaps(*truck_solids(*there), *there, solved_pose(*there, other), {300.0, "", 0.0});
    ASSERT_EQ(first.size(), second.size()) << seed;
    for (std::size_t i = 0; i < first.size(); ++i, ++compared) {
      // Depths beyond the cores are not told.
      if (first[i].gap.outcome != GapOutcome::measured) continue;
      EXPECT_NEAR(first[i].gap.high_mm, second[i].gap.high_mm, 5e-3) << seed << ' ' << i;
    }
  }
  EXPECT_GT(compared, 200);
}

}  // namespace
}  // namespace tackbench
