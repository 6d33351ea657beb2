// What a hand can take and where it may go, over every grip of every sample project.
#include "core/project/grips.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <limits>

#include "core/basics/units.h"
#include "core/mechanism/body_motion.h"
#include "core/mechanism/solve.h"
#include "core/project-file/project_file.h"
#include "core/project/field_path.h"
#include "tests/support/bench_truck.h"

namespace tackbench {
namespace {

constexpr double kWritten = 0.002;  // mm: places are written to the micrometre, in each of X, Y, Z

Project sample(const std::string& name) {
  Result<Project> read = read_project(std::string(TACKBENCH_SOURCE_FOLDER) + "/sample-projects/" +
                                      name + '/' + name + ".tack");
  if (!read) throw std::runtime_error(one_line(read.problems().front()));
  return std::move(read).value();
}

const std::vector<std::string>& samples() {
  static const std::vector<std::string> names{"tender-as-first-tacked", "tender-sorted",
                                              "timber-wagon", "bare-start"};
  return names;
}

Grip grip_of(const Project& project, const std::string& path) {
  const auto grip = grip_at(project, path);
  if (!grip) throw std::runtime_error("no grip " + path);
  return *grip;
}

Project moved(const Project& project, const Grip& grip, const Vec3& to_mm) {
  Result<Project> after = with_grip_at(project, grip, to_mm);
  if (!after) throw std::runtime_error(one_line(after.problems().front()));
  return std::move(after).value();
}

bool goes_by_steps(const Project& project, const Grip& grip) {
  return grip.path == "steering_box.arm" && project.steering_box->arm.spline_teeth.has_value();
}

TEST(Grips, HaveDifferentPathsAndWords) {
  for (const std::string& name : samples()) {
    const std::vector<Grip> list = grips(sample(name));
    for (std::size_t i = 0; i < list.size(); ++i) {
      EXPECT_FALSE(list[i].words.empty());
      EXPECT_TRUE(list[i].at_mm.allFinite()) << list[i].path;
      EXPECT_NEAR(list[i].along.norm(), 1.0, 1e-12) << list[i].path;
      for (std::size_t j = 0; j < i; ++j) EXPECT_NE(list[i].path, list[j].path) << name;
    }
  }
  EXPECT_GT(grips(sample("tender-as-first-tacked")).size(), 50U);
}

TEST(Grips, GoWhereTheyMay) {
  const Vec3 step(7.0, -5.0, 3.0);
  for (const std::string& name : samples()) {
    const Project project = sample(name);
    for (const Grip& grip : grips(project)) {
      if (goes_by_steps(project, grip)) continue;
      SCOPED_TRACE(name + ": " + grip.path);
      const Vec3 wanted = grip.at_mm + step;
      const Project after = moved(project, grip, wanted);
      const Grip there = grip_of(after, grip.path);
      EXPECT_NEAR((there.at_mm - allowed_place(grip, wanted)).norm(), 0.0, kWritten);
      EXPECT_GT((there.at_mm - grip.at_mm).norm(), 0.1);
    }
  }
}

TEST(Grips, ComeBackToTheSameDocument) {
  for (const std::string& name : samples()) {
    const Project project = sample(name);
    for (const Grip& grip : grips(project)) {
      SCOPED_TRACE(name + ": " + grip.path);
      const Project away = moved(project, grip, grip.at_mm + Vec3(40.0, 30.0, -20.0));
      const Project back = moved(away, grip_of(away, grip.path), grip.at_mm);
      // Only the rounding to a micrometre may be left, in members that the step changed.
      const Grip returned = grip_of(back, grip.path);
      EXPECT_NEAR((returned.at_mm - grip.at_mm).norm(), 0.0, kWritten);
    }
  }
}

TEST(Grips, OnACircleKeepTheirRadius) {
  BenchTruck truck;
  truck.box.arm.spline_teeth.reset();
  const Project project = truck.project();
  const Grip ball = grip_of(project, "steering_box.arm");
  const Project after = moved(project, ball, ball.at_mm + Vec3(60.0, 10.0, 25.0));
  const Grip there = grip_of(after, "steering_box.arm");
  EXPECT_NEAR((there.at_mm - there.centre_mm).norm(), (ball.at_mm - ball.centre_mm).norm(), 1e-9);
  EXPECT_DOUBLE_EQ(after.steering_box->arm.length, project.steering_box->arm.length);
}

TEST(Grips, TheArmGoesByWholeSplineSteps) {
  const Project project = sample("tender-as-first-tacked");
  const Grip ball = grip_of(project, "steering_box.arm");
  const Project after = moved(project, ball, ball.at_mm + Vec3(60.0, 0.0, 0.0));
  const double step = kRadiansPerTurn / *project.steering_box->arm.spline_teeth;
  const double steps =
      (after.steering_box->arm.clocking - project.steering_box->arm.clocking) / step;
  EXPECT_NEAR(std::abs(std::round(steps)), 2.0, 0.0);  // 60 mm of 190 is 17.5 degrees; steps of 10
  EXPECT_NEAR(steps, std::round(steps), 1e-4);
}

TEST(Grips, ASupportStaysOnItsShaftAndBringsItsFoot) {
  const Project project = sample("tender-sorted");
  ASSERT_FALSE(project.shaft_line->supports.empty());
  const Grip eye = grip_of(project, "shaft_line.supports[0].eye_mm");
  EXPECT_EQ(eye.freedom, GripFreedom::on_line);
  const Vec3 wanted = eye.at_mm + 25.0 * eye.along + 80.0 * square_to(eye.along, Vec3::UnitZ());
  const Project after = moved(project, eye, wanted);
  const ShaftSupport& before_it = project.shaft_line->supports[0];
  const ShaftSupport& after_it = after.shaft_line->supports[0];
  EXPECT_NEAR((grip_of(after, eye.path).at_mm - (eye.at_mm + 25.0 * eye.along)).norm(), 0.0,
              kWritten);
  EXPECT_NEAR(((after_it.eye - before_it.eye) - (after_it.base - before_it.base)).norm(), 0.0,
              2.0 * kWritten);
}

TEST(Grips, TheRightTwinMovesTheLeft) {
  BenchTruck truck;
  ASSERT_FALSE(truck.axle.right_knuckle.has_value());
  const Project project = truck.project();
  const Grip twin = grip_of(project, "front_axle.right_knuckle.tie_rod_ball_mm");
  const Project after = moved(project, twin, twin.at_mm + Vec3(10.0, 6.0, 2.0));
  const Vec3 left = after.front_axle->left_knuckle.tie_rod_ball.mm -
                    project.front_axle->left_knuckle.tie_rod_ball.mm;
  EXPECT_NEAR((left - Vec3(10.0, -6.0, 2.0)).norm(), 0.0, kWritten);
  EXPECT_FALSE(after.front_axle->right_knuckle.has_value());
}

TEST(Grips, TheBoxGoesAsOne) {
  const Project project = sample("tender-as-first-tacked");
  const Grip box = grip_of(project, "steering_box");
  const Project after = moved(project, box, box.at_mm + Vec3(-40.0, 0.0, 0.0));
  EXPECT_EQ(*field_text(after, "steering_box.input_end_mm"), "[-910, 470, -10]");
  EXPECT_EQ(*field_text(after, "steering_box.output_point_mm"), "[-755, 479, -42]");
  EXPECT_EQ(after.column, project.column);
  EXPECT_EQ(after.front_axle, project.front_axle);
}

TEST(Grips, KeepTheirLineWhenTold) {
  const Project project = sample("tender-as-first-tacked");
  const Grip joint = grip_of(project, "shaft_line.joints[1].centre_mm");
  ASSERT_TRUE(joint.has_along);
  const Vec3 kept = allowed_place(joint, joint.at_mm + Vec3(50.0, 80.0, 10.0), true);
  EXPECT_LT((kept - joint.at_mm).cross(joint.along).norm(), 1e-9);
  EXPECT_GT((kept - joint.at_mm).norm(), 1.0);
}

TEST(Grips, RefuseWhatIsNoPlaceOrOutOfRange) {
  const Project project = sample("tender-as-first-tacked");
  const Grip joint = grip_of(project, "shaft_line.joints[1].centre_mm");
  const double nan = std::numeric_limits<double>::quiet_NaN();
  EXPECT_FALSE(with_grip_at(project, joint, Vec3(nan, 0.0, 0.0)).ok());
  const Result<Project> far = with_grip_at(project, joint, Vec3(1e6, 0.0, 0.0));
  ASSERT_FALSE(far.ok());
  EXPECT_NE(one_line(far.problems().front()).find("20000"), std::string::npos);
  EXPECT_FALSE(grip_at(project, "shaft_line.joints[7].centre_mm").has_value());
}

TEST(BodyMotion, CarriesDrawnBallsToThePose) {
  for (const std::string& name : samples()) {
    const Project project = sample(name);
    const Mechanism mechanism = compiled(project);
    if (!mechanism.steering) continue;
    Controls controls;
    controls.hand_wheel = 1.3;
    controls.bump_left = 30.0;
    controls.bump_right = -20.0;
    controls.wind_up = 0.01;
    controls.cab_shake = Vec3(4.0, -3.0, 2.0);
    controls.pedals.fill(0.5);
    const Pose pose = solved_pose(mechanism, controls);
    ASSERT_EQ(pose.outcome, Outcome::solved) << name;
    const auto moved_place = [&](const std::string& path) {
      const Grip grip = grip_of(project, path);
      return (moved_from_drawn(mechanism, pose, grip.body, grip.body_index) *
              Point<Chassis>{grip.at_mm})
          .mm;
    };
    EXPECT_LT((moved_place("steering_box.arm") - pose.steering.arm_ball_mm).norm(), 1e-9) << name;
    EXPECT_LT((moved_place("drag_link.knuckle_ball_mm") - pose.steering.drag_link.to_mm).norm(),
              1e-9)
        << name;
    EXPECT_LT(
        (moved_place("front_axle.left_knuckle.tie_rod_ball_mm") - pose.steering.tie_rod.from_mm)
            .norm(),
        1e-9)
        << name;
    EXPECT_LT(
        (moved_place("front_axle.right_knuckle.tie_rod_ball_mm") - pose.steering.tie_rod.to_mm)
            .norm(),
        1e-9)
        << name;
    for (std::size_t i = 0; i < mechanism.pedals.size(); ++i) {
      const std::string pad = "pedals.pedals[" + std::to_string(i) + "].pad_centre_mm";
      const Point<Cab> in_cab{pose.pedals[i].pad_centre_mm};
      EXPECT_LT((moved_place(pad) - (pose.chassis_from_cab * in_cab).mm).norm(), 1e-9) << name;
    }
    for (std::size_t i = 0; i < pose.steering.relays.size(); ++i) {
      const std::string ball = "steering_box.relays[" + std::to_string(i) + "].output_ball_mm";
      EXPECT_LT((moved_place(ball) - pose.steering.relays[i].output_ball_mm).norm(), 1e-9) << name;
    }
  }
}

}  // namespace
}  // namespace tackbench
