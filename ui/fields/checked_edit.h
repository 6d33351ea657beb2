// Edits from fields: one undo step each, refused with words when they would make a project whose
// values do not fit together.
#pragma once

#include <string>

#include "core/basics/result.h"
#include "ui/session/session.h"

namespace tackbench::ui {

// Faults, or none when the member was set (or held that value already).
Problems set_member(Session& session, const std::string& path, const std::string& member_text);

// Faults across fields that `after` has and `before` has not.
Problems new_problems(const Project& before, const Project& after);

}  // namespace tackbench::ui
