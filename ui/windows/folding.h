// Whether a part of the window is folded: what the user wants where there is room, and what he
// wants where there is none. Each is his own; going from one to the other gives it back.
#pragma once

#include <optional>

namespace tackbench::ui {

struct Folding {
  bool room = true;
  std::optional<bool> roomy;  // chosen by hand while there was room; else open
  std::optional<bool> tight;  // chosen by hand while there was none; else folded

  bool folded() const { return room ? roomy.value_or(false) : tight.value_or(true); }
  void by_hand(bool fold) { (room ? roomy : tight) = fold; }
};

}  // namespace tackbench::ui
