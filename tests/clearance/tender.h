// A sample compiled with its solids.
#pragma once

#include <gtest/gtest.h>

#include <filesystem>
#include <stdexcept>
#include <string>

#include "core/clearance/gaps.h"
#include "core/mechanism/solve.h"
#include "core/project-file/project_file.h"

namespace tackbench {

struct SampleSolids {
  Mechanism mechanism;
  std::shared_ptr<const TruckSolids> solids;

  std::vector<PairGap> at(const Controls& controls, const GapsAsked& asked = {}) const {
    return gaps(*solids, mechanism, solved_pose(mechanism, controls), asked);
  }
  const SolidPart& part(const std::string& name) const {
    for (const SolidPart& each : solids->parts)
      if (each.name == name) return each;
    throw std::runtime_error("no part " + name);
  }
  // Whatever the order.
  const PairGap* pair(const std::vector<PairGap>& list, const std::string& a,
                      const std::string& b) const {
    for (const PairGap& each : list) {
      const std::string& first = solids->parts[each.first].name;
      const std::string& second = solids->parts[each.second].name;
      if ((first == a && second == b) || (first == b && second == a)) return &each;
    }
    return nullptr;
  }
};

inline SampleSolids sample_solids(const std::string& name) {
  const auto file =
      std::filesystem::path(TACKBENCH_SOURCE_FOLDER) / "sample-projects" / name / (name + ".tack");
  Result<Project> project = read_project(file);
  if (!project) throw std::runtime_error(one_line(project.problems().front()));
  Result<Mechanism> mechanism = compile(*project);
  if (!mechanism) throw std::runtime_error(one_line(mechanism.problems().front()));
  SampleSolids made{*mechanism, nullptr};
  made.solids = truck_solids(made.mechanism);
  return made;
}

}  // namespace tackbench
