#include <cmath>
#include <nlohmann/json.hpp>

#include "core/basics/member_name.h"
#include "core/fabrication/cut_list_writers.h"

namespace tackbench {

namespace {

using Json = nlohmann::ordered_json;

Json shown(const CutDimension& dimension) {
  if (!dimension.value) return nullptr;
  const double value = shown_from_inside(dimension.unit, *dimension.value);
  return std::isfinite(value) ? Json(value) : Json(nullptr);
}

Json dimension_json(const CutDimension& dimension) {
  Json made;
  made["name"] = dimension.value ? member_name(dimension.name, dimension.unit) : dimension.name;
  made["words"] = dimension.words;
  made["group"] = dimension.group;
  made["value"] = shown(dimension);
  made["unit"] = dimension.value ? symbol(dimension.unit) : "";
  if (!dimension.value) made["text"] = dimension.text;
  made["tolerance"] = dimension.tolerance_kind == ToleranceKind::plus_minus
                          ? Json(shown_from_inside(dimension.unit, dimension.tolerance))
                          : Json(nullptr);
  made["tolerance_words"] = tolerance_text(dimension);
  made["note"] = dimension.note;
  return made;
}

}  // namespace

std::string cut_list_json(const CutList& list) {
  Json root;
  root["project"] = list.project;
  root["past"] = Json::array();
  for (const PastFinding& finding : list.past)
    root["past"].push_back({{"name", finding.name}, {"sentence", finding.sentence}});
  root["items"] = Json::array();
  for (const CutItem& item : list.items) {
    Json made;
    made["name"] = item.name;
    made["title"] = item.title;
    made["quantity"] = item.quantity;
    made["dimensions"] = Json::array();
    for (const CutDimension& dimension : item.dimensions)
      made["dimensions"].push_back(dimension_json(dimension));
    made["notes"] = item.notes;
    made["cautions"] = item.cautions;
    root["items"].push_back(std::move(made));
  }
  root["not_listed_yet"] = list.waiting;
  root["cautions"] = list.cautions;
  root["not_checked"] = list.not_checked;
  // Replace rather than throw on bytes that are not UTF-8 in a name.
  return root.dump(2, ' ', false, Json::error_handler_t::replace) + "\n";
}

}  // namespace tackbench
