#include <fmt/core.h>

#include <cmath>

#include "core/fabrication/cut_items.h"
#include "core/fabrication/dimension_makers.h"

namespace tackbench {

double general_tolerance(double length) {
  // ISO 2768-1 class m, from memory: up to 6, 30, 120, 400, 1000, 2000 mm.
  if (length <= 6.0) return 0.1;
  if (length <= 30.0) return 0.2;
  if (length <= 120.0) return 0.3;
  if (length <= 400.0) return 0.5;
  if (length <= 1000.0) return 0.8;
  return 1.2;
}

CutItem mock_up_item(const MockUpLink& mock_up) {
  const auto cut = [](CutDimension made) {
    return plus_minus(made, general_tolerance(*made.value));
  };
  CutItem item;
  item.name = "mock_up_link";
  item.title = "Mock-up drag link: YARD TEMPLATE ONLY, NEVER FOR THE ROAD";
  auto& list = item.dimensions;
  list.push_back(with_note(
      number("ball_to_ball", "ball centre to ball centre, set first", mock_up.ball_to_ball),
      fmt::format("slides {:.1f} mm shorter, {:.1f} mm longer", mock_up.gap, mock_up.longer)));
  list.push_back(number("tube_outside_diameter", "tube outside diameter", mock_up.tube_diameter));
  list.push_back(
      with_note(cut(number("piece_length", "length of each of two tubes", mock_up.piece_length)),
                "threaded at its outer end as the real link"));
  list.push_back(cut(number("sleeve_length", "sleeve length", mock_up.sleeve_length)));
  list.push_back(
      with_note(number("sleeve_bore", "sleeve bore", mock_up.sleeve_bore), "slides on the tube"));
  list.push_back(with_note(
      number("sleeve_outside_diameter", "sleeve outside diameter", mock_up.sleeve_outside),
      fmt::format("wall {:.1f} mm", 0.5 * (mock_up.sleeve_outside - mock_up.sleeve_bore))));
  list.push_back(with_note(number("overlap", "overlap on each tube", mock_up.overlap),
                           "1.5 to 2 diameters each side (from memory)"));
  list.push_back(number("gap", "gap between the tubes inside", mock_up.gap));
  list.push_back(with_note(
      number("plug_hole_diameter", "plug-weld hole diameter, least", mock_up.hole),
      "sleeve wall + 8 mm (AISC/AWS D1.1 limit as quoted); two holes a side, half way round from "
      "each other"));
  list.push_back(
      with_note(number("plug_hole_first", "first hole from the sleeve's end", mock_up.first_hole),
                "staggered (from memory)"));
  list.push_back(
      number("plug_hole_second", "second hole from the sleeve's end", mock_up.second_hole));
  list.push_back(
      with_note(number("plug_hole_spacing", "hole centres apart, least", mock_up.spacing),
                fmt::format("4 diameters (from memory); as laid out {:.0f} mm over the surface",
                            mock_up.hole_distance)));
  std::string other_walls = "Other sleeve walls:";
  for (const double wall : {3.0, 4.0, 5.0, 6.0})
    other_walls += fmt::format("{} wall {:g} hole {:g} spacing {:g}", wall > 3.0 ? "," : "", wall,
                               least_plug_hole(wall), least_plug_spacing(least_plug_hole(wall)));
  item.notes.push_back(other_walls + " mm.");
  item.notes.emplace_back(
      "Paint it and letter it MOCK-UP TEMPLATE ONLY. Take its length, then scrap it.");
  item.cautions.emplace_back(
      "Mock-up template only: walking pace, level ground, assist disconnected, never on a slope "
      "or a slip.");
  item.cautions.emplace_back(
      "Never weld a part that steers a vehicle on the road. The road link is one piece.");
  if (!mock_up.spacing_kept)
    item.cautions.push_back(fmt::format(
        "Plug welds too close: {:.0f} mm over the surface where {:.0f} mm is wanted; use a longer "
        "sleeve.",
        mock_up.hole_distance, mock_up.spacing));
  if (!(mock_up.piece_length > mock_up.overlap))
    item.cautions.emplace_back("Too short for a sleeve: make the mock-up from one tube.");
  return item;
}

std::vector<CutItem> relay_link_items(const Mechanism& mechanism) {
  std::vector<CutItem> items;
  if (!mechanism.steering || !mechanism.project.steering_box) return items;
  const auto& relays = mechanism.project.steering_box->relays;
  for (std::size_t i = 0; i < relays.size() && i < mechanism.steering->relays.size(); ++i) {
    CutItem item;
    item.name = "relay_link." + relays[i].name;
    item.title = "Link to the relay " + relays[i].name;
    item.dimensions.push_back(
        with_note(blank_tolerance(number("ball_to_ball", "ball centre to ball centre",
                                         mechanism.steering->relays[i].link_drawn)),
                  "as drawn: box at its centre, wheels straight"));
    if (relays[i].link_length)
      item.dimensions.push_back(with_note(
          number("given_length", "ball centre to ball centre as given", *relays[i].link_length),
          "the link that is there"));
    item.dimensions.push_back(
        in_words("ends", "ends, threads, tube", "not in the project: take them from the link"));
    items.push_back(std::move(item));
  }
  return items;
}

namespace {

void add_setting(const StopSetting& setting, const char* name, const std::string& words,
                 CutItem& item) {
  item.dimensions.push_back(
      with_note(blank_tolerance(number(name, words, setting.screw_out)),
                fmt::format("{} for {:.1f} deg at the inner wheel; {}",
                            setting.screw_out < 0.0 ? "screw in" : "screw out",
                            degrees_from_radians(setting.wanted_inner_steer),
                            setting.within_adjustment ? "within the bolt's thread"
                                                      : "MORE THAN THE BOLT'S THREAD ALLOWS")));
}

// A stop that already acts first wants no change: how far it may still come in is all there is to
// say.
void add_before_others(const StopSetting& setting, CutItem& item) {
  const char* name = "bolt_before_others";
  const char* words = "bolt length change to act just before all else";
  if (setting.screw_out > 0.0)
    add_setting(setting, name, words, item);
  else
    item.dimensions.push_back(with_note(
        in_words(name, words, fmt::format("none needed; at most {:.1f} mm in", -setting.screw_out)),
        "the stop acts first as it is"));
}

std::optional<CutItem> stop_item(const LockSide& lock) {
  if (!lock.stop) return std::nullopt;
  const char* side = lock.side == Side::left ? "left" : "right";
  CutItem item;
  item.name = std::string("stop.") + side;
  item.title = fmt::format("Stop bolt of the {} lock: {}", side, lock.stop->name);
  item.dimensions.push_back(in_words(
      "knuckle", "bolt on", lock.stop->knuckle == Side::left ? "left knuckle" : "right knuckle"));
  item.dimensions.push_back(
      with_note(blank_tolerance(number("gap_straight", "gap to its pad with the wheels straight",
                                       lock.stop->gap_straight)),
                "before any change below"));
  item.dimensions.push_back(with_note(number("degrees_per_mm", "steer angle for each mm of bolt",
                                             lock.stop->degrees_per_mm, Unit::degree_per_mm, 2),
                                      "at contact"));
  if (lock.wanted) {
    add_setting(*lock.wanted, "bolt_for_wanted_steer", "bolt length change for the wanted steer",
                item);
    if (lock.before_others && lock.wanted->screw_out < lock.before_others->screw_out)
      item.cautions.push_back(
          fmt::format("So set, something else ends the lock before the stop: at least {:.1f} mm "
                      "further out, or "
                      "a smaller steer angle.",
                      lock.before_others->screw_out - lock.wanted->screw_out));
  } else if (lock.before_others) {
    add_before_others(*lock.before_others, item);
  }
  item.notes.emplace_back(
      "The axle stop has to act before box, ball studs and tyres. Lock nut on every stop bolt.");
  if (lock.stop->degrees_per_mm != 0.0 && !lock.stop->inside_pad)
    item.cautions.push_back(
        fmt::format("The bolt meets its pad {:.1f} mm off the middle: outside the pad.",
                    lock.stop->off_centre));
  return item;
}

}  // namespace

std::vector<CutItem> stop_items(const LockResult& locks) {
  std::vector<CutItem> items;
  for (const LockSide* lock : {&locks.left, &locks.right})
    if (auto item = stop_item(*lock)) items.push_back(std::move(*item));
  return items;
}

}  // namespace tackbench
