#include "core/findings/cautions.h"

#include "core/basics/wording.h"

namespace tackbench {

std::vector<std::string> caution_sentences() {
  return {say("cautions.kill"),      say("cautions.geometry"), say("cautions.welding"),
          say("cautions.certifier"), say("cautions.mock_up"),  say("cautions.common_practice")};
}

std::vector<std::string> not_checked() {
  return {say("not_checked.clearances"), say("not_checked.people"), say("not_checked.strength"),
          say("not_checked.brackets"),   say("not_checked.welds"),  say("not_checked.heat"),
          say("not_checked.wear"),       say("not_checked.lash"),   say("not_checked.tyre_flex")};
}

}  // namespace tackbench
