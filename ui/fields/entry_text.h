// What stands in a field, and what a typed text means for its member. Member texts are those of
// field_path.h: the file's unit, "none" for what is not given.
#pragma once

#include <QString>
#include <string>

#include "core/basics/result.h"
#include "core/basics/shown_number.h"
#include "ui/fields/field_tree.h"

namespace tackbench::ui {

// The unit that lengths of this member are shown in: a metric thread is called by its millimetres
// whatever the rest is shown in.
ShownUnit unit_for(const FieldEntry& entry, ShownUnit shown);

// "mm", "in", "°", "turns", "%"; empty for plain numbers.
QString unit_sign(Unit unit, ShownUnit lengths);

// The number as screens show it, without its unit; empty for what is not given.
QString shown_entry(const FieldEntry& entry, const std::string& member_text, ShownUnit lengths);
// The same with every digit, for a field that is being edited. Reading it back gives the member's
// value.
QString exact_entry(const FieldEntry& entry, const std::string& member_text, ShownUnit lengths);

// The member text for what was typed; faults in words, with ranges in the unit shown.
Result<std::string> member_text(const FieldEntry& entry, const QString& typed, ShownUnit lengths);

// "1 to 20 mm"; empty for what has no range.
QString range_words(const FieldEntry& entry, ShownUnit lengths);

// A file's word as people read it: "ball stud".
QString choice_words_shown(const std::string& word);

// "wall thickness is past its range; give 1 to 20".
QString fault_words(const Problems& problems);

}  // namespace tackbench::ui
