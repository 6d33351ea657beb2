// What is said on every sheet and report, and what is always listed as not checked.
#pragma once

#include <string>
#include <vector>

namespace tackbench {

// Whole sentences, the gravest first.
std::vector<std::string> caution_sentences();
// Phrases: "welds", "heat" ...
std::vector<std::string> not_checked();

}  // namespace tackbench
