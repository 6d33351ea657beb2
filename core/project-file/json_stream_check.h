// The streaming pass over a project's text before any tree is built.
#pragma once

#include <string_view>

#include "core/basics/result.h"

namespace tackbench {

// Every reason not to build a tree from this text: too long, too deep, too many values, repeated
// members, bad syntax, NaN, infinities, not UTF-8, cut short, binary. Places are line:column,
// counted from 1, columns in bytes. Memory grows with depth and with the members of the open
// objects only.
Problems json_stream_faults(std::string_view text);

}  // namespace tackbench
