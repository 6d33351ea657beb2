// A finding does not go away because something is not measured: taking any one optional member out
// of any sample may change verdicts, down to "not judged", but keeps every name. Stations and list
// items are a finding's subject; they may take theirs with them.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <filesystem>
#include <set>

#include "core/findings/all_findings.h"
#include "core/findings/limits.h"
#include "core/project-file/project_file.h"
#include "core/project/field_walk.h"
#include "core/project/fields.h"
#include "core/project/value_checks.h"

namespace tackbench {
namespace {

// Takes out the optional member with a number in the walk's order, counted from 0.
class TakeOut final : public FieldWalk {
 public:
  explicit TakeOut(int wanted) : wanted_(wanted) {}

  bool changes_values() const override { return true; }
  void optional_number(const NumberField& field, std::optional<double>& value) override {
    if (value && turn(field)) value.reset();
  }
  void optional_whole(const NumberField& field, std::optional<int>& value) override {
    if (value && turn(field)) value.reset();
  }
  void optional_direction(const FieldLabel& field, std::optional<Vec3>& value) override {
    if (value && turn(field)) value.reset();
  }
  void optional_choice_index(const FieldLabel& field, ChoiceWords words,
                             std::optional<int>& index) override {
    static_cast<void>(words);
    if (index && turn(field)) index.reset();
  }
  void group_access(const FieldLabel& field, GroupAccess& group) override {
    const bool station = place().empty();
    if (!station && group.optional() && group.present() && turn(field)) {
      group.set_present(false);
      return;
    }
    FieldWalk::group_access(field, group);
  }

  // Member path of what was taken out; empty when there is no such number any more.
  const std::string& taken() const { return taken_; }

 private:
  bool turn(const FieldLabel& field) {
    if (counted_++ != wanted_) return false;
    taken_ = place_of(field);
    return true;
  }

  int wanted_;
  int counted_ = 0;
  std::string taken_;
};

std::set<std::string> names_of(const Mechanism& mechanism) {
  std::set<std::string> names;
  for (const Finding& finding : all_findings(mechanism, run_checks(mechanism))) {
    names.insert(finding.name);
    EXPECT_FALSE(finding.sentence.empty()) << finding.name;
    EXPECT_EQ(finding.verdict == Verdict::not_judged, !finding.why_not_judged.empty())
        << finding.name;
  }
  return names;
}

class FindingsNeverVanish : public testing::TestWithParam<const char*> {};

TEST_P(FindingsNeverVanish, WhenAnOptionalMemberIsTakenOut) {
  const std::string name = GetParam();
  const Result<Project> project = read_project(std::filesystem::path(TACKBENCH_SOURCE_FOLDER) /
                                               "sample-projects" / name / (name + ".tack"));
  ASSERT_TRUE(project.ok());
  const std::set<std::string> before = names_of(compile(*project).value());
  int compared = 0;
  for (int number = 0;; ++number) {
    Project without = *project;
    TakeOut take_out(number);
    visit_fields(take_out, without);
    if (take_out.taken().empty()) break;
    SCOPED_TRACE("without " + take_out.taken());
    // A project that is refused as a whole tells its user what it wants instead.
    if (!value_problems(without).empty()) continue;
    const Result<Mechanism> mechanism = compile(without);
    if (!mechanism) continue;
    ++compared;
    const std::set<std::string> after = names_of(*mechanism);
    for (const std::string& each : before) EXPECT_TRUE(after.contains(each)) << each << " is gone";
  }
  EXPECT_GE(compared, 20);
}

INSTANTIATE_TEST_SUITE_P(Samples, FindingsNeverVanish,
                         testing::Values("tender-as-first-tacked", "tender-sorted",
                                         "timber-wagon"));

}  // namespace
}  // namespace tackbench
