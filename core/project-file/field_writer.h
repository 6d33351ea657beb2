// Writes a record as one JSON object, in the order of its table of fields.
#pragma once

#include <string>

#include "core/project/field_visitor.h"

namespace tackbench {

// Appends to `text`. Objects and lists of objects take a line a member; a point stands on one
// line, so that a difference of two files shows what changed.
class FieldWriter final : public FieldVisitor {
 public:
  // `depth` is that of the object's own brace.
  FieldWriter(std::string& text, int depth);
  void open();
  void close();
  // A member ahead of the table's own.
  void whole_member(std::string_view key, int value);

  bool changes_values() const override { return false; }
  void text(const TextField& field, std::string& value) override;
  void flag(const FieldLabel& field, bool& value) override;
  void number(const NumberField& field, double& value) override;
  void optional_number(const NumberField& field, std::optional<double>& value) override;
  void whole(const NumberField& field, int& value) override;
  void optional_whole(const NumberField& field, std::optional<int>& value) override;
  void vector(const NumberField& field, Vec3& value) override;
  void direction(const FieldLabel& field, Vec3& value) override;
  void optional_direction(const FieldLabel& field, std::optional<Vec3>& value) override;
  void choice_index(const FieldLabel& field, ChoiceWords words, int& index) override;
  void optional_choice_index(const FieldLabel& field, ChoiceWords words,
                             std::optional<int>& index) override;
  void points_access(const NumberField& field, PointsAccess& points) override;
  void group_access(const FieldLabel& field, GroupAccess& group) override;
  void list_access(const FieldLabel& field, ListAccess& list) override;
  void unknown_members(UnknownMembers& members) override;

 private:
  void member(std::string_view key);  // comma, line break, key, colon

  std::string& text_;
  int depth_;
  bool first_ = true;
};

}  // namespace tackbench
