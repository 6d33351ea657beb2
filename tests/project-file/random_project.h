// Random projects for properties: every field of the tables within its range, lists and optional
// records by chance. Cross-field rules are not kept.
#pragma once

#include <rapidcheck.h>

#include "core/basics/units.h"
#include "core/project/field_faults.h"
#include "core/project/field_visitor.h"
#include "core/project/fields.h"

namespace tackbench::testing {

class RandomFields final : public FieldVisitor {
 public:
  bool changes_values() const override { return true; }

  void text(const TextField& field, std::string& value) override {
    switch (field.kind) {
      case TextKind::free:
        value = *rc::gen::element<std::string>("", "bracket \"A\"",
                                               "Stra\xC3\x9F"
                                               "e\n\ttab",
                                               "\\");
        break;
      case TextKind::name:
        value = "name " + std::to_string(*rc::gen::inRange(0, 1000000));
        break;
      case TextKind::relative_path:
        value = "scans/part " + std::to_string(*rc::gen::inRange(0, 1000)) + ".ply";
        break;
      case TextKind::sha256:
        value = *rc::gen::container<std::string>(64, rc::gen::elementOf(std::string("09afAF")));
        break;
    }
  }
  void flag(const FieldLabel&, bool& value) override { value = *rc::gen::arbitrary<bool>(); }
  void number(const NumberField& field, double& value) override {
    value = inside_from_shown(field.unit, shown_number(field));
  }
  void optional_number(const NumberField& field, std::optional<double>& value) override {
    value.reset();
    if (by_chance()) number(field, value.emplace());
  }
  void whole(const NumberField& field, int& value) override {
    value = *rc::gen::inRange(static_cast<int>(field.least), static_cast<int>(field.most) + 1);
  }
  void optional_whole(const NumberField& field, std::optional<int>& value) override {
    value.reset();
    if (by_chance()) whole(field, value.emplace());
  }
  void vector(const NumberField& field, Vec3& value) override {
    for (double& x : value) number(field, x);
  }
  void direction(const FieldLabel&, Vec3& value) override {
    const auto part = [] { return *rc::gen::inRange(-1000000, 1000000) * 1e-6; };
    value = Vec3(part(), part(), part());
    value = value.norm() > 1e-3 ? Vec3(value.normalized()) : Vec3(Vec3::UnitZ());
  }
  void optional_direction(const FieldLabel& field, std::optional<Vec3>& value) override {
    value.reset();
    if (by_chance()) direction(field, value.emplace());
  }
  void choice_index(const FieldLabel&, ChoiceWords words, int& index) override {
    index = *rc::gen::inRange(0, static_cast<int>(words.size()));
  }
  void optional_choice_index(const FieldLabel& field, ChoiceWords words,
                             std::optional<int>& index) override {
    index.reset();
    if (by_chance()) choice_index(field, words, index.emplace());
  }
  void points_access(const NumberField& field, PointsAccess& points) override {
    points.resize(*rc::gen::inRange<std::size_t>(0, 3));
    for (std::size_t i = 0; i < points.size(); ++i) vector(field, points.at(i));
  }
  void group_access(const FieldLabel&, GroupAccess& group) override {
    if (group.optional()) group.set_present(by_chance());
    if (group.present()) group.visit(*this);
  }
  void list_access(const FieldLabel&, ListAccess& list) override {
    list.resize(*rc::gen::inRange<std::size_t>(0, 3));
    for (std::size_t i = 0; i < list.size(); ++i) list.visit(i, *this);
  }
  void unknown_members(UnknownMembers& members) override {
    members.clear();
    if (*rc::gen::inRange(0, 8) == 0) {
      members.push_back(
          {"later", *rc::gen::element<std::string>("1.5", "null", R"({"a":[1,2,{"b":"c"}],"d":{}})",
                                                   "[[],[1]]")});
    }
  }

 private:
  static bool by_chance() { return *rc::gen::arbitrary<bool>(); }

  // Both ends of the range, tidy numbers and untidy ones.
  static double shown_number(const NumberField& field) {
    const int kind = *rc::gen::inRange(0, 6);
    if (kind == 0) return field.least;
    if (kind == 1) return field.most;
    const double part = *rc::gen::inRange(0, 1 << 30) / static_cast<double>(1 << 30);
    const double untidy = field.least + part * (field.most - field.least);
    if (kind < 4) return untidy;
    const double tidy = std::round(untidy * 10.0) / 10.0;
    return std::clamp(tidy, field.least, field.most);
  }
};

inline Project random_project() {
  Project project;
  RandomFields fields;
  visit_fields(fields, project);
  return project;
}

}  // namespace tackbench::testing
