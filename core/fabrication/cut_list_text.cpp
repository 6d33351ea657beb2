#include <fmt/core.h>

#include <algorithm>
#include <sstream>

#include "core/fabrication/cut_list_writers.h"

namespace tackbench {

namespace {

constexpr std::size_t kColumns = 100;
constexpr std::size_t kWordsColumn = 46;
constexpr std::size_t kIndent = 3;

// Words wrapped to the column, every line after the first set in by `hang`.
std::string wrapped_text(const std::string& text, std::size_t first, std::size_t hang) {
  std::istringstream words(text);
  std::string out(first, ' ');
  std::size_t column = first;
  std::string word;
  bool line_empty = true;
  while (words >> word) {
    if (!line_empty && column + 1 + word.size() > kColumns) {
      out += "\n" + std::string(hang, ' ');
      column = hang;
      line_empty = true;
    }
    if (!line_empty) {
      out += ' ';
      ++column;
    }
    out += word;
    column += word.size();
    line_empty = false;
  }
  return out + "\n";
}

std::string marked(const std::string& mark, const std::string& text) {
  return wrapped_text(mark + " " + text, kIndent, kIndent + mark.size() + 1);
}

std::string tolerance_words(const CutDimension& dimension) {
  switch (dimension.tolerance_kind) {
    case ToleranceKind::none:
      return "";
    case ToleranceKind::plus_minus:
      return "+/- " + tolerance_text(dimension);
    case ToleranceKind::blank:
      return "tolerance: " + tolerance_text(dimension);
  }
  return "";
}

std::string dimension_lines(const CutDimension& dimension) {
  const std::string words = (dimension.group.empty() ? "" : "  ") + dimension.words;
  std::string line(kIndent, ' ');
  line += words;
  if (words.size() > kWordsColumn) {
    // A long name keeps its own line so that the values stay in one column.
    line += "\n" + std::string(kIndent + kWordsColumn, ' ');
  } else {
    line += std::string(kWordsColumn - words.size(), ' ');
  }
  std::string rest;
  if (dimension.value) {
    const std::string value = value_text(dimension);
    rest = fmt::format("{:>9} {}", value, symbol(dimension.unit));
    if (dimension.tolerance_kind == ToleranceKind::plus_minus)
      rest += "  " + tolerance_words(dimension);
  } else {
    rest = "  " + dimension.text;
  }
  line += rest + "\n";
  std::string below;
  if (dimension.tolerance_kind == ToleranceKind::blank) below = tolerance_words(dimension);
  if (!dimension.note.empty()) below += (below.empty() ? "" : "; ") + dimension.note;
  if (!below.empty()) line += wrapped_text("(" + below + ")", kIndent + 4, kIndent + 5);
  return line;
}

std::string heading(const std::string& words) {
  return "\n" + words + "\n" + std::string(std::min(words.size(), kColumns), '-') + "\n";
}

std::string item_lines(const CutItem& item, std::size_t number) {
  std::string out = heading(fmt::format("{}. {} - make {}", number, item.title, item.quantity));
  for (const std::string& caution : item.cautions) out += marked("CAUTION:", caution);
  std::string group;
  for (const CutDimension& dimension : item.dimensions) {
    if (dimension.group != group && !dimension.group.empty())
      out += std::string(kIndent, ' ') + "At the " + dimension.group + ":\n";
    group = dimension.group;
    out += dimension_lines(dimension);
  }
  for (const std::string& note : item.notes) out += marked("-", note);
  return out;
}

}  // namespace

std::string cut_list_text(const CutList& list) {
  std::string out = "CUT LIST: " + (list.project.empty() ? "project without a name" : list.project);
  out += "\nLengths in mm, angles in degrees, forces in N.\n\n";
  for (const std::string& caution : list.cautions) out += wrapped_text("! " + caution, 0, 2);
  if (!list.past.empty()) {
    out += heading(fmt::format("Past their limits: {}. Settle these before anything is made",
                               list.past.size()));
    for (const PastFinding& finding : list.past) out += marked("-", finding.sentence);
  }
  std::size_t number = 0;
  for (const CutItem& item : list.items) out += item_lines(item, ++number);
  if (list.items.empty()) out += "\nNothing can be made yet.\n";
  if (!list.waiting.empty()) {
    out += heading("Not listed yet");
    for (const std::string& part : list.waiting) out += marked("-", part);
  }
  if (!list.not_checked.empty()) {
    out += heading("Not checked");
    for (const std::string& words : list.not_checked) out += marked("-", words);
  }
  return out;
}

}  // namespace tackbench
