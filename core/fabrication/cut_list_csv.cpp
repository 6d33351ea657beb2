#include <initializer_list>

#include "core/fabrication/cut_list_writers.h"

namespace tackbench {

namespace {

// RFC 4180 section 2: fields with commas, quotes or line breaks are quoted, quotes doubled.
std::string field(const std::string& text) {
  if (text.find_first_of(",\"\r\n") == std::string::npos) return text;
  std::string quoted = "\"";
  for (const char c : text) {
    if (c == '"') quoted += '"';
    quoted += c;
  }
  return quoted + '"';
}

void add_row(std::initializer_list<std::string> fields, std::string& out) {
  bool first = true;
  for (const std::string& text : fields) {
    if (!first) out += ',';
    out += field(text);
    first = false;
  }
  out += "\r\n";
}

std::string note_of(const CutDimension& row) {
  std::string note = row.words;
  if (!row.group.empty()) note += ", " + row.group;
  if (!row.note.empty()) note += "; " + row.note;
  return note;
}

}  // namespace

std::string cut_list_csv(const CutList& list) {
  std::string out;
  add_row({"item", "dimension", "value", "unit", "tolerance", "quantity", "note"}, out);
  for (const PastFinding& finding : list.past)
    add_row({"past", finding.name, "", "", "", "", finding.sentence}, out);
  for (const CutItem& item : list.items) {
    const std::string quantity = std::to_string(item.quantity);
    for (const CutDimension& row : item.dimensions)
      add_row({item.name, row.name, value_text(row), row.value ? symbol(row.unit) : "",
               tolerance_text(row), quantity, note_of(row)},
              out);
    for (const std::string& note : item.notes)
      add_row({item.name, "note", "", "", "", quantity, note}, out);
    for (const std::string& caution : item.cautions)
      add_row({item.name, "caution", "", "", "", quantity, caution}, out);
  }
  for (const std::string& words : list.waiting)
    add_row({"not_listed_yet", "", "", "", "", "", words}, out);
  for (const std::string& caution : list.cautions)
    add_row({"all", "caution", "", "", "", "", caution}, out);
  for (const std::string& words : list.not_checked)
    add_row({"all", "not_checked", "", "", "", "", words}, out);
  return out;
}

}  // namespace tackbench
