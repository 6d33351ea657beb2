#include "core/basics/wording.h"
#include "core/findings/build_finding.h"
#include "core/findings/builders.h"

namespace tackbench {

void add_unsolved_findings(const Mechanism& mechanism, const SolvedChecks& solved,
                           Findings& findings) {
  if (!mechanism.steering) return;  // what is missing is asked for one by one
  const std::string why = say("not_judged.not_solved");
  if (!solved.link) {
    for (const char* name : {"link.centring", "link.length"})
      findings.push_back(not_yet(name, Station::drag_link, why));
  }
  if (!solved.locks) {
    for (const char* name :
         {"link.swing.arm_end", "link.swing.knuckle_end", "link.effective_angle"})
      findings.push_back(not_yet(name, Station::drag_link, why));
    for (const char* name : {"lock.left.end", "lock.right.end"})
      findings.push_back(not_yet(name, Station::front_axle, why));
    for (const char* name : {"lock.turns_total", "lock.turns_difference", "lock.ratio"})
      findings.push_back(not_yet(name, Station::steering_box, why));
  }
  if (!solved.bump) {
    for (const char* name :
         {"bump.rate", "bump.travel", "bump.roll", "bump.wind_up", "bump.kickback"})
      findings.push_back(not_yet(name, Station::front_axle, why));
  }
}

}  // namespace tackbench
