// Fills a record from one JSON object, field by field.
#pragma once

#include <nlohmann/json.hpp>
#include <string>
#include <string_view>
#include <vector>

#include "core/project-file/fault_list.h"
#include "core/project/field_visitor.h"

namespace tackbench {

// A field with a fault keeps the value it had. `place` is the member path of the object, empty at
// the top; faults are added to `faults`.
class FieldReader final : public FieldVisitor {
 public:
  FieldReader(const nlohmann::ordered_json& object, std::string place, FaultList& faults);

  bool changes_values() const override { return true; }
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
  using Json = nlohmann::ordered_json;

  // The member, or null when it is left out; says so if it was required. `null` in the file is the
  // same as left out for optional fields only.
  const Json* find(const FieldLabel& field, const std::string& wanted);
  const Json* find_optional(const FieldLabel& field);
  // The member as a list; null when it is left out or is no list, which is then said.
  const Json* find_list(const FieldLabel& field);
  std::string place_of(const FieldLabel& field) const;
  // Adds the fault, if there is one; true when there is none.
  bool good(std::optional<Problem> fault);
  void wrong(const FieldLabel& field, const Json& found, const std::string& wanted);

  bool take_number(const NumberField& field, const Json& node, double& value);
  bool take_whole(const NumberField& field, const Json& node, int& value);
  bool take_direction(const FieldLabel& field, const Json& node, Vec3& value);
  bool take_choice(const FieldLabel& field, ChoiceWords words, const Json& node, int& index);
  bool take_vector(const NumberField& field, const std::string& place, const Json& node,
                   Vec3& value);

  const Json& object_;
  std::string place_;
  FaultList& faults_;
  std::vector<std::string_view> known_;
};

}  // namespace tackbench
