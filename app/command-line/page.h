// Lays out text for people: 100 columns, plain characters.
#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace tackbench::command_line {

inline constexpr std::size_t kPageWidth = 100;

// Breaks text at blanks so that no line is wider than the page (a longer word stands alone).
// `first_indent` blanks before the first line, `indent` before the others. No line break at the
// end.
std::string wrapped_text(std::string_view text, std::size_t first_indent, std::size_t indent);

// "a, b, c".
std::string joined(const std::vector<std::string>& words);

// Columns of equal rows, each as wide as its widest cell, right-aligned but for the first; two
// blanks between. The first row is the head.
std::string table_text(const std::vector<std::vector<std::string>>& rows);

// A word of a command line as a shell takes it: in quotes where it has to be.
std::string as_typed(const std::string& word);

// Number of characters, not bytes, of UTF-8 text.
std::size_t characters(std::string_view text);

// To standard output.
void print(std::string_view text);

}  // namespace tackbench::command_line
