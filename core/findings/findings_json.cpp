#include "core/findings/findings_json.h"

#include <cmath>
#include <nlohmann/json.hpp>

#include "core/basics/member_name.h"
#include "core/findings/cautions.h"
#include "core/findings/limits.h"

namespace tackbench {

namespace {

using Json = nlohmann::ordered_json;

// JSON knows no infinity and no NaN.
Json number(double value) {
  return std::isfinite(value) ? Json(value) : Json(nullptr);
}

Json shown_number(double inside, Unit unit) {
  return number(shown_from_inside(unit, inside));
}

Json numbers_json(const std::vector<Quantity>& numbers) {
  Json json = Json::object();
  for (const Quantity& each : numbers)
    json[member_name(each.name, each.unit)] = shown_number(each.value, each.unit);
  return json;
}

Json limit_json(const Limit& limit) {
  Json json = {{"name", limit.name}};
  const auto put = [&](const char* name, const std::optional<double>& value) {
    if (value) json[member_name(name, limit.unit)] = shown_number(*value, limit.unit);
  };
  put("least", limit.least);
  put("most", limit.most);
  put("least_inner", limit.least_inner);
  put("most_inner", limit.most_inner);
  json["words"] = limit.words;
  json["standing"] = standing_name(limit.standing);
  json["chosen"] = limit.chosen;
  json["source"] = limit.source;
  return json;
}

Json controls_json(const Controls& controls) {
  Json json;
  json["hand_wheel_deg"] = shown_number(controls.hand_wheel, Unit::degree);
  json["bump_left_mm"] = number(controls.bump_left);
  json["bump_right_mm"] = number(controls.bump_right);
  json["wind_up_deg"] = shown_number(controls.wind_up, Unit::degree);
  json["cab_shake_mm"] = {number(controls.cab_shake.x()), number(controls.cab_shake.y()),
                          number(controls.cab_shake.z())};
  json["pedals"] = controls.pedals;
  return json;
}

const char* verdict_name(Verdict verdict) {
  return verdict == Verdict::not_judged ? "not_judged" : verdict_word(verdict);
}

Json finding_tree(const Finding& finding) {
  Json json;
  json["name"] = finding.name;
  json["station"] = station_name(finding.station);
  json["verdict"] = verdict_name(finding.verdict);
  json["sentence"] = finding.sentence;
  json["numbers"] = numbers_json(finding.numbers);
  if (!finding.numbers.empty() && finding.limit)
    json["judged"] = member_name(finding.numbers.front().name, finding.numbers.front().unit);
  if (finding.limit) json["limit"] = limit_json(*finding.limit);
  if (finding.worst_at) json["worst_at"] = controls_json(*finding.worst_at);
  if (!finding.why_not_judged.empty()) json["why_not_judged"] = finding.why_not_judged;
  if (finding.caution) json["caution"] = *finding.caution;
  return json;
}

Json trace_json(const Trace& trace) {
  Json json;
  json["formula"] = trace.formula;
  json["source"] = trace.source;
  json["inputs"] = numbers_json(trace.inputs);
  json["steps"] = Json::array();
  for (const TraceStep& step : trace.steps)
    json["steps"].push_back({{"words", step.words},
                             {"formula", step.formula},
                             {"results", numbers_json(step.results)}});
  return json;
}

}  // namespace

std::string findings_json(const std::vector<Finding>& findings,
                          const std::vector<std::string>& unknown_members) {
  Json json;
  json["findings"] = Json::array();
  int counts[4] = {};
  for (const Finding& finding : findings) {
    json["findings"].push_back(finding_tree(finding));
    ++counts[static_cast<int>(finding.verdict)];
  }
  for (const Verdict verdict :
       {Verdict::past, Verdict::close, Verdict::not_judged, Verdict::within})
    json[verdict_name(verdict)] = counts[static_cast<int>(verdict)];
  json["unknown_members"] = unknown_members;
  json["not_checked"] = not_checked();
  json["cautions"] = caution_sentences();
  return json.dump(2, ' ', false, Json::error_handler_t::replace) + "\n";
}

std::string finding_json(const Finding& finding) {
  Json json = finding_tree(finding);
  json["trace"] = trace_json(finding.trace);
  return json.dump(2, ' ', false, Json::error_handler_t::replace) + "\n";
}

}  // namespace tackbench
