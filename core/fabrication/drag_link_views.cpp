#include "core/fabrication/drag_link_views.h"

#include <fmt/core.h>

#include <algorithm>
#include <array>
#include <cmath>

#include "core/checks/metric_thread.h"

namespace tackbench {

namespace {

constexpr double kBreakGap = 5.0;  // paper mm
const char* const kDiameterSign = "\u00d8";

// One end of the link on paper: `way` +1 when the tube lies to its right, -1 to its left.
struct EndOnPaper {
  const LinkEndPart* part = nullptr;
  double ball_x = 0.0;
  double axis_y = 0.0;
  double way = 1.0;
  double scale = 0.5;

  double x(double along) const { return ball_x + way * along * scale; }
  double face_x() const { return x(part->free_length); }
};

void add_line(Sheet& sheet, std::vector<PaperPoint> through, LineRole role, bool closed = false) {
  sheet.lines.push_back({std::move(through), role, closed});
}

void add_pair(Sheet& sheet, double x0, double x1, double axis_y, double half, LineRole role) {
  add_line(sheet, {{x0, axis_y - half}, {x1, axis_y - half}}, role);
  add_line(sheet, {{x0, axis_y + half}, {x1, axis_y + half}}, role);
}

// Ball, housing and stud are symbols: their sizes are the maker's. `stud_up` = share of the stud
// seen in this view, negative when it points down.
void draw_ball(const EndOnPaper& end, double stud_up, Sheet& sheet) {
  const double diameter = end.part->size.thread.diameter * end.scale;
  const double housing = 0.95 * diameter;
  sheet.circles.push_back({{end.ball_x, end.axis_y}, housing, LineRole::outline, false});
  sheet.circles.push_back({{end.ball_x, end.axis_y}, 0.6 * diameter, LineRole::thin, false});
  if (std::abs(stud_up) < 0.2) {
    sheet.circles.push_back({{end.ball_x, end.axis_y}, 0.35 * diameter, LineRole::outline, false});
  } else {
    const double way = stud_up > 0.0 ? -1.0 : 1.0;  // paper y points down
    const double root = end.axis_y + way * housing;
    const double tip = end.axis_y + way * (housing + 1.5 * diameter * std::abs(stud_up));
    add_line(sheet,
             {{end.ball_x - 0.45 * diameter, root},
              {end.ball_x - 0.35 * diameter, tip},
              {end.ball_x + 0.35 * diameter, tip},
              {end.ball_x + 0.45 * diameter, root}},
             LineRole::outline);
    add_line(sheet, {{end.ball_x, end.axis_y}, {end.ball_x, tip + way * 2.5}}, LineRole::centre);
  }
}

void draw_shank(const EndOnPaper& end, Sheet& sheet) {
  const Thread& thread = end.part->size.thread;
  const double half = 0.5 * thread.diameter * end.scale;
  const double root_half = 0.5 * core_diameter(thread) * end.scale;
  const double start = end.ball_x + end.way * 0.95 * thread.diameter * end.scale;
  const double face = end.face_x();
  add_pair(sheet, start, face, end.axis_y, half, LineRole::outline);
  add_pair(sheet, start, face, end.axis_y, root_half, LineRole::thin);
  const double shank_end = end.x(end.part->size.shank_length);
  add_pair(sheet, face, shank_end, end.axis_y, half, LineRole::hidden);
  add_line(sheet, {{shank_end, end.axis_y - half}, {shank_end, end.axis_y + half}},
           LineRole::hidden);
  const double thread_end = end.x(end.part->free_length + std::ceil(end.part->thread_depth));
  add_line(sheet, {{thread_end, end.axis_y - half}, {thread_end, end.axis_y + half}},
           LineRole::hidden);
  const double nut_half = 0.85 * thread.diameter * end.scale;
  const double nut = end.x(end.part->free_length - end.part->size.lock_nut_thickness);
  add_line(sheet,
           {{nut, end.axis_y - nut_half},
            {face, end.axis_y - nut_half},
            {face, end.axis_y + nut_half},
            {nut, end.axis_y + nut_half}},
           LineRole::outline, true);
}

// Tube from an end's face to `stop_x`; the middle runs `shift` (paper mm, down) off the balls'
// line.
void draw_tube(const EndOnPaper& end, const LinkTube& tube, double stop_x, double shift,
               Sheet& sheet) {
  const double face = end.face_x();
  const double half = 0.5 * tube.outside_diameter * end.scale;
  const double bore_half = std::max(0.0, half - tube.wall * end.scale);
  const double bend_from = face + 0.55 * (stop_x - face);
  const double bend_to = face + 0.8 * (stop_x - face);
  const auto run = [&](double y, LineRole role) {
    if (shift == 0.0)
      add_line(sheet, {{face, y}, {stop_x, y}}, role);
    else
      add_line(sheet, {{face, y}, {bend_from, y}, {bend_to, y + shift}, {stop_x, y + shift}}, role);
  };
  run(end.axis_y - half, LineRole::outline);
  run(end.axis_y + half, LineRole::outline);
  run(end.axis_y - bore_half, LineRole::hidden);
  run(end.axis_y + bore_half, LineRole::hidden);
  add_line(sheet, {{face, end.axis_y - half}, {face, end.axis_y + half}}, LineRole::outline);
}

void draw_break(double x, double y, double half, Sheet& sheet) {
  const double over = half + 2.5;
  add_line(sheet,
           {{x, y - over},
            {x, y - 0.3 * half},
            {x - 1.5, y - 0.12 * half},
            {x + 1.5, y + 0.12 * half},
            {x, y + 0.3 * half},
            {x, y + over}},
           LineRole::thin);
}

void dimension_end(const EndOnPaper& end, const CutItem& item, const std::string& prefix,
                   double half, double below, Sheet& sheet) {
  const PaperPoint ball{end.ball_x, end.axis_y};
  const double face = end.face_x();
  const double shank_end = end.x(end.part->size.shank_length);
  const double thread_end = end.x(end.part->free_length + std::ceil(end.part->thread_depth));
  const double y = end.axis_y + below;
  sheet.dimensions.push_back(
      {ball, {face, end.axis_y + half}, y, figure(item, prefix + "_free_length")});
  sheet.dimensions.push_back({{face, end.axis_y + half},
                              {shank_end, end.axis_y + half},
                              y,
                              figure(item, prefix + "_engagement")});
  sheet.dimensions.push_back(
      {ball, {shank_end, end.axis_y + half}, y + 18.0, figure(item, prefix + "_shank_length")});
  sheet.dimensions.push_back({{face, end.axis_y + half},
                              {thread_end, end.axis_y + half},
                              y + 9.0,
                              figure(item, prefix + "_thread_depth") + " thread"});
}

}  // namespace

std::string figure(const CutItem& item, const std::string& name) {
  const CutDimension* found = dimension(item, name);
  if (found == nullptr) return "";
  std::string words = value_text(*found);
  if (found->tolerance_kind == ToleranceKind::plus_minus)
    words += " \u00b1" + tolerance_text(*found);
  if (found->tolerance_kind == ToleranceKind::blank)
    words += " (tolerance " + tolerance_text(*found) + ")";
  return words;
}

double end_scale(const DragLinkPart& part, const ViewSpace& space) {
  const double half_space = 0.5 * (space.right - space.left - kBreakGap);
  const double free = std::max(part.arm.free_length, part.knuckle.free_length);
  const double inside =
      std::max({part.arm.thread_depth, part.knuckle.thread_depth, part.arm.size.thread_engagement,
                part.knuckle.size.thread_engagement});
  for (const double scale : {1.0, 0.5, 0.2}) {
    const bool high_enough = part.tube.outside_diameter * scale <= 26.0;
    if (high_enough && (free + inside) * scale + 45.0 <= half_space) return scale;
  }
  return 0.1;
}

std::string scale_words(double scale) {
  return fmt::format("1:{:g}", std::round(1.0 / scale));
}

bool draw_side_view(const DragLinkPart& part, const CutItem& item, const ViewSpace& space,
                    double scale, Sheet& sheet) {
  const double middle = 0.5 * (space.left + space.right);
  const double whole = part.ball_to_ball * scale;
  const bool broken = whole > space.right - space.left;
  const double half_length = 0.5 * (broken ? space.right - space.left : whole);
  const EndOnPaper arm{&part.arm, middle - half_length, space.axis_y, 1.0, scale};
  const EndOnPaper knuckle{&part.knuckle, middle + half_length, space.axis_y, -1.0, scale};
  const double shift = std::min(part.bend_offset * scale, 16.0);
  const double gap = broken ? 0.5 * kBreakGap : 0.0;
  const double tube_half = 0.5 * part.tube.outside_diameter * scale;

  draw_ball(arm, 1.0, sheet);
  draw_ball(knuckle, std::cos(part.clocking), sheet);
  draw_shank(arm, sheet);
  draw_shank(knuckle, sheet);
  draw_tube(arm, part.tube, middle - gap, shift, sheet);
  draw_tube(knuckle, part.tube, middle + gap, shift, sheet);
  if (broken) {
    draw_break(middle - gap, space.axis_y + shift, tube_half, sheet);
    draw_break(middle + gap, space.axis_y + shift, tube_half, sheet);
  }
  add_line(sheet, {{arm.ball_x - 8.0, space.axis_y}, {knuckle.ball_x + 8.0, space.axis_y}},
           LineRole::centre);

  const double largest_thread =
      std::max(part.arm.size.thread.diameter, part.knuckle.size.thread.diameter) * scale;
  const double above = std::max(tube_half, 2.45 * largest_thread) + 8.0;
  const double below = std::max(tube_half, 2.45 * largest_thread) + 9.0;
  sheet.dimensions.push_back({{arm.ball_x, space.axis_y},
                              {knuckle.ball_x, space.axis_y},
                              space.axis_y - above - 10.0,
                              figure(item, "ball_to_ball")});
  sheet.dimensions.push_back({{arm.face_x(), space.axis_y - tube_half},
                              {knuckle.face_x(), space.axis_y - tube_half},
                              space.axis_y - above,
                              figure(item, "tube_length")});
  dimension_end(arm, item, "arm_end", tube_half, below, sheet);
  dimension_end(knuckle, item, "knuckle_end", tube_half, below, sheet);

  // Over the tube, where no dimension runs.
  const double leader_y = space.axis_y - tube_half - 5.0;
  const auto thread_leader = [&](const EndOnPaper& end, bool words_left) {
    const double tip = end.x(end.part->free_length + 0.5 * end.part->size.thread_engagement);
    const double edge = space.axis_y - 0.5 * end.part->size.thread.diameter * scale;
    sheet.leaders.push_back({{tip, edge},
                             {tip + end.way * 4.0, leader_y},
                             designation(end.part->size.thread) + ", lock nut " +
                                 fmt::format("{:g}", end.part->size.lock_nut_thickness),
                             words_left});
  };
  thread_leader(arm, false);
  thread_leader(knuckle, true);
  const double tube_x = middle - 12.0;
  sheet.leaders.push_back(
      {{tube_x, space.axis_y + tube_half + (shift > 0.0 ? shift : 0.0)},
       {tube_x + 3.0, space.axis_y + below + 4.0},
       fmt::format("tube {}{:g} x {:g}", kDiameterSign, part.tube.outside_diameter, part.tube.wall),
       false});
  if (part.bend_offset != 0.0)
    sheet.texts.push_back({{tube_x + 4.0, space.axis_y + below + 10.0},
                           "offset " + figure(item, "bend_offset") + " (symbolic)",
                           2.5,
                           TextAnchor::start,
                           false,
                           0.0});
  return broken;
}

namespace {

// Below this an arc between the studs has no room for its arrow.
constexpr double kSmallAngle = 15.0;  // degrees
constexpr double kLongRadius = 34.0;  // paper mm

// The two studs as seen from the hand-side end along the link, the hand-side one upward. Angles in
// degrees, clockwise from there.
struct ClockingView {
  PaperPoint centre;
  double tube = 0.0;       // radius, paper mm
  double clockwise = 0.0;  // of the knuckle end's stud
  std::string hand_end;
  Sheet& sheet;

