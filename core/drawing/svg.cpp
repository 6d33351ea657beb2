#include "core/drawing/svg.h"

#include <fmt/core.h>

#include <algorithm>
#include <cmath>

#include "core/basics/units.h"

namespace tackbench {

namespace {

constexpr double kArrowLength = 3.0;
constexpr double kArrowHalfWidth = 0.5;  // about 20 degrees over all
constexpr double kFigureHeight = 2.5;
constexpr double kFigureGap = 0.9;     // figure over its line
constexpr double kExtensionGap = 0.8;  // part to extension line
constexpr double kExtensionPast = 1.5;

// Letter height over font size: capitals of common sans faces are about 0.7 of the size.
constexpr double kCapitalsPerSize = 0.7;

std::string escaped(const std::string& text) {
  std::string out;
  for (const char c : text) {
    switch (c) {
      case '&':
        out += "&amp;";
        break;
      case '<':
        out += "&lt;";
        break;
      case '>':
        out += "&gt;";
        break;
      case '"':
        out += "&quot;";
        break;
      default:
        // XML 1.0 forbids control characters even when escaped.
        out += static_cast<unsigned char>(c) < 0x20 ? ' ' : c;
    }
  }
  return out;
}

const char* class_of(LineRole role) {
  switch (role) {
    case LineRole::outline:
      return "outline";
    case LineRole::thin:
      return "thin";
    case LineRole::hidden:
      return "hidden";
    case LineRole::centre:
      return "centre";
    case LineRole::frame:
      return "frame";
  }
  return "thin";
}

void put_line(PaperPoint a, PaperPoint b, LineRole role, std::string& out) {
  out +=
      fmt::format("<line class=\"{}\" x1=\"{:.3f}\" y1=\"{:.3f}\" x2=\"{:.3f}\" y2=\"{:.3f}\"/>\n",
                  class_of(role), a.x, a.y, b.x, b.y);
}

// Tip at `tip`, pointing along the unit vector (x, y).
void put_arrow(PaperPoint tip, double x, double y, std::string& out) {
  const PaperPoint back{tip.x - kArrowLength * x, tip.y - kArrowLength * y};
  out += fmt::format(
      "<polygon class=\"arrow\" points=\"{:.3f},{:.3f} {:.3f},{:.3f} {:.3f},{:.3f}\"/>\n", tip.x,
      tip.y, back.x - kArrowHalfWidth * y, back.y + kArrowHalfWidth * x,
      back.x + kArrowHalfWidth * y, back.y - kArrowHalfWidth * x);
}

void put_text(const SheetText& text, std::string& out) {
  const char* anchor = text.anchor == TextAnchor::start    ? "start"
                       : text.anchor == TextAnchor::middle ? "middle"
                                                           : "end";
  out += fmt::format(R"(<text x="{:.3f}" y="{:.3f}" font-size="{:.3f}" text-anchor="{}")",
                     text.at.x, text.at.y, text.height / kCapitalsPerSize, anchor);
  if (text.bold) out += " font-weight=\"bold\"";
  if (text.turn_deg != 0.0)
    out += fmt::format(" transform=\"rotate({:.3f} {:.3f} {:.3f})\"", -text.turn_deg, text.at.x,
                       text.at.y);
  out += ">" + escaped(text.words) + "</text>\n";
}

void put_dimension(const SheetDimension& dimension, std::string& out) {
  PaperPoint left = dimension.from;
  PaperPoint right = dimension.to;
  if (right.x < left.x) std::swap(left, right);
  for (const PaperPoint& end : {left, right}) {
    const double way = dimension.line_y < end.y ? -1.0 : 1.0;
    if (std::abs(dimension.line_y - end.y) > kExtensionGap)
      put_line({end.x, end.y + way * kExtensionGap},
               {end.x, dimension.line_y + way * kExtensionPast}, LineRole::thin, out);
  }
  const double y = dimension.line_y;
  const double length = right.x - left.x;
  const double figure = text_width(dimension.words, kFigureHeight);
  const bool arrows_inside = length >= 2.0 * kArrowLength + 2.0;
  const bool figure_inside = figure + 1.0 <= length;
  SheetText words;
  words.words = dimension.words;
  words.height = kFigureHeight;
  words.at = {0.5 * (left.x + right.x), y - kFigureGap};
  words.anchor = TextAnchor::middle;
  double line_left = left.x;
  double line_right = right.x;
  if (!arrows_inside) {
    line_left -= 2.0 * kArrowLength;
    line_right += 2.0 * kArrowLength;
  }
  if (!figure_inside) {
    words.anchor = TextAnchor::start;
    words.at.x = (arrows_inside ? right.x : line_right) + 1.0;
    line_right = words.at.x + figure;
  }
  put_line({line_left, y}, {line_right, y}, LineRole::thin, out);
  put_arrow({left.x, y}, arrows_inside ? -1.0 : 1.0, 0.0, out);
  put_arrow({right.x, y}, arrows_inside ? 1.0 : -1.0, 0.0, out);
  put_text(words, out);
}

void put_leader(const SheetLeader& leader, std::string& out) {
  const double shelf = text_width(leader.words, kFigureHeight) + 1.5;
  const double way = leader.words_left ? -1.0 : 1.0;
  put_line(leader.tip, leader.elbow, LineRole::thin, out);
  put_line(leader.elbow, {leader.elbow.x + way * shelf, leader.elbow.y}, LineRole::thin, out);
  const double x = leader.tip.x - leader.elbow.x;
  const double y = leader.tip.y - leader.elbow.y;
  const double length = std::hypot(x, y);
  if (length > 0.0) put_arrow(leader.tip, x / length, y / length, out);
  SheetText words;
  words.words = leader.words;
  words.at = {leader.elbow.x + way * 0.8, leader.elbow.y - kFigureGap};
  words.anchor = leader.words_left ? TextAnchor::end : TextAnchor::start;
  put_text(words, out);
}

PaperPoint on_arc(const SheetArc& arc, double angle_deg) {
  const double angle = radians_from_degrees(angle_deg);
  return {arc.centre.x + arc.radius * std::cos(angle), arc.centre.y - arc.radius * std::sin(angle)};
}

void put_arc(const SheetArc& arc, std::string& out) {
  const double sweep = arc.end_deg - arc.start_deg;
  const PaperPoint from = on_arc(arc, arc.start_deg);
  const PaperPoint to = on_arc(arc, arc.end_deg);
  out += fmt::format(
      "<path class=\"{}\" d=\"M {:.3f} {:.3f} A {:.3f} {:.3f} 0 {} 0 {:.3f} {:.3f}\"/>\n",
      class_of(arc.role), from.x, from.y, arc.radius, arc.radius, sweep > 180.0 ? 1 : 0, to.x,
      to.y);
  // The arrow follows the chord of its own length, not the tangent, to lie on the arc.
  const double half_turn = degrees_from_radians(0.5 * kArrowLength / arc.radius);
  const auto direction = [](double angle_deg) {
    const double angle = radians_from_degrees(angle_deg);
    return PaperPoint{-std::sin(angle), -std::cos(angle)};  // anticlockwise on paper
  };
  if (arc.arrow_at_end) {
    const PaperPoint d = direction(arc.end_deg - half_turn);
    put_arrow(to, d.x, d.y, out);
  }
  if (arc.arrow_at_start) {
    const PaperPoint d = direction(arc.start_deg + half_turn);
    put_arrow(from, -d.x, -d.y, out);
  }
}

constexpr const char* kStyle =
    "<style>\n"
    ".outline{fill:none;stroke:#20282c;stroke-width:0.7;stroke-linejoin:round;"
    "stroke-linecap:round}\n"
    ".frame{fill:none;stroke:#20282c;stroke-width:0.7}\n"
    ".thin{fill:none;stroke:#20282c;stroke-width:0.35}\n"
    ".hidden{fill:none;stroke:#20282c;stroke-width:0.35;stroke-dasharray:3 1.2}\n"
    ".centre{fill:none;stroke:#20282c;stroke-width:0.35;stroke-dasharray:8 1.2 1.2 1.2}\n"
    ".arrow,.ink{fill:#20282c;stroke:none}\n"
    "text{fill:#20282c;font-family:osifont,\"ISO 3098\",\"DejaVu Sans\",sans-serif}\n"
    "</style>\n";

}  // namespace

double text_width(const std::string& words, double height) {
  // Mean advance of a sans face is about 0.85 of its capitals' height.
  const auto characters = std::count_if(words.begin(), words.end(), [](char c) {
    return (static_cast<unsigned char>(c) & 0xC0U) != 0x80U;  // not a UTF-8 continuation
  });
  return 0.85 * height * static_cast<double>(characters);
}

std::string svg(const Sheet& sheet) {
  std::string out = "<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n";
  out += fmt::format(
      "<svg xmlns=\"http://www.w3.org/2000/svg\" version=\"1.1\" width=\"{0:g}mm\" "
      "height=\"{1:g}mm\" viewBox=\"0 0 {0:g} {1:g}\">\n",
      sheet.width, sheet.height);
  out += "<title>" + escaped(sheet.title) + "</title>\n";
  out += kStyle;
  out += fmt::format("<rect x=\"0\" y=\"0\" width=\"{:g}\" height=\"{:g}\" fill=\"#ffffff\"/>\n",
                     sheet.width, sheet.height);
  for (const SheetLine& line : sheet.lines) {
    out += fmt::format(R"(<{} class="{}" points=")", line.closed ? "polygon" : "polyline",
                       class_of(line.role));
    for (std::size_t i = 0; i < line.through.size(); ++i)
      out += fmt::format("{}{:.3f},{:.3f}", i > 0 ? " " : "", line.through[i].x, line.through[i].y);
    out += "\"/>\n";
  }
  for (const SheetCircle& circle : sheet.circles)
    out += fmt::format("<circle class=\"{}\" cx=\"{:.3f}\" cy=\"{:.3f}\" r=\"{:.3f}\"/>\n",
                       circle.filled ? "ink" : class_of(circle.role), circle.centre.x,
                       circle.centre.y, circle.radius);
  for (const SheetArc& arc : sheet.arcs) put_arc(arc, out);
  for (const SheetDimension& dimension : sheet.dimensions) put_dimension(dimension, out);
  for (const SheetLeader& leader : sheet.leaders) put_leader(leader, out);
  for (const SheetText& text : sheet.texts) put_text(text, out);
  return out + "</svg>\n";
}

}  // namespace tackbench
