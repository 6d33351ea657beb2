#include "core/basics/wording.h"

#include <nlohmann/json.hpp>

namespace tackbench {

// The text of resources/wording/en.json, made by the build.
std::string_view embedded_wording_en();

namespace {

std::string fault(std::string_view what) {
  return "[[wording: " + std::string(what) + "]]";
}

const std::string* field_named(const WordingFields& fields, std::string_view name) {
  for (const auto& [key, value] : fields)
    if (key == name) return &value;
  return nullptr;
}

}  // namespace

Wording::Wording(std::string_view json) {
  const auto tree = nlohmann::json::parse(json, nullptr, false);
  if (!tree.is_object()) return;
  for (const auto& [key, value] : tree.items())
    if (value.is_string()) sentences_[key] = value.get<std::string>();
}

std::string Wording::say(std::string_view key, const WordingFields& fields) const {
  const auto found = sentences_.find(key);
  if (found == sentences_.end()) return fault(key);
  const std::string& sentence = found->second;
  std::string said;
  std::size_t at = 0;
  while (at < sentence.size()) {
    const std::size_t open = sentence.find('{', at);
    const std::size_t close = open == std::string::npos ? open : sentence.find('}', open);
    if (close == std::string::npos) break;
    said += sentence.substr(at, open - at);
    const std::string name = sentence.substr(open + 1, close - open - 1);
    const std::string* value = field_named(fields, name);
    said += value ? *value : fault(std::string(key) + "." + name);
    at = close + 1;
  }
  return said + sentence.substr(at);
}

const Wording& wording() {
  static const Wording built_in(embedded_wording_en());
  return built_in;
}

std::string say(std::string_view key, const WordingFields& fields) {
  return wording().say(key, fields);
}

std::vector<std::string> fields_in(std::string_view sentence) {
  std::vector<std::string> names;
  std::size_t open = sentence.find('{');
  while (open != std::string_view::npos) {
    const std::size_t close = sentence.find('}', open);
    if (close == std::string_view::npos) break;
    names.emplace_back(sentence.substr(open + 1, close - open - 1));
    open = sentence.find('{', close);
  }
  return names;
}

std::string capitalised(std::string text) {
  if (!text.empty() && text[0] >= 'a' && text[0] <= 'z')
    text[0] = static_cast<char>(text[0] - 'a' + 'A');
  return text;
}

}  // namespace tackbench
