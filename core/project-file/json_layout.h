// How our JSON looks: two spaces a level, a line a member, lists of plain values on one line.
#pragma once

#include <nlohmann/json_fwd.hpp>
#include <string>
#include <string_view>

namespace tackbench {

// Text in quotes. Letters beyond ASCII stay as they are; bytes that are no UTF-8 become the
// replacement sign.
std::string json_quoted(std::string_view text);

// Line break and indent of that depth.
void append_line_break(std::string& text, int depth);

// The value in that layout; `depth` is that of the line on which it begins.
void append_json(std::string& text, const nlohmann::ordered_json& node, int depth);

}  // namespace tackbench
