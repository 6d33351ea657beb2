// Files outside the project: scans and photographs, known by relative path and SHA-256.
#pragma once

#include <filesystem>
#include <string>
#include <vector>

#include "core/basics/result.h"
#include "core/project/checked_reference.h"
#include "core/project/project.h"

namespace tackbench {

// SHA-256 of a file's content, 64 lower-case hex digits (FIPS 180-4).
Result<std::string> sha256_of_file(const std::filesystem::path& path);

// Looks at every file that the project refers to. Paths are seen from the folder of
// `project_file`. Reads the files whole: call it when the project is opened, not in a loop.
std::vector<CheckedReference> checked_references(const Project& project,
                                                 const std::filesystem::path& project_file);

}  // namespace tackbench
