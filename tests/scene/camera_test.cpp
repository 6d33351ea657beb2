// The eye and what it meets.
#include <gtest/gtest.h>

#include <Eigen/Geometry>
#include <cmath>

#include "core/basics/units.h"
#include "core/mechanism/solve.h"
#include "core/scene/mesh_flat.h"
#include "core/scene/pick.h"

namespace tackbench {
namespace {

const PictureSize kSize{640.0, 400.0};

Camera some_camera() {
  Camera camera;
  camera.target_mm = Vec3(-300.0, 120.0, 40.0);
  camera.distance = 4200.0;
  camera.turn = 0.7;
  camera.rise = 0.35;
  return camera;
}

TEST(Camera, RayThroughAPixelSeesThatPixel) {
  const Camera camera = some_camera();
  for (const PicturePoint at : {PicturePoint{0.0, 0.0}, {320.0, 200.0}, {600.0, 33.0}}) {
    const SightRay ray = camera.ray(at, kSize);
    const auto seen = camera.seen(ray.origin + 3100.0 * ray.along, kSize);
    ASSERT_TRUE(seen);
    EXPECT_NEAR(seen->at.x, at.x, 1e-6);
    EXPECT_NEAR(seen->at.y, at.y, 1e-6);
  }
  EXPECT_FALSE(camera.seen(camera.eye_mm() + 100.0 * camera.backward(), kSize));
}

TEST(Camera, FramePointsTheWaysItSays) {
  Camera camera;
  camera.look(StandardView::front);
  EXPECT_LT((camera.backward() - Vec3::UnitX()).norm(), 1e-12);
  EXPECT_LT((camera.right() - Vec3::UnitY()).norm(), 1e-12);  // from ahead left is to the right
  camera.look(StandardView::left);
  EXPECT_LT((camera.backward() - Vec3::UnitY()).norm(), 1e-12);
  EXPECT_LT((camera.right() + Vec3::UnitX()).norm(), 1e-12);  // the front is to the left
  camera.look(StandardView::plan);
  EXPECT_LT((camera.backward() - Vec3::UnitZ()).norm(), 1e-12);
  EXPECT_LT((camera.right() + Vec3::UnitX()).norm(), 1e-12);
  EXPECT_LT((camera.up() + Vec3::UnitY()).norm(), 1e-12);
}

TEST(Camera, ZoomKeepsWhatIsUnderThePointer) {
  Camera camera = some_camera();
  const PicturePoint at{500.0, 90.0};
  const SightRay ray = camera.ray(at, kSize);
  const Vec3 under = *on_plane(ray, camera.target_mm, camera.backward());
  camera.zoom(0.6, at, kSize);
  EXPECT_NEAR(camera.distance, 0.6 * 4200.0, 1e-9);
  const auto seen = camera.seen(under, kSize);
  ASSERT_TRUE(seen);
  EXPECT_NEAR(seen->at.x, at.x, 1e-6);
  EXPECT_NEAR(seen->at.y, at.y, 1e-6);
}

TEST(Camera, PanCarriesTheTargetWithThePointer) {
  Camera camera = some_camera();
  const Vec3 target = camera.target_mm;
  camera.pan(37.0, -21.0, kSize);
  const auto seen = camera.seen(target, kSize);
  ASSERT_TRUE(seen);
  EXPECT_NEAR(seen->at.x, 320.0 + 37.0, 1e-6);
  EXPECT_NEAR(seen->at.y, 200.0 - 21.0, 1e-6);
}

TEST(Camera, OrbitKeepsDistanceAndStopsOverhead) {
  Camera camera = some_camera();
  camera.orbit(120.0, 4000.0, kSize);
  EXPECT_NEAR((camera.eye_mm() - camera.target_mm).norm(), 4200.0, 1e-6);
  EXPECT_NEAR(camera.rise, 0.5 * kPi, 1e-12);
  EXPECT_TRUE(camera.up().allFinite());
}

TEST(Camera, FitShowsEveryCorner) {
  Bounds bounds;
  bounds.take(Vec3(-3200.0, -1000.0, -750.0));
  bounds.take(Vec3(900.0, 1000.0, 1400.0));
  for (const StandardView view : {StandardView::front, StandardView::left, StandardView::plan,
                                  StandardView::front_left_above}) {
    Camera camera;
    camera.look(view);
    camera.fit(bounds, kSize);
    double least_gap = 1e9;
    for (unsigned i = 0; i < 8; ++i) {
      const Vec3 corner((i & 1U) != 0 ? bounds.greatest.x() : bounds.least.x(),
                        (i & 2U) != 0 ? bounds.greatest.y() : bounds.least.y(),
                        (i & 4U) != 0 ? bounds.greatest.z() : bounds.least.z());
      const auto seen = camera.seen(corner, kSize);
      ASSERT_TRUE(seen);
      least_gap = std::min(
          {least_gap, seen->at.x, kSize.width - seen->at.x, seen->at.y, kSize.height - seen->at.y});
    }
    EXPECT_GE(least_gap, 0.0);
    EXPECT_LE(least_gap, 60.0);  // and fills the picture one way
  }
}

// A rod from corner to corner of a box leaves the other corners empty: the eye comes nearer, and
// still sees both its ends.
TEST(Camera, FitComesAsNearAsThePlacesAllow) {
  const std::vector<Vec3> rod{Vec3(-1000.0, -800.0, -600.0), Vec3(1000.0, 800.0, 600.0)};
  Bounds bounds;
  for (const Vec3& end : rod) bounds.take(end);
  Camera loose;
  loose.look(StandardView::front_left_above);
  Camera close = loose;
  loose.fit(bounds, kSize);
  close.fit(rod, kSize);
  EXPECT_LT(close.distance, 0.9 * loose.distance);
  for (const Vec3& end : rod) {
    const auto seen = close.seen(end, kSize);
    ASSERT_TRUE(seen);
    EXPECT_GE(seen->at.x, 0.0);
    EXPECT_LE(seen->at.x, kSize.width);
    EXPECT_GE(seen->at.y, 0.0);
    EXPECT_LE(seen->at.y, kSize.height);
  }
}

ScenePiece piece(const char* part, SceneRole role, const Mesh& mesh) {
  return {part, role, mesh, mesh};
}

// A box, a rod behind it, a see-through sheet before both.
struct SmallScene {
  Scene scene;
  std::vector<SceneMotion> motions;

