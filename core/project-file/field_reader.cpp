#include "core/project-file/field_reader.h"

#include <fmt/format.h>

#include <algorithm>

#include "core/project-file/near_name.h"
#include "core/project/field_faults.h"
#include "core/project/number_text.h"

namespace tackbench {

namespace {

using Json = nlohmann::ordered_json;

// The found value in one short line.
std::string short_text(const Json& node) {
  constexpr std::size_t kLongest = 60;
  if (node.is_object()) return "an object in braces";
  if (node.is_array() && node.size() > 6) return "a list of " + std::to_string(node.size());
  std::string text = node.dump(-1, ' ', true, Json::error_handler_t::replace);
  if (text.size() > kLongest) text = text.substr(0, kLongest) + "...";
  return text;
}

// A number that somebody put in quotes.
bool quoted_number(const Json& node) {
  return node.is_string() && number_from_text(node.get_ref<const std::string&>()).has_value();
}

// "5 mm": the same with a unit.
bool quoted_number_with_unit(const Json& node) {
  if (!node.is_string()) return false;
  const auto& text = node.get_ref<const std::string&>();
  const std::size_t end = text.find_last_of("0123456789.");
  return end != std::string::npos && number_from_text(text.substr(0, end + 1)).has_value();
}

// `otherwise` unless the slip can be named.
std::string wanted_instead(const Json& node, std::string otherwise) {
  if (quoted_number(node)) return "write the number without quotes";
  if (quoted_number_with_unit(node)) {
    return "write the number alone, without quotes: the member's name says the unit";
  }
  if (node.is_array() && std::any_of(node.begin(), node.end(), quoted_number)) {
    return "write the numbers without quotes";
  }
  return otherwise;
}

bool three_numbers(const Json& node) {
  return node.is_array() && node.size() == 3 &&
         std::all_of(node.begin(), node.end(), [](const Json& item) { return item.is_number(); });
}

Vec3 vector_of(const Json& node) {
  return {node[0].get<double>(), node[1].get<double>(), node[2].get<double>()};
}

const Json& empty_object() {
  static const Json object = Json::object();
  return object;
}

}  // namespace

FieldReader::FieldReader(const Json& object, std::string place, FaultList& faults)
    : object_(object), place_(std::move(place)), faults_(faults) {}

std::string FieldReader::place_of(const FieldLabel& field) const {
  return place_.empty() ? std::string(field.key) : place_ + "." + std::string(field.key);
}

const Json* FieldReader::find(const FieldLabel& field, const std::string& wanted) {
  known_.push_back(field.key);
  const auto found = object_.find(field.key);
  if (found != object_.end()) return &*found;
  if (field.required) faults_.add(missing(field, place_of(field), wanted));
  return nullptr;
}

const Json* FieldReader::find_optional(const FieldLabel& field) {
  const Json* node = find(field, "");
  return node && node->is_null() ? nullptr : node;
}

const Json* FieldReader::find_list(const FieldLabel& field) {
  const Json* node = find(field, "");
  if (!node || node->is_array()) return node;
  wrong(field, *node, "give a list in square brackets");
  return nullptr;
}

bool FieldReader::good(std::optional<Problem> fault) {
  if (!fault) return true;
  faults_.add(std::move(*fault));
  return false;
}

void FieldReader::wrong(const FieldLabel& field, const Json& found, const std::string& wanted) {
  faults_.add(not_a(field, place_of(field), short_text(found), wanted));
}

void FieldReader::text(const TextField& field, std::string& value) {
  const Json* node = find(field, wanted_text(field));
  if (!node) return;
  if (!node->is_string()) return wrong(field, *node, wanted_text(field));
  const auto& given = node->get_ref<const std::string&>();
  if (good(text_fault(field, place_of(field), given))) value = given;
}

void FieldReader::flag(const FieldLabel& field, bool& value) {
  const Json* node = find(field, wanted_flag());
  if (!node) return;
  if (!node->is_boolean()) return wrong(field, *node, wanted_flag());
  value = node->get<bool>();
}

bool FieldReader::take_number(const NumberField& field, const Json& node, double& value) {
  if (!node.is_number()) {
    wrong(field, node, wanted_instead(node, wanted_number(field)));
    return false;
  }
  const double shown = node.get<double>();
  if (!good(number_fault(field, place_of(field), shown))) return false;
  value = inside_from_shown(field.unit, shown);
  return true;
}

bool FieldReader::take_whole(const NumberField& field, const Json& node, int& value) {
  if (!node.is_number()) {
    wrong(field, node, wanted_instead(node, wanted_whole(field)));
    return false;
  }
  const double shown = node.get<double>();
  if (!good(whole_fault(field, place_of(field), shown))) return false;
  value = static_cast<int>(shown);
  return true;
}

bool FieldReader::take_vector(const NumberField& field, const std::string& place, const Json& node,
                              Vec3& value) {
  if (!three_numbers(node)) {
    faults_.add(not_a(field, place, short_text(node), wanted_instead(node, wanted_vector(field))));
    return false;
  }
  const Vec3 shown = vector_of(node);
  if (!good(vector_fault(field, place, shown))) return false;
  value = inside_vector(field, shown);
  return true;
}

bool FieldReader::take_direction(const FieldLabel& field, const Json& node, Vec3& value) {
  if (!three_numbers(node)) {
    wrong(field, node, wanted_instead(node, wanted_direction()));
    return false;
  }
  const Vec3 given = vector_of(node);
  if (!good(direction_fault(field, place_of(field), given))) return false;
  value = unit_direction(given);
  return true;
}

bool FieldReader::take_choice(const FieldLabel& field, ChoiceWords words, const Json& node,
                              int& index) {
  if (node.is_string()) {
    const auto found = std::find(words.begin(), words.end(), node.get_ref<const std::string&>());
    if (found != words.end()) {
      index = static_cast<int>(found - words.begin());
      return true;
    }
  }
  wrong(field, node, wanted_choice(field, words));
  return false;
}

void FieldReader::number(const NumberField& field, double& value) {
  if (const Json* node = find(field, wanted_number(field))) take_number(field, *node, value);
}

void FieldReader::optional_number(const NumberField& field, std::optional<double>& value) {
  value.reset();
  const Json* node = find_optional(field);
  double given = 0.0;
  if (node && take_number(field, *node, given)) value = given;
}

void FieldReader::whole(const NumberField& field, int& value) {
  if (const Json* node = find(field, wanted_whole(field))) take_whole(field, *node, value);
}

void FieldReader::optional_whole(const NumberField& field, std::optional<int>& value) {
  value.reset();
  const Json* node = find_optional(field);
  int given = 0;
  if (node && take_whole(field, *node, given)) value = given;
}

void FieldReader::vector(const NumberField& field, Vec3& value) {
  if (const Json* node = find(field, wanted_vector(field))) {
    take_vector(field, place_of(field), *node, value);
  }
}

void FieldReader::direction(const FieldLabel& field, Vec3& value) {
  if (const Json* node = find(field, wanted_direction())) take_direction(field, *node, value);
}

void FieldReader::optional_direction(const FieldLabel& field, std::optional<Vec3>& value) {
  value.reset();
  const Json* node = find_optional(field);
  Vec3 given;
  if (node && take_direction(field, *node, given)) value = given;
}

void FieldReader::choice_index(const FieldLabel& field, ChoiceWords words, int& index) {
  if (const Json* node = find(field, wanted_choice(field, words)))
    take_choice(field, words, *node, index);
}

void FieldReader::optional_choice_index(const FieldLabel& field, ChoiceWords words,
                                        std::optional<int>& index) {
  index.reset();
  const Json* node = find_optional(field);
  int given = 0;
  if (node && take_choice(field, words, *node, given)) index = given;
}

void FieldReader::points_access(const NumberField& field, PointsAccess& points) {
  const Json* node = find_list(field);
  if (!node) return;
  points.resize(node->size());
  for (std::size_t i = 0; i < node->size(); ++i) {
    const std::string place = place_of(field) + "[" + std::to_string(i) + "]";
    take_vector(field, place, (*node)[i], points.at(i));
  }
}

void FieldReader::group_access(const FieldLabel& field, GroupAccess& group) {
  const Json* node = group.optional() ? find_optional(field) : find(field, "");
  if (node && !node->is_object()) return wrong(field, *node, "give an object in braces");
  if (group.optional()) group.set_present(node != nullptr);
  if (!group.present()) return;
  FieldReader inner(node ? *node : empty_object(), place_of(field), faults_);
  group.visit(inner);
}

void FieldReader::list_access(const FieldLabel& field, ListAccess& list) {
  const Json* node = find_list(field);
  if (!node) return;
  list.resize(node->size());
  for (std::size_t i = 0; i < node->size(); ++i) {
    const std::string place = place_of(field) + "[" + std::to_string(i) + "]";
    const Json& item = (*node)[i];
    if (!item.is_object()) {
      faults_.add(not_a(field, place, short_text(item), "give an object in braces"));
      continue;
    }
    FieldReader inner(item, place, faults_);
    list.visit(i, inner);
  }
}

void FieldReader::unknown_members(UnknownMembers& members) {
  members.clear();
  std::vector<std::string_view> absent;
  for (const std::string_view known : known_) {
    if (!object_.contains(known)) absent.push_back(known);
  }
  for (const auto& [key, value] : object_.items()) {
    if (std::find(known_.begin(), known_.end(), key) != known_.end()) continue;
    members.push_back({key, value.dump()});
    // Kept for another version's sake, unless it is a slip that would silently leave a default.
    if (const auto meant = near_name(key, absent)) {
      faults_.add({"", place_.empty() ? key : place_ + "." + key, "there is no such member",
                   fmt::format("did you mean {}?", *meant)});
    }
  }
}

}  // namespace tackbench
