#include "core/project-file/field_writer.h"

#include <nlohmann/json.hpp>

#include "core/project-file/json_layout.h"
#include "core/project/field_faults.h"
#include "core/project/number_text.h"

namespace tackbench {

namespace {

using Json = nlohmann::ordered_json;

}  // namespace

FieldWriter::FieldWriter(std::string& text, int depth) : text_(text), depth_(depth) {}

void FieldWriter::open() {
  text_ += '{';
}

void FieldWriter::close() {
  if (!first_) append_line_break(text_, depth_);
  text_ += '}';
}

void FieldWriter::whole_member(std::string_view key, int value) {
  member(key);
  text_ += std::to_string(value);
}

void FieldWriter::member(std::string_view key) {
  if (!first_) text_ += ',';
  first_ = false;
  append_line_break(text_, depth_ + 1);
  text_ += json_quoted(key) + ": ";
}

void FieldWriter::text(const TextField& field, std::string& value) {
  member(field.key);
  text_ += json_quoted(value);
}

void FieldWriter::flag(const FieldLabel& field, bool& value) {
  member(field.key);
  text_ += value ? "true" : "false";
}

void FieldWriter::number(const NumberField& field, double& value) {
  member(field.key);
  text_ += number_text(shown_from_inside(field.unit, value));
}

void FieldWriter::optional_number(const NumberField& field, std::optional<double>& value) {
  if (value) number(field, *value);
}

void FieldWriter::whole(const NumberField& field, int& value) {
  whole_member(field.key, value);
}

void FieldWriter::optional_whole(const NumberField& field, std::optional<int>& value) {
  if (value) whole(field, *value);
}

void FieldWriter::vector(const NumberField& field, Vec3& value) {
  member(field.key);
  text_ += vector_text(shown_vector(field, value));
}

void FieldWriter::direction(const FieldLabel& field, Vec3& value) {
  member(field.key);
  text_ += vector_text(value);
}

void FieldWriter::optional_direction(const FieldLabel& field, std::optional<Vec3>& value) {
  if (value) direction(field, *value);
}

void FieldWriter::choice_index(const FieldLabel& field, ChoiceWords words, int& index) {
  member(field.key);
  text_ += json_quoted(words[static_cast<std::size_t>(index)]);
}

void FieldWriter::optional_choice_index(const FieldLabel& field, ChoiceWords words,
                                        std::optional<int>& index) {
  if (index) choice_index(field, words, *index);
}

void FieldWriter::points_access(const NumberField& field, PointsAccess& points) {
  if (points.size() == 0) return;
  member(field.key);
  text_ += '[';
  for (std::size_t i = 0; i < points.size(); ++i) {
    if (i > 0) text_ += ',';
    append_line_break(text_, depth_ + 2);
    text_ += vector_text(shown_vector(field, points.at(i)));
  }
  append_line_break(text_, depth_ + 1);
  text_ += ']';
}

void FieldWriter::group_access(const FieldLabel& field, GroupAccess& group) {
  if (!group.present()) return;
  member(field.key);
  FieldWriter inner(text_, depth_ + 1);
  inner.open();
  group.visit(inner);
  inner.close();
}

void FieldWriter::list_access(const FieldLabel& field, ListAccess& list) {
  if (list.size() == 0) return;
  member(field.key);
  text_ += '[';
  for (std::size_t i = 0; i < list.size(); ++i) {
    if (i > 0) text_ += ',';
    append_line_break(text_, depth_ + 2);
    FieldWriter inner(text_, depth_ + 2);
    inner.open();
    list.visit(i, inner);
    inner.close();
  }
  append_line_break(text_, depth_ + 1);
  text_ += ']';
}

void FieldWriter::unknown_members(UnknownMembers& members) {
  for (const UnknownMember& unknown : members) {
    const Json value = Json::parse(unknown.json, nullptr, false);
    member(unknown.key);
    append_json(text_, value.is_discarded() ? Json(unknown.json) : value, depth_ + 1);
  }
}

}  // namespace tackbench
