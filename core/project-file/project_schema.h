// The published description of the file format, made from the tables of fields.
#pragma once

#include <string>

namespace tackbench {

// JSON Schema, draft 2020-12, of the current format. Says what each field alone may be; the checks
// across fields (core/project/value_checks.h) come on top.
std::string project_schema_text();

}  // namespace tackbench
