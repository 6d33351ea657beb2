// From the numbers of a part to an item of the cut list.
#pragma once

#include "core/checks/shaft_check.h"
#include "core/fabrication/cut_list.h"
#include "core/fabrication/mock_up_link.h"

namespace tackbench {

CutItem drag_link_item(const DragLinkPart& part);
CutItem mock_up_item(const MockUpLink& mock_up);

// Links between arm and relays: length alone, the project knows no more of them.
std::vector<CutItem> relay_link_items(const Mechanism& mechanism);

// One item a shaft between two joints, one a support; lengths, overlaps and clocking from the
// check.
std::vector<CutItem> shaft_items(const ShaftLineStation& station, const ShaftCheck& check);
std::vector<CutItem> support_items(const ShaftLineStation& station, const ShaftCheck& check);

// One item a lock side whose stop bolt can be named.
std::vector<CutItem> stop_items(const LockResult& locks);

// General tolerance of a turned or cut length, plus-minus mm: ISO 2768-1 medium (from memory).
double general_tolerance(double length);

}  // namespace tackbench
