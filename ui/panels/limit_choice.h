// A limit of one's own over the shipped one, as an edit of the project.
#pragma once

#include <QString>
#include <optional>
#include <string>

#include "core/basics/result.h"
#include "core/findings/finding.h"
#include "core/project/project.h"

namespace tackbench::ui {

// Why this limit is not for choosing; empty when it is.
QString fixed_words(const Limit& limit);

// The project's own choice over the limit of that name; null when it has none.
const LimitChoice* own_choice(const Project& project, const std::string& name);

// The project with that choice (values in the limit's shown unit) in place of an older one. Faults
// in words: a fixed limit, no such limit, no value, an order that does not fit.
Result<Project> with_own_limit(const Project& project, const Limit& limit,
                               const LimitChoice& choice);
// The project that judges by the shipped limit again.
Project without_own_limit(const Project& project, const std::string& name);

}  // namespace tackbench::ui
