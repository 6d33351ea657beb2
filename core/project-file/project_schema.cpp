#include "core/project-file/project_schema.h"

#include <fmt/format.h>

#include <nlohmann/json.hpp>

#include "core/project-file/json_layout.h"
#include "core/project-file/project_file.h"
#include "core/project/field_faults.h"
#include "core/project/field_visitor.h"
#include "core/project/fields.h"
#include "core/project/number_text.h"

namespace tackbench {

namespace {

using Json = nlohmann::ordered_json;

Json json_number(double value) {
  return Json::parse(number_text(value));
}

std::string description(const FieldLabel& field) {
  std::string text(field.words);
  if (!field.note.empty()) text += fmt::format("; {}", field.note);
  return text;
}

// Describes one record, shown with its defaults.
class SchemaVisitor final : public FieldVisitor {
 public:
  bool changes_values() const override { return false; }

  // The record's schema; `properties` may start with members ahead of the table's.
  Json taken() && {
    Json schema{{"type", "object"}};
    if (!required_.empty()) schema["required"] = std::move(required_);
    schema["properties"] = std::move(properties_);
    return schema;
  }
  bool anything_required() const { return !required_.empty(); }

  void add(const FieldLabel& field, Json schema) {
    if (field.required) required_.push_back(field.key);
    schema["description"] = description(field);
    properties_[std::string(field.key)] = std::move(schema);
  }

  void text(const TextField& field, std::string& value) override {
    Json schema{{"type", "string"}};
    switch (field.kind) {
      case TextKind::free:
        break;
      case TextKind::name:
        schema["pattern"] = R"(^[^\[\]]+$)";
        break;
      case TextKind::relative_path:
        schema["pattern"] = R"(^([^/\\:][^:]*)?$)";
        break;
      case TextKind::sha256:
        schema["pattern"] = "^([0-9A-Fa-f]{64})?$";
        break;
    }
    add_with_default(field, std::move(schema), value);
  }
  void flag(const FieldLabel& field, bool& value) override {
    add_with_default(field, Json{{"type", "boolean"}}, value);
  }
  void number(const NumberField& field, double& value) override {
    add_with_default(field, number_schema(field, "number"),
                     json_number(shown_from_inside(field.unit, value)));
  }
  void optional_number(const NumberField& field, std::optional<double>&) override {
    add(field, number_schema(field, Json{"number", "null"}));
  }
  void whole(const NumberField& field, int& value) override {
    add_with_default(field, number_schema(field, "integer"), value);
  }
  void optional_whole(const NumberField& field, std::optional<int>&) override {
    add(field, number_schema(field, Json{"integer", "null"}));
  }
  void vector(const NumberField& field, Vec3& value) override {
    const Vec3 shown = shown_vector(field, value);
    add_with_default(field, vector_schema(field),
                     Json{json_number(shown.x()), json_number(shown.y()), json_number(shown.z())});
  }
  void direction(const FieldLabel& field, Vec3& value) override {
    add_with_default(field, direction_schema("array"),
                     Json{json_number(value.x()), json_number(value.y()), json_number(value.z())});
  }
  void optional_direction(const FieldLabel& field, std::optional<Vec3>&) override {
    add(field, direction_schema(Json{"array", "null"}));
  }
  void choice_index(const FieldLabel& field, ChoiceWords words, int& index) override {
    add_with_default(field, Json{{"enum", words}}, words[static_cast<std::size_t>(index)]);
  }
  void optional_choice_index(const FieldLabel& field, ChoiceWords words,
                             std::optional<int>&) override {
    Json choices = words;
    choices.push_back(nullptr);
    add(field, Json{{"enum", std::move(choices)}});
  }
  void points_access(const NumberField& field, PointsAccess&) override {
    add(field, Json{{"type", "array"}, {"items", vector_schema(field)}});
  }
  void group_access(const FieldLabel& field, GroupAccess& group) override {
    SchemaVisitor inner;
    group.visit(inner);
    FieldLabel label = field;
    label.required = !group.optional() && inner.anything_required();
    Json schema = std::move(inner).taken();
    if (group.optional()) schema["type"] = Json{"object", "null"};
    add(label, std::move(schema));
  }
  void list_access(const FieldLabel& field, ListAccess& list) override {
    SchemaVisitor inner;
    list.visit_sample(inner);
    add(field, Json{{"type", "array"}, {"items", std::move(inner).taken()}});
  }
  void unknown_members(UnknownMembers&) override {}

 private:
  void add_with_default(const FieldLabel& field, Json schema, Json value) {
    if (!field.required) schema["default"] = std::move(value);
    add(field, std::move(schema));
  }

  static Json number_schema(const NumberField& field, Json type) {
    return {{"type", std::move(type)},
            {"minimum", json_number(field.least)},
            {"maximum", json_number(field.most)}};
  }
  static Json vector_schema(const NumberField& field) {
    return {{"type", "array"},
            {"items", number_schema(field, "number")},
            {"minItems", 3},
            {"maxItems", 3}};
  }
  static Json direction_schema(Json type) {
    return {{"type", std::move(type)},
            {"items", {{"type", "number"}}},
            {"contains", {{"not", {{"const", 0}}}}},
            {"minItems", 3},
            {"maxItems", 3}};
  }

  Json required_ = Json::array();
  Json properties_ = Json::object();
};

}  // namespace

std::string project_schema_text() {
  SchemaVisitor visitor;
  visitor.add({"tackbench_format", "version of the file format", "", true},
              Json{{"const", kFormatVersion}});
  Project project;
  visit_fields(visitor, project);

  Json schema{{"$schema", "https://json-schema.org/draft/2020-12/schema"},
              {"$id", "tackbench-project.schema.json"},
              {"title", "Tackbench project"},
              {"description",
               "A project file (*.tack). Lengths in mm, angles in degrees, forces in N, as each "
               "member's name says. Axes: X forward, Y left, Z up. Members that are not named here "
               "are kept."}};
  schema.update(std::move(visitor).taken());
  std::string text;
  append_json(text, schema, 0);
  return text + '\n';
}

}  // namespace tackbench
