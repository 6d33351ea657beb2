// One field of a project by its member path: "drag_link.given_length_mm",
// "shaft_line.supports[1].eye_mm", by name "shaft_line.supports[upper eye].eye_mm", one coordinate
// "shaft_line.supports[1].eye_mm.x", an item of a list of points "pedals.pedals[0].arm_path_mm[2]".
// List items count from 0.
#pragma once

#include <optional>
#include <string>
#include <string_view>

#include "core/basics/result.h"
#include "core/project/project.h"

namespace tackbench {

// The project with that field set from text: a number in the unit of the member's name, a word,
// true or false, text with or without quotes, "[x, y, z]". `none` clears what may be absent: an
// optional number, an optional group, a station, a list. Same faults in the same words as from a
// file. Faults across fields are left to value_problems, so that several fields can be set in turn.
Result<Project> with_field(const Project& project, std::string_view path,
                           std::string_view value_text);

// The field as the file writes it, text without quotes; "none" for an absent optional one.
Result<std::string> field_text(const Project& project, std::string_view path);

// Words of the field for undo and headings: "drag link, tube, wall thickness".
Result<std::string> field_words(const Project& project, std::string_view path);

// The point that stands at the path, in the frame in which the file gives it, mm; empty when there
// is none.
std::optional<Vec3> point_at(const Project& project, std::string_view path);

}  // namespace tackbench
