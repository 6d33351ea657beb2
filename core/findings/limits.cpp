#include "core/findings/limits.h"

#include <fmt/core.h>

#include <algorithm>
#include <nlohmann/json.hpp>

#include "core/basics/wording.h"

namespace tackbench {

// The text of resources/limits.json, made by the build.
std::string_view embedded_limits();

namespace {

using Json = nlohmann::json;

struct UnitName {
  const char* name;
  Unit unit;
};
constexpr UnitName kUnitNames[] = {
    {"number", Unit::number},
    {"millimetre", Unit::millimetre},
    {"degree", Unit::degree},
    {"turn", Unit::turn},
    {"percent", Unit::percent},
    {"newton", Unit::newton},
    {"newton_metre", Unit::newton_metre},
    {"count", Unit::count},
    {"degree_per_25_mm", Unit::degree_per_25_mm},
    {"degree_per_mm", Unit::degree_per_mm},
};

constexpr Standing kStandings[] = {Standing::read,   Standing::computed,
                                   Standing::memory, Standing::common_practice,
                                   Standing::maker,  Standing::builder};

Unit unit_named(const std::string& name) {
  for (const UnitName& known : kUnitNames)
    if (name == known.name) return known.unit;
  return Unit::number;
}

Standing standing_named(const std::string& name) {
  for (const Standing standing : kStandings)
    if (name == standing_name(standing)) return standing;
  return Standing::builder;
}

std::optional<double> inside_number(const Json& entry, const char* member, Unit unit) {
  const auto found = entry.find(member);
  if (found == entry.end() || !found->is_number()) return std::nullopt;
  return inside_from_shown(unit, found->get<double>());
}

ShippedLimit read_limit(const Json& entry) {
  ShippedLimit shipped;
  Limit& limit = shipped.limit;
  limit.name = entry.value("name", "");
  limit.unit = unit_named(entry.value("unit", ""));
  limit.least = inside_number(entry, "least", limit.unit);
  limit.most = inside_number(entry, "most", limit.unit);
  limit.least_inner = inside_number(entry, "least_inner", limit.unit);
  limit.most_inner = inside_number(entry, "most_inner", limit.unit);
  limit.wanted = entry.value("wanted", "");
  limit.source = entry.value("source", "");
  limit.standing = standing_named(entry.value("standing", ""));
  limit.given_by = entry.value("given_by", "");
  shipped.about = entry.value("about", "");
  shipped.fixed = entry.value("fixed", false);
  shipped.tighten_only = entry.value("tighten_only", false);
  return shipped;
}

std::vector<ShippedLimit> read_limits() {
  std::vector<ShippedLimit> limits;
  const Json tree = Json::parse(embedded_limits(), nullptr, false);
  if (!tree.is_object() || !tree.contains("limits")) return limits;
  for (const Json& entry : tree["limits"]) limits.push_back(read_limit(entry));
  return limits;
}

const ShippedLimit* shipped_limit(std::string_view name) {
  const auto& all = shipped_limits();
  const auto found = std::find_if(
      all.begin(), all.end(), [&](const ShippedLimit& each) { return each.limit.name == name; });
  return found == all.end() ? nullptr : &*found;
}

// The project's choice, where the limit is a matter of choice.
const LimitChoice* choice_for(const Project& project, std::string_view name) {
  const ShippedLimit* shipped = shipped_limit(name);
  if (!project.limits || (shipped && shipped->fixed)) return nullptr;
  for (const LimitChoice& choice : project.limits->choices)
    if (choice.name == name) return &choice;
  return nullptr;
}

std::optional<double> inside(Unit unit, const std::optional<double>& shown_value) {
  if (!shown_value) return std::nullopt;
  return inside_from_shown(unit, *shown_value);
}

// A choice replaces the whole limit: half a shipped limit under another source would be neither.
void put_over(Limit& limit, const LimitChoice& choice) {
  limit.least = inside(limit.unit, choice.least);
  limit.most = inside(limit.unit, choice.most);
  limit.least_inner = inside(limit.unit, choice.least_inner);
  limit.most_inner = inside(limit.unit, choice.most_inner);
  limit.wanted.clear();
  limit.source = choice.source;
  limit.standing = choice.standing;
  limit.chosen = true;
}

using Bound = std::optional<double>;

bool looser_below(const Bound& chosen, const Bound& shipped) {
  return chosen && shipped && *chosen < *shipped;
}
bool looser_above(const Bound& chosen, const Bound& shipped) {
  return chosen && shipped && *chosen > *shipped;
}

bool loosens(const LimitChoice& choice, const Limit& shipped) {
  return looser_below(inside(shipped.unit, choice.least), shipped.least) ||
         looser_below(inside(shipped.unit, choice.least_inner), shipped.least_inner) ||
         looser_above(inside(shipped.unit, choice.most), shipped.most) ||
         looser_above(inside(shipped.unit, choice.most_inner), shipped.most_inner);
}

// The stricter of both, bound by bound.
void tighten(Limit& limit, const LimitChoice& choice) {
  const Limit shipped = limit;
  put_over(limit, choice);
  const auto keep = [](Bound& chosen, const Bound& own, bool looser) {
    if (!chosen || looser) chosen = own;
  };
  keep(limit.least, shipped.least, looser_below(limit.least, shipped.least));
  keep(limit.least_inner, shipped.least_inner,
       looser_below(limit.least_inner, shipped.least_inner));
  keep(limit.most, shipped.most, looser_above(limit.most, shipped.most));
  keep(limit.most_inner, shipped.most_inner, looser_above(limit.most_inner, shipped.most_inner));
}

bool out_of_order(const std::optional<double>& lower, const std::optional<double>& upper) {
  return lower && upper && *lower > *upper;
}

Problem fixed_limit(const ShippedLimit& shipped, const std::string& place) {
  const std::string& member = shipped.limit.given_by;
  return {"", place, say("problem.limit_fixed", {{"name", shipped.limit.name}}),
          member.empty() ? say("problem.limit_fixed_wanted")
                         : say("problem.limit_fixed_by_part", {{"member", member}})};
}

}  // namespace

const std::vector<ShippedLimit>& shipped_limits() {
  static const std::vector<ShippedLimit> limits = read_limits();
  return limits;
}

Limit limit_for(const Project& project, std::string_view name) {
  Limit limit;
  const ShippedLimit* shipped = shipped_limit(name);
  if (shipped) limit = shipped->limit;
  limit.name = name;
  if (const LimitChoice* choice = choice_for(project, name)) {
    if (shipped && shipped->tighten_only)
      tighten(limit, *choice);
    else
      put_over(limit, *choice);
  }
  return limit;
}

Limit limit_from(const Project& project, std::string_view name, const OwnValue& own) {
  Limit limit = limit_for(project, name);
  if (choice_for(project, name) || (!own.least && !own.most)) return limit;
  limit.least = own.least;
  limit.most = own.most;
  limit.least_inner.reset();
  limit.most_inner.reset();
  limit.wanted.clear();
  limit.source = own.source;
  limit.standing = own.standing;
  return limit;
}

Problems check_limit_choices(const Project& project) {
  Problems problems;
  if (!project.limits) return problems;
  std::size_t index = 0;
  for (const LimitChoice& choice : project.limits->choices) {
    const std::string place = fmt::format("limits.choices[{}]", index++);
    const ShippedLimit* shipped = shipped_limit(choice.name);
    if (!shipped) {
      problems.push_back({"", place + ".name", say("problem.limit_name", {{"name", choice.name}}),
                          say("problem.limit_name_wanted")});
    } else if (shipped->fixed) {
      problems.push_back(fixed_limit(*shipped, place));
      continue;
    } else if (shipped->tighten_only && loosens(choice, shipped->limit)) {
      problems.push_back({"", place, say("problem.limit_loosened", {{"name", choice.name}}),
                          say("problem.limit_loosened_wanted",
                              {{"limit", limit_words(shipped->limit, ShownUnit::millimetre)}})});
    } else if (!shipped->tighten_only && !choice.least && !choice.most) {
      problems.push_back({"", place, say("problem.limit_empty", {{"name", choice.name}}),
                          say("problem.limit_empty_wanted")});
    }
    if (out_of_order(choice.least, choice.most) || out_of_order(choice.least, choice.least_inner) ||
        out_of_order(choice.most_inner, choice.most) ||
        out_of_order(choice.least_inner, choice.most_inner))
      problems.push_back({"", place, say("problem.limit_order", {{"name", choice.name}}),
                          say("problem.limit_order_wanted")});
  }
  return problems;
}

std::string limit_words(const Limit& limit, ShownUnit lengths) {
  const auto text = [&](double value) { return shown(value, limit.unit, lengths); };
  if (!limit.wanted.empty()) return limit.wanted;
  if (limit.least && limit.most) {
    if (*limit.least == -*limit.most) return say("limit.either_way", {{"most", text(*limit.most)}});
    return say("limit.range", {{"least", shown_bare(*limit.least, limit.unit, lengths)},
                               {"most", text(*limit.most)}});
  }
  if (limit.least) return say("limit.at_least", {{"least", text(*limit.least)}});
  if (limit.most) return say("limit.at_most", {{"most", text(*limit.most)}});
  return say("limit.none");
}

std::string standing_words(Standing standing) {
  switch (standing) {
    case Standing::read:
      return say("standing.read");
    case Standing::computed:
      return say("standing.computed");
    case Standing::memory:
      return say("standing.memory");
    case Standing::common_practice:
      return say("standing.common_practice");
    case Standing::maker:
      return say("standing.maker");
    case Standing::builder:
      return say("standing.builder");
  }
  return {};
}

std::string source_words(const Limit& limit) {
  std::string standing = standing_words(limit.standing);
  constexpr std::string_view kArticle = "the ";
  std::string_view source = limit.source;
  if (limit.chosen && limit.standing != Standing::builder) {
    const std::string choice = standing_words(Standing::builder);
    if (source == choice) source = {};  // a choice's source where it names none
    if (limit.standing != Standing::maker) standing = choice + ", " + standing;
  }
  if (source.empty()) return standing;
  if (source.starts_with(kArticle)) source.remove_prefix(kArticle.size());
  return source.starts_with(standing) ? limit.source : standing + ": " + limit.source;
}

const char* standing_name(Standing standing) {
  switch (standing) {
    case Standing::read:
      return "read";
    case Standing::computed:
      return "computed";
    case Standing::memory:
      return "memory";
    case Standing::common_practice:
      return "common_practice";
    case Standing::maker:
      return "maker";
    case Standing::builder:
      return "builder";
  }
  return "";
}

std::string no_limit_words(const Limit& limit) {
  const std::string& member = limit.given_by;
  if (limit.standing == Standing::maker)
    return member.empty() ? say("not_judged.maker", {{"name", limit.name}})
                          : say("not_judged.maker_member", {{"member", member}});
  return member.empty() ? say("not_judged.builder", {{"name", limit.name}})
                        : say("not_judged.builder_member", {{"member", member}});
}

}  // namespace tackbench
