#include <fmt/core.h>

#include <algorithm>
#include <cmath>

#include "core/checks/metric_thread.h"
#include "core/fabrication/cut_items.h"
#include "core/fabrication/dimension_makers.h"

namespace tackbench {

namespace {

constexpr double kHair = 0.05;  // mm: lengths that print alike

std::string knuckle_words(const DragLinkPart& part) {
  return part.knuckle_side == Side::left ? "left knuckle" : "right knuckle";
}

CutDimension with_tolerance(CutDimension made, const std::optional<double>& tolerance) {
  return tolerance ? plus_minus(std::move(made), *tolerance) : blank_tolerance(std::move(made));
}

void add_lengths(const DragLinkPart& part, CutItem& item) {
  item.dimensions.push_back(with_note(
      with_tolerance(
          number("ball_to_ball", "ball centre to ball centre: order this", part.ball_to_ball),
          part.tolerance),
      "steering box at its centre, wheels straight, ride height"));
  if (part.given_length) {
    const double change = part.ball_to_ball - *part.given_length;
    std::string note = "the link that is there";
    if (std::abs(change) > kHair)
      note += fmt::format(
          ": {:.1f} mm {}; with it the box stands {:.2f} turns of the hand wheel "
          "off its centre; {}",
          std::abs(change), change > 0.0 ? "short" : "long",
          std::abs(part.given_box_offset) / kRadiansPerTurn,
          part.given_can_be_set ? "its own adjustment reaches the length to order"
                                : "its own adjustment does not reach");
    item.dimensions.push_back(with_note(
        number("given_length", "ball centre to ball centre as given", *part.given_length), note));
  }
}

void add_tube(const DragLinkPart& part, CutItem& item) {
  CutDimension tube = number("tube_length", "tube, cut length", part.tube_length);
  // With a tolerance on the whole the screwed ends make up for the tube; without one its nominal
  // length is not settled yet.
  tube = part.tolerance ? plus_minus(tube, general_tolerance(part.tube_length))
                        : blank_tolerance(tube);
  tube.note = fmt::format("{:.1f} - {:.1f} - {:.1f}: what stands out of the tube at both ends",
                          part.ball_to_ball, part.arm.free_length, part.knuckle.free_length);
  if (part.bend_offset != 0.0) tube.note += "; straight length between its faces, before bending";
  item.dimensions.push_back(tube);
  item.dimensions.push_back(
      number("tube_outside_diameter", "tube outside diameter", part.tube.outside_diameter));
  item.dimensions.push_back(number("tube_wall", "tube wall", part.tube.wall));
  item.dimensions.back().note = fmt::format("bore {:.1f} before threading",
                                            part.tube.outside_diameter - 2.0 * part.tube.wall);
  item.dimensions.push_back(
      number("bend_offset", "offset of the tube's middle off the ball line", part.bend_offset));
  if (part.bend_offset == 0.0) item.dimensions.back().note = "straight tube";
}

void add_adjustment(const DragLinkPart& part, CutItem& item) {
  item.dimensions.push_back(
      number("adjustment_wanted", "adjustment wanted each way", part.adjustment_wanted));
  item.dimensions.push_back(
      with_note(number("adjustment_longer", "adjustment there is, longer", part.longer),
                "keeps 1 diameter of thread engaged at each end (from memory: full strength)"));
  item.dimensions.push_back(
      with_note(number("adjustment_shorter", "adjustment there is, shorter", part.shorter),
                "as deep as the tube is tapped and no lock nut out of thread; a plain neck on the "
                "shank takes off it; tap deeper for more"));
  const double turn = length_per_tube_turn(part);
  item.dimensions.push_back(
      with_note(number("length_per_turn", "length change for one turn of the tube", turn),
                part.opposite_hands
                    ? "opposite hands: slack both lock nuts, turn the tube, nothing comes off"
                    : "same hands: take one stud off its lever and turn that end by whole turns"));
  for (const auto& [there, way] :
       {std::pair{part.longer, "longer"}, std::pair{part.shorter, "shorter"}}) {
    if (there + kHair < part.adjustment_wanted)
      item.cautions.push_back(fmt::format("Adjustment {}: {:.1f} mm where {:.1f} mm is wanted.",
                                          way, there, part.adjustment_wanted));
  }
}

CutDimension swing_available(const LinkEndPart& part, const std::string& prefix) {
  const std::string words = "swing available";
  if (!part.end.swing_limit)
    return with_note(in_words(prefix + "_swing_available", words, "not given"),
                     "take it from the maker's sheet");
  return with_note(number(prefix + "_swing_available", words, *part.end.swing_limit, Unit::degree),
                   "from the maker's sheet, as given");
}

void add_end_sizes(const LinkEndPart& part, const std::string& prefix,
                   std::vector<CutDimension>& list) {
  const LinkEndSize& size = part.size;
  const auto name = [&prefix](const char* rest) { return prefix + "_" + rest; };
  list.push_back(in_words(name("thread"), "thread", designation(size.thread)));
  list.back().note = size.thread.hand == ThreadHand::left ? "left-hand" : "right-hand";
  list.push_back(with_note(number(name("shank_length"), "shank", size.shank_length),
                           "ball centre to the end of its thread"));
  list.push_back(
      with_note(number(name("engagement"), "thread engaged in the tube", size.thread_engagement),
                fmt::format("{:.2f} diameters; 1 at least (from memory), 1.5 usual for steering "
                            "(from memory)",
                            size.thread_engagement / size.thread.diameter)));
  list.push_back(with_note(
      number(name("thread_depth"), "thread in the tube, least depth", std::ceil(part.thread_depth)),
      fmt::format("bore to {:.2f}, tap from the end face", inner_diameter(size.thread))));
  list.push_back(number(name("free_length"), "ball centre to the tube's face", part.free_length));
  list.push_back(with_note(number(name("lock_nut"), "lock nut, thickness", size.lock_nut_thickness),
                           fmt::format("{}, one", designation(size.thread))));
}

void add_end(const LinkEndPart& part, const std::string& prefix, const std::string& where,
             bool sized, CutItem& item) {
  const LinkEnd& end = part.end;
  const auto name = [&prefix](const char* rest) { return prefix + "_" + rest; };
  const std::size_t first = item.dimensions.size();
  auto& list = item.dimensions;
  list.push_back(in_words(name("kind"), "kind of end",
                          end.kind == LinkEndKind::ball_stud ? "ball stud" : "rod end"));
  if (sized) add_end_sizes(part, prefix, list);
  if (part.swing_needed)
    list.push_back(
        with_note(number(name("swing_needed"), "swing needed", *part.swing_needed, Unit::degree),
                  part.swing_over_travel
                      ? "both locks over the axle's travel, clocked as above"
                      : "both locks at ride height, clocked as above; bump and roll add to it"));
  list.push_back(swing_available(part, prefix));
  if (end.taper)
    list.push_back(in_words(
        name("taper"), "stud taper",
        *end.taper > 0.0 ? fmt::format("1 in {:.4g}", 1.0 / *end.taper) : std::string("none")));
  else
    list.push_back(in_words(name("taper"), "stud taper", "not given: measure it off the lever"));
  if (end.stud_large_diameter)
    list.push_back(number(name("stud_large_diameter"), "stud taper, large diameter",
                          *end.stud_large_diameter, Unit::millimetre, 2));
  for (std::size_t i = first; i < list.size(); ++i) list[i].group = where;
}

void judge_end(const LinkEndPart& part, const LinkTube& tube, const std::string& where,
               CutItem& item) {
  const Thread& thread = part.size.thread;
  const double bore = tube.outside_diameter - 2.0 * tube.wall;
  if (!part.bore_carries_thread)
    item.cautions.push_back(fmt::format(
        "The tube cannot be threaded at the {}: its bore of {:.1f} mm is larger than the core of "
        "{} ({:.2f}, at most {:.2f} mm). Take a wall of at least {:.1f} mm or a larger thread; "
        "never a welded bung.",
        where, bore, designation(thread), inner_diameter(thread), largest_tapping_bore(thread),
        0.5 * (tube.outside_diameter - largest_tapping_bore(thread))));
  const double shank = stress_area(thread);
  if (part.area_outside < shank)
    item.cautions.push_back(fmt::format(
        "Thin wall at the {}: {:.1f} mm is left outside {}; its {:.0f} mm2 is less than the "
        "shank's own stress area of {:.0f} mm2.",
        where, part.wall_outside, designation(thread), part.area_outside, shank));
  if (part.size.thread_engagement < thread.diameter)
    item.cautions.push_back(fmt::format(
        "Thread engagement at the {}: {:.1f} mm is less than 1 diameter ({:g} mm, from memory).",
        where, part.size.thread_engagement, thread.diameter));
  if (part.free_length < part.size.lock_nut_thickness)
    item.cautions.push_back(
        fmt::format("No room for the lock nut at the {}: {:.1f} mm between ball centre and tube, "
                    "nut {:.1f} mm.",
                    where, part.free_length, part.size.lock_nut_thickness));
  if (part.end.kind == LinkEndKind::rod_end)
    item.cautions.push_back(
        "Rod end at the " + where +
        ": many codes want forged ball-stud ends on road steering (from memory); ask the "
        "certifier. Fit a large retaining washer.");
  if (part.end.swing_limit && part.swing_needed && *part.swing_needed > *part.end.swing_limit)
    item.cautions.push_back(fmt::format("Swing at the {}: {:.1f} deg needed, {:.1f} deg available.",
                                        where, degrees_from_radians(*part.swing_needed),
                                        degrees_from_radians(*part.end.swing_limit)));
}

void add_clocking(const DragLinkPart& part, CutItem& item) {
  const auto seen = [](double angle) { return angle < 0.0 ? "anticlockwise" : "clockwise"; };
  const std::string hand_end = hand_end_words(part);
  item.dimensions.push_back(with_note(
      number("stud_clocking", "stud clocking, " + hand_end + " to knuckle end",
             std::abs(part.clocking), Unit::degree),
      fmt::format(
          "{}, seen from the {} along the link; {}", seen(part.clocking), hand_end,
          part.clocking_given ? "as given" : "both studs centred with the wheels straight")));
  if (part.best_clocking && part.swing_at_best)
    item.dimensions.push_back(
        with_note(number("best_clocking", "stud clocking that would use least swing",
                         std::abs(*part.best_clocking), Unit::degree),
                  fmt::format("{}; the greater swing is then {:.1f} deg", seen(*part.best_clocking),
                              degrees_from_radians(*part.swing_at_best))));
}

void add_force(const LinkForce& force, CutItem& item) {
  std::string missing;
  for (const std::string& name : force.not_given) missing += (missing.empty() ? "" : ", ") + name;
  CutDimension made =
      force.newtons
          ? number("force", "force assumed along the link", *force.newtons, Unit::newton, 0)
          : in_words("force", "force assumed along the link", "none given");
  if (force.newtons) {
    made.note = "greatest given: " + force.name;
    if (!force.how.empty()) made.note += " (" + force.how + ")";
  }
  if (!missing.empty()) made.note += (made.note.empty() ? "" : "; ") + ("not given: " + missing);
  item.dimensions.push_back(made);
}

void add_making(const DragLinkPart& part, const std::string& hand_side, CutItem& item) {
  if (part.tube.yield)
    item.dimensions.push_back(with_note(
        number("tube_yield", "tube material, yield", *part.tube.yield, Unit::megapascal, 0),
        "as given, from the certificate"));
  else
    item.dimensions.push_back(
        in_words("tube_yield", "tube material", "blank: the supplier's certificate names it"));
  judge_end(part.arm, part.tube, hand_side, item);
  judge_end(part.knuckle, part.tube, "knuckle end", item);
  item.notes.emplace_back(
      "Tube in one piece, threaded at both ends. No welded bung, no weld anywhere on it.");
  item.notes.emplace_back(
      part.opposite_hands
          ? "Left-hand end takes a left-hand lock nut. Turning the tube keeps the clocking."
          : "Same hand at both ends: turning the tube does not set the length. Set it at one end, "
            "by whole turns, so that the clocking stays.");
  item.notes.emplace_back(
      "Tighten both lock nuts with the studs clocked; mark shank and tube so that slip shows.");
  item.notes.emplace_back(
      "Hold back the tube's last cut until the certified ends are in hand and their shanks are "
      "measured.");
  if (part.bend_offset != 0.0)
    item.notes.emplace_back(
        "Bent tube: the clocking is set from the plane of the bend; ask the supplier to bend "
        "cold in one piece.");
}

}  // namespace

CutItem drag_link_item(const DragLinkPart& part) {
  CutItem item;
  item.name = "drag_link";
  item.title = "Drag link to the " + knuckle_words(part);
  item.quantity = part.quantity;
  add_lengths(part, item);
  if (part.sized) {
    add_tube(part, item);
    add_adjustment(part, item);
  } else {
    item.dimensions.push_back(
        in_words("sizes", "tube, threads, adjustment",
                 "not given: shank, thread, engagement and lock nut of both ends, and the tube"));
  }
  add_clocking(part, item);
  const std::string hand_side = hand_end_words(part);
  add_end(part.arm, "arm_end", hand_side, part.sized, item);
  add_end(part.knuckle, "knuckle_end", "knuckle end", part.sized, item);
  add_force(part.force, item);
  if (part.sized) add_making(part, hand_side, item);
  return item;
}

}  // namespace tackbench
