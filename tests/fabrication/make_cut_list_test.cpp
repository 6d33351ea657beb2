#include "core/fabrication/make_cut_list.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

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
  results.locks = example_locks();
  results.locks->right.side = Side::right;
  results.locks->right.stop = StopContact{};
  const CutList list = make_cut_list(mechanism, results);
  EXPECT_THAT(names(list), ::testing::ElementsAre("drag_link", "stop.right", "mock_up_link"));
  ASSERT_TRUE(list.drag_link);
  EXPECT_THAT(list.waiting, Contains(HasSubstr("Shafts and supports")));
  EXPECT_FALSE(list.cautions.empty());
  EXPECT_FALSE(list.not_checked.empty());
}

TEST(MakeCutList, SaysWhatItStillWaitsFor) {
  Mechanism mechanism;
  mechanism.missing = {{"steering_box.left_turns_arm", "read off the box which way the arm goes"}};
  const CutList list = make_cut_list(mechanism, {});
  EXPECT_TRUE(list.items.empty());
  EXPECT_FALSE(list.drag_link);
  EXPECT_THAT(list.waiting, Contains(HasSubstr("read off the box which way the arm goes")));
}

}  // namespace
}  // namespace tackbench
