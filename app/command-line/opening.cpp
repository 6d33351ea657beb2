#include "app/command-line/opening.h"

#include <cstdio>
#include <nlohmann/json.hpp>

#include "app/command-line/page.h"
#include "core/findings/limits.h"
#include "core/project-file/project_file.h"
#include "core/project/field_path.h"
#include "core/project/unknown_members.h"
#include "core/project/value_checks.h"

namespace tackbench::command_line {

namespace {

std::string trimmed(const std::string& text) {
  const std::size_t first = text.find_first_not_of(' ');
  if (first == std::string::npos) return "";
  return text.substr(first, text.find_last_not_of(' ') - first + 1);
}

// "--set drag_link.given_length_mm=812" as its two halves.
Result<Project> with_set(const Project& project, const std::string& set) {
  const std::size_t sign = set.find('=');
  if (sign == std::string::npos || sign == 0) {
    return Problem{"--set", "", "\"" + set + "\" has no path=value",
                   "write for example --set drag_link.given_length_mm=812"};
  }
  return with_field(project, trimmed(set.substr(0, sign)), trimmed(set.substr(sign + 1)));
}

Problems from_set(Problems problems) {
  for (Problem& problem : problems) {
    if (problem.file.empty()) problem.file = "--set";
  }
  return problems;
}

Problems in_file(Problems problems, const std::string& file) {
  for (Problem& problem : problems) {
    if (problem.file.empty()) problem.file = file;
  }
  return problems;
}

}  // namespace

Result<Project> open_project(const Opening& opening) {
  Result<Project> project = read_project(opening.file);
  if (!project) return project;
  for (const std::string& set : opening.sets) {
    project = with_set(*project, set);
    if (!project) return from_set(project.problems());
  }
  if (!opening.sets.empty()) {
    const Problems faults = value_problems(*project);
    if (!faults.empty()) return from_set(faults);
  }
  const Problems limits = check_limit_choices(*project);
  if (!limits.empty()) return in_file(limits, opening.file.string());
  return project;
}

Result<Mechanism> open_mechanism(const Opening& opening) {
  const Result<Project> project = open_project(opening);
  if (!project) return project.problems();
  for (const std::string& place : unknown_member_places(*project)) {
    std::fputs(
        ("note: " + place + ": not a member that this version knows; kept, not used\n").c_str(),
        stderr);
  }
  Result<Mechanism> mechanism = compile(*project);
  if (!mechanism) return in_file(mechanism.problems(), opening.file.string());
  return mechanism;
}

int refuse(const Problems& problems, bool json) {
  if (json) {
    nlohmann::ordered_json list = nlohmann::ordered_json::array();
    for (const Problem& problem : problems) {
      list.push_back({{"file", problem.file},
                      {"place", problem.place},
                      {"found", problem.found},
                      {"wanted", problem.wanted}});
    }
    const nlohmann::ordered_json answer = {{"problems", list}};
    print(answer.dump(2, ' ', false, nlohmann::ordered_json::error_handler_t::replace) + "\n");
  } else {
    for (const Problem& problem : problems) {
      std::fputs((wrapped_text(one_line(problem), 0, 4) + "\n").c_str(), stderr);
    }
  }
  return kBadInput;
}

}  // namespace tackbench::command_line
