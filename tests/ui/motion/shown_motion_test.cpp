// Swept places and the wander, as both drawings are given them.
#include <cmath>

#include "core/basics/units.h"
#include "tests/ui/motion/open_truck.h"

namespace tackbench::ui {
namespace {

TEST(SweptPlaces, AreTheEndsOfTheMotion) {
  OpenTruck open;
  EXPECT_TRUE(open.motion.swept.poses().empty());
  int changes = 0;
  QObject::connect(&open.motion.swept, &SweptPlaces::changed, [&] { ++changes; });
  open.motion.swept.show(true);
  EXPECT_EQ(changes, 1);
  const auto& poses = open.motion.swept.poses();
  ASSERT_EQ(poses.size(), 4U);
  EXPECT_GT(poses[0].steering.left.steer, radians_from_degrees(15.0));
  EXPECT_LT(poses[1].steering.left.steer, -radians_from_degrees(15.0));
  // Both wheels up and down by the project's own travel, pedals pressed in one of them.
  const Suspension& travel = open.session.project().front_axle->suspension;
  const double between =
      poses[2].chassis_from_axle.shift_mm.z() - poses[3].chassis_from_axle.shift_mm.z();
  EXPECT_NEAR(between, travel.bump + travel.droop, 1.0);
  EXPECT_GT(std::abs(poses[2].pedals[0].angle), 0.05);
  EXPECT_EQ(poses[3].pedals[0].angle, 0.0);
  open.motion.swept.show(false);
  EXPECT_TRUE(open.motion.swept.poses().empty());
  EXPECT_EQ(changes, 2);
}

TEST(SweptPlaces, NeverHoldADragBackAndFollowItsEnd) {
  OpenTruck open;
  open.motion.swept.show(true);
  const auto before = open.motion.swept.mechanism();
  int changes = 0;
  QObject::connect(&open.motion.swept, &SweptPlaces::changed, [&] { ++changes; });
  const auto grip = grip_at(open.session.project(), "drag_link.knuckle_ball_mm");
  ASSERT_TRUE(grip);
  const Project start = open.session.project();
  open.session.begin_drag("Move");
  for (int i = 1; i <= 3; ++i) {
    open.session.drag_to(*with_grip_at(start, *grip, grip->at_mm + Vec3(0.0, 0.0, 3.0 * i)));
    open.session.wait_until_fresh();
  }
  EXPECT_EQ(changes, 0);
  EXPECT_EQ(open.motion.swept.mechanism(), before);
  open.session.end_drag();
  open.session.wait_until_fresh();
  EXPECT_GE(changes, 1);
  EXPECT_EQ(open.motion.swept.mechanism(), open.session.posed().mechanism);
}

TEST(WanderPlay, MovesOrStandsStillAtBothEndsOfEveryWay) {
  OpenTruck open;
  WanderPlay& wander = open.motion.wander;
  ASSERT_EQ(wander.ways(), 2);  // planted in the sample: free to wander two ways
  EXPECT_TRUE(wander.led_off().empty());
  wander.play(true);
  wander.set_phase(0.25);
  ASSERT_EQ(wander.led_off().size(), 1U);
  const auto crosses = static_cast<std::size_t>(open.session.posed().pose.shaft_line.cross_count);
  const auto at_end = wander.led_off().front().line_mm;
  EXPECT_EQ(at_end.size(), crosses + 2);
  wander.set_still(true);
  EXPECT_TRUE(wander.playing());
  const auto still = wander.led_off();
  ASSERT_EQ(still.size(), 4U);
  for (std::size_t i = 0; i < at_end.size(); ++i)
    EXPECT_LT((still[0].line_mm[i] - at_end[i]).norm(), 1e-9);
  // The pair of a way lies on either side of where the line stands.
  const auto& stands = open.session.posed().pose.shaft_line.crosses;
  for (const std::size_t way : {std::size_t{0}, std::size_t{2}}) {
    double most = 0.0;
    for (std::size_t i = 0; i < crosses; ++i) {
      const Vec3 middle = 0.5 * (still[way].line_mm[i + 1] + still[way + 1].line_mm[i + 1]);
      EXPECT_LT((middle - stands[i].centre_mm).norm(), 1e-9);
      most = std::max(most, (still[way].line_mm[i + 1] - middle).norm());
    }
    EXPECT_GT(most, 10.0);
  }
  EXPECT_EQ(wander.pose().shaft_line.crosses[0].centre_mm, stands[0].centre_mm);
  wander.play(false);
  EXPECT_TRUE(wander.led_off().empty());
}

TEST(WanderPlay, EndsWithAnEdit) {
  OpenTruck open;
  open.motion.wander.play(true);
  ASSERT_TRUE(open.session.set_field("column.hand_wheel_diameter_mm", "431").empty());
  EXPECT_FALSE(open.motion.wander.playing());
}

TEST(WanderPlay, AHeldLineHasNothingToPlay) {
  OpenTruck open("tender-sorted");
  open.motion.wander.play(true);
  EXPECT_FALSE(open.motion.wander.playing());
}

}  // namespace
}  // namespace tackbench::ui
