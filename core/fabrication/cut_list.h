// The cut list as plain values: what to make, with every dimension named. Writers are apart
// (cut_list_writers.h); nothing here computes motion: all numbers come from the project and the
// checks' results. Inside units: mm, rad, N.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/basics/units.h"
#include "core/fabrication/drag_link_part.h"
#include "core/project/sheet_settings.h"

namespace tackbench {

enum class ToleranceKind {
  none,        // a nominal size, a count or words: no tolerance of its own
  plus_minus,  // `tolerance` holds it
  blank,       // blank until measured in
};

struct CutDimension {
  std::string name;             // stable, without unit suffix: "ball_to_ball"
  std::string words;            // for the person who makes it
  std::string group;            // what it belongs to within the item: "arm end"; mostly empty
  std::optional<double> value;  // inside units; empty when `text` holds words or nothing is known
  Unit unit = Unit::millimetre;
  int decimals = 1;  // shown
  std::string text;  // a value in words: "M20x1.5-LH"; or why there is none
  ToleranceKind tolerance_kind = ToleranceKind::none;
  double tolerance = 0.0;  // plus-minus, inside units
  std::string note;
};

struct CutItem {
  std::string name;   // stable: "drag_link", "shaft.<name>", "stop.left"
  std::string title;  // for people
  int quantity = 1;
  std::vector<CutDimension> dimensions;
  std::vector<std::string> notes;
  std::vector<std::string> cautions;
};

// A finding past its limit, as the list repeats it.
struct PastFinding {
  std::string name;
  std::string sentence;
};

struct CutList {
  std::string project;  // its name
  Projection projection = Projection::first_angle;
  std::vector<PastFinding> past;          // to be settled before anything is made
  std::vector<CutItem> items;             // in order of motion; the mock-up last
  std::optional<DragLinkPart> drag_link;  // what its drawing is made from
  std::vector<std::string> waiting;       // parts that cannot be listed yet, and why
  std::vector<std::string> cautions;      // for every sheet
  std::vector<std::string> not_checked;
};

// The dimension of that name; null when the item has none.
const CutDimension* dimension(const CutItem& item, const std::string& name);

// "803.6", "M20x1.5-LH"; the number without its unit.
std::string value_text(const CutDimension& dimension);
// "0.5", "blank until measured in" or empty.
std::string tolerance_text(const CutDimension& dimension);

}  // namespace tackbench
