#include "ui/fields/checked_edit.h"

#include <QCoreApplication>
#include <algorithm>
#include <utility>

#include "core/project/field_path.h"
#include "core/project/value_checks.h"

namespace tackbench::ui {

Problems new_problems(const Project& before, const Project& after) {
  const Problems old = value_problems(before);
  Problems fresh;
  for (const Problem& problem : value_problems(after))
    if (std::find(old.begin(), old.end(), problem) == old.end()) fresh.push_back(problem);
  return fresh;
}

namespace {

// Readings call a datum by its name: a new name goes along into them.
void carry_datum_name(const Project& before, Project& after, const std::string& path) {
  if (!path.starts_with("measurements.datums[") || !path.ends_with("].name")) return;
  const Result<std::string> old_name = field_text(before, path);
  const Result<std::string> new_name = field_text(after, path);
  if (!old_name || !new_name) return;
  auto carried = std::make_shared<MeasurementsStation>(*after.measurements);
  const auto rename = [&](auto& readings) {
    for (auto& reading : readings) {
      if (reading.from == *old_name) reading.from = *new_name;
      if (reading.to == *old_name) reading.to = *new_name;
    }
  };
  rename(carried->tapes);
  rename(carried->plumbs);
  rename(carried->angles);
  after.measurements = std::move(carried);
}

}  // namespace

Problems set_member(Session& session, const std::string& path, const std::string& member_text) {
  Result<Project> after = with_field(session.project(), path, member_text);
  if (!after) return after.problems();
  carry_datum_name(session.project(), after.value(), path);
  if (Problems problems = new_problems(session.project(), *after); !problems.empty())
    return problems;
  const Result<std::string> words = field_words(session.project(), path);
  session.edit(QCoreApplication::translate("CheckedEdit", "Set %1")
                   .arg(QString::fromStdString(words ? *words : path)),
               std::move(after).value());
  return {};
}

}  // namespace tackbench::ui
