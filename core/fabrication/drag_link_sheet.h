// One dimensioned drawing of the drag link on A3: side view with the tube broken where it is longer
// than the paper, end view with the stud clocking (placed by the project's projection), a table of
// both ends, notes, cautions and a title block.
#pragma once

#include "core/drawing/sheet.h"
#include "core/fabrication/cut_list.h"

namespace tackbench {

// Wants a sized part. `findings_past` are said on the sheet.
Sheet drag_link_sheet(const DragLinkPart& part, const std::string& project, Projection projection,
                      std::size_t findings_past = 0);

}  // namespace tackbench
