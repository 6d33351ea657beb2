// Numbers as text in files and commands.
#pragma once

#include <optional>
#include <string>
#include <string_view>

namespace tackbench {

// Shortest text of at most 14 significant digits. Three digits are kept back so that a number
// which went from degrees to radians and back is written as it was read. Zero is "0", never "-0".
std::string number_text(double value);

// A whole text that is one finite decimal number ("812", "-3.5e2"); nothing else.
std::optional<double> number_from_text(std::string_view text);

}  // namespace tackbench
