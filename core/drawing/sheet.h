// A sheet of paper as plain values: lines, circles, arcs, text and dimensions, each with its role.
// Paper millimetres, x to the right and y down from the sheet's top left corner. Line widths and
// lettering follow ISO 128 (0.7 and 0.35 mm) and ISO 3098 (2.5, 3.5, 5 mm); which role is drawn how
// is the writer's business.
#pragma once

#include <string>
#include <vector>

namespace tackbench {

struct PaperPoint {
  double x = 0.0;
  double y = 0.0;
};

enum class LineRole {
  outline,  // visible edges, wide
  thin,     // dimension and leader lines, thread roots, breaks
  hidden,   // dashed thin
  centre,   // chain thin
  frame,    // border of the sheet, wide
};

struct SheetLine {
  std::vector<PaperPoint> through;  // two points or more
  LineRole role = LineRole::outline;
  bool closed = false;
};

struct SheetCircle {
  PaperPoint centre;
  double radius = 1.0;
  LineRole role = LineRole::outline;
  bool filled = false;  // with ink
};

// From `start` anticlockwise as seen on the paper to `end`, degrees from the paper's +x upward.
struct SheetArc {
  PaperPoint centre;
  double radius = 1.0;
  double start_deg = 0.0;
  double end_deg = 90.0;
  LineRole role = LineRole::thin;
  bool arrow_at_start = false;
  bool arrow_at_end = false;
};

enum class TextAnchor { start, middle, end };

struct SheetText {
  PaperPoint at;        // on the base line
  std::string words;    // one line
  double height = 2.5;  // of the capitals, mm
  TextAnchor anchor = TextAnchor::start;
  bool bold = false;
  double turn_deg = 0.0;  // anticlockwise
};

// Along x between two points, drawn at height `line_y` (ISO 129-1: extension lines, closed filled
// arrows, figure over the line). Short ones get their arrows outside and, when the figure does not
// fit, the figure beside.
struct SheetDimension {
  PaperPoint from;
  PaperPoint to;
  double line_y = 0.0;
  std::string words;
};

// From a point of the part to its words, with an arrow at the part.
struct SheetLeader {
  PaperPoint tip;
  PaperPoint elbow;
  std::string words;
  bool words_left = false;  // the words stand to the left of the elbow
};

struct Sheet {
  std::string title;     // for the file's reader, not drawn
  double width = 420.0;  // A3 lying
  double height = 297.0;
  std::vector<SheetLine> lines;
  std::vector<SheetCircle> circles;
  std::vector<SheetArc> arcs;
  std::vector<SheetText> texts;
  std::vector<SheetDimension> dimensions;
  std::vector<SheetLeader> leaders;
};

// About how wide a line of text comes out, mm.
double text_width(const std::string& words, double height);

}  // namespace tackbench
