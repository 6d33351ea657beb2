#include "core/fabrication/make_cut_list.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "core/fabrication/cut_list_writers.h"
#include "tests/fabrication/example_link.h"

namespace tackbench {
namespace {

using ::testing::Contains;
using ::testing::HasSubstr;

std::vector<std::string> names(const CutList& list) {
  std::vector<std::string> all;
  for (const CutItem& item : list.items) all.push_back(item.name);
  return all;
}

TEST(MakeCutList, ListsInOrderOfMotion) {
  const Mechanism mechanism = example_mechanism(example_station());
  CheckResults results;
  results.link = example_length();
  results.as_ordered.emplace();
  results.as_ordered->locks = example_locks();
  results.as_ordered->locks->right.side = Side::right;
  results.as_ordered->locks->right.stop = StopContact{};
  const CutList list = make_cut_list(mechanism, results, {});
  EXPECT_THAT(names(list), ::testing::ElementsAre("drag_link", "stop.right", "mock_up_link"));
  ASSERT_TRUE(list.drag_link);
  EXPECT_THAT(list.waiting, Contains(HasSubstr("Shafts and supports")));
  EXPECT_FALSE(list.cautions.empty());
  EXPECT_FALSE(list.not_checked.empty());
}

TEST(MakeCutList, SaysWhatItStillWaitsFor) {
  Mechanism mechanism;
  mechanism.missing = {{"steering_box.left_turns_arm", "read off the box which way the arm goes"}};
  const CutList list = make_cut_list(mechanism, {}, {});
  EXPECT_TRUE(list.items.empty());
  EXPECT_FALSE(list.drag_link);
  EXPECT_THAT(list.waiting, Contains(HasSubstr("read off the box which way the arm goes")));
}

// Nobody is told to make a tube for ends that nobody has measured.
TEST(MakeCutList, WithoutTheEndsSizesOrdersNoTube) {
  DragLinkStation station = example_station();
  station.knuckle_end.thread.reset();
  const Mechanism mechanism = example_mechanism(station);
  CheckResults results;
  results.link = example_length();
  const CutList list = make_cut_list(mechanism, results, {});
  ASSERT_THAT(names(list), ::testing::ElementsAre("drag_link"));
  EXPECT_FALSE(list.drag_link);
  EXPECT_NE(dimension(list.items[0], "ball_to_ball"), nullptr);
  for (const char* name : {"tube_length", "arm_end_thread", "knuckle_end_thread", "tube_wall"})
    EXPECT_EQ(dimension(list.items[0], name), nullptr) << name;
  EXPECT_THAT(list.waiting, Contains(HasSubstr("thread, engagement and lock nut of both ends")));
}

TEST(MakeCutList, FindingsPastTheirLimitStandAtItsHead) {
  Finding past;
  past.name = "steering.direction";
  past.verdict = Verdict::past;
  past.sentence = "Turning the hand wheel left steers RIGHT.";
  Finding within = past;
  within.name = "link.length";
  within.verdict = Verdict::within;
  const CutList list = make_cut_list(example_mechanism(example_station()), {}, {past, within});
  ASSERT_EQ(list.past.size(), 1U);
  EXPECT_EQ(list.past[0].name, "steering.direction");
  const std::string text = cut_list_text(list);
  EXPECT_THAT(text, HasSubstr("Past their limits: 1."));
  EXPECT_LT(text.find("steers RIGHT"), text.find("Not checked"));
  EXPECT_THAT(cut_list_csv(list), HasSubstr("past,steering.direction"));
  EXPECT_THAT(cut_list_json(list), HasSubstr("steers RIGHT"));
}

}  // namespace
}  // namespace tackbench
