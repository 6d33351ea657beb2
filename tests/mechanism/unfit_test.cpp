// Projects whose values do not fit each other are told, not compiled.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <cmath>

#include "core/mechanism/solve.h"
#include "core/project/value_checks.h"
#include "tests/support/what_may_begin.h"

namespace tackbench {
namespace {

using testing::Contains;
using testing::Field;

// Compiles and poses, or says why not.
void expect_no_harm(const Project& project, const std::string& begun) {
  const Result<Mechanism> mechanism = compile(project);
  if (!mechanism.ok()) {
    EXPECT_FALSE(mechanism.problems().empty()) << begun;
    return;
  }
  Pose pose = blank_pose(*mechanism);
  Controls controls;
  controls.hand_wheel = 1.0;
  EXPECT_EQ(solve(*mechanism, controls, pose), pose.outcome) << begun;
  for (const double number :
       {pose.box_input, pose.arm_rate, pose.steering.arm, pose.steering.left.swivel,
        pose.steering.right.steer, pose.steering.drag_link.closure, pose.shaft_line.box_turn})
    EXPECT_TRUE(std::isfinite(number)) << begun;
}

TEST(Unfit, WhateverIsBegunDoesNoHarm) {
  EXPECT_GT(begin_everything(expect_no_harm).size(), 40U);
}

// Five joints and a support on a shaft that is not there: what a hand may write into a file.
TEST(Unfit, MisfitsOfTheShaftLineAreNotCompiled) {
  Project project;
  auto line = std::make_shared<ShaftLineStation>();
  for (int i = 0; i < 5; ++i) {
    line->joints.emplace_back().name = "more " + std::to_string(i);
  }
  line->supports.emplace_back();
  line->supports.back().shaft = 7;
  project.shaft_line = line;
  auto column = std::make_shared<ColumnStation>();
  column->hand_wheel_centre.mm = Vec3(0, 0, 1000);
  column->bearings.resize(2);
  project.column = column;
  project.steering_box = std::make_shared<SteeringBoxStation>();
  const auto mechanism = compile(project);
  ASSERT_FALSE(mechanism.ok());
  EXPECT_THAT(mechanism.problems(), Contains(Field(&Problem::place, "shaft_line.joints")));
}

}  // namespace
}  // namespace tackbench
