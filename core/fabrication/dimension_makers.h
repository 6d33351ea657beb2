// Short ways to write a dimension of the cut list.
#pragma once

#include <string>
#include <utility>

#include "core/fabrication/cut_list.h"

namespace tackbench {

inline CutDimension number(std::string name, std::string words, double value,
                           Unit unit = Unit::millimetre, int decimals = 1) {
  CutDimension made;
  made.name = std::move(name);
  made.words = std::move(words);
  made.value = value;
  made.unit = unit;
  made.decimals = decimals;
  return made;
}

inline CutDimension in_words(std::string name, std::string words, std::string text) {
  CutDimension made;
  made.name = std::move(name);
  made.words = std::move(words);
  made.unit = Unit::number;
  made.text = std::move(text);
  return made;
}

inline CutDimension plus_minus(CutDimension made, double tolerance) {
  made.tolerance_kind = ToleranceKind::plus_minus;
  made.tolerance = tolerance;
  return made;
}

inline CutDimension blank_tolerance(CutDimension made) {
  made.tolerance_kind = ToleranceKind::blank;
  return made;
}

inline CutDimension with_note(CutDimension made, std::string note) {
  made.note = std::move(note);
  return made;
}

}  // namespace tackbench
