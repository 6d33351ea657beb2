// The truck's own controls taken in the view in space by real events: on the line drawing, and by
// OpenGL where the display has it.
#include <Eigen/Geometry>
#include <QCheckBox>
#include <algorithm>

#include "core/basics/units.h"
#include "tests/ui/space/open_space.h"

namespace tackbench::ui {
namespace {

// Looks at a place from that far.
void look_at(OpenSpace& open, const Vec3& place, double distance, double turn_deg,
             double rise_deg) {
  Camera camera = open.view.camera();
  camera.target_mm = place;
  camera.distance = distance;
  camera.turn = radians_from_degrees(turn_deg);
  camera.rise = radians_from_degrees(rise_deg);
  open.view.set_camera(camera);
}

void expect_nothing_else(OpenSpace& open, const Camera& before) {
  EXPECT_EQ(open.view.camera().turn, before.turn);
  EXPECT_EQ(open.view.camera().target_mm, before.target_mm);
  EXPECT_FALSE(open.session.can_undo()) << "controls are no part of the document";
  EXPECT_TRUE(open.session.selected().empty());
}

TEST(SpaceControl, TheRimDrawnRoundTurnsTheHandWheelByThatAngle) {
  OpenSpace open;
  const ColumnStation& column = *open.session.project().column;
  const auto& cab = open.session.posed().pose.chassis_from_cab;
  const Vec3 centre = (cab * column.hand_wheel_centre).mm;
  const Vec3 to_driver = (centre - (cab * column.output_end).mm).normalized();
  const double radius = column.hand_wheel_diameter / 2.0;
  const auto rim = [&](double angle) {
    return (centre + Eigen::AngleAxisd(angle, to_driver) * (radius * to_driver.unitOrthogonal()))
        .eval();
  };
  for (const double turn : {150.0, 215.0}) {  // over either shoulder of the driver
    look_at(open, centre, 1800.0, turn, 35.0);
    const Camera before = open.view.camera();
    open.session.set_controls({});
    open.settle();
    double start = 0.0;
    while (start < 6.0 &&
           open.part_at(open.view.place_of(rim(start))->toPoint()) != "column.hand_wheel_centre_mm")
      start += 0.1;
    ASSERT_LT(start, 6.0) << "the rim is nowhere in sight";
    constexpr double kTurn = -1.2;
    open.press(open.view.place_of(rim(start))->toPoint());
    for (int i = 1; i <= 12; ++i)
      open.move(open.view.place_of(rim(start + kTurn * i / 12.0))->toPoint());
    open.release(open.view.place_of(rim(start + kTurn))->toPoint());
    EXPECT_NEAR(open.session.controls().hand_wheel, kTurn, 0.02);
    expect_nothing_else(open, before);
  }
}

TEST(SpaceControl, ARoadWheelSteersSidewaysAndRisesUpwards) {
  OpenSpace open;
  const FrontAxleStation& axle = *open.session.project().front_axle;
  const double radius = axle.tyre.diameter / 2.0;
  const Vec3 wheel(0.0, axle.track / 2.0, axle.wheel_centre_height);
  look_at(open, wheel, 5000.0, 0.0, 60.0);
  const Camera before = open.view.camera();
  // The front of the tread, seen from ahead and above: the truck's left lies to the right.
  const QPoint nose = open.view.place_of(wheel + radius * Vec3(0.9, 0.0, 0.43))->toPoint();
  ASSERT_EQ(open.part_at(nose), "front_axle.tyre");
  open.drag(nose, nose + QPoint(20, 0));
  open.settle();
  EXPECT_GT(open.session.posed().pose.steering.left.steer, radians_from_degrees(2.0));
  EXPECT_EQ(open.session.controls().bump_left, 0.0);
  expect_nothing_else(open, before);

  open.session.set_controls({});
  look_at(open, wheel, 5000.0, 60.0, 10.0);
  open.settle();
  const QPoint wall = open.view.place_of(wheel + Vec3(0.75 * radius, 100.0, 0.0))->toPoint();
  ASSERT_EQ(open.part_at(wall), "front_axle.tyre");
  const QPointF low = *open.view.place_of(wheel);
  const QPointF high = *open.view.place_of(wheel + Vec3(0.0, 0.0, 40.0));
  open.drag(wall, wall + (high - low).toPoint());
  EXPECT_NEAR(open.session.controls().bump_left, 40.0, 4.0);  // whole pixels of 2 to 3 mm
  EXPECT_EQ(open.session.controls().bump_right, 0.0);
  EXPECT_EQ(open.session.controls().hand_wheel, 0.0);
  open.settle();
  open.drag(wall, wall - QPoint(0, 900));
  EXPECT_EQ(open.session.controls().bump_left, axle.suspension.bump);
}

TEST(SpaceControl, APadMovesItsPedal) {
  OpenSpace open;
  const auto& pedal = open.session.project().pedals->pedals.front();
  const auto& cab = open.session.posed().pose.chassis_from_cab;
  const Vec3 pad = (cab * pedal.pad_centre).mm;
  look_at(open, pad, 900.0, 130.0, 20.0);
  const Camera before = open.view.camera();
  const auto at = open.where_seen("pedals.pedals[0].pad_centre_mm");
  ASSERT_TRUE(at);
  const Vec3 way = cab.turn * open.session.posed().pose.pedals[0].pad_direction;
  const QPointF step = *open.view.place_of(pad + 30.0 * way) - *open.view.place_of(pad);
  open.drag(*at, *at + step.toPoint());
  EXPECT_GT(open.session.controls().pedals[0], 0.1);
  const double pressed = open.session.controls().pedals[0];
  open.settle();
  const Vec3 moved = (open.session.posed().pose.chassis_from_cab *
                      Point<Cab>{open.session.posed().pose.pedals[0].pad_centre_mm})
                         .mm;
  EXPECT_NEAR((moved - pad).norm(), 30.0, 3.0);
  EXPECT_LT(pressed, 1.0);
  expect_nothing_else(open, before);
}

// A press without a movement chooses, as on every other part.
TEST(SpaceControl, AClickOnAControlChoosesIt) {
  OpenSpace open;
  const auto at = open.where_seen("front_axle.tyre");
  ASSERT_TRUE(at);
  open.press(*at);
  open.move(*at + QPoint(1, 1));
  open.release(*at + QPoint(1, 1));
  EXPECT_EQ(open.session.selected(), "front_axle.tyre");
  EXPECT_EQ(open.session.controls().hand_wheel, 0.0);
}

TEST(SweptInSpace, TheCheckBoxShowsThemHereAndInTheOtherView) {
  OpenSpace open;
  auto* box = open.view.findChild<QCheckBox*>();
  ASSERT_NE(box, nullptr);
  const QImage before = open.picture();
  EXPECT_TRUE(open.view.shown().ghosts.empty());
  QTest::mouseClick(box, Qt::LeftButton, {}, QPoint(8, box->height() / 2));
  EXPECT_TRUE(open.motion.swept.shown());
  // At each of the four ends both wheels, the arm, the links and the pedals.
  EXPECT_GE(open.view.shown().ghosts.size(), 4U * 6U);
  const QImage swept = open.picture();
  EXPECT_NE(swept, before);
  open.motion.swept.show(false);
  EXPECT_FALSE(box->isChecked());
  EXPECT_EQ(open.picture(), before);
}

TEST(SweptInSpace, LeavesOutWhatADragMadeStale) {
  OpenSpace open;
  open.motion.swept.show(true);
  const std::size_t all = open.view.shown().ghosts.size();
  const QPoint from = open.at("drag_link.knuckle_ball_mm");
  open.press(from);
  open.move(from + QPoint(12, -8));
  open.session.wait_until_fresh();
  EXPECT_TRUE(open.session.dragging());
  EXPECT_TRUE(open.view.shown().ghosts.empty());
  open.release(from + QPoint(12, -8));
  open.settle();
  EXPECT_EQ(open.view.shown().ghosts.size(), all);
}

TEST(WanderInSpace, StandsStillAtItsEndsWhereLessMotionIsWanted) {
  OpenSpace open;
  open.motion.wander.set_still(true);
  open.motion.wander.play(true);
  const auto shafts = static_cast<std::size_t>(
      std::count_if(open.view.shown().scene->bodies.begin(), open.view.shown().scene->bodies.end(),
                    [](const SceneBody& body) {
                      return std::holds_alternative<TurnsWithCross>(body.rider) ||
                             std::holds_alternative<TurnsWithBoxInput>(body.rider) ||
                             std::holds_alternative<TurnsWithColumn>(body.rider);
                    }));
  EXPECT_EQ(open.view.shown().ghosts.size(), 4U * shafts);  // two ways, two ends each
  open.motion.wander.play(false);
  EXPECT_TRUE(open.view.shown().ghosts.empty());
}

}  // namespace
}  // namespace tackbench::ui
