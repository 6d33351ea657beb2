// A visitor that walks through all present records, keeps the member path, and leaves every field
// alone. Derive from it to look at a few kinds of field only.
#pragma once

#include <string>

#include "core/project/field_visitor.h"

namespace tackbench {

class FieldWalk : public FieldVisitor {
 public:
  bool changes_values() const override { return false; }
  void text(const TextField&, std::string&) override {}
  void flag(const FieldLabel&, bool&) override {}
  void number(const NumberField&, double&) override {}
  void optional_number(const NumberField&, std::optional<double>&) override {}
  void whole(const NumberField&, int&) override {}
  void optional_whole(const NumberField&, std::optional<int>&) override {}
  void vector(const NumberField&, Vec3&) override {}
  void direction(const FieldLabel&, Vec3&) override {}
  void optional_direction(const FieldLabel&, std::optional<Vec3>&) override {}
  void choice_index(const FieldLabel&, ChoiceWords, int&) override {}
  void optional_choice_index(const FieldLabel&, ChoiceWords, std::optional<int>&) override {}
  void points_access(const NumberField&, PointsAccess&) override {}
  void group_access(const FieldLabel& field, GroupAccess& group) override;
  void list_access(const FieldLabel& field, ListAccess& list) override;
  void unknown_members(UnknownMembers&) override {}

 protected:
  // Member path of the record being visited; of one of its fields.
  const std::string& place() const { return place_; }
  std::string place_of(const FieldLabel& field) const;

 private:
  std::string place_;
};

}  // namespace tackbench
