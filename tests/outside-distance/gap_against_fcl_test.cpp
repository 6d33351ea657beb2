// Gaps against the Flexible Collision Library (Pan, Chitta, Manocha 2012), an independent
// implementation, at its most exact setting. Only separated pairs: it aborts on some overlaps.
// Cylinders against half-spaces are left out for the same reason.
#include <fcl/fcl.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <memory>

#include "core/geometry/solid_gap.h"
#include "tests/geometry/random_solid.h"

namespace tackbench {
namespace {

struct Both {
  ConvexSolid ours;
  std::shared_ptr<fcl::CollisionGeometryd> theirs;
  fcl::Transform3d place;
};

Both make(RandomSolids& random, int kind, const Vec3& at) {
  const Mat3 turn = random.turn();
  const double radius = random.between(5.0, 200.0);
  const double length = random.between(5.0, 300.0);
  Both made;
  made.place = fcl::Transform3d::Identity();
  made.place.linear() = turn;
  made.place.translation() = at;
  const Vec3 half = 0.5 * length * turn.col(2);
  switch (kind) {
    case 0:
      made.ours = ball(at, radius);
      made.theirs = std::make_shared<fcl::Sphered>(radius);
      break;
    case 1:
      made.ours = capsule(at - half, at + half, radius);
      made.theirs = std::make_shared<fcl::Capsuled>(radius, length);
      break;
    case 2:
      made.ours = rounded_cylinder(at - half, at + half, radius);
      made.theirs = std::make_shared<fcl::Cylinderd>(radius, length);
      break;
    default: {
      const Vec3 size(length, radius, random.between(5.0, 300.0));
      made.ours = rounded_box(at, turn, size);
      made.theirs = std::make_shared<fcl::Boxd>(size);
      break;
    }
  }
  return made;
}

// Its own worst error in separated pairs at this setting is 6e-4 mm by the closed forms that it
// has; ours is asked to 1e-5.
constexpr double kBothErrors = 2e-3;

TEST(GapAgainstFcl, SeparatedPairsOfEveryKind) {
  RandomSolids random(31);
  fcl::DistanceRequestd request;
  request.distance_tolerance = 1e-10;
  request.gjk_solver_type = fcl::GST_LIBCCD;
  int compared = 0;
  double worst = 0.0;
  for (int scene = 0; scene < 2000; ++scene) {
    const Both first = make(random, scene % 4, random.vector(100.0));
    const Both second = make(random, (scene / 4) % 4, random.vector(900.0));
    const SolidGap gap = gap_between(first.ours, second.ours, {1e-5, 200});
    if (gap.low_mm < 1.0) continue;
    ASSERT_EQ(gap.outcome, GapOutcome::measured);
    fcl::DistanceResultd result;
    const double theirs = fcl::distance(first.theirs.get(), first.place, second.theirs.get(),
                                        second.place, request, result);
    ++compared;
    worst = std::max(worst, std::abs(gap.high_mm - theirs));
    EXPECT_NEAR(gap.high_mm, theirs, kBothErrors) << "kinds " << scene % 4 << (scene / 4) % 4;
  }
  EXPECT_GT(compared, 1000);
  RecordProperty("worst_difference_mm", std::to_string(worst));
}

}  // namespace
}  // namespace tackbench
