// Help: what each number of the window means.
#pragma once

#include <QString>
#include <vector>

#include "ui/look/meaning.h"

namespace tackbench::ui {

struct HelpSection {
  QString heading;
  std::vector<Meaning> entries;
};
// Station tags, motion desk, graphs, findings.
std::vector<HelpSection> help_numbers();

}  // namespace tackbench::ui
