#include "core/project-file/json_layout.h"

#include <algorithm>
#include <nlohmann/json.hpp>

namespace tackbench {

namespace {

using Json = nlohmann::ordered_json;

void append_object(std::string& text, const Json& object, int depth) {
  text += '{';
  for (auto item = object.begin(); item != object.end(); ++item) {
    if (item != object.begin()) text += ',';
    append_line_break(text, depth + 1);
    text += json_quoted(item.key()) + ": ";
    append_json(text, *item, depth + 1);
  }
  append_line_break(text, depth);
  text += '}';
}

void append_list(std::string& text, const Json& list, int depth) {
  const bool plain =
      std::none_of(list.begin(), list.end(), [](const Json& item) { return item.is_structured(); });
  text += '[';
  for (auto item = list.begin(); item != list.end(); ++item) {
    if (item != list.begin()) text += plain ? ", " : ",";
    if (!plain) append_line_break(text, depth + 1);
    append_json(text, *item, depth + 1);
  }
  if (!plain) append_line_break(text, depth);
  text += ']';
}

}  // namespace

std::string json_quoted(std::string_view text) {
  return Json(text).dump(-1, ' ', false, Json::error_handler_t::replace);
}

void append_line_break(std::string& text, int depth) {
  text += '\n';
  text.append(2 * static_cast<std::size_t>(depth), ' ');
}

void append_json(std::string& text, const Json& node, int depth) {
  if (node.is_object() && !node.empty()) {
    append_object(text, node, depth);
  } else if (node.is_array() && !node.empty()) {
    append_list(text, node, depth);
  } else {
    text += node.dump(-1, ' ', false, Json::error_handler_t::replace);
  }
}

}  // namespace tackbench
