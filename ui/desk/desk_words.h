// What each control and each number of the motion desk means.
#pragma once

#include <vector>

#include "ui/look/meaning.h"

namespace tackbench::ui {

struct DeskWord {
  QString part;  // object name of the control, without "folded_" and without a count behind it
  Meaning said;
};
std::vector<DeskWord> desk_words();

// What the control of that object name means; empty for what is no control.
QString desk_meaning(const QString& object_name);

}  // namespace tackbench::ui
