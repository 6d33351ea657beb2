#include "core/findings/all_findings.h"

#include <algorithm>
#include <cmath>
#include <memory>
#include <utility>

#include "core/findings/builders.h"
#include "core/findings/limits.h"
#include "core/findings/verdict_order.h"

namespace tackbench {

namespace {

// Both hands on the rim turn the column by half the wheel's diameter.
std::optional<double> column_torque(const Project& project) {
  if (!project.column || !project.drag_link || !project.drag_link->forces.two_handed_rim)
    return std::nullopt;
  return *project.drag_link->forces.two_handed_rim * 0.5 * project.column->hand_wheel_diameter;
}

LockSettings lock_settings(const Project& project) {
  const Limit limit = limit_for(project, "lock.stop_first");
  LockSettings settings;
  settings.margin_before_others = limit.least_inner.value_or(limit.least.value_or(0.0));
  return settings;
}

// Stops and swings that a shop is told must be those of the link that it is told to make.
std::optional<AsOrdered> as_ordered(const Mechanism& mechanism, const CheckResults& results) {
  constexpr double kAlike = 1e-6;  // mm
  if (!results.link || !mechanism.steering) return std::nullopt;
  if (std::abs(results.link->centring_length - results.link->real_length) < kAlike) {
    return AsOrdered{mechanism.steering->stud_clocking, results.locks, results.link_travel};
  }
  Project project = mechanism.project;
  DragLinkStation link = *project.drag_link;
  link.given_length = results.link->centring_length;
  project.drag_link = std::make_shared<const DragLinkStation>(std::move(link));
  const Result<Mechanism> ordered = compile(project);
  if (!ordered || !ordered->steering) return std::nullopt;
  AsOrdered as_ordered{ordered->steering->stud_clocking,
                       check_locks(*ordered, lock_settings(project)), std::nullopt};
  if (as_ordered.locks) as_ordered.link_travel = check_link_travel(*ordered, *as_ordered.locks);
  return as_ordered;
}

}  // namespace

CheckResults run_checks(const Mechanism& mechanism) {
  CheckResults results;
  results.direction = check_direction(mechanism);
  results.link = check_link(mechanism);
  results.locks = check_locks(mechanism, lock_settings(mechanism.project));
  if (results.locks) results.link_travel = check_link_travel(mechanism, *results.locks);
  results.as_ordered = as_ordered(mechanism, results);
  results.bump = check_bump(mechanism, BumpSettings{});
  if (mechanism.shaft_line) {
    results.shaft = shaft_check(*mechanism.shaft_line, column_torque(mechanism.project));
    results.wandering = wandering_shaft(*mechanism.shaft_line);
    results.push_back = push_back(*mechanism.shaft_line);
  }
  results.pedals = check_pedals(mechanism);
  results.stretch = check_stretch(mechanism, results.locks);
  return results;
}

std::vector<Finding> all_findings(const Mechanism& mechanism, const CheckResults& results,
                                  const std::vector<CheckedReference>& references) {
  std::vector<Finding> findings;
  add_direction_finding(mechanism, results.direction, findings);
  if (mechanism.shaft_line) {
    const WanderingShaft wandering = results.wandering.value_or(WanderingShaft{});
    if (results.wandering) add_wander_findings(mechanism, wandering, findings);
    if (results.shaft) add_shaft_findings(mechanism, *results.shaft, wandering, findings);
    add_push_back_finding(mechanism, results.push_back, wandering, findings);
  }
  add_waiting_shaft_findings(mechanism, findings);
  if (results.link) add_link_findings(mechanism, *results.link, findings);
  add_thread_findings(mechanism, findings);
  if (results.locks) {
    if (results.link_travel)
      add_link_travel_findings(mechanism, *results.locks, *results.link_travel, findings);
    add_lock_findings(mechanism, *results.locks, findings);
  }
  if (results.bump) add_bump_findings(mechanism, *results.bump, findings);
  add_findings_waiting_for_direction(mechanism, findings);
  add_pedal_findings(mechanism, results.pedals, findings);
  add_stretch_findings(mechanism, results.stretch, findings);
  add_file_findings(references, findings);
  add_unsolved_findings(
      mechanism, {results.link.has_value(), results.locks.has_value(), results.bump.has_value()},
      findings);
  add_missing_findings(mechanism, findings);
  std::stable_sort(findings.begin(), findings.end(), [](const Finding& a, const Finding& b) {
    return verdict_rank(a.verdict) < verdict_rank(b.verdict);
  });
  return findings;
}

const Finding* finding_named(const std::vector<Finding>& findings, const std::string& name) {
  const auto found = std::find_if(findings.begin(), findings.end(),
                                  [&](const Finding& each) { return each.name == name; });
  return found == findings.end() ? nullptr : &*found;
}

}  // namespace tackbench
