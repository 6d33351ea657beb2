#include "core/checks/wandering_shaft.h"

#include <gtest/gtest.h>

#include <rapidcheck/gtest.h>

#include <algorithm>
#include <array>

#include "core/mechanism/shaft_follow.h"
#include "tests/support/shaft_line_plan.h"

namespace tackbench::test {
namespace {

// A bent line in space: no three joints in a row, no two bend planes alike.
const std::vector<Vec3> kPlaces = {Vec3(0, 0, 0), Vec3(320, 60, -90), Vec3(640, 30, -230),
                                   Vec3(930, -90, -330)};

ShaftPlan plan_of(std::size_t joints, std::size_t slips) {
  ShaftPlan plan;
  for (std::size_t i = 0; i < joints; ++i) {
    plan.joints.push_back(joint_at(kPlaces[i]));
    if (i > 0) {
      // Slips fill up from the road end.
      const bool slip = joints - i <= slips;
      plan.shafts.push_back(shaft_with(slip ? SlipKind::spline : SlipKind::none));
    }
  }
  return plan;
}

Vec3 on_shaft(std::size_t shaft, double part) {
  return (1.0 - part) * kPlaces[shaft] + part * kPlaces[shaft + 1];
}

struct Row {
  const char* words;
  ShaftPlan plan;
  int free;
  int over;
};

ShaftPlan with(ShaftPlan plan, const std::vector<ShaftSupport>& supports) {
  plan.supports = supports;
  return plan;
}

// The table that the design requires; the counts follow Kutzbach and Gruebler, except where a
// support stands in a special place and only the rank of the equations sees it.
std::vector<Row> required_table() {
  return {
      {"2 joints, 1 slip", plan_of(2, 1), 0, 0},
      {"2 joints, no slip", plan_of(2, 0), 0, 1},
      {"3 joints, no slip", plan_of(3, 0), 1, 0},
      {"3 joints, 1 slip", plan_of(3, 1), 2, 0},
      {"3 joints, 2 slips", plan_of(3, 2), 3, 0},
      {"3 joints, 1 slip, rod end on the first shaft",
       with(plan_of(3, 1), {eye_at(on_shaft(0, 0.5), 0)}), 0, 0},
      {"3 joints, 1 slip, rod end on the second shaft",
       with(plan_of(3, 1), {eye_at(on_shaft(1, 0.4), 1)}), 0, 0},
      {"3 joints, 2 slips, rod end: it slides", with(plan_of(3, 2), {eye_at(on_shaft(0, 0.5), 0)}),
       1, 0},
      {"3 joints, 1 slip, rod end with collar",
       with(plan_of(3, 1), {eye_at(on_shaft(0, 0.5), 0, true)}), 0, 1},
      {"3 joints, 1 slip, eye at the first joint's centre",
       with(plan_of(3, 1), {eye_at(kPlaces[0], 0)}), 2, 2},
      {"3 joints, 1 slip, eye at the last joint's centre",
       with(plan_of(3, 1), {eye_at(kPlaces[2], 1)}), 2, 2},
      {"4 joints, 1 slip", plan_of(4, 1), 4, 0},
      {"4 joints, 1 slip, one in the middle", with(plan_of(4, 1), {eye_at(on_shaft(1, 0.5), 1)}), 2,
       0},
      {"4 joints, 1 slip, two on two shafts",
       with(plan_of(4, 1), {eye_at(on_shaft(0, 0.5), 0), eye_at(on_shaft(1, 0.5), 1)}), 0, 0},
      {"4 joints, 1 slip, two on the middle shaft",
       with(plan_of(4, 1), {eye_at(on_shaft(1, 0.3), 1), eye_at(on_shaft(1, 0.7), 1)}), 0, 0},
      {"4 joints, 1 slip, two on one end shaft",
       with(plan_of(4, 1), {eye_at(on_shaft(0, 0.3), 0), eye_at(on_shaft(0, 0.7), 0)}), 2, 2},
      {"3 joints, 2 slips, rod end with collar on the half between",
       with(plan_of(3, 2), {eye_at(on_shaft(0, 0.5), 0, true, true)}), 0, 0},
      {"3 joints, 2 slips, rod end with collar on the half that the column holds",
       with(plan_of(3, 2), {eye_at(on_shaft(0, 0.5), 0, true, false)}), 1, 1},
      {"3 joints, 2 slips, rod end with collar on the half that the box holds",
       with(plan_of(3, 2), {eye_at(on_shaft(1, 0.5), 1, true, true)}), 1, 1},
  };
}

TEST(WanderingShaft, RequiredTable) {
  for (const Row& row : required_table()) {
    const WanderingShaft found = wandering_shaft(line_of(row.plan));
    EXPECT_EQ(found.free_ways, row.free) << row.words;
    EXPECT_EQ(found.over_constraints, row.over) << row.words;
    EXPECT_EQ(found.ways.size(), static_cast<std::size_t>(row.free)) << row.words;
    EXPECT_EQ(found.over.size(), static_cast<std::size_t>(row.over)) << row.words;
    EXPECT_FALSE(found.in_line) << row.words;
  }
}

// The equations of following a moved cab see the same freedom: a line is held as a whole when every
// cross is.
TEST(WanderingShaft, AgreesWithTheHeldMarks) {
  for (const Row& row : required_table()) {
    const ShaftLine line = line_of(row.plan);
    const bool all_held = std::all_of(line.crosses.begin(), line.crosses.end(),
                                      [](const DrawnCross& cross) { return cross.held; });
    EXPECT_EQ(all_held, row.free == 0) << row.words;
  }
}

TEST(WanderingShaft, DoubleJointsAndDiscs) {
  // Not centred: two joints with no slip between. With one slip on the shaft 3 joints stand in a
  // row: 2 free.
  ShaftPlan plan = plan_of(2, 1);
  plan.joints[0].kind = JointKind::double_joint;
  EXPECT_EQ(wandering_shaft(line_of(plan)).free_ways, 2);
  plan.joints[0].kind = JointKind::double_centred;
  EXPECT_EQ(wandering_shaft(line_of(plan)).free_ways, 0);
  plan.joints[0].kind = JointKind::coupling_disc;
  EXPECT_EQ(wandering_shaft(line_of(plan)).free_ways, 0);
  // A disc's own give is no slip.
  plan.shafts[0].slip = SlipKind::none;
  EXPECT_EQ(wandering_shaft(line_of(plan)).over_constraints, 1);
  // A double joint alone between column and box: its middle piece is held at both ends.
  ShaftPlan alone;
  alone.joints = {joint_at(Vec3::Zero(), JointKind::double_joint)};
  alone.box_axis = sloping(30);
  const WanderingShaft found = wandering_shaft(line_of(alone));
  EXPECT_EQ(found.free_ways, 0);
  EXPECT_EQ(found.over_constraints, 1);
}

TEST(WanderingShaft, ThreeInLineIsLookedAtByHand) {
  ShaftPlan plan;
  for (const double x : {0.0, 300.0, 700.0}) plan.joints.push_back(joint_at(Vec3(x, 0, 0)));
  plan.shafts = {shaft_with(SlipKind::none), shaft_with(SlipKind::none)};
  WanderingShaft found = wandering_shaft(line_of(plan));
  EXPECT_EQ(found.free_ways, 2);
  EXPECT_EQ(found.over_constraints, 1);
  EXPECT_TRUE(found.in_line);
  // A tenth of a millimetre off the line is still for the hand.
  plan.joints[1].centre = Vec3(300, 0.1, 0);
  EXPECT_TRUE(wandering_shaft(line_of(plan)).in_line);
  // With a slip it is simply free.
  plan.shafts[1].slip = SlipKind::spline;
  found = wandering_shaft(line_of(plan));
  EXPECT_EQ(found.free_ways, 2);
  EXPECT_FALSE(found.in_line);
}

TEST(WanderingShaft, ColumnCutDownToOneBearing) {
  ShaftPlan plan = plan_of(2, 1);
  plan.column_bearings = 1;
  const WanderingShaft found = wandering_shaft(line_of(plan));
  EXPECT_EQ(found.free_ways, 2);
  EXPECT_TRUE(found.ways[0].column);
  EXPECT_GT(found.ways[0].hand_wheel_shift_mm.norm(), 0.05);
  plan.column_bearings = 0;
  EXPECT_EQ(wandering_shaft(line_of(plan)).free_ways, 4);
  plan.column_bearings = 3;
  EXPECT_EQ(wandering_shaft(line_of(plan)).free_ways, 0);
}

// Every way keeps the lengths that must be kept, to first order.
TEST(WanderingShaft, MotionKeepsLengthsAndEyes) {
  const ShaftLine line = line_of(with(plan_of(4, 1), {eye_at(on_shaft(1, 0.5), 1)}));
  const WanderingShaft found = wandering_shaft(line);
  ASSERT_EQ(found.ways.size(), 2u);
  for (const WanderingWay& way : found.ways) {
    double most = 0.0;
    for (const Vec3& shift : way.cross_shift_mm) most = std::max(most, shift.norm());
    EXPECT_NEAR(most, 1.0, 1e-12);
    EXPECT_LT(way.cross_shift_mm[0].norm(), 1e-9);
    EXPECT_LT(way.cross_shift_mm[3].norm(), 1e-9);
    for (std::size_t i = 0; i < 2; ++i) {  // the last shaft slips
      const Vec3 apart = way.cross_shift_mm[i + 1] - way.cross_shift_mm[i];
      EXPECT_NEAR(apart.dot(line.crosses[i].geometry.out_direction), 0.0, 1e-9);
    }
    const Vec3 at_eye = 0.5 * (way.cross_shift_mm[1] + way.cross_shift_mm[2]);
    const Vec3& along = line.crosses[1].geometry.out_direction;
    EXPECT_LT((at_eye - along * along.dot(at_eye)).norm(), 1e-9);
    EXPECT_EQ(way.shafts, (std::vector<int>{0, 1, 2}));
  }
}

// "One rod end on either shaft between the joints holds it; one at the first joint's centre would
// not."
TEST(WanderingShaft, TriesRodEnds) {
  const WanderingShaft found = wandering_shaft(line_of(plan_of(3, 1)));
  ASSERT_EQ(found.trials.size(), 6u);
  for (const SupportTrial& trial : found.trials) {
    const bool held_joint = trial.at_cross == 0 || trial.at_cross == 2;
    EXPECT_EQ(trial.free_ways_left, held_joint ? 2 : 0) << trial.shaft << " " << trial.at_cross;
  }
  EXPECT_EQ(found.rod_ends_wanted, 1);
  EXPECT_EQ(found.rod_ends.size(), 1u);
  // What is proposed holds when it is built.
  for (const auto& [joints, slips, wanted] :
       {std::array<std::size_t, 3>{3, 1, 1}, {3, 2, 2}, {4, 1, 2}, {4, 2, 3}}) {
    ShaftPlan plan = plan_of(joints, slips);
    const WanderingShaft before = wandering_shaft(line_of(plan));
    EXPECT_EQ(before.rod_ends_wanted, static_cast<int>(wanted));
    EXPECT_EQ(before.rod_ends.size(), wanted) << joints << " " << slips;
    for (const RodEndPlace& place : before.rod_ends) {
      plan.supports.push_back(
          eye_at(on_shaft(static_cast<std::size_t>(place.shaft), place.part), place.shaft));
    }
    EXPECT_EQ(wandering_shaft(line_of(plan)).free_ways, 0) << joints << " " << slips;
  }
  // In line, two slips: eyes sideways never stop the piece between from sliding.
  ShaftPlan straight;
  for (const double x : {0.0, 300.0, 700.0}) straight.joints.push_back(joint_at(Vec3(x, 0, 0)));
  straight.shafts = {shaft_with(SlipKind::spline), shaft_with(SlipKind::spline)};
  EXPECT_EQ(wandering_shaft(line_of(straight)).rod_ends_wanted, -1);
}

// An eye part of the way along a shaft whose first joint is held: by the lever rule its play comes
// out at the other joint times length over distance.
TEST(WanderingShaft, PlayFollowsTheLeverRule) {
  const ShaftLine line = line_of(with(plan_of(3, 1), {eye_at(on_shaft(0, 0.25), 0)}));
  const WanderingShaft found = wandering_shaft(line);
  ASSERT_EQ(found.play.size(), 1u);
  EXPECT_NEAR(found.play[0].worst_at_cross_mm, 4.0, 1e-9);
  EXPECT_EQ(found.play[0].cross, 1);
  // An eye at a joint that is held already gives nothing away.
  const ShaftLine idle =
      line_of(with(plan_of(3, 1), {eye_at(kPlaces[0], 0), eye_at(on_shaft(0, 0.5), 0)}));
  EXPECT_NEAR(wandering_shaft(idle).play[0].worst_at_cross_mm, 0.0, 1e-9);
}

TEST(WanderingShaft, OverConstraintNamesItsParts) {
  const WanderingShaft two = wandering_shaft(line_of(plan_of(2, 0)));
  ASSERT_EQ(two.over.size(), 1u);
  EXPECT_NEAR(two.over[0].misfit_as_drawn, 0.0, 1e-9);
  const auto& parts = two.over[0].parts;
  EXPECT_TRUE(std::any_of(parts.begin(), parts.end(),
                          [](const auto& part) { return part.words == "length of shaft 1"; }));
  // An eye 3 mm beside a joint that column and box already hold must be moved by those 3 mm.
  ShaftPlan beside = with(plan_of(3, 1), {eye_at(kPlaces[0], 0)});
  const Vec3 along = (kPlaces[1] - kPlaces[0]).normalized();
  beside.supports[0].eye += 3.0 * square_to(along, Vec3::UnitZ());
  const WanderingShaft found = wandering_shaft(line_of(beside));
  double misfit = 0.0;
  for (const OverConstraint& over : found.over) misfit = std::max(misfit, over.misfit_as_drawn);
  EXPECT_GT(misfit, 1.0);
  EXPECT_LT(misfit, 3.0 + 1e-9);
}

TEST(WanderingShaft, NothingToHoldWithoutJoints) {
  const WanderingShaft found = wandering_shaft(line_of(ShaftPlan{}));
  EXPECT_EQ(found.free_ways, 0);
  EXPECT_TRUE(found.play.empty());
}

double number(double least, double most) {
  return least + (most - least) * (*rc::gen::inRange(0, 1000001)) / 1e6;
}

ShaftPlan any_held_plan() {
  const int joints = *rc::gen::inRange(1, 5);
  std::vector<double> bends;
  std::vector<double> planes;
  for (int i = 0; i < joints; ++i) {
    bends.push_back(number(3.0, 30.0));
    planes.push_back(number(-180.0, 180.0));
  }
  ShaftPlan plan = bent_chain(bends, planes);
  for (Shaft& shaft : plan.shafts) {
    if (*rc::gen::arbitrary<bool>()) shaft.slip = SlipKind::spline;
  }
  for (ShaftJoint& joint : plan.joints) {
    joint.kind = *rc::gen::element(JointKind::universal, JointKind::universal,
                                   JointKind::double_joint, JointKind::coupling_disc);
  }
  const int supports = joints > 1 ? *rc::gen::inRange(0, 4) : 0;
  for (int i = 0; i < supports; ++i) {
    const int shaft = *rc::gen::inRange(0, joints - 1);
    const Vec3& from = plan.joints[static_cast<std::size_t>(shaft)].centre;
    const Vec3& to = plan.joints[static_cast<std::size_t>(shaft) + 1].centre;
    const double part = number(0.15, 0.85);
    ShaftSupport support = eye_at((1.0 - part) * from + part * to, shaft,
                                  *rc::gen::arbitrary<bool>(), *rc::gen::arbitrary<bool>());
    if (*rc::gen::inRange(0, 5) == 0) support.kind = SupportKind::bearing_block;
    plan.supports.push_back(support);
  }
  return plan;
}

// Bodies with tilts and the crosses' places alone are two ways to count the same freedom.
RC_GTEST_PROP(WanderingShaft, BodiesAndCrossPlacesAgree, ()) {
  const ShaftLine line = line_of(any_held_plan());
  const WanderingShaft found = wandering_shaft(line);
  const bool all_held = std::all_of(line.crosses.begin(), line.crosses.end(),
                                    [](const DrawnCross& cross) { return cross.held; });
  RC_ASSERT(all_held == (found.free_ways == 0));
  // Coordinates less equations = free less over: 5 a body; the column's own 5 cancel.
  int balance = 0;
  for (const DrawnSpan& span : line.spans) balance += span.slips ? 10 - 4 : 5;
  balance -= 3 * static_cast<int>(line.crosses.size());
  for (const DrawnSupport& support : line.supports) {
    balance -= 2 + (support.holds_lengthways ? 1 : 0) + (support.holds_direction ? 2 : 0);
  }
  RC_ASSERT(found.free_ways - found.over_constraints == balance);
}

RC_GTEST_PROP(WanderingShaft, MovingEverythingChangesNothing, ()) {
  const ShaftPlan plan = any_held_plan();
  const Mat3 turn = roll_pitch_yaw_turn(number(-1, 1), number(-1, 1), number(-3, 3));
  const Vec3 shift(number(-500, 500), number(-500, 500), number(-500, 500));
  ShaftPlan other = plan;
  other.column_axis = turn * plan.column_axis;
  other.box_axis = turn * plan.box_axis;
  for (ShaftJoint& joint : other.joints) joint.centre = turn * joint.centre + shift;
  for (ShaftSupport& support : other.supports) support.eye = turn * support.eye + shift;
  const WanderingShaft here = wandering_shaft(line_of(plan));
  const WanderingShaft there = wandering_shaft(line_of(other));
  RC_ASSERT(here.free_ways == there.free_ways);
  RC_ASSERT(here.over_constraints == there.over_constraints);
  RC_ASSERT(here.rod_ends.size() == there.rod_ends.size());
  for (std::size_t i = 0; i < here.play.size(); ++i) {
    const double gain = here.play[i].worst_at_cross_mm;
    RC_ASSERT(std::abs(gain - there.play[i].worst_at_cross_mm) < 1e-5 * (1.0 + gain));
  }
}

}  // namespace
}  // namespace tackbench::test
