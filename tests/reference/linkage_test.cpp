// Published and computed values of spatial and planar loops. F = read in the named text, C =
// computed from the stated formula, M = from memory of the named source, re-solved.
#include <gtest/gtest.h>

#include <algorithm>
#include <array>
#include <cmath>

#include "core/basics/units.h"
#include "core/mechanism/solve.h"

namespace tackbench {
namespace {

constexpr double kDegree = kRadiansPerDegree;

double degrees(double radians) {
  return degrees_from_radians(radians);
}

// Spatial four-bar with a closed form (C): input axis z through the origin, crank 50; output axis x
// through (0, 0, 120), arm 90 along +y at angle 0; link^2 = 25000. Then tan(phi) = (5/12)
// sin(theta), and a second branch at phi + 180.
class ExactSpatialLoop : public testing::Test {
 protected:
  const Crank input_ = crank_through(Vec3::Zero(), Vec3::UnitZ(), Vec3(50.0, 0.0, 0.0));
  const Crank output_ = crank_through(Vec3(0.0, 0.0, 120.0), Vec3::UnitX(), Vec3(0.0, 90.0, 120.0));
  const double length_ = std::sqrt(25000.0);
};

TEST_F(ExactSpatialLoop, FollowsItsClosedForm) {
  const LinkLoop loop = loop_as_drawn(output_, length_, input_.ball(0.0));
  const LinkLoop second = loop_as_drawn(output_, length_, input_.ball(0.0), kPi);
  const std::array<std::pair<double, double>, 7> table{{{0.0, 0.0},
                                                        {30.0, 11.768289},
                                                        {60.0, 19.841670},
                                                        {90.0, 22.619865},
                                                        {120.0, 19.841670},
                                                        {150.0, 11.768289},
                                                        {180.0, 0.0}}};
  for (const auto& [theta, phi] : table) {
    const LoopAnswer answer = solve_loop(loop, input_.ball(theta * kDegree));
    ASSERT_TRUE(answer.closes);
    EXPECT_NEAR(degrees(answer.angle), phi, 1e-6);
    EXPECT_NEAR(std::tan(answer.angle), 5.0 / 12.0 * std::sin(theta * kDegree), 1e-14);
    const LoopAnswer other = solve_loop(second, input_.ball(theta * kDegree));
    EXPECT_NEAR(std::abs(degrees(wrapped(other.angle - answer.angle))), 180.0, 1e-9);
  }
}

TEST_F(ExactSpatialLoop, RatioIsTheDerivativeOfTheClosedForm) {
  const LinkLoop loop = loop_as_drawn(output_, length_, input_.ball(0.0));
  for (double theta = 0.0; theta < 6.3; theta += 0.1) {
    const LoopAnswer answer = solve_loop(loop, input_.ball(theta));
    const Vec3 along = (output_.ball(answer.angle) - input_.ball(theta)).normalized();
    const double ratio =
        link_ratio(along, input_.ball_rate(theta), output_.ball_rate(answer.angle));
    const double t = 5.0 / 12.0 * std::sin(theta);
    EXPECT_NEAR(ratio, 5.0 / 12.0 * std::cos(theta) / (1.0 + t * t), 1e-13);
  }
}

// Parallel axes make the spatial loop a planar four-bar. Norton, Design of Machinery, Ex. 4-1
// (M, re-solved): a = 40, b = 120, c = 80, d = 100, theta2 = 40: theta4 = 57.3249 (open) and
// -98.0050 (crossed); theta3 = 20.298 and -60.978; transmission angle 37.027.
TEST(PlanarFourBar, IsTheLimitOfTheSpatialLoop) {
  const Crank crank = crank_through(Vec3::Zero(), Vec3::UnitZ(), Vec3(40.0, 0.0, 0.0));
  // Along its axis a ball may sit anywhere: the planar answer must not change.
  for (const double offset : {0.0, 70.0}) {
    const double length = std::hypot(120.0, offset);
    const Crank rocker =
        crank_through(Vec3(100.0, 0.0, 0.0), Vec3::UnitZ(), Vec3(180.0, 0.0, offset));
    const Vec3 ball = crank.ball(40.0 * kDegree);
    const LinkLoop open = loop_as_drawn(rocker, length, ball, 57.0 * kDegree);
    const LinkLoop crossed = loop_as_drawn(rocker, length, ball, -98.0 * kDegree);
    EXPECT_NEAR(degrees(solve_loop(open, ball).angle), 57.3249, 1e-4);
    EXPECT_NEAR(degrees(solve_loop(crossed, ball).angle), -98.0050, 1e-4);
    if (offset != 0.0) continue;
    const LoopAnswer answer = solve_loop(open, ball);
    const Vec3 coupler = rocker.ball(answer.angle) - ball;
    EXPECT_NEAR(degrees(std::atan2(coupler.y(), coupler.x())), 20.298, 1e-3);
    EXPECT_NEAR(degrees(effective_angle(
                    leverage(rocker, rocker.ball_rate(answer.angle), coupler.normalized()))),
                37.027, 1e-3);
    const Vec3 crossing = rocker.ball(solve_loop(crossed, ball).angle) - ball;
    EXPECT_NEAR(degrees(std::atan2(crossing.y(), crossing.x())), -60.978, 1e-3);
  }
}

// The same example's transmission angle over a turn: 26.384 to 86.417 (M, re-solved).
TEST(PlanarFourBar, TransmissionAngleOverATurn) {
  const Crank crank = crank_through(Vec3::Zero(), Vec3::UnitZ(), Vec3(40.0, 0.0, 0.0));
  const Crank rocker = crank_through(Vec3(100.0, 0.0, 0.0), Vec3::UnitZ(), Vec3(180.0, 0.0, 0.0));
  const LinkLoop loop = loop_as_drawn(rocker, 120.0, crank.ball(40.0 * kDegree), 57.0 * kDegree);
  double least = 90.0;
  double most = 0.0;
  for (int step = 0; step < 36000; ++step) {
    const Vec3 ball = crank.ball(step * 0.01 * kDegree);
    const LoopAnswer answer = solve_loop(loop, ball);
    ASSERT_TRUE(answer.closes);
    const double angle = degrees(effective_angle(leverage(
        rocker, rocker.ball_rate(answer.angle), (rocker.ball(answer.angle) - ball).normalized())));
    least = std::min(least, angle);
    most = std::max(most, angle);
  }
  EXPECT_NEAR(least, 26.384, 1e-3);
  EXPECT_NEAR(most, 86.417, 2e-3);
}

// Truck lay-out (C): pitman axis through (-850, 520, 700) along +y, ball at (-850, 520, 510);
// kingpin through (0, 800, 500) along (-tan 3, -tan 6, 1); steering-arm ball at (20, 620, 540).
Steering truck_steering() {
  const Vec3 kingpin = Vec3(-std::tan(3.0 * kDegree), -std::tan(6.0 * kDegree), 1.0).normalized();
  const auto mirrored = [](const Vec3& v) { return Vec3(v.x(), -v.y(), v.z()); };
  Steering steering;
  steering.driven_side = Side::left;
  // Positive arm = left turn = against +y.
  steering.arm =
      crank_through(Vec3(-850.0, 520.0, 700.0), -Vec3::UnitY(), Vec3(-850.0, 520.0, 510.0));
  const Vec3 ball(20.0, 620.0, 540.0);
  const Vec3 pin_point(0.0, 800.0, 500.0);
  const Vec3 tie_ball(-170.0, 770.0, 460.0);
  steering.left.side = Side::left;
  steering.left.kingpin_point_mm = pin_point;
  steering.left.tie_rod_arm = crank_through(pin_point, kingpin, tie_ball);
  steering.right.side = Side::right;
  steering.right.kingpin_point_mm = mirrored(pin_point);
  steering.right.tie_rod_arm =
      crank_through(mirrored(pin_point), mirrored(kingpin), mirrored(tie_ball));
  const Vec3 arm_ball = steering.arm.ball(0.0);
  steering.drag_link =
      loop_as_drawn(crank_through(pin_point, kingpin, ball), (ball - arm_ball).norm(), arm_ball);
  steering.tie_rod = loop_as_drawn(steering.right.tie_rod_arm, 2.0 * tie_ball.y(), tie_ball);
  return steering;
}

struct TruckRow {
  double pitman;  // about +y, degrees
  double swivel;
  double ratio;
  double at_pitman;  // effective angles
  double at_arm;
};

constexpr std::array<TruckRow, 9> kTruckTable{{{-40, 43.175699, -1.060525, 48.71, 49.76},
                                               {-30, 32.435387, -1.083071, 59.61, 59.11},
                                               {-20, 21.579165, -1.085904, 70.02, 68.82},
                                               {-10, 10.748184, -1.079367, 79.33, 78.80},
                                               {0, 0, -1.070342, 83.16, 88.14},
                                               {10, -10.669527, -1.064602, 76.68, 80.01},
                                               {20, -21.324689, -1.068780, 67.95, 69.13},
                                               {30, -32.113318, -1.093821, 59.08, 57.68},
                                               {40, -43.352136, -1.165785, 50.36, 45.37}}};

TEST(TruckLayout, LinkIsAsLongAsStated) {
  EXPECT_NEAR(truck_steering().drag_link.length, 876.241976, 1e-6);
  EXPECT_NEAR(
      (truck_steering().drag_link.driven.axis - Vec3(-0.052050033, -0.104386773, 0.993173799))
          .norm(),
      0.0, 1e-9);
}

TEST(TruckLayout, SwivelRatioAndEffectiveAngles) {
  const Steering steering = truck_steering();
  for (const TruckRow& row : kTruckTable) {
    SteeringPose pose;
    ASSERT_EQ(solve_steering(steering, {}, -row.pitman * kDegree, pose), Outcome::solved);
    EXPECT_NEAR(degrees(pose.left.swivel), row.swivel, 1e-5) << row.pitman;
    EXPECT_NEAR(-pose.left.swivel_rate, row.ratio, 1e-5) << row.pitman;
    EXPECT_NEAR(degrees(effective_angle(pose.drag_link.from_leverage)), row.at_pitman, 0.01);
    EXPECT_NEAR(degrees(effective_angle(pose.drag_link.to_leverage)), row.at_arm, 0.01);
  }
}

// Swivel is not steer: at swivel 43.176 the wheel steers 42.803 with the spindle along Y when
// straight, no camber, no toe, level axle (C).
TEST(TruckLayout, SteerIsSeenInPlan) {
  SteeringPose pose;
  ASSERT_EQ(solve_steering(truck_steering(), {}, 40.0 * kDegree, pose), Outcome::solved);
  EXPECT_NEAR(degrees(pose.left.swivel), 43.176, 1e-3);
  EXPECT_NEAR(degrees(pose.left.steer), 42.803, 1e-3);
}

// The same lay-out, box held, axle moved up on an arc of radius 450 about a centre level with it:
// fixed eye in front (the link and the spring swing against each other) or behind (they swing
// together); swivel in degrees (C).
struct BumpRow {
  double dz;
  double eye_in_front;
  double eye_behind;
};

constexpr std::array<BumpRow, 8> kBumpTable{{{-60, -1.3025, 1.3030},
                                             {-40, -0.4278, 0.7256},
                                             {-20, 0.0048, 0.2923},
                                             {0, 0, 0},
                                             {20, -0.4398, -0.1532},
                                             {40, -1.3140, -0.1675},
                                             {60, -2.6244, -0.0417},
                                             {80, -4.3764, 0.2270}}};

TEST(TruckLayout, BumpSteerWithTheFixedEyeInFrontOrBehind) {
  const Steering steering = truck_steering();
  constexpr double kArc = 450.0;
  for (const BumpRow& row : kBumpTable) {
    const double shift = kArc - std::sqrt(kArc * kArc - row.dz * row.dz);
    for (const bool in_front : {true, false}) {
      const Placement<Chassis, Axle> axle{Mat3::Identity(),
                                          Vec3(in_front ? shift : -shift, 0.0, row.dz)};
      SteeringPose pose;
      ASSERT_EQ(solve_steering(steering, axle, 0.0, pose), Outcome::solved);
      EXPECT_NEAR(degrees(pose.left.swivel), in_front ? row.eye_in_front : row.eye_behind, 1e-4)
          << row.dz;
    }
  }
}

// Trapezoid (F dimensions: exam question; C): pivots 1250 apart, rod 1200, arms 150; arm angle
// asin((1250 - 1200) / 300) = 9.594068; inner steer to outer.
TEST(Trapezoid, OuterFromInner) {
  const double lean = std::asin((1250.0 - 1200.0) / (2.0 * 150.0));
  EXPECT_NEAR(degrees(lean), 9.594068, 1e-6);
  const Vec3 left(0.0, 625.0, 0.0);
  const Vec3 ball = left + 150.0 * Vec3(-std::cos(lean), -std::sin(lean), 0.0);
  const auto mirrored = [](const Vec3& v) { return Vec3(v.x(), -v.y(), v.z()); };
  const Crank left_arm = crank_through(left, Vec3::UnitZ(), ball);
  const Crank right_arm = crank_through(mirrored(left), Vec3::UnitZ(), mirrored(ball));
  const LinkLoop tie_rod = loop_as_drawn(right_arm, 1200.0, ball);
  const std::array<std::pair<double, double>, 5> table{
      {{5.0, 4.924076}, {10.0, 9.697838}, {20.0, 18.780865}, {30.0, 27.167219}, {40.0, 34.681055}}};
  for (const auto& [inner, outer] : table) {
    const LoopAnswer answer = solve_loop(tie_rod, left_arm.ball(inner * kDegree));
    ASSERT_TRUE(answer.closes);
    EXPECT_NEAR(degrees(answer.angle), outer, 1e-5);
  }
}

// The spatial statement of mobility that the loops rest on: Kutzbach-Gruebler (F), crank, link
// with two balls, crank: 6 (4 - 1 - 4) + 1 + 3 + 3 + 1 = 2, one of them the link's idle spin. So a
// link's spin must not move anything: ball places are all that the loop may depend on.
TEST(SpatialLoop, OneInputLeavesOneAnswerPerBranch) {
  const Steering steering = truck_steering();
  const Vec3 ball = steering.arm.ball(0.3);
  const LoopAnswer answer = solve_loop(steering.drag_link, ball);
  int roots = 0;
  double before = (steering.drag_link.driven.ball(-kPi) - ball).norm() - steering.drag_link.length;
  bool found = false;
  for (int step = 1; step <= 36000; ++step) {
    const double angle = -kPi + step * (2.0 * kPi / 36000.0);
    const double now =
        (steering.drag_link.driven.ball(angle) - ball).norm() - steering.drag_link.length;
    if ((now > 0.0) != (before > 0.0)) {
      ++roots;
      found = found || std::abs(angle - answer.angle) < 2.0 * kPi / 36000.0;
    }
    before = now;
  }
  EXPECT_EQ(roots, 2);
  EXPECT_TRUE(found);
}

}  // namespace
}  // namespace tackbench
