// A word that the window shows, and what it means, for tips and for Help.
#pragma once

#include <QString>

namespace tackbench::ui {

struct Meaning {
  QString word;
  QString meaning;
};

}  // namespace tackbench::ui
