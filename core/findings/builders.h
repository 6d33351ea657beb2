// One builder a station: each turns a check's result into findings, in order of motion, and puts
// them at the end of the list.
#pragma once

#include <vector>

#include "core/checks/bump_check.h"
#include "core/checks/link_check.h"
#include "core/checks/link_travel.h"
#include "core/checks/lock_check.h"
#include "core/checks/pedal_check.h"
#include "core/checks/push_back.h"
#include "core/checks/shaft_check.h"
#include "core/checks/stretch_check.h"
#include "core/checks/wandering_shaft.h"
#include "core/findings/finding.h"
#include "core/project/checked_reference.h"

namespace tackbench {

using Findings = std::vector<Finding>;

// "steering.direction": always there; not judged while the steering cannot be posed.
void add_direction_finding(const Mechanism& mechanism, const std::optional<DirectionResult>& result,
                           Findings& findings);

// "shaft.wander", "shaft.over_held", "shaft.support.<name>.play"
void add_wander_findings(const Mechanism& mechanism, const WanderingShaft& result,
                         Findings& findings);
// "shaft.joint.<name>.angle", "shaft.ripple", "shaft.<name>.clocking", slips, ends, supports ...
// What is read off the drawing is not judged while the line wanders or is not drawn as built,
// except what is past already.
void add_shaft_findings(const Mechanism& mechanism, const ShaftCheck& result,
                        const WanderingShaft& wandering, Findings& findings);
// "shaft.push_back"; not judged without a distance, nor where the push as followed is not what
// would happen.
void add_push_back_finding(const Mechanism& mechanism, const std::optional<PushBack>& result,
                           const WanderingShaft& wandering, Findings& findings);
// What a shaft line with joints waits for while column or box is not measured.
void add_waiting_shaft_findings(const Mechanism& mechanism, Findings& findings);

// "link.centring", "link.length", "link.thread_engagement.<end>"
void add_link_findings(const Mechanism& mechanism, const LinkResult& result, Findings& findings);
// "link.tube_bore.<end>", "link.tube_wall.<end>"
void add_thread_findings(const Mechanism& mechanism, Findings& findings);
// "link.swing.<end>", "link.effective_angle"
void add_link_travel_findings(const Mechanism& mechanism, const LockResult& locks,
                              const LinkTravel& travel, Findings& findings);
// "lock.<side>.end", margins, steer, stop, circle; "lock.turns_total" ...; for a rating that is not
// given "lock.ball_stud.<end>" or "lock.outer_joint"
void add_lock_findings(const Mechanism& mechanism, const LockResult& result, Findings& findings);
// "bump.rate", "bump.travel", "bump.roll", "bump.wind_up", "bump.kickback"
void add_bump_findings(const Mechanism& mechanism, const BumpResult& result, Findings& findings);

// While only the way the box turns is not known: the names of every finding of link, lock and bump,
// none of them judged.
void add_findings_waiting_for_direction(const Mechanism& mechanism, Findings& findings);

// "pedal.<name>.full_stroke" ...
void add_pedal_findings(const Mechanism& mechanism, const std::vector<PedalResult>& results,
                        Findings& findings);
// "stretch.<name>"; a pair without a result is not judged, and says what it waits for.
void add_stretch_findings(const Mechanism& mechanism, const std::vector<StretchResult>& results,
                          Findings& findings);
// "file.<member path>": a scan or photograph that is not there, or not the one that was noted.
void add_file_findings(const std::vector<CheckedReference>& references, Findings& findings);
// The checks that gave a result for a steering that is compiled but may not be solved.
struct SolvedChecks {
  bool link = false;
  bool locks = false;
  bool bump = false;
};
// The findings that a check without a result leaves out, not judged and with the reason.
void add_unsolved_findings(const Mechanism& mechanism, const SolvedChecks& solved,
                           Findings& findings);
// "missing.<member path>": one question for each thing that is not measured yet.
void add_missing_findings(const Mechanism& mechanism, Findings& findings);

}  // namespace tackbench
