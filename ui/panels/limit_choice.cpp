#include "ui/panels/limit_choice.h"

#include <QCoreApplication>
#include <algorithm>
#include <string_view>

#include "core/findings/limits.h"
#include "core/project/field_path.h"
#include "core/project/number_text.h"
#include "ui/fields/checked_edit.h"

namespace tackbench::ui {

namespace {

struct Texts {
  Q_DECLARE_TR_FUNCTIONS(LimitChoice)
};

Problem refused(const QString& found, const QString& wanted) {
  return {"", "limits.choices", found.toStdString(), wanted.toStdString()};
}

std::string value_text(const std::optional<double>& value) {
  return value ? number_text(*value) : "none";
}

}  // namespace

QString fixed_words(const Limit& limit) {
  // Left has to steer left, whoever builds the truck.
  if (limit.name == "steering.direction")
    return Texts::tr("Left has to steer left: this limit is not for choosing.");
  const auto& all = shipped_limits();
  const auto shipped = std::find_if(all.begin(), all.end(), [&](const ShippedLimit& each) {
    return each.limit.name == limit.name;
  });
  if (shipped == all.end()) return Texts::tr("This finding has no limit to choose.");
  if (shipped->limit.standing == Standing::computed)
    return Texts::tr(
        "This limit follows from the geometry itself: beyond it the parts do not fit. It is "
        "not for choosing.");
  return {};
}

const LimitChoice* own_choice(const Project& project, const std::string& name) {
  if (!project.limits) return nullptr;
  for (const LimitChoice& choice : project.limits->choices)
    if (choice.name == name) return &choice;
  return nullptr;
}

Result<Project> with_own_limit(const Project& project, const Limit& limit,
                               const LimitChoice& choice) {
  if (const QString fixed = fixed_words(limit); !fixed.isEmpty())
    return refused(fixed, Texts::tr("leave it as it is"));
  if (!choice.least && !choice.most)
    return refused(Texts::tr("neither a least nor a greatest value is given"),
                   Texts::tr("give one of them"));
  Project changed = project;
  auto limits = project.limits ? std::make_shared<LimitsStation>(*project.limits)
                               : std::make_shared<LimitsStation>();
  auto& choices = limits->choices;
  auto place = std::find_if(choices.begin(), choices.end(),
                            [&](const LimitChoice& each) { return each.name == limit.name; });
  if (place == choices.end()) place = choices.insert(choices.end(), LimitChoice{});
  place->name = limit.name;
  place->standing = choice.standing;
  const std::string path = "limits.choices[" + std::to_string(place - choices.begin()) + "].";
  changed.limits = std::move(limits);
  // Through the table of fields, so that ranges are looked after as in a file.
  const std::pair<const char*, std::string> members[] = {
      {"least", value_text(choice.least)},
      {"most", value_text(choice.most)},
      {"least_inner", value_text(choice.least_inner)},
      {"most_inner", value_text(choice.most_inner)},
      {"source", "\"" + choice.source + "\""}};
  for (const auto& [member, text] : members) {
    Result<Project> next = with_field(changed, path + member, text);
    if (!next) return next.problems();
    changed = std::move(next).value();
  }
  if (Problems problems = new_problems(project, changed); !problems.empty()) return problems;
  return changed;
}

Project without_own_limit(const Project& project, const std::string& name) {
  Project changed = project;
  if (!project.limits) return changed;
  auto limits = std::make_shared<LimitsStation>(*project.limits);
  std::erase_if(limits->choices, [&](const LimitChoice& each) { return each.name == name; });
  changed.limits = std::move(limits);
  return changed;
}

}  // namespace tackbench::ui