  double side() const { return clockwise >= 0.0 ? 1.0 : -1.0; }
  PaperPoint at(double clock_deg, double radius) const {
    const double angle = radians_from_degrees(clock_deg);
    return {centre.x + radius * std::sin(angle), centre.y - radius * std::cos(angle)};
  }
  void text(PaperPoint place, const std::string& words, TextAnchor anchor) const {
    sheet.texts.push_back({place, words, 2.5, anchor, false, 0.0});
  }
  // Words that stand clear of a line by growing away from it: to the right (+1) or the left (-1).
  void text_beside(PaperPoint place, double way, const std::string& words) const {
    text({place.x + way * 1.5, place.y}, words, way > 0.0 ? TextAnchor::start : TextAnchor::end);
  }
  // From one stud to the other, ends in the paper's sense.
  SheetArc arc(double radius) const {
    SheetArc made;
    made.centre = centre;
    made.radius = radius;
    made.start_deg = 90.0 - std::max(clockwise, 0.0);
    made.end_deg = 90.0 - std::min(clockwise, 0.0);
    return made;
  }
};

std::string angle_words(double clockwise) {
  return fmt::format("{:.1f}\u00b0", std::abs(clockwise));
}

void draw_small_clocking(const ClockingView& view) {
  constexpr double kTail = 15.0;  // degrees of arc outside each line
  const double end = kLongRadius + 3.0;
  add_line(view.sheet, {view.centre, view.at(0.0, end)}, LineRole::thin);
  add_line(view.sheet, {view.centre, view.at(view.clockwise, end)}, LineRole::thin);
  const SheetArc between = view.arc(kLongRadius);
  view.sheet.arcs.push_back(between);
  SheetArc before = between;
  before.start_deg = between.start_deg - kTail;
  before.end_deg = between.start_deg;
  before.arrow_at_end = true;
  SheetArc after = between;
  after.start_deg = between.end_deg;
  after.end_deg = between.end_deg + kTail;
  after.arrow_at_start = true;
  view.sheet.arcs.push_back(before);
  view.sheet.arcs.push_back(after);
  const double side = view.side();
  const PaperPoint tail = view.at(view.clockwise + side * kTail, kLongRadius);
  view.text_beside({tail.x, tail.y + 1.0}, side, angle_words(view.clockwise));
  view.text_beside(view.at(0.0, end), -side, view.hand_end);
  view.text_beside(view.at(view.clockwise, end), side, "knuckle end");
}

void draw_wide_clocking(const ClockingView& view, double reach) {
  add_line(view.sheet, {view.centre, view.at(0.0, reach)}, LineRole::outline);
  add_line(view.sheet, {view.centre, view.at(view.clockwise, reach)}, LineRole::outline);
  const double side = view.side();
  SheetArc arc = view.arc(view.tube + 7.0);
  arc.arrow_at_start = side > 0.0;
  arc.arrow_at_end = side < 0.0;
  view.sheet.arcs.push_back(arc);
  view.text_beside(view.at(0.0, reach + 2.0), -side, view.hand_end);
  const PaperPoint tip = view.at(view.clockwise, reach + 3.0);
  view.text_beside({tip.x, tip.y + (std::abs(view.clockwise) > 90.0 ? 3.0 : 1.0)}, side,
                   "knuckle end");
}

}  // namespace

void draw_clocking_view(const DragLinkPart& part, PaperPoint centre, double scale, Sheet& sheet) {
  const double tube = 0.5 * part.tube.outside_diameter * scale;
  const double reach = tube + 11.0;
  sheet.circles.push_back({centre, tube, LineRole::outline, false});
  sheet.circles.push_back(
      {centre, std::max(0.1, tube - part.tube.wall * scale), LineRole::hidden, false});
  add_line(sheet, {{centre.x - tube - 4.0, centre.y}, {centre.x + tube + 4.0, centre.y}},
           LineRole::centre);
  sheet.circles.push_back({centre, 0.8, LineRole::outline, true});

  const ClockingView view{centre, tube, degrees_from_radians(part.clocking), hand_end_words(part),
                          sheet};
  const bool in_line = std::abs(view.clockwise) < 0.05;
  if (in_line) {
    add_line(sheet, {centre, view.at(0.0, reach)}, LineRole::outline);
    view.text(view.at(0.0, reach + 2.0), "both studs", TextAnchor::middle);
  } else if (std::abs(view.clockwise) < kSmallAngle) {
    draw_small_clocking(view);
  } else {
    draw_wide_clocking(view, reach);
  }
  std::string words = "stud clocking " + angle_words(view.clockwise);
  if (!in_line) words += view.side() > 0.0 ? " clockwise" : " anticlockwise";
  // Below the label of a stud that points down.
  const double below = centre.y + reach + 12.0;
  view.text({centre.x, below}, words, TextAnchor::middle);
  view.text({centre.x, below + 4.5}, "seen from the " + view.hand_end + " along the link",
            TextAnchor::middle);
}

}  // namespace tackbench
