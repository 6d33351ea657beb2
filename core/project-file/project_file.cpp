#include "core/project-file/project_file.h"

#include <fmt/format.h>

#include <algorithm>
#include <nlohmann/json.hpp>

#include "core/project-file/fault_list.h"
#include "core/project-file/field_reader.h"
#include "core/project-file/field_writer.h"
#include "core/project-file/format_upgrades.h"
#include "core/project-file/json_stream_check.h"
#include "core/project-file/project_tree.h"
#include "core/project/fields.h"
#include "core/project/value_checks.h"

namespace tackbench {

namespace {

using Json = nlohmann::ordered_json;

constexpr const char* kFormatKey = "tackbench_format";

// Why the format cannot be read; empty when it can.
std::optional<Problem> format_fault(const Json& tree) {
  const std::string wanted = fmt::format("give 0 to {}", kFormatVersion);
  if (!tree.is_object()) {
    return Problem{"", "", "no object in braces at the top", "give a project file"};
  }
  const auto found = tree.find(kFormatKey);
  if (found == tree.end()) return Problem{"", kFormatKey, "format version is missing", wanted};
  if (!found->is_number_integer() || found->get<double>() < 0) {
    return Problem{"", kFormatKey, "this is not a format version", wanted};
  }
  if (found->get<double>() > kFormatVersion) {
    return Problem{
        "", kFormatKey, "the file was written by a newer Tackbench",
        fmt::format("open it with that one; this one reads formats 0 to {}", kFormatVersion)};
  }
  return std::nullopt;
}

// Whether `inner` is the member at `outer` or lies inside it.
bool lies_in(std::string_view inner, std::string_view outer) {
  if (!inner.starts_with(outer)) return false;
  return inner.size() == outer.size() || inner[outer.size()] == '.' || inner[outer.size()] == '[';
}

// A fault across fields that only follows from a fault already listed is left out.
bool follows_from(const Problem& problem, const Problems& listed) {
  return std::any_of(listed.begin(), listed.end(), [&](const Problem& other) {
    return lies_in(problem.place, other.place) || lies_in(other.place, problem.place);
  });
}

}  // namespace

Project project_from_tree(const Json& tree, FaultList& faults) {
  Project project;
  FieldReader reader(tree, "", faults);
  visit_fields(reader, project);
  return project;
}

Result<UnfinishedProject> read_unfinished_text(std::string_view text,
                                               const std::string& file_name) {
  FaultList faults;
  for (const Problem& fault : json_stream_faults(text)) faults.add(fault);
  if (!faults.empty()) return std::move(faults).taken(file_name);

  Json tree = Json::parse(text, nullptr, false);
  if (const auto fault = format_fault(tree)) {
    faults.add(*fault);
    return std::move(faults).taken(file_name);
  }
  upgrade_tree(tree, tree[kFormatKey].get<int>());
  tree.erase(kFormatKey);

  UnfinishedProject read{project_from_tree(tree, faults), {}};
  const bool every_value_good = faults.empty();
  const Problems listed = faults.listed();
  if (listed.size() < kMostListedFaults) {
    for (const Problem& problem : value_problems(read.project)) {
      if (!follows_from(problem, listed)) faults.add(problem);
    }
  }
  if (!faults.empty()) read.unfit = std::move(faults).taken(file_name);
  if (!every_value_good) return std::move(read.unfit);
  return read;
}

Result<Project> read_project_text(std::string_view text, const std::string& file_name) {
  Result<UnfinishedProject> read = read_unfinished_text(text, file_name);
  if (!read) return read.problems();
  UnfinishedProject unfinished = std::move(read).value();
  if (!unfinished.unfit.empty()) return std::move(unfinished.unfit);
  return std::move(unfinished.project);
}

std::string project_text(const Project& project) {
  std::string text;
  FieldWriter writer(text, 0);
  Project copy = project;
  writer.open();
  writer.whole_member(kFormatKey, kFormatVersion);
  visit_fields(writer, copy);
  writer.close();
  text += '\n';
  return text;
}

}  // namespace tackbench
