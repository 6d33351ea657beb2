#include "core/fabrication/drag_link_sheet.h"

#include <fmt/core.h>

#include <algorithm>
#include <array>
#include <sstream>

#include "core/basics/wording.h"
#include "core/fabrication/cut_items.h"
#include "core/fabrication/drag_link_views.h"

namespace tackbench {

namespace {

constexpr double kText = 2.5;
constexpr double kRow = 4.6;

void add_text(Sheet& sheet, double x, double y, const std::string& words, double height = kText,
              TextAnchor anchor = TextAnchor::start, bool bold = false) {
  sheet.texts.push_back({{x, y}, words, height, anchor, bold, 0.0});
}

void add_line(Sheet& sheet, std::vector<PaperPoint> through, LineRole role, bool closed = false) {
  sheet.lines.push_back({std::move(through), role, closed});
}

std::vector<std::string> lines_within(const std::string& text, double width) {
  std::vector<std::string> lines;
  std::istringstream words(text);
  std::string word;
  std::string line;
  while (words >> word) {
    std::string longer = line;
    if (!longer.empty()) longer += ' ';
    longer += word;
    if (!line.empty() && text_width(longer, kText) > width) {
      lines.push_back(line);
      line = word;
    } else {
      line = longer;
    }
  }
  if (!line.empty()) lines.push_back(line);
  return lines;
}

// A name that is too long for its field ends in dots.
std::string cut_to(std::string words, double height, double width) {
  if (text_width(words, height) <= width) return words;
  const auto inside_character = [&words] {
    return !words.empty() && (static_cast<unsigned char>(words.back()) & 0xC0U) == 0x80U;
  };
  while (!words.empty() && text_width(words + "...", height) > width) {
    while (inside_character()) words.pop_back();
    if (!words.empty()) words.pop_back();
  }
  return words + "...";
}

std::string cell(const CutItem& item, const std::string& name) {
  const CutDimension* found = dimension(item, name);
  if (found == nullptr) return "";
  if (!found->value) {
    // The table's cells are narrow; the list has the whole sentence.
    const auto colon = found->text.find(':');
    return colon == std::string::npos ? found->text : found->text.substr(0, colon);
  }
  std::string words = value_text(*found);
  if (found->unit != Unit::millimetre) words += std::string(" ") + symbol(found->unit);
  return words;
}

std::string capitals(std::string words) {
  for (char& c : words)
    if (c >= 'a' && c <= 'z') c = static_cast<char>(c - 'a' + 'A');
  return words;
}

// Both ends side by side.
void draw_ends_table(const CutItem& item, const std::string& hand_end, double left, double top,
                     Sheet& sheet) {
  static constexpr std::array<std::pair<const char*, const char*>, 11> kRows = {{
      {"kind", "end"},
      {"thread", "thread"},
      {"shank_length", "shank, ball centre to its end"},
      {"engagement", "thread engaged in the tube"},
      {"thread_depth", "thread depth in the tube, least"},
      {"free_length", "ball centre to the tube's face"},
      {"lock_nut", "lock nut, thickness"},
      {"swing_needed", "swing needed, both locks"},
      {"swing_available", "swing available (maker's sheet)"},
      {"taper", "stud taper"},
      {"stud_large_diameter", "taper, large diameter"},
  }};
  const std::array<double, 4> columns = {left, left + 76.0, left + 130.0, left + 184.0};
  double y = top;
  const auto rule = [&](double at, LineRole role) {
    add_line(sheet, {{columns.front(), at}, {columns.back(), at}}, role);
  };
  rule(y, LineRole::outline);
  add_text(sheet, columns[1] + 1.5, y + 3.6, capitals(hand_end), kText, TextAnchor::start, true);
  add_text(sheet, columns[2] + 1.5, y + 3.6, capitals("knuckle end"), kText, TextAnchor::start,
           true);
  y += kRow + 0.4;
  rule(y, LineRole::thin);
  for (const auto& [name, words] : kRows) {
    const std::string at_arm = cell(item, std::string("arm_end_") + name);
    const std::string at_knuckle = cell(item, std::string("knuckle_end_") + name);
    if (at_arm.empty() && at_knuckle.empty()) continue;
    add_text(sheet, columns[0] + 1.5, y + 3.4, words);
    add_text(sheet, columns[1] + 1.5, y + 3.4, at_arm);
    add_text(sheet, columns[2] + 1.5, y + 3.4, at_knuckle);
    y += kRow;
    rule(y, LineRole::thin);
  }
  for (const double x : columns) add_line(sheet, {{x, top}, {x, y}}, LineRole::thin);
}

void draw_facts(const CutItem& item, double left, double top, Sheet& sheet) {
  static constexpr std::array<std::pair<const char*, const char*>, 7> kRows = {{
      {"given_length", "link that is there, ball to ball"},
      {"adjustment_wanted", "adjustment wanted each way"},
      {"adjustment_longer", "adjustment there is, longer"},
      {"adjustment_shorter", "adjustment there is, shorter"},
      {"length_per_turn", "for one turn of the tube"},
      {"force", "force assumed along the link"},
      {"tube_yield", "tube material, yield"},
  }};
  double y = top;
  for (const auto& [name, words] : kRows) {
    const std::string value = cell(item, name);
    if (value.empty()) continue;
    add_text(sheet, left, y, words);
    add_text(sheet, left + 82.0, y, value);
    y += kRow;
  }
}

void draw_notes(const CutItem& item, double left, double top, double width, double bottom,
                Sheet& sheet) {
  std::vector<std::string> sentences = {say("cautions.kill") + " " + say("cautions.geometry") +
                                        " " + say("cautions.certifier")};
  for (const std::string& caution : item.cautions) sentences.push_back("CAUTION: " + caution);
  if (dimension(item, "arm_end_swing_needed") || dimension(item, "knuckle_end_swing_needed")) {
    sentences.push_back(say("cut.sheet.swing"));
  }
  sentences.insert(sentences.end(), item.notes.begin(), item.notes.end());
  double y = top;
  for (const std::string& sentence : sentences) {
    const std::vector<std::string> lines = lines_within(sentence, width);
    if (y + static_cast<double>(lines.size()) * 4.0 > bottom) {
      add_text(sheet, left, y, "More in the cut list.");
      return;
    }
    for (const std::string& line : lines) {
      add_text(sheet, left, y, line);
      y += 4.0;
    }
    y += 0.8;
  }
}

// A truncated cone and its view from the small end (ISO 5456-2).
void draw_projection_symbol(PaperPoint centre, Projection projection, Sheet& sheet) {
  const double side = projection == Projection::first_angle ? -1.0 : 1.0;
  const double cone = centre.x + side * 6.5;
  const double circles = centre.x - side * 6.0;
  add_line(sheet,
           {{cone - 5.0, centre.y - 2.2},
            {cone + 5.0, centre.y - 4.4},
            {cone + 5.0, centre.y + 4.4},
            {cone - 5.0, centre.y + 2.2}},
           LineRole::thin, true);
  sheet.circles.push_back({{circles, centre.y}, 4.4, LineRole::thin, false});
  sheet.circles.push_back({{circles, centre.y}, 2.2, LineRole::thin, false});
  add_line(sheet, {{centre.x - 14.0, centre.y}, {centre.x + 14.0, centre.y}}, LineRole::centre);
}

void draw_title_block(const CutItem& item, const std::string& project, const std::string& scale,
                      Projection projection, Sheet& sheet) {
  constexpr double kLeft = 226.0;
  constexpr double kRight = 410.0;
  constexpr double kTop = 237.0;
  constexpr double kBottom = 287.0;
  add_line(sheet, {{kLeft, kTop}, {kRight, kTop}, {kRight, kBottom}, {kLeft, kBottom}},
           LineRole::frame, true);
  for (const double y : {252.0, 264.0, 276.0})
    add_line(sheet, {{kLeft, y}, {kRight, y}}, LineRole::thin);
  add_text(sheet, kLeft + 3.0, 246.0, item.title, 5.0, TextAnchor::start, true);
  const auto field = [&sheet](double x, double y, const char* name, const std::string& value) {
    add_text(sheet, x + 3.0, y + 3.6, name, 1.8);
    add_text(sheet, x + 3.0, y + 9.2, value, 3.5);
  };
  field(kLeft, 252.0, "project",
        project.empty() ? "without a name" : cut_to(project, 3.5, kRight - kLeft - 6.0));
  field(kLeft, 264.0, "scale of the ends", scale);
  field(kLeft + 62.0, 264.0, "dimensions", "mm");
  field(kLeft + 92.0, 264.0, "make", std::to_string(item.quantity));
  add_text(sheet, kLeft + 117.0, 267.6, "projection", 1.8);
  draw_projection_symbol({kLeft + 158.0, 270.0}, projection, sheet);
  for (const double x : {kLeft + 60.0, kLeft + 90.0, kLeft + 115.0})
    add_line(sheet, {{x, 264.0}, {x, 276.0}}, LineRole::thin);
  field(kLeft, 276.0, "measured in, date", "");
  field(kLeft + 62.0, 276.0, "checked, date", "");
  add_text(sheet, kLeft + 117.0, 279.6, "what this is", 1.8);
  add_text(sheet, kLeft + 117.0, 285.0, "geometry only, not an approval");
  for (const double x : {kLeft + 60.0, kLeft + 115.0})
    add_line(sheet, {{x, 276.0}, {x, kBottom}}, LineRole::thin);
}

}  // namespace

Sheet drag_link_sheet(const DragLinkPart& part, const std::string& project, Projection projection,
                      std::size_t findings_past) {
  const CutItem item = drag_link_item(part);
  Sheet sheet;
  sheet.title = item.title + " - " + project;
  add_line(sheet, {{20.0, 10.0}, {410.0, 10.0}, {410.0, 287.0}, {20.0, 287.0}}, LineRole::frame,
           true);
  // First angle puts the view from the left at the right, third angle at the left.
  const bool first_angle = projection == Projection::first_angle;
  const ViewSpace space =
      first_angle ? ViewSpace{44.0, 304.0, 64.0} : ViewSpace{130.0, 390.0, 64.0};
  const double scale = end_scale(part, space);
  const bool broken = draw_side_view(part, item, space, scale, sheet);
  draw_clocking_view(part, {first_angle ? 354.0 : 72.0, space.axis_y}, scale, sheet);
  draw_ends_table(item, hand_end_words(part), 24.0, 150.0, sheet);
  draw_facts(item, 226.0, 154.0, sheet);
  draw_notes(item, 24.0, 214.0, 196.0, 285.0, sheet);
  add_text(sheet, 226.0, 192.0, "Tolerance: where none stands, blank until measured in.");
  add_text(sheet, 226.0, 196.6,
           "Ball ends and studs are drawn as symbols; their sizes are the "
           "maker's.");
  if (findings_past > 0) {
    add_text(sheet, 226.0, 206.0,
             findings_past == 1 ? "1 FINDING WAS PAST ITS LIMIT when this was drawn."
                                : std::to_string(findings_past) +
                                      " FINDINGS WERE PAST THEIR LIMITS when this was drawn.",
             3.5, TextAnchor::start, true);
    add_text(sheet, 226.0, 211.6,
             findings_past == 1 ? "Settle it before anything is made: see the cut list."
                                : "Settle them before anything is made: see the cut list.");
  }
  draw_title_block(item, project, scale_words(scale) + (broken ? ", tube broken" : ""), projection,
                   sheet);
  return sheet;
}

}  // namespace tackbench
