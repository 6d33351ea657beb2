// What the builders of shaft findings share: names of joints, shafts and supports for people and
// for findings, numbers as shown, limits.
#pragma once

#include <string>
#include <vector>

#include "core/findings/build_finding.h"
#include "core/findings/limits.h"

namespace tackbench {

// Of a mechanism whose shaft line is compiled; it has to outlive this.
struct ShaftWords {
  const Mechanism& mechanism;
  const ShaftLineStation& station;
  ShownFor show;

  explicit ShaftWords(const Mechanism& compiled);
  explicit ShaftWords(const Mechanism&&) = delete;

  // For people: as named, or "joint 2".
  std::string joint(int index) const;
  std::string shaft(int index) const;
  std::string support(int index) const;
  // In a finding's name: "upper_joint".
  std::string joint_part(int index) const;
  std::string shaft_part(int index) const;
  std::string support_part(int index) const;

  Limit limit(const char* name) const { return limit_for(mechanism.project, name); }
  Limit limit(const char* name, const OwnValue& own) const {
    return limit_from(mechanism.project, name, own);
  }
  Finding judge(std::string name, std::vector<Quantity> numbers, Limit by) const;
};

}  // namespace tackbench
