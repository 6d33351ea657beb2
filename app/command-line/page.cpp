#include "app/command-line/page.h"

#include <algorithm>
#include <cctype>
#include <cstdio>

namespace tackbench::command_line {

std::string as_typed(const std::string& word) {
  const bool plain = !word.empty() && std::all_of(word.begin(), word.end(), [](char c) {
    return std::isalnum(static_cast<unsigned char>(c)) != 0 ||
           std::string_view("_./-+,=:@%").find(c) != std::string_view::npos;
  });
  if (plain) return word;
  std::string quoted = "'";
  for (const char c : word) quoted += c == '\'' ? std::string("'\\''") : std::string(1, c);
  return quoted + "'";
}

std::string joined(const std::vector<std::string>& words) {
  std::string text;
  for (const std::string& word : words) text += (text.empty() ? "" : ", ") + word;
  return text;
}

std::size_t characters(std::string_view text) {
  return static_cast<std::size_t>(std::count_if(text.begin(), text.end(), [](char c) {
    return (static_cast<unsigned char>(c) & 0xC0U) != 0x80U;  // not a UTF-8 continuation
  }));
}

std::string wrapped_text(std::string_view text, std::size_t first_indent, std::size_t indent) {
  std::string page(first_indent, ' ');
  std::size_t column = first_indent;
  bool line_empty = true;
  std::size_t at = 0;
  while (at < text.size()) {
    const std::size_t start = text.find_first_not_of(' ', at);
    if (start == std::string_view::npos) break;
    const std::size_t end = std::min(text.find(' ', start), text.size());
    const std::string_view word = text.substr(start, end - start);
    const std::size_t width = characters(word);
    if (!line_empty && column + 1 + width > kPageWidth) {
      page += "\n" + std::string(indent, ' ');
      column = indent;
      line_empty = true;
    }
    if (!line_empty) {
      page += ' ';
      ++column;
    }
    page += word;
    column += width;
    line_empty = false;
    at = end;
  }
  return page;
}

std::string table_text(const std::vector<std::vector<std::string>>& rows) {
  std::vector<std::size_t> widths;
  for (const auto& row : rows) {
    widths.resize(std::max(widths.size(), row.size()), 0);
    for (std::size_t i = 0; i < row.size(); ++i) {
      widths[i] = std::max(widths[i], characters(row[i]));
    }
  }
  std::string text;
  for (const auto& row : rows) {
    std::string line;
    for (std::size_t i = 0; i < row.size(); ++i) {
      const std::string fill(widths[i] - characters(row[i]), ' ');
      if (i > 0) line += "  ";
      line += i == 0 ? row[i] + fill : fill + row[i];
    }
    line.erase(line.find_last_not_of(' ') + 1);
    text += line + "\n";
  }
  return text;
}

void print(std::string_view text) {
  std::fwrite(text.data(), 1, text.size(), stdout);
}

}  // namespace tackbench::command_line
