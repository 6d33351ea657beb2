#include "core/basics/wording.h"
#include "core/findings/all_findings.h"
#include "core/findings/build_finding.h"
#include "core/findings/builders.h"
#include "core/mechanism/solve.h"

namespace tackbench {

void add_findings_waiting_for_direction(const Mechanism& mechanism, Findings& findings) {
  const Project& project = mechanism.project;
  if (!project.steering_box || project.steering_box->left_turns_arm || !project.drag_link ||
      !project.front_axle)
    return;
  // Which names the steering's findings have does not depend on the way it turns: assume one, keep
  // the names, and leave every answer open.
  Project assumed = project;
  auto box = std::make_shared<SteeringBoxStation>(*project.steering_box);
  box->left_turns_arm = TurnSense::anticlockwise;
  assumed.steering_box = std::move(box);
  const Result<Mechanism> with_direction = compile(assumed);
  if (!with_direction || !with_direction->steering) return;
  Findings open;
  const CheckResults results = run_checks(*with_direction);
  if (results.link) add_link_findings(*with_direction, *results.link, open);
  if (results.locks) {
    if (results.link_travel)
      add_link_travel_findings(*with_direction, *results.locks, *results.link_travel, open);
    add_lock_findings(*with_direction, *results.locks, open);
  }
  if (results.bump) add_bump_findings(*with_direction, *results.bump, open);
  for (const Finding& each : open)
    findings.push_back(not_yet(each.name, each.station, say("not_judged.no_direction")));
}

}  // namespace tackbench
