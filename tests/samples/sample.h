// One sample project read, judged and turned into its cut list.
#pragma once

#include <gtest/gtest.h>

#include <algorithm>
#include <filesystem>
#include <set>
#include <string>

#include "core/fabrication/make_cut_list.h"
#include "core/project-file/project_file.h"

namespace tackbench {

inline constexpr const char* kSamples[] = {"tender-as-first-tacked", "tender-sorted",
                                           "timber-wagon", "bare-start"};

inline std::filesystem::path sample_folder(const std::string& name) {
  return std::filesystem::path(TACKBENCH_SOURCE_FOLDER) / "sample-projects" / name;
}

struct Sample {
  Project project;
  Mechanism mechanism;
  CheckResults results;
  std::vector<Finding> findings;
  CutList cut_list;

  // Names of the findings with that verdict.
  std::set<std::string> named(Verdict verdict) const {
    std::set<std::string> names;
    for (const Finding& finding : findings)
      if (finding.verdict == verdict) names.insert(finding.name);
    return names;
  }
  const CutItem* item(const std::string& name) const {
    const auto found = std::find_if(cut_list.items.begin(), cut_list.items.end(),
                                    [&name](const CutItem& each) { return each.name == name; });
    return found == cut_list.items.end() ? nullptr : &*found;
  }
};

// Ends the program with the faults when the sample does not read or compile.
inline Sample sample(const std::string& name) {
  const auto fail = [&name](const Problems& problems) {
    for (const Problem& problem : problems) ADD_FAILURE() << name << ": " << one_line(problem);
    throw std::runtime_error(name + " cannot be used");
  };
  Result<Project> project = read_project(sample_folder(name) / (name + ".tack"));
  if (!project) fail(project.problems());
  Result<Mechanism> mechanism = compile(*project);
  if (!mechanism) fail(mechanism.problems());
  Sample made{*project, *mechanism, {}, {}, {}};
  made.results = run_checks(made.mechanism);
  made.findings = all_findings(made.mechanism, made.results);
  made.cut_list = make_cut_list(made.mechanism, made.results, made.findings);
  return made;
}

}  // namespace tackbench
