// Writes a sheet as SVG 1.1 in true paper size.
#pragma once

#include <string>

#include "core/drawing/sheet.h"

namespace tackbench {

std::string svg(const Sheet& sheet);

}  // namespace tackbench
