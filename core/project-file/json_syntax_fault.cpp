#include "core/project-file/json_syntax_fault.h"

#include <fmt/format.h>

#include <algorithm>
#include <optional>

namespace tackbench {

namespace {

bool is_digit(char c) {
  return c >= '0' && c <= '9';
}

bool is_letter(char c) {
  return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z');
}

// Where the parser stopped: the token that it did not want and what stands before it.
struct Place {
  std::string_view text;
  std::size_t offset = 0;
  std::size_t token = 0;                        // its first byte
  std::size_t before = std::string_view::npos;  // last byte before it that is no blank
  std::string_view message;

  char first() const { return token < text.size() ? text[token] : '\0'; }
  char last_before() const { return before < text.size() ? text[before] : '\0'; }
  bool says(std::string_view words) const { return message.find(words) != std::string_view::npos; }
};

Place place_of(std::string_view text, std::size_t offset, std::string_view last_token,
               std::string_view message) {
  Place place{text, offset, offset, std::string_view::npos, message};
  // Only for strings and numbers does the parser's token begin where it begins in the text.
  const bool whole =
      place.says("unexpected string literal") || place.says("unexpected number literal");
  if (whole && last_token.size() <= offset + 1) {
    place.token = offset + 1 - last_token.size();
  } else {
    while (place.token > 0 && is_letter(text[place.token - 1])) --place.token;
  }
  if (place.token > 0) place.before = text.find_last_not_of(" \t\r\n", place.token - 1);
  return place;
}

// A literal such as NaN is read letter by letter up to the first wrong one.
std::optional<SyntaxFault> no_number(const Place& place) {
  std::size_t start = std::min(place.offset, place.text.size());
  while (start > 0 && (is_letter(place.text[start - 1]) || place.text[start - 1] == '-')) --start;
  const std::string_view word = place.text.substr(start, 12);
  for (const std::string_view name : {"NaN", "nan", "Infinity", "-Infinity", "inf", "-inf"}) {
    if (word.starts_with(name)) {
      return SyntaxFault{start, fmt::format("{} is no number", name), "give a finite number"};
    }
  }
  return std::nullopt;
}

// "1,200" and "1,5" where a member's name should follow the comma.
std::optional<SyntaxFault> comma_in_number(const Place& place) {
  const std::string_view text = place.text;
  if (place.last_before() != ',' || place.before == 0 || !is_digit(text[place.before - 1]) ||
      !is_digit(place.first())) {
    return std::nullopt;
  }
  std::size_t start = place.before;
  while (start > 0 && (is_digit(text[start - 1]) || text[start - 1] == '-')) --start;
  std::size_t end = place.token;
  while (end < text.size() && (is_digit(text[end]) || text[end] == ',')) ++end;
  while (end > place.token && text[end - 1] == ',') --end;
  std::string number = printable(text.substr(start, end - start));
  std::string found = fmt::format("a comma inside the number {}", number);
  constexpr std::size_t kThousands = 3;
  if (end - place.token >= kThousands) {
    std::erase_if(number, [](char c) { return c == ',' || c == ' ' || c == '?'; });
    return SyntaxFault{start, found, fmt::format("write {}: thousands are not set apart", number)};
  }
  return SyntaxFault{start, found, "write a decimal point"};
}

std::optional<SyntaxFault> comma_or_colon(const Place& place) {
  const char first = place.first();
  if ((first == '}' || first == ']') && place.last_before() == ',') {
    return SyntaxFault{place.before, "a comma with nothing after it", "take the comma out"};
  }
  if (place.says("while parsing object separator")) {
    return SyntaxFault{place.token, "no colon after the member's name", "write \"name\": value"};
  }
  // What follows is whole: only the comma is missing.
  const bool value_follows = first == '"' || first == '{' || first == '[' || first == '-' ||
                             is_digit(first) || place.says("unexpected true literal") ||
                             place.says("unexpected false literal") ||
                             place.says("unexpected null literal");
  const bool after_value =
      place.says("while parsing object - ") || place.says("while parsing array - ");
  if (value_follows && after_value && place.before != std::string_view::npos) {
    return SyntaxFault{place.before, "no comma after this", "put a comma after it"};
  }
  return std::nullopt;
}

std::optional<SyntaxFault> strange_token(const Place& place) {
  const char first = place.first();
  if (place.before == std::string_view::npos && first != '{' &&
      place.text.find("\"tackbench_format\"") == std::string_view::npos) {
    return SyntaxFault{place.token, "this is not a Tackbench project",
                       "open a file whose name ends in .tack"};
  }
  if (place.says("control character U+000A") || place.says("control character U+000D")) {
    return SyntaxFault{place.offset, "the line ends inside quotes", "close the quotes before it"};
  }
  if (first == '#' || first == '/') {
    return SyntaxFault{place.token, "a comment, which JSON does not have",
                       "take it out; the member \"notes\" at the top holds words"};
  }
  if (first == '\'') {
    return SyntaxFault{place.token, "single quotes", "write double quotes"};
  }
  const bool letter = is_letter(first) || static_cast<unsigned char>(first) >= 0x80;
  if (place.says("while parsing object key") && letter) {
    return SyntaxFault{place.token, "a member's name without quotes", "put it in double quotes"};
  }
  if (place.says("invalid literal") && is_digit(place.last_before()) && (letter || first == '%')) {
    return SyntaxFault{place.token, "a unit after the number",
                       "write the number alone: the member's name says the unit"};
  }
  return std::nullopt;
}

}  // namespace

std::string printable(std::string_view text) {
  constexpr std::size_t kLongest = 40;
  std::string shown;
  for (const char c : text.substr(0, kLongest)) shown += c >= ' ' && c <= '~' ? c : '?';
  if (text.size() > kLongest) shown += "...";
  return shown;
}

SyntaxFault syntax_fault(std::string_view text, std::size_t offset, std::string_view last_token,
                         std::string_view message) {
  const Place place = place_of(text, offset, last_token, message);
  if (auto fault = no_number(place)) return *fault;
  if (auto fault = strange_token(place)) return *fault;
  if (place.says("while parsing object key")) {
    if (auto fault = comma_in_number(place)) return *fault;
  }
  if (auto fault = comma_or_colon(place)) return *fault;
  return {offset,
          fmt::format("unexpected \"{}\"",
                      printable(text.substr(place.token, offset + 1 - place.token))),
          "mend the JSON there: a comma, a quote or a bracket too many or too few"};
}

}  // namespace tackbench
