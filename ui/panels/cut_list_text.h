// The cut list as readable blocks.
#pragma once

#include <QString>

#include "core/fabrication/cut_list.h"

namespace tackbench::ui {

// Simple HTML, every text of the project escaped; all in the lesser ink while it is stale.
QString cut_list_blocks(const CutList& list, bool stale);

}  // namespace tackbench::ui
