// The members of one station as the tables of fields give them: entries, groups and lists, in
// order, each with its member path. Plain values, read from a project.
#pragma once

#include <QString>
#include <string>
#include <variant>
#include <vector>

#include "core/basics/units.h"
#include "core/project/field_labels.h"
#include "core/project/project.h"

namespace tackbench::ui {

enum class EntryKind {
  text,
  flag,
  number,
  whole,
  point,  // three numbers with a unit: a place, a size, a turn
  direction,
  choice,
};

struct FieldEntry {
  EntryKind kind = EntryKind::text;
  std::string path;
  QString words;
  QString note;
  bool optional = false;  // may be "not given"
  Unit unit = Unit::number;
  double least = 0.0;  // range in the file's unit
  double most = 0.0;
  TextKind text_kind = TextKind::free;
  std::vector<std::string> choices;  // as in files
};

enum class GroupKind {
  record,    // always there
  optional,  // may be left out
  list,      // of records
  item,      // one of them
  points,    // list of points
};

struct FieldGroup {
  GroupKind kind = GroupKind::record;
  std::string path;
  QString words;
  QString note;
  QString name;           // of an item that has one
  std::size_t index = 0;  // of an item in its list
  bool present = true;
  std::vector<std::variant<FieldEntry, FieldGroup>> members;
};

// `root`: member of the project, "drag_link", "cab", "measurements". `present` is false where the
// project has none.
FieldGroup field_group(const Project& project, const std::string& root);

// Paths and what is present, in one text: alike for trees of the same widgets.
std::string structure_of(const FieldGroup& group);

// Every entry of the tree, in order.
std::vector<FieldEntry> entries_of(const FieldGroup& group);

}  // namespace tackbench::ui
