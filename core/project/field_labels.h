// What the table of fields says about one field: its member name in the file, its words, unit and
// range. The same lines serve reader, writer, schema, forms, undo names and `--set path=value`.
#pragma once

#include <string_view>

#include "core/basics/units.h"

namespace tackbench {

struct FieldLabel {
  std::string_view key;        // member name in the file, with its unit: "wall_mm"
  std::string_view words;      // what it is, singular, no article: "wall thickness"
  std::string_view note = {};  // zero, sign or source, where words alone leave a doubt
  bool required = false;       // no default: a file that leaves it out is refused
};

struct NumberField : FieldLabel {
  Unit unit = Unit::number;
  double least = 0.0;  // range in the shown unit, both ends allowed
  double most = 0.0;
};

enum class TextKind {
  free,           // anything, may be empty
  name,           // not empty, no square brackets: it can stand in a member path
  relative_path,  // of a file, seen from the project's own folder; empty: not chosen yet
  sha256,         // 64 hex digits, or empty with the path
};

struct TextField : FieldLabel {
  TextKind kind = TextKind::free;
};

constexpr FieldLabel label(std::string_view key, std::string_view words,
                           std::string_view note = {}) {
  return {key, words, note};
}

constexpr NumberField number_field(Unit unit, std::string_view key, double least, double most,
                                   std::string_view words, std::string_view note = {}) {
  return {{key, words, note}, unit, least, most};
}

constexpr NumberField mm(std::string_view key, double least, double most, std::string_view words,
                         std::string_view note = {}) {
  return number_field(Unit::millimetre, key, least, most, words, note);
}

constexpr NumberField deg(std::string_view key, double least, double most, std::string_view words,
                          std::string_view note = {}) {
  return number_field(Unit::degree, key, least, most, words, note);
}

constexpr NumberField plain(std::string_view key, double least, double most, std::string_view words,
                            std::string_view note = {}) {
  return number_field(Unit::number, key, least, most, words, note);
}

constexpr NumberField count(std::string_view key, int least, int most, std::string_view words,
                            std::string_view note = {}) {
  return number_field(Unit::count, key, least, most, words, note);
}

// Coordinates of a place on a vehicle: nothing lies further than 20 m from the origin.
constexpr NumberField place(std::string_view key, std::string_view words,
                            std::string_view note = {}) {
  return mm(key, -20000, 20000, words, note);
}

constexpr TextField text_field(std::string_view key, std::string_view words,
                               std::string_view note = {}) {
  return {{key, words, note}, TextKind::free};
}

// The name by which a record of a list is called in paths, findings and the cut list.
constexpr TextField name_field() {
  return {{"name", "name", "no two in the same list are alike", true}, TextKind::name};
}

template <class Field>
constexpr Field required(Field field) {
  field.required = true;
  return field;
}

}  // namespace tackbench
