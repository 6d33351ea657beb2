// The tables of fields keep their own promises: units in keys, defaults in range, words that fit
// into sentences.
#include <gtest/gtest.h>

#include <cctype>
#include <set>
#include <string>
#include <vector>

#include "core/basics/units.h"
#include "core/project/field_faults.h"
#include "core/project/field_visitor.h"
#include "core/project/fields.h"

namespace tackbench {
namespace {

// Goes through every record there is, also absent ones and those of empty lists.
class TableWalk final : public FieldVisitor {
 public:
  explicit TableWalk(std::string place) : place_(std::move(place)) {}

  bool changes_values() const override { return false; }
  void text(const TextField& field, std::string& value) override {
    check(field);
    if (!field.required) {
      EXPECT_FALSE(text_fault(field, "", value)) << here(field);
    }
  }
  void flag(const FieldLabel& field, bool&) override { check(field); }
  void number(const NumberField& field, double& value) override {
    check_number(field);
    if (!field.required) {
      EXPECT_FALSE(number_fault(field, "", shown_from_inside(field.unit, value))) << here(field);
    }
  }
  void optional_number(const NumberField& field, std::optional<double>& value) override {
    check_number(field);
    EXPECT_FALSE(field.required) << here(field);
    EXPECT_FALSE(value) << here(field) << ": an optional number has no default";
  }
  void whole(const NumberField& field, int& value) override {
    check_number(field);
    EXPECT_FALSE(whole_fault(field, "", value)) << here(field);
  }
  void optional_whole(const NumberField& field, std::optional<int>& value) override {
    check_number(field);
    EXPECT_FALSE(value) << here(field);
  }
  void vector(const NumberField& field, Vec3& value) override {
    check_number(field);
    if (!field.required) {
      EXPECT_FALSE(vector_fault(field, "", shown_vector(field, value))) << here(field);
    }
  }
  void direction(const FieldLabel& field, Vec3& value) override {
    check_direction(field);
    EXPECT_NEAR(value.norm(), 1.0, 1e-12) << here(field);
  }
  void optional_direction(const FieldLabel& field, std::optional<Vec3>&) override {
    check_direction(field);
  }
  void choice_index(const FieldLabel& field, ChoiceWords words, int& index) override {
    check(field);
    EXPECT_LT(static_cast<std::size_t>(index), words.size()) << here(field);
  }
  void optional_choice_index(const FieldLabel& field, ChoiceWords,
                             std::optional<int>& index) override {
    check(field);
    EXPECT_FALSE(index) << here(field);
  }
  void points_access(const NumberField& field, PointsAccess&) override { check_number(field); }
  void group_access(const FieldLabel& field, GroupAccess& group) override {
    check(field);
    TableWalk inner(here(field));
    group.visit(inner);
    inner.finish();
  }
  void list_access(const FieldLabel& field, ListAccess& list) override {
    check(field);
    TableWalk inner(here(field) + "[]");
    list.visit_sample(inner);
    inner.finish();
  }
  void unknown_members(UnknownMembers&) override { ++unknown_members_; }

  void finish() const {
    EXPECT_EQ(unknown_members_, 1) << place_ << " has to keep unknown members, once";
  }

 private:
  std::string here(const FieldLabel& field) const { return place_ + "." + std::string(field.key); }

  void check(const FieldLabel& field) {
    EXPECT_EQ(unknown_members_, 0) << here(field) << " comes after the unknown members";
    EXPECT_TRUE(keys_.insert(std::string(field.key)).second) << here(field) << " stands twice";
    for (const char c : field.key) {
      EXPECT_TRUE(std::islower(c) || std::isdigit(c) || c == '_') << here(field);
    }
    ASSERT_FALSE(field.words.empty()) << here(field);
    for (const char* article : {"a ", "an ", "the "}) {
      EXPECT_FALSE(field.words.starts_with(article)) << here(field) << ": messages add the article";
    }
    EXPECT_FALSE(field.words.ends_with('.') || field.note.ends_with('.')) << here(field);
  }

  void check_number(const NumberField& field) {
    check(field);
    EXPECT_LT(field.least, field.most) << here(field);
    const std::string suffix = member_suffix(field.unit);
    if (!suffix.empty()) {
      EXPECT_TRUE(field.key.ends_with(suffix)) << here(field) << " does not end in " << suffix;
      return;
    }
    for (const char* unit : {"_mm", "_deg", "_n", "_kg", "_mpa", "_percent", "_nm"}) {
      EXPECT_FALSE(field.key.ends_with(unit)) << here(field) << " is a number without unit";
    }
  }

  void check_direction(const FieldLabel& field) {
    check(field);
    EXPECT_TRUE(field.key.ends_with("axis") || field.key.ends_with("_direction")) << here(field);
  }

  std::string place_;
  std::set<std::string> keys_;
  int unknown_members_ = 0;
};

TEST(FieldTables, KeepTheirPromises) {
  Project project;
  TableWalk walk("project");
  visit_fields(walk, project);
  walk.finish();
}

TEST(FieldTables, ALookLeavesStationsTheSamePointer) {
  Project project;
  project.cab = std::make_shared<const CabStation>();
  const auto before = project.cab;
  TableWalk walk("project");
  visit_fields(walk, project);
  EXPECT_EQ(project.cab, before);
}

TEST(ChoiceWords, NameEveryChoiceOnce) {
  EXPECT_EQ(word(Side::right), "right");
  EXPECT_EQ(word(JointKind::coupling_disc), "coupling_disc");
  EXPECT_EQ(word(TurnSense::anticlockwise), "anticlockwise");
  EXPECT_EQ(word(RidesOn::right_knuckle), "right_knuckle");
  EXPECT_EQ(word(Standing::builder), "builder");
  EXPECT_EQ(word(ShapeKind::mesh), "mesh");
}

}  // namespace
}  // namespace tackbench
