#include "core/mechanism/shaft_line.h"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <algorithm>
#include <cmath>

#include "core/basics/units.h"
#include "tests/support/shaft_line_plan.h"

namespace tackbench::test {
namespace {

constexpr double kDegree = kRadiansPerDegree;

ShaftLinePose posed(const ShaftLine& line, double hand_wheel, const Vec3& shake = Vec3::Zero()) {
  Placement<Chassis, Cab> cab = line.cab_as_drawn;
  cab.shift_mm += shake;
  ShaftLinePose pose;
  pose_shaft_line(line, cab, hand_wheel, pose);
  return pose;
}

double number(double least, double most) {
  return least + (most - least) * (*rc::gen::inRange(0, 1000001)) / 1e6;
}

// A column sloping down and forward, joints that bend up to about 35 degrees each way, any
// clocking, any kind of joint.
ShaftPlan any_plan() {
  ShaftPlan plan;
  const int joints = *rc::gen::inRange(1, 5);
  std::vector<double> bends;
  std::vector<double> planes;
  for (int i = 0; i < joints; ++i) {
    bends.push_back(number(0.0, 35.0));
    planes.push_back(number(-180.0, 180.0));
  }
  plan = bent_chain(bends, planes);
  for (Shaft& shaft : plan.shafts) shaft.fork_offset = number(-kPi, kPi);
  for (ShaftJoint& joint : plan.joints) {
    joint.kind =
        *rc::gen::element(JointKind::universal, JointKind::universal, JointKind::double_joint,
                          JointKind::double_centred, JointKind::coupling_disc);
  }
  plan.first_yoke_clocking = number(-kPi, kPi);
  return plan;
}

// A left turn is anticlockwise for the driver, who looks along +X here: the top goes to the left.
TEST(ShaftLine, LeftTurnTakesTheTopOfTheColumnLeft) {
  const ShaftLine line = line_of(bent_chain({25}, {0}));
  EXPECT_TRUE(posed(line, 0.0).crosses[0].in_pin.isApprox(Vec3::UnitZ(), 1e-15));
  const Vec3 pin = posed(line, 10.0 * kDegree).crosses[0].in_pin;
  EXPECT_NEAR(pin.y(), std::sin(10.0 * kDegree), 1e-15);
}

TEST(ShaftLine, ClockingIsRightHandedFromHandToRoad) {
  ShaftPlan plan = bent_chain({25}, {0});
  plan.first_yoke_clocking = 90.0 * kDegree;
  EXPECT_TRUE(posed(line_of(plan), 0.0).crosses[0].in_pin.isApprox(-Vec3::UnitY(), 1e-15));
}

TEST(ShaftLine, WithoutJointsTheColumnDrivesTheBox) {
  const ShaftLine line = line_of(ShaftPlan{});
  EXPECT_FALSE(line.has_joints);
  const ShaftLinePose pose = posed(line, 1.25, Vec3(5, 0, 0));
  EXPECT_EQ(pose.box_turn, 1.25);
  EXPECT_EQ(pose.box_rate, 1.0);
  EXPECT_EQ(pose.cross_count, 0);
  EXPECT_TRUE(pose.closes);
  EXPECT_EQ(hand_wheel_from_box_turn(line, line.cab_as_drawn, -0.75), -0.75);
}

RC_GTEST_PROP(ShaftLine, ZeroGivesZero, ()) {
  RC_ASSERT(posed(line_of(any_plan()), 0.0).box_turn == 0.0);
}

// Every pin stays square to its own shaft and, in a cross, to the other pin.
RC_GTEST_PROP(ShaftLine, PinsStaySquare, ()) {
  const ShaftLine line = line_of(any_plan());
  const Vec3 shake(number(-10, 10), number(-10, 10), number(-10, 10));
  for (const Vec3& shift : {Vec3(Vec3::Zero()), shake}) {
    const ShaftLinePose pose = posed(line, number(-12, 12), shift);
    for (std::size_t i = 0; i < line.crosses.size(); ++i) {
      const CrossPose& cross = pose.crosses[i];
      RC_ASSERT(std::abs(cross.in_pin.dot(cross.in_direction)) < 1e-12);
      RC_ASSERT(std::abs(cross.out_pin.dot(cross.out_direction)) < 1e-12);
      RC_ASSERT(std::abs(cross.in_pin.norm() - 1.0) < 1e-12);
      RC_ASSERT(std::abs(cross.out_pin.norm() - 1.0) < 1e-12);
      if (line.crosses[i].geometry.turning == JointTurning::cross) {
        RC_ASSERT(std::abs(cross.in_pin.dot(cross.out_pin)) < 1e-12);
      }
    }
  }
}

// The pin that a shaft carries turns by what the pose says its shaft turns.
RC_GTEST_PROP(ShaftLine, TurnsAreThoseOfThePins, ()) {
  const ShaftLine line = line_of(any_plan());
  const double turn = number(-12, 12);
  const ShaftLinePose before = posed(line, 0.0);
  const ShaftLinePose after = posed(line, turn);
  for (std::size_t i = 0; i < line.crosses.size(); ++i) {
    const CrossPose& cross = after.crosses[i];
    // Left positive is left-handed about the axis from hand to road.
    const double in = -angle_about(cross.in_direction, before.crosses[i].in_pin, cross.in_pin);
    const double out = -angle_about(cross.out_direction, before.crosses[i].out_pin, cross.out_pin);
    RC_ASSERT(std::abs(wrapped(in - cross.in_turn)) < 1e-11);
    RC_ASSERT(std::abs(wrapped(out - cross.out_turn)) < 1e-11);
    RC_ASSERT(std::abs(cross.in_turn - turn) < 4.0 * kPi);
  }
}

RC_GTEST_PROP(ShaftLine, HalfTurnsComeOutAsHalfTurns, ()) {
  const ShaftLine line = line_of(any_plan());
  const int halves = *rc::gen::inRange(-8, 9);
  RC_ASSERT(std::abs(posed(line, halves * kPi).box_turn - halves * kPi) < 1e-11);
}

RC_GTEST_PROP(ShaftLine, RatioIsTheSlope, ()) {
  const ShaftLine line = line_of(any_plan());
  const double at = number(-12, 12);
  const Vec3 shake(number(-10, 10), number(-10, 10), number(-10, 10));
  constexpr double kHalf = 1e-5;
  for (const Vec3& shift : {Vec3(Vec3::Zero()), shake}) {
    const double slope =
        (posed(line, at + kHalf, shift).box_turn - posed(line, at - kHalf, shift).box_turn) /
        (2.0 * kHalf);
    RC_ASSERT(std::abs(posed(line, at, shift).box_rate - slope) < 1e-6);
  }
}

RC_GTEST_PROP(ShaftLine, ForthAndBackReturns, ()) {
  const ShaftLine line = line_of(any_plan());
  const double at = number(-20, 20);
  Placement<Chassis, Cab> cab = line.cab_as_drawn;
  RC_ASSERT(std::abs(hand_wheel_from_box_turn(line, cab, posed(line, at).box_turn) - at) < 1e-12);
  const Vec3 shake(number(-10, 10), number(-10, 10), number(-10, 10));
  cab.shift_mm += shake;
  RC_ASSERT(std::abs(hand_wheel_from_box_turn(line, cab, posed(line, at, shake).box_turn) - at) <
            1e-11);
}

// A truck and its mirror image: right becomes left, and clocking changes hands.
RC_GTEST_PROP(ShaftLine, MirrorImageMirrorsTheTurn, ()) {
  const ShaftPlan plan = any_plan();
  const auto mirrored = [](const Vec3& v) { return Vec3(v.x(), -v.y(), v.z()); };
  ShaftPlan image = plan;
  image.column_axis = mirrored(plan.column_axis);
  image.box_axis = mirrored(plan.box_axis);
  for (ShaftJoint& joint : image.joints) joint.centre = mirrored(joint.centre);
  for (Shaft& shaft : image.shafts) shaft.fork_offset = -shaft.fork_offset;
  image.first_yoke_clocking = -plan.first_yoke_clocking;
  const double at = number(-12, 12);
  const Vec3 shake(number(-10, 10), number(-10, 10), number(-10, 10));
  const ShaftLine line = line_of(plan);
  const ShaftLine other = line_of(image);
  RC_ASSERT(std::abs(posed(line, at).box_turn + posed(other, -at).box_turn) < 1e-11);
  RC_ASSERT(std::abs(posed(line, at, shake).box_turn +
                     posed(other, -at, mirrored(shake)).box_turn) < 1e-7);
}

// Moving, yawing and pitching cab and chassis together changes nothing.
RC_GTEST_PROP(ShaftLine, MovingEverythingChangesNothing, ()) {
  const ShaftPlan plan = any_plan();
  const bool pitched = *rc::gen::arbitrary<bool>();
  const double angle = number(-0.6, 0.6);
  const Mat3 turn = pitched ? pitch_turn(angle) : turn_about(Vec3::UnitZ(), angle);
  const Vec3 shift(number(-500, 500), number(-500, 500), number(-500, 500));
  ShaftPlan other = plan;
  other.column_axis = turn * plan.column_axis;
  other.box_axis = turn * plan.box_axis;
  for (ShaftJoint& joint : other.joints) joint.centre = turn * joint.centre + shift;
  other.cab.place = shift;
  if (pitched) other.cab.pitch = angle;
  const double at = number(-12, 12);
  const Vec3 shake(number(-10, 10), number(-10, 10), number(-10, 10));
  const ShaftLine line = line_of(plan);
  const ShaftLine moved = line_of(other);
  RC_ASSERT(std::abs(posed(line, at).box_turn - posed(moved, at).box_turn) < 1e-10);
  RC_ASSERT(std::abs(posed(line, at, shake).box_turn - posed(moved, at, turn * shake).box_turn) <
            1e-9);
}

// The constants used at rest and the vectors used when the cab has moved are two ways to the same
// answer.
RC_GTEST_PROP(ShaftLine, MovedByAHairAgreesWithRest, ()) {
  const ShaftLine line = line_of(any_plan());
  const double at = number(-12, 12);
  const ShaftLinePose rest = posed(line, at);
  const ShaftLinePose hair = posed(line, at, Vec3(0, 0, 1e-10));
  RC_ASSERT(std::abs(rest.box_turn - hair.box_turn) < 1e-9);
  RC_ASSERT(std::abs(rest.box_rate - hair.box_rate) < 1e-9);
  for (std::size_t i = 0; i < line.crosses.size(); ++i) {
    RC_ASSERT(rest.crosses[i].in_pin.isApprox(hair.crosses[i].in_pin, 1e-8));
    RC_ASSERT(rest.crosses[i].out_pin.isApprox(hair.crosses[i].out_pin, 1e-8));
    RC_ASSERT(std::abs(rest.crosses[i].out_turn - hair.crosses[i].out_turn) < 1e-8);
  }
}

TEST(ShaftLine, ConstantVelocityKindsHandOnEvenly) {
  for (const JointKind kind : {JointKind::double_centred, JointKind::coupling_disc}) {
    ShaftPlan plan = bent_chain({28}, {0});
    plan.joints[0].kind = kind;
    const ShaftLine line = line_of(plan);
    for (double at = -4.0; at < 4.0; at += 0.37) {
      EXPECT_NEAR(posed(line, at).box_turn, at, 1e-14);
      EXPECT_EQ(posed(line, at).box_rate, 1.0);
    }
  }
}

// Each cross of a double joint stands on its own shaft's line, the two the spacing apart, both at
// half the bend; with its forks aligned it is even too.
TEST(ShaftLine, DoubleJointLiesOnBothItsShafts) {
  ShaftPlan plan = bent_chain({28, 15}, {0, 60});
  plan.joints[0].kind = JointKind::double_joint;
  plan.joints[0].cross_spacing = 44.0;
  const ShaftLine line = line_of(plan);
  ASSERT_EQ(line.crosses.size(), 3u);
  EXPECT_NEAR(line.spans[0].length, 44.0, 1e-12);
  EXPECT_NEAR(line.crosses[0].angle, 14.0 * kDegree, 1e-12);
  EXPECT_NEAR(line.crosses[1].angle, 14.0 * kDegree, 1e-12);
  EXPECT_NEAR(line.crosses[0].centre_mm.cross(Vec3::UnitX()).norm(), 0.0, 1e-12);
  const ShaftLinePose pose = posed(line, 0.8);
  EXPECT_NEAR(pose.crosses[0].ratio * pose.crosses[1].ratio, 1.0, 1e-12);
  EXPECT_NEAR(pose.crosses[1].out_turn, 0.8, 1e-12);
}

// Three joints, one slip, a rod end on the first shaft: the cab takes the first joint along, the
// box keeps the last, the middle one goes where length and eye send it.
TEST(ShaftLine, HeldJointFollowsTheCab) {
  ShaftPlan plan = bent_chain({20, 25, 15}, {0, 70, -40});
  plan.shafts[1].slip = SlipKind::spline;
  const Vec3 eye = 0.4 * plan.joints[0].centre + 0.6 * plan.joints[1].centre;
  plan.supports = {eye_at(eye, 0)};
  const ShaftLine line = line_of(plan);
  const Vec3 shake(-12, 8, 10);
  const ShaftLinePose pose = posed(line, 0.3, shake);
  ASSERT_TRUE(pose.closes);
  EXPECT_TRUE(pose.crosses[1].held);
  EXPECT_TRUE(pose.crosses[0].centre_mm.isApprox(line.crosses[0].centre_mm + shake, 1e-14));
  EXPECT_TRUE(pose.crosses[2].centre_mm.isApprox(line.crosses[2].centre_mm, 1e-14));
  EXPECT_NEAR((pose.crosses[1].centre_mm - pose.crosses[0].centre_mm).norm(), line.spans[0].length,
              1e-9);
  EXPECT_NEAR((eye - pose.crosses[0].centre_mm).cross(pose.crosses[0].out_direction).norm(), 0.0,
              1e-9);
  // By the lever rule the far joint goes the other way, near enough 2/3 of the shake sideways.
  const Vec3 moved = pose.crosses[1].centre_mm - line.crosses[1].centre_mm;
  EXPECT_LT(moved.y(), -4.0);
}

TEST(ShaftLine, CollarAndBlockHoldTheirOwn) {
  ShaftPlan plan = bent_chain({20, 25, 15}, {0, 70, -40});
  plan.shafts[0].slip = SlipKind::spline;
  plan.shafts[1].slip = SlipKind::spline;
  const Vec3 eye = 0.5 * (plan.joints[0].centre + plan.joints[1].centre);
  plan.supports = {eye_at(eye, 0, true, true)};
  const ShaftLine line = line_of(plan);
  const ShaftLinePose pose = posed(line, 0.0, Vec3(-12, 8, 10));
  ASSERT_TRUE(pose.closes);
  EXPECT_NEAR((pose.crosses[1].centre_mm - eye).norm(), 150.0, 1e-9);
  // A bearing block on the shaft between takes its line from the chassis whatever the cab does.
  plan = bent_chain({20, 10, 10, 15}, {0, 70, -40, 30});
  plan.shafts[0].slip = plan.shafts[2].slip = SlipKind::spline;
  ShaftSupport block = eye_at(0.5 * (plan.joints[1].centre + plan.joints[2].centre), 1, true);
  block.kind = SupportKind::bearing_block;
  plan.supports = {block};
  const ShaftLine held = line_of(plan);
  const ShaftLinePose shaken = posed(held, 0.0, Vec3(9, -8, 10));
  ASSERT_TRUE(shaken.closes);
  for (const std::size_t i : {1u, 2u}) {
    EXPECT_LT((shaken.crosses[i].centre_mm - held.crosses[i].centre_mm).norm(), 1e-8);
  }
}

TEST(ShaftLine, AnUnheldJointKeepsNearItsPlaceAndIsMarked) {
  ShaftPlan plan = bent_chain({20, 25, 15}, {0, 70, -40});
  plan.shafts[1].slip = SlipKind::spline;
  const ShaftLine line = line_of(plan);
  EXPECT_TRUE(line.crosses[0].held);
  EXPECT_FALSE(line.crosses[1].held);
  EXPECT_TRUE(line.crosses[2].held);
  const ShaftLinePose pose = posed(line, 0.0, Vec3(0, 0, 10));
  ASSERT_TRUE(pose.closes);
  EXPECT_FALSE(pose.crosses[1].held);
  EXPECT_NEAR((pose.crosses[1].centre_mm - pose.crosses[0].centre_mm).norm(), line.spans[0].length,
              1e-9);
  EXPECT_LT((pose.crosses[1].centre_mm - line.crosses[1].centre_mm).norm(), 10.0);
}

TEST(ShaftLine, ALengthThatCannotBeKeptIsSaid) {
  const ShaftLine line = line_of(bent_chain({20, 20}, {0, 180}));
  EXPECT_TRUE(posed(line, 0.2).closes);
  const Vec3 along = line.crosses[0].geometry.out_direction;
  const ShaftLinePose pose = posed(line, 0.2, 7.0 * along);
  EXPECT_FALSE(pose.closes);
  EXPECT_NEAR(pose.misfit, 7.0, 1e-9);
  // One joint between column and box gives nothing at all.
  const ShaftLinePose single = posed(line_of(bent_chain({20}, {0})), 0.2, Vec3(0, 3, 4));
  EXPECT_FALSE(single.closes);
  EXPECT_NEAR(single.misfit, 5.0, 1e-12);
}

// Column and first joint go with a cab that is placed elsewhere.
TEST(ShaftLine, JointsInCabCoordinatesMoveWithTheCab) {
  ShaftPlan plan = bent_chain({20, 20}, {0, 90});
  plan.cab.place = Vec3(-300, 40, 700);
  plan.cab.pitch = 6.0 * kDegree;
  const ShaftLine in_chassis = line_of(plan);
  const Placement<Cab, Chassis> cab_from_chassis = chassis_from_cab(plan.cab).inverse();
  Project project = project_of(plan);
  ShaftLineStation station = *project.shaft_line;
  station.joints[0].rides_on = RidesOn::cab;
  station.joints[0].centre = (cab_from_chassis * Point<Chassis>{plan.joints[0].centre}).mm;
  project.shaft_line = std::make_shared<ShaftLineStation>(station);
  const Result<ShaftLine> in_cab = compile_shaft_line(project);
  ASSERT_TRUE(in_cab.ok());
  EXPECT_LT((in_cab->crosses[0].centre_mm - in_chassis.crosses[0].centre_mm).norm(), 1e-9);
  EXPECT_NEAR(posed(*in_cab, 1.1).box_turn, posed(in_chassis, 1.1).box_turn, 1e-12);
}

std::vector<std::string> places(const Project& project) {
  std::vector<std::string> all;
  const Result<ShaftLine> line = compile_shaft_line(project);
  if (!line.ok()) {
    for (const Problem& problem : line.problems()) all.push_back(problem.place);
  }
  return all;
}

// Two joints 400 apart along X with an eye on the shaft between them.
ShaftPlan plan_with_eye(const Vec3& eye) {
  ShaftPlan plan;
  plan.joints = {joint_at(Vec3::Zero()), joint_at(Vec3(400, 0, 0))};
  plan.shafts = {shaft_with(SlipKind::spline)};
  plan.supports = {eye_at(eye, 0)};
  return plan;
}

std::string first_fault(const ShaftPlan& plan) {
  const Result<ShaftLine> line = compile_shaft_line(project_of(plan));
  return line.ok() ? std::string() : one_line(line.problems().front());
}

TEST(ShaftLine, AnEyeStandsBetweenTheJointsOfItsShaft) {
  EXPECT_EQ(first_fault(plan_with_eye(Vec3(200, 0, 0))), "");
  EXPECT_EQ(first_fault(plan_with_eye(Vec3(0, 0, 0))), "");  // at a joint: useless, but there
  EXPECT_NEAR(line_of(plan_with_eye(Vec3(150, 3, 4))).supports[0].from_hand_cross, 150.0, 1e-12);
  EXPECT_NEAR(line_of(plan_with_eye(Vec3(150, 3, 4))).supports[0].off_line, 5.0, 1e-12);
  EXPECT_EQ(
      first_fault(plan_with_eye(Vec3(-30, 0, 0))),
      "shaft_line.supports[0].eye_mm: 30 mm before the joint at the hand end of shaft 0; give "
      "a place between the shaft's two joints, or the index of the shaft that goes through "
      "the eye");
  EXPECT_NE(first_fault(plan_with_eye(Vec3(520, 0, 0))).find("120 mm beyond the joint"),
            std::string::npos);
}

TEST(ShaftLine, AShaftGoesThroughItsEye) {
  ShaftPlan plan = plan_with_eye(Vec3(200, 0, 0));
  plan.shafts[0].outside_diameter = 25.0;
  plan.supports[0].bore = 25.0;
  EXPECT_EQ(first_fault(plan), "");
  plan.supports[0].bore = 22.0;
  EXPECT_EQ(first_fault(plan),
            "shaft_line.supports[0].bore_mm: shaft 0 of 25 mm does not go through an eye of 22 mm; "
            "give a bore of at least 25, or the shaft's own diameter "
            "(shaft_line.shafts[0].outside_diameter_mm)");
}

TEST(ShaftLine, EveryFaultIsNamed) {
  ShaftPlan plan = bent_chain({20, 20}, {0, 90});
  EXPECT_TRUE(places(project_of(plan)).empty());

  ShaftPlan faulty = plan;
  faulty.joints[1].centre = faulty.joints[0].centre;
  EXPECT_EQ(places(project_of(faulty)),
            (std::vector<std::string>{"shaft_line.joints[1].centre_mm"}));

  faulty = plan;
  faulty.box_axis = -plan.box_axis;
  EXPECT_EQ(places(project_of(faulty)),
            (std::vector<std::string>{"shaft_line.joints[1].centre_mm"}));

  faulty = plan;
  faulty.shafts.clear();
  faulty.supports = {eye_at(Vec3::Zero(), 0)};
  EXPECT_EQ(places(project_of(faulty)), (std::vector<std::string>{"shaft_line.shafts"}));

  faulty = plan;
  faulty.supports = {eye_at(Vec3::Zero(), 1), eye_at(Vec3::Zero(), -1)};
  faulty.supports[0].rides_on = RidesOn::axle;
  EXPECT_EQ(places(project_of(faulty)), (std::vector<std::string>{"shaft_line.supports[0].shaft",
                                                                  "shaft_line.supports[0].rides_on",
                                                                  "shaft_line.supports[1].shaft"}));

  Project project = project_of(plan);
  auto column = std::make_shared<ColumnStation>(*project.column);
  column->hand_wheel_centre.mm += 2000.0 * plan.column_axis;
  column->output_end.mm += 2000.0 * plan.column_axis;
  project.column = column;
  EXPECT_EQ(places(project), (std::vector<std::string>{"shaft_line.joints[0].centre_mm"}));

  project.column = nullptr;
  project.steering_box = nullptr;
  EXPECT_EQ(places(project), (std::vector<std::string>{"column", "steering_box"}));
}

}  // namespace
}  // namespace tackbench::test
