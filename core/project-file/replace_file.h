// Puts a text in a file's place in one step.
#pragma once

#include <filesystem>
#include <string_view>

#include "core/basics/result.h"

namespace tackbench {

// Writes beside the file, syncs, renames over it, syncs the folder: whoever reads the file, at any
// moment and after any interruption, finds the old content or the new one, whole. Keeps the old
// file's permission bits and follows a symbolic link. A writer that is killed may leave a hidden
// file "<name>.saving-..." beside it.
Result<Done> replace_file(const std::filesystem::path& path, std::string_view text);

}  // namespace tackbench
