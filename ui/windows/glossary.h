// Words of the trade and our own, as Help explains them.
#pragma once

#include <QString>
#include <vector>

namespace tackbench::ui {

struct GlossaryWord {
  QString word;
  QString variants;  // other names and forms, parted by commas
  QString meaning;
};
// In order of the alphabet.
std::vector<GlossaryWord> glossary();

}  // namespace tackbench::ui