  SmallScene() {
    scene.bodies.push_back(
        {RidesBody{},
         {piece("box", SceneRole::fixed, box(Vec3::Zero(), Vec3(200.0, 200.0, 200.0)))}});
    scene.bodies.push_back({RidesBody{Body::cab, 0},
                            {piece("rod", SceneRole::moving,
                                   cylinder(Vec3(-500.0, -600.0, 0.0), Vec3(-500.0, 600.0, 0.0),
                                            3.0, Detail::fine))}});
    scene.bodies.push_back(
        {RidesBody{Body::axle, 0},
         {piece("sheet", SceneRole::soft, box(Vec3(400.0, 0.0, 0.0), Vec3(2.0, 1500.0, 600.0)))}});
    motions.resize(3);
  }
};

TEST(Pick, MeetsTheNearestSolidAtItsFace) {
  const SmallScene small;
  Camera camera;
  camera.look(StandardView::front);
  const auto hit =
      pick(small.scene, small.motions, camera.ray({0.5 * kSize.width, 0.5 * kSize.height}, kSize));
  ASSERT_TRUE(hit);
  EXPECT_EQ(small.scene.bodies[hit->body].pieces[hit->piece].part, "box");
  EXPECT_NEAR(hit->at_mm.x(), 100.0, 1e-9);
  EXPECT_NEAR(hit->distance, camera.distance - 100.0, 1e-9);
}

TEST(Pick, MovedBodyIsMetWhereItIs) {
  SmallScene small;
  small.motions[0].shift_mm = Vec3(0.0, 0.0, 900.0);
  Camera camera;
  camera.look(StandardView::front);
  const auto hit =
      pick(small.scene, small.motions, camera.ray({0.5 * kSize.width, 0.5 * kSize.height}, kSize));
  ASSERT_TRUE(hit);
  EXPECT_EQ(small.scene.bodies[hit->body].pieces[hit->piece].part, "rod");
}

TEST(Pick, ThinRodIsTakenFromBesideIt) {
  const SmallScene small;
  Camera camera;
  camera.look(StandardView::front);
  const auto rod = camera.seen(Vec3(-500.0, 400.0, 0.0), kSize);
  ASSERT_TRUE(rod);
  const PicturePoint beside{rod->at.x, rod->at.y + 4.0};
  const auto exact = pick(small.scene, small.motions, camera.ray(beside, kSize));
  ASSERT_TRUE(exact);
  EXPECT_EQ(small.scene.bodies[exact->body].pieces[exact->piece].part, "sheet");
  const auto near = pick_near(small.scene, small.motions, camera, kSize, beside, 6.0);
  ASSERT_TRUE(near);
  EXPECT_EQ(small.scene.bodies[near->body].pieces[near->piece].part, "rod");
}

TEST(Pick, SelectionShowsRecordsAndTheirMembers) {
  EXPECT_TRUE(shows_selected("steering_box.arm", "steering_box.arm"));
  EXPECT_TRUE(shows_selected("pedals.pedals[0].rod", "pedals.pedals[0]"));
  EXPECT_FALSE(shows_selected("pedals.pedals[1]", "pedals.pedals[10]"));
  EXPECT_FALSE(shows_selected("pedals.pedals[10]", "pedals.pedals[1]"));
  EXPECT_FALSE(shows_selected("steering_box", "steering_box.arm"));
  EXPECT_FALSE(shows_selected("", ""));
}

}  // namespace
}  // namespace tackbench
