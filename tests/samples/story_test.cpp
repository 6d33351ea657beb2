// What each sample's README tells, held against what the findings say.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "core/checks/wandering_shaft.h"
#include "tests/samples/sample.h"

namespace tackbench {
namespace {

using ::testing::Contains;
using ::testing::ElementsAre;
using ::testing::HasSubstr;
using ::testing::IsEmpty;
using ::testing::UnorderedElementsAre;

TEST(TenderAsFirstTacked, ShowsItsPlantedFaultsAndNoOthers) {
  const Sample first = sample("tender-as-first-tacked");
  EXPECT_THAT(first.named(Verdict::past),
              UnorderedElementsAre("shaft.wander", "link.centring", "lock.left.end",
                                   "pedal.brake.full_stroke", "pedal.brake.floor_gap"));
}

// Stops are set for the link that the list orders, not for the one that is there: fitted, the list
// of the truck with that link says the same.
TEST(TenderAsFirstTacked, StopsAndSwingsAreThoseOfTheLinkToOrder) {
  const Sample first = sample("tender-as-first-tacked");
  Project project = first.project;
  auto link = std::make_shared<DragLinkStation>(*project.drag_link);
  link->given_length = first.results.link->centring_length;
  project.drag_link = link;
  const Mechanism fitted = compile(project).value();
  const CheckResults results = run_checks(fitted);
  const CutList after = make_cut_list(fitted, results, all_findings(fitted, results));
  for (const CutItem& now : after.items) {
    if (now.name != "stop.left" && now.name != "stop.right") continue;
    const CutItem* told = first.item(now.name);
    ASSERT_NE(told, nullptr);
    const CutDimension* setting = dimension(now, "bolt_before_others");
    const CutDimension* told_setting = dimension(*told, "bolt_before_others");
    ASSERT_NE(setting, nullptr);
    ASSERT_NE(told_setting, nullptr);
    EXPECT_EQ(value_text(*told_setting), value_text(*setting));
    // The old link's setting was another by millimetres.
    const auto screw_out = [&](const CheckResults& of) {
      const LockSide& side = now.name == "stop.left" ? of.locks->left : of.locks->right;
      return side.before_others->screw_out;
    };
    EXPECT_GT(std::abs(screw_out(first.results) - screw_out(results)), 1.0);
  }
  EXPECT_NEAR(*first.cut_list.drag_link->arm.swing_needed, results.link_travel->swing_arm_end.value,
              1e-9);
}

TEST(TenderAsFirstTacked, ItsCutListSaysFirstWhatIsPast) {
  const Sample first = sample("tender-as-first-tacked");
  EXPECT_EQ(first.cut_list.past.size(), first.named(Verdict::past).size());
  EXPECT_THAT(sample("tender-sorted").cut_list.past, IsEmpty());
}

TEST(TenderAsFirstTacked, JointsBendAsTold) {
  const Sample first = sample("tender-as-first-tacked");
  ASSERT_TRUE(first.results.shaft);
  ASSERT_EQ(first.results.shaft->joints.size(), 3U);
  EXPECT_NEAR(degrees_from_radians(first.results.shaft->joints[0].as_drawn), 19.0, 0.15);
  EXPECT_NEAR(degrees_from_radians(first.results.shaft->joints[1].as_drawn), 24.0, 0.15);
  EXPECT_NEAR(degrees_from_radians(first.results.shaft->joints[2].as_drawn), 22.0, 0.15);
}

// Three joints, one slip, no support: 2 ways free; one rod end on either shaft holds it, one at the
// first joint's centre does not.
TEST(TenderAsFirstTacked, ShaftLineIsFreeTwoWays) {
  const Sample first = sample("tender-as-first-tacked");
  ASSERT_TRUE(first.results.wandering);
  EXPECT_EQ(first.results.wandering->free_ways, 2);
  for (const int shaft : {0, 1}) {
    Project held = first.project;
    auto line = std::make_shared<ShaftLineStation>(*first.project.shaft_line);
    const ShaftLine& drawn = *first.mechanism.shaft_line;
    ShaftSupport support;
    support.shaft = shaft;
    const auto index = static_cast<std::size_t>(shaft);
    support.eye = 0.5 * (drawn.crosses[index].centre_mm + drawn.crosses[index + 1].centre_mm);
    line->supports = {support};
    held.shaft_line = line;
    EXPECT_EQ(wandering_shaft(*compile(held)->shaft_line).free_ways, 0) << "shaft " << shaft;
  }
  Project at_joint = first.project;
  auto line = std::make_shared<ShaftLineStation>(*first.project.shaft_line);
  ShaftSupport support;
  support.shaft = 0;
  support.eye = first.mechanism.shaft_line->crosses[0].centre_mm;
  line->supports = {support};
  at_joint.shaft_line = line;
  EXPECT_GT(wandering_shaft(*compile(at_joint)->shaft_line).free_ways, 0);
}

TEST(TenderAsFirstTacked, TurnsDifferAndALengthCentresTheBox) {
  const Sample first = sample("tender-as-first-tacked");
  ASSERT_TRUE(first.results.locks && first.results.link);
  EXPECT_NEAR(first.results.locks->turns_difference, -0.3, 0.02);
  // Turns to the box's own ends differ by twice its offset: 2 x 56.7 / 360 = 0.315, but for the
  // ripple of the shaft line (2.4 %, so under 1.2 % of it).
  const LinkResult& link = *first.results.link;
  EXPECT_NEAR(link.box_turns_left - link.box_turns_right,
              -2.0 * std::abs(link.input_offset) / kRadiansPerTurn, 0.012 * 0.315);
  // The length that centres it is the one its straight-ahead drawing has, and it does centre it.
  Project centred = first.project;
  auto station = std::make_shared<DragLinkStation>(*first.project.drag_link);
  station->given_length = link.centring_length;
  centred.drag_link = station;
  const auto again = check_link(*compile(centred));
  ASSERT_TRUE(again);
  EXPECT_NEAR(again->input_offset, 0.0, 1e-6);
}

TEST(TenderAsFirstTacked, LeftLockEndsOnTheBoxTwoDegreesEarly) {
  const Sample first = sample("tender-as-first-tacked");
  const LockSide& left = first.results.locks->left;
  ASSERT_TRUE(left.found);
  EXPECT_EQ(left.events[left.end].kind, LockEventKind::box_end);
  const auto stop = std::find_if(left.events.begin(), left.events.end(), [](const LockEvent& e) {
    return e.kind == LockEventKind::axle_stop;
  });
  ASSERT_NE(stop, left.events.end());
  EXPECT_NEAR(degrees_from_radians(stop->inner_steer - left.inner_steer), 2.0, 0.2);
}

TEST(TenderAsFirstTacked, BrakeMeetsTheFloorBeforeItsFullStroke) {
  const Sample first = sample("tender-as-first-tacked");
  const auto brake = std::find_if(first.results.pedals.begin(), first.results.pedals.end(),
                                  [](const PedalResult& p) { return p.use == PedalUse::brake; });
  ASSERT_NE(brake, first.results.pedals.end());
  ASSERT_FALSE(brake->ends.empty());
  EXPECT_EQ(brake->ends.front().kind, PedalEndKind::floor);
  EXPECT_LT(brake->stroke_reached, *brake->stroke_wanted);
}

// Its list waits for the tolerance: nothing of it is measured in yet.
TEST(TenderAsFirstTacked, OrdersTheCentringLengthAndLeavesTolerancesBlank) {
  const Sample first = sample("tender-as-first-tacked");
  const CutItem* link = first.item("drag_link");
  ASSERT_NE(link, nullptr);
  EXPECT_NEAR(*dimension(*link, "ball_to_ball")->value, first.results.link->centring_length, 1e-9);
  EXPECT_EQ(tolerance_text(*dimension(*link, "ball_to_ball")), "blank until measured in");
  EXPECT_THAT(dimension(*link, "given_length")->note, HasSubstr("9.3 mm short"));
}

TEST(TenderSorted, HasNothingPast) {
  EXPECT_THAT(sample("tender-sorted").named(Verdict::past), IsEmpty());
}

// With only the list in hand: length, threads, hands, clocking, adjustment, tolerance, quantity.
TEST(TenderSorted, CutListAnswersASupplier) {
  const Sample made = sample("tender-sorted");
  const CutItem* link = made.item("drag_link");
  ASSERT_NE(link, nullptr);
  for (const char* name :
       {"ball_to_ball", "tube_length", "arm_end_thread", "knuckle_end_thread", "stud_clocking",
        "adjustment_longer", "adjustment_shorter", "adjustment_wanted", "arm_end_lock_nut",
        "arm_end_swing_needed", "arm_end_swing_available", "force", "tube_yield"})
    ASSERT_NE(dimension(*link, name), nullptr) << name;
  EXPECT_EQ(value_text(*dimension(*link, "arm_end_thread")), "M24x1.5");
  EXPECT_EQ(value_text(*dimension(*link, "knuckle_end_thread")), "M24x1.5-LH");
  EXPECT_EQ(tolerance_text(*dimension(*link, "ball_to_ball")), "0.5");
  EXPECT_EQ(link->quantity, 1);
  EXPECT_THAT(link->cautions, IsEmpty());
  for (const char* name : {"shaft.upper", "shaft.lower", "support.rail eye", "stop.left",
                           "stop.right", "mock_up_link"})
    EXPECT_NE(made.item(name), nullptr) << name;
}

// Right-hand drive, cross-steer through a relay, lateral rod, box the wrong way round.
TEST(TimberWagon, SteersTheWrongWayAndThatIsAll) {
  const Sample wagon = sample("timber-wagon");
  EXPECT_THAT(wagon.named(Verdict::past), ElementsAre("steering.direction"));
  EXPECT_EQ(wagon.findings.front().name, "steering.direction");
  EXPECT_FALSE(wagon.results.direction->left_steers_left);
  EXPECT_LT(wagon.project.column->hand_wheel_centre.mm.y(), 0.0);
  EXPECT_EQ(wagon.project.front_axle->suspension.kind, SuspensionKind::radius_arms);
  Project turned = wagon.project;
  auto box = std::make_shared<SteeringBoxStation>(*wagon.project.steering_box);
  box->left_turns_arm = TurnSense::anticlockwise;
  turned.steering_box = box;
  EXPECT_TRUE(check_direction(*compile(turned))->left_steers_left);
  EXPECT_NE(wagon.item("relay_link.rail relay"), nullptr);
}

TEST(BareStart, AsksForEverythingAndJudgesNothing) {
  const Sample bare = sample("bare-start");
  EXPECT_THAT(bare.named(Verdict::past), IsEmpty());
  EXPECT_THAT(bare.named(Verdict::within), IsEmpty());
  EXPECT_THAT(bare.named(Verdict::not_judged), Contains(HasSubstr("missing.")));
  EXPECT_THAT(bare.cut_list.items, IsEmpty());
  EXPECT_FALSE(bare.cut_list.waiting.empty());
}

}  // namespace
}  // namespace tackbench
