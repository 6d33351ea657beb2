// Adding and taking away what a project may hold or not: items of lists, optional groups, whole
// stations. Paths are member paths as in field_path.h, list items by number.
#pragma once

#include <string>
#include <string_view>

#include "core/basics/result.h"
#include "core/project/project.h"

namespace tackbench {

// One more item at the end of the list: a copy of the last one, or a fresh record; its name is its
// own. Places of a fresh record, and of a copy, are set 100 mm apart from one another and from what
// they were copied from, so that nothing coincides; they are to be measured in. A joint comes with
// the shaft that it wants; it stands halfway to the box.
// Also a list of points. Faults: no such list, or a list that is full.
Result<Project> with_item_added(const Project& project, std::string_view list_path);
// A joint goes with the shaft after it (the last with the shaft before it), and supports stay on
// their shafts or go with it.
Result<Project> with_item_removed(const Project& project, std::string_view list_path,
                                  std::size_t index);
// The optional group or station, fresh. The right knuckle begins as the left one's mirror image and
// is free from then on.
Result<Project> with_group_added(const Project& project, std::string_view path);

}  // namespace tackbench
