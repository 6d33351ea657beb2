// What is held goes where the hand goes: places of the real thing turned or moved by a known amount
// are projected, and the control has to change by that amount.
#include <Eigen/Geometry>

#include "core/basics/units.h"
#include "core/mechanism/solve.h"
#include "tests/ui/motion/open_truck.h"
#include "ui/motion/control_in_hand.h"

namespace tackbench::ui {
namespace {

constexpr PictureSize kPicture{800.0, 600.0};

HandView seen_by(const Camera& camera) {
  return {[camera](const Vec3& place) {
            const auto seen = camera.seen(place, kPicture);
            return seen ? ViewPoint{seen->at.x, -seen->at.y} : ViewPoint{};
          },
          [camera](const ViewPoint& at) {
            return camera.ray({at.x, -at.y}, kPicture);
          }};
}

Camera eye(double turn_deg, double rise_deg) {
  Camera camera;
  camera.target_mm = Vec3(-300.0, 200.0, 100.0);
  camera.turn = radians_from_degrees(turn_deg);
  camera.rise = radians_from_degrees(rise_deg);
  return camera;
}

struct HandWheel {
  Vec3 centre;
  Vec3 to_driver;
  double radius;
};

HandWheel hand_wheel(const PosedTruck& truck) {
  const ColumnStation& column = *truck.mechanism->project.column;
  const auto& cab = truck.pose.chassis_from_cab;
  const Vec3 centre = (cab * column.hand_wheel_centre).mm;
  return {centre, (centre - (cab * column.output_end).mm).normalized(),
          column.hand_wheel_diameter / 2.0};
}

Vec3 on_rim(const HandWheel& wheel, double angle) {
  const Vec3 up = wheel.to_driver.unitOrthogonal();
  return wheel.centre +
         wheel.radius * (Eigen::AngleAxisd(angle, wheel.to_driver).toRotationMatrix() * up);
}

TEST(ControlInHand, TheRimDrawnRoundTurnsTheHandWheelByThatAngle) {
  OpenTruck open;
  const PosedTruck& truck = open.session.posed();
  const HandWheel wheel = hand_wheel(truck);
  std::vector<HandView> views{hand_view(SheetView::front), hand_view(SheetView::plan)};
  for (const auto& [turn, rise] : {std::pair{35.0, 22.0}, {180.0, 20.0}, {150.0, 50.0}, {0.0, 0.0}})
    views.push_back(seen_by(eye(turn, rise)));
  for (const HandView& view : views) {
    for (const double by : {0.25, -0.8}) {
      double turned = 0.0;
      // In two steps, as a hand comes.
      for (int step = 0; step < 2; ++step) {
        const double at = 1.1 + 0.5 * by * step;
        turned += moved_by_hand(truck, {}, {}, view, view.place(on_rim(wheel, at)),
                                view.place(on_rim(wheel, at + 0.5 * by)))
                      .hand_wheel;
      }
      EXPECT_NEAR(turned, by, 1e-6);
    }
  }
}

// Anticlockwise for the driver is a left turn (ISO 8855: positive about the axis towards him).
TEST(ControlInHand, EdgeOnTheNearRimGoesWithTheHand) {
  OpenTruck open;
  const PosedTruck& truck = open.session.posed();
  const HandWheel wheel = hand_wheel(truck);
  // From the side a column is seen whole, so its wheel edge on.
  const HandView view = hand_view(SheetView::side);
  const Vec3 near_rim = wheel.centre + wheel.radius * Vec3::UnitY();
  const Vec3 turned =
      wheel.centre + Eigen::AngleAxisd(0.05, wheel.to_driver) * (near_rim - wheel.centre);
  EXPECT_NEAR(
      moved_by_hand(truck, {}, {}, view, view.place(near_rim), view.place(turned)).hand_wheel, 0.05,
      1e-4);
}

struct Wheel {
  Vec3 centre;
  Vec3 kingpin;
};

Wheel wheel_at(const PosedTruck& truck, Side side) {
  const Steering& steering = *truck.mechanism->steering;
  const KnuckleBody& body = side == Side::left ? steering.left : steering.right;
  const auto& placed = truck.pose.steering.knuckle(side).chassis_from_knuckle;
  return {(placed * Point<Knuckle>{body.wheel_centre_mm}).mm,
          (placed * Point<Knuckle>{body.kingpin_point_mm}).mm};
}

ControlInHand taken(const PosedTruck& truck, const HandView& view, const Vec3& place) {
  const SightRay ray = view.ray(view.place(place));
  const auto control = control_at(truck, "front_axle.tyre", ray, place);
  EXPECT_TRUE(control.has_value());
  return control.value_or(ControlInHand{});
}

TEST(ControlInHand, ATyreDrawnSidewaysSteersAndUpwardsRises) {
  OpenTruck open;
  const PosedTruck& truck = open.session.posed();
  const double rate = truck.pose.steering.left.steer_rate * truck.pose.arm_rate;
  for (const Side side : {Side::left, Side::right}) {
    const Wheel wheel = wheel_at(truck, side);
    const Vec3 nose = wheel.centre + Vec3(380.0, 0.0, 0.0);
    const double own_rate =
        truck.pose.steering.knuckle(side).steer_rate * truck.pose.arm_rate / rate;
    for (const auto& [turn, rise] : {std::pair{30.0, 40.0}, {0.0, 89.0}, {0.0, 2.0}}) {
      const HandView view = seen_by(eye(turn, rise));
      ControlInHand control = taken(truck, view, nose);
      EXPECT_EQ(control.side, side);
      // A small left turn about the vertical through the kingpin.
      const Vec3 turned =
          wheel.kingpin + Eigen::AngleAxisd(0.02, Vec3::UnitZ()) * (nose - wheel.kingpin);
      control.way = way_of_wheel(truck, control, view, view.place(nose), view.place(turned));
      EXPECT_EQ(control.way, WheelWay::steers) << turn << ' ' << rise;
      const Controls steered =
          moved_by_hand(truck, {}, control, view, view.place(nose), view.place(turned));
      EXPECT_NEAR(steered.hand_wheel * rate * own_rate, 0.02, 5e-4) << turn << ' ' << rise;
      EXPECT_EQ(steered.bump_left, 0.0);
      if (rise > 80.0) continue;  // from straight above nothing is seen to rise
      const Vec3 raised = nose + Vec3(0.0, 0.0, 12.0);
      control.way = way_of_wheel(truck, control, view, view.place(nose), view.place(raised));
      EXPECT_EQ(control.way, WheelWay::rises) << turn << ' ' << rise;
      const Controls lifted =
          moved_by_hand(truck, {}, control, view, view.place(nose), view.place(raised));
      EXPECT_NEAR(side == Side::left ? lifted.bump_left : lifted.bump_right, 12.0, 0.2);
      EXPECT_EQ(side == Side::left ? lifted.bump_right : lifted.bump_left, 0.0);
      EXPECT_EQ(lifted.hand_wheel, 0.0);
    }
  }
}

TEST(ControlInHand, AWheelWithoutDepthIsTheOneUnderTheHand) {
  OpenTruck open;
  const PosedTruck& truck = open.session.posed();
  for (const Side side : {Side::left, Side::right}) {
    for (const SheetView which : {SheetView::front, SheetView::plan}) {
      const HandView view = hand_view(which);
      const SightRay ray = view.ray(view.place(wheel_at(truck, side).centre));
      const auto control = control_at(truck, "front_axle.tyre", ray, std::nullopt);
      ASSERT_TRUE(control);
      EXPECT_EQ(control->side, side);
    }
  }
}

TEST(ControlInHand, APadTakesItsPedalAlong) {
  OpenTruck open;
  const PosedTruck& truck = open.session.posed();
  const auto pad_at = [&](std::size_t pedal, double pressed) -> Vec3 {
    Controls controls;
    controls.pedals[pedal] = pressed;
    const Pose pose = solved_pose(*truck.mechanism, controls);
    return (pose.chassis_from_cab * Point<Cab>{pose.pedals[pedal].pad_centre_mm}).mm;
  };
  for (std::size_t i = 0; i < truck.mechanism->pedals.size(); ++i) {
    const auto control = control_at(truck, "pedals.pedals[" + std::to_string(i) + "].pad_centre_mm",
                                    hand_view(SheetView::side).ray({}), std::nullopt);
    ASSERT_TRUE(control);
    EXPECT_EQ(control->pedal, static_cast<int>(i));
    for (const HandView& view : {hand_view(SheetView::side), seen_by(eye(75.0, 15.0))}) {
      const Controls moved = moved_by_hand(truck, {}, *control, view, view.place(pad_at(i, 0.0)),
                                           view.place(pad_at(i, 0.3)));
      // Along the pad's own arc, the hand straight.
      EXPECT_NEAR(moved.pedals[i], 0.3, 0.02) << i;
    }
  }
}

TEST(ControlInHand, ATruckStaysWithinItsReach) {
  OpenTruck open;
  const auto& locks = *open.session.judged().results.locks;
  ControlInHand tyre;
  tyre.kind = ControlKind::road_wheel;
  move_control(open.session, tyre, hand_view(SheetView::front), {0.0, 0.0}, {0.0, 5000.0});
  EXPECT_EQ(open.session.controls().bump_left, open.session.project().front_axle->suspension.bump);
  const HandWheel wheel = hand_wheel(open.session.posed());
  const HandView view = hand_view(SheetView::front);
  for (int i = 0; i < 100; ++i)
    move_control(open.session, {}, view, view.place(on_rim(wheel, 0.4 * i)),
                 view.place(on_rim(wheel, 0.4 * (i + 1))));
  EXPECT_NEAR(open.session.controls().hand_wheel, locks.left.turns * kRadiansPerTurn, 1e-9);
}

TEST(ControlInHand, OtherPartsAreNoControls) {
  OpenTruck open;
  for (const char* part : {"", "drag_link", "shapes.rails", "column"})
    EXPECT_FALSE(control_at(open.session.posed(), part, {}, std::nullopt)) << part;
}

}  // namespace
}  // namespace tackbench::ui
