#include <fmt/core.h>

#include <algorithm>
#include <cmath>

#include "core/fabrication/cut_items.h"
#include "core/fabrication/dimension_makers.h"

namespace tackbench {

namespace {

constexpr double kThinSleeve = 1.0;  // mm of wall, common practice

const char* slip_words(SlipKind kind) {
  switch (kind) {
    case SlipKind::none:
      return "none";
    case SlipKind::spline:
      return "spline";
    case SlipKind::double_d:
      return "double-D";
    case SlipKind::tube:
      return "round tube";
  }
  return "none";
}

std::string section_words(const ShaftSection& section) {
  switch (section.kind) {
    case SectionKind::round:
      return fmt::format("round {:g}", section.diameter);
    case SectionKind::spline:
      return section.teeth ? fmt::format("spline {:g}, {} teeth", section.diameter, *section.teeth)
                           : fmt::format("spline {:g}, teeth not given", section.diameter);
    case SectionKind::double_d:
      return section.across_flats
                 ? fmt::format("double-D {:g}, {:g} across flats", section.diameter,
                               *section.across_flats)
                 : fmt::format("double-D {:g}, across flats not given", section.diameter);
  }
  return "";
}

// "shaft.lower"; a shaft without a name goes by its place, counted from the hand wheel.
std::string named(const char* kind, const std::string& name, std::size_t index) {
  return std::string(kind) + "." + (name.empty() ? std::to_string(index + 1) : name);
}

std::string joint_words(const ShaftLineStation& station, std::size_t index) {
  if (index >= station.joints.size()) return "";
  const std::string& name = station.joints[index].name;
  return name.empty() ? fmt::format("joint {}", index + 1) : name;
}

std::string clocking_steps(const ShaftClocking& clocking) {
  switch (clocking.by) {
    case ClockingBy::any:
      return "round section: any angle";
    case ClockingBy::teeth:
      return fmt::format("splines: steps of {:.2f} deg", degrees_from_radians(clocking.step));
    case ClockingBy::makers_cut:
      return "double-D: half turns only, and however its maker cut it";
    case ClockingBy::not_known:
      return "tooth count not given";
  }
  return "";
}

void add_clocking(const ShaftClocking& clocking, const ClockingResult& all, CutItem& item) {
  const auto way = [](double angle) {
    if (std::abs(angle) < radians_from_degrees(0.05)) return std::string("forks aligned");
    return std::string(angle < 0.0 ? "anticlockwise" : "clockwise") +
           ", seen from the hand wheel, hand-side pin to road-side pin";
  };
  const auto offset = [&](const char* name, const char* words, double angle) {
    return with_note(number(name, words, std::abs(angle), Unit::degree), way(angle));
  };
  item.dimensions.push_back(offset("fork_offset_drawn", "fork offset as drawn", clocking.as_drawn));
  if (!all.matters || !clocking.matters) {
    item.notes.emplace_back("Its clocking does not matter: there is no speed ripple to cancel.");
    return;
  }
  item.dimensions.push_back(offset("fork_offset_ideal", "fork offset, ideal", clocking.ideal));
  item.dimensions.push_back(offset(
      "fork_offset_nearest", "clocking mark: fork offset, nearest possible", clocking.nearest));
  item.dimensions.back().note += "; " + clocking_steps(clocking);
  if (!all.closed_form)
    item.dimensions.back().note +=
        "; goes with the other shafts' marks: together they ripple least, so one alone may lie far "
        "from its ideal";
  // With several shafts another set of offsets may do as well as the ideal one, so what remains is
  // told by the ripple, not by the difference of angles.
  item.dimensions.push_back(
      with_note(number("ripple_remaining", "speed ripple of the line that remains",
                       all.ripple_nearest, Unit::percent),
                fmt::format("all shafts at their marks; ideal {:.1f} %, as drawn {:.1f} %",
                            100.0 * all.ripple_ideal, 100.0 * all.ripple_as_drawn)));
}

void add_slip(const Shaft& shaft, const ShaftLengthResult& length, const ShaftCheck& check,
              CutItem& item) {
  item.dimensions.push_back(in_words("slip", "slips by", slip_words(shaft.slip)));
  if (!shaft.engagement) {
    item.dimensions.push_back(
        in_words("engagement", "overlap of the halves", "blank: not given, measure it in"));
    item.notes.emplace_back(
        "Two halves: cut length is over both put together. Split it when the overlap is known.");
  } else {
    item.dimensions.push_back(with_note(
        blank_tolerance(number("engagement", "overlap of the halves as drawn", *shaft.engagement)),
        "keeps the halves in line"));
    item.dimensions.push_back(
        with_note(blank_tolerance(number("both_halves", "lengths of both halves added together",
                                         length.both_pieces)),
                  "split to suit the support and the slide; each half grips its own yoke"));
  }
  for (const SlipResult& slip : check.slips) {
    if (slip.shaft != length.shaft) continue;
    item.dimensions.push_back(
        with_note(number("engagement_wanted", "overlap wanted at least", slip.wanted_engagement),
                  slip.wanted_is_common_practice ? "1.5 diameters, common practice" : "as given"));
    if (slip.least_engagement)
      item.dimensions.push_back(
          with_note(number("engagement_least", "least overlap there is", *slip.least_engagement),
                    "over all the cab's shake"));
    if (slip.least_engagement && *slip.least_engagement < slip.wanted_engagement)
      item.cautions.push_back(
          fmt::format("Overlap of the slip: {:.1f} mm at its least where "
                      "{:.1f} mm is wanted.",
                      *slip.least_engagement, slip.wanted_engagement));
  }
}

CutItem shaft_item(const ShaftLineStation& station, const ShaftCheck& check,
                   const ShaftLengthResult& length) {
  const auto index = static_cast<std::size_t>(length.shaft);
  const Shaft& shaft = station.shafts[index];
  const ShaftJoint& hand = station.joints[index];
  const ShaftJoint& road = station.joints[index + 1];
  CutItem item;
  item.name = named("shaft", shaft.name, index);
  item.title =
      fmt::format("Shaft {}, {} to {}", shaft.name.empty() ? std::to_string(index + 1) : shaft.name,
                  joint_words(station, index), joint_words(station, index + 1));
  auto& list = item.dimensions;
  list.push_back(blank_tolerance(
      number("centre_to_centre", "joint centre to joint centre", length.centre_to_centre)));
  list.push_back(with_note(
      blank_tolerance(
          number("cut_length",
                 shaft.slip == SlipKind::none ? "cut length" : "length over both halves as drawn",
                 length.cut_length)),
      fmt::format("{:.1f} - {:.1f} - {:.1f}: less the yoke depths", length.centre_to_centre,
                  hand.yoke_depth, road.yoke_depth)));
  list.push_back(with_note(number("grip_hand", "inside the yoke at its hand end", hand.grip_length),
                           "full grip; pinch bolt positively locked"));
  list.push_back(number("grip_road", "inside the yoke at its road end", road.grip_length));
  list.push_back(in_words("section", "section in the yokes", section_words(shaft.section)));
  list.push_back(number("outside_diameter", "outside diameter, plain length",
                        shaft.outside_diameter, Unit::millimetre, 2));
  if (shaft.inside_diameter > 0.0)
    list.push_back(
        number("inside_diameter", "inside diameter", shaft.inside_diameter, Unit::millimetre, 2));
  if (shaft.slip != SlipKind::none) add_slip(shaft, length, check, item);
  for (const ShaftClocking& clocking : check.clocking.shafts)
    if (clocking.shaft == length.shaft) add_clocking(clocking, check.clocking, item);
  list.push_back(in_words("material", "material", "blank: as the certified yokes want it"));
  if (length.cut_length < length.grips)
    item.cautions.push_back(fmt::format("Too short: {:.1f} mm cut where both yokes grip {:.1f} mm.",
                                        length.cut_length, length.grips));
  item.notes.emplace_back("Centre-mark the clocking on shaft and both yokes before taking apart.");
  return item;
}

CutItem support_item(const ShaftSupport& support, const SupportResult& result) {
  const auto index = static_cast<std::size_t>(result.support);
  const char* frame = support.rides_on == RidesOn::cab ? "cab" : "chassis";
  CutItem item;
  item.name = named("support", support.name, index);
  item.title = "Shaft support " + (support.name.empty() ? std::to_string(index + 1) : support.name);
  auto& list = item.dimensions;
  list.push_back(in_words("kind", "bearing",
                          support.kind == SupportKind::rod_end         ? "rod end"
                          : support.kind == SupportKind::self_aligning ? "self-aligning unit"
                                                                       : "bearing block"));
  list.push_back(in_words("collar", "collar on the shaft", support.collar ? "yes" : "no"));
  const char* const axes[] = {"X, forward", "Y, left", "Z, up"};
  const char* const names[] = {"eye_x", "eye_y", "eye_z"};
  for (int axis = 0; axis < 3; ++axis)
    list.push_back(blank_tolerance(number(
        names[axis], fmt::format("eye centre, {} {}", frame, axes[axis]), support.eye[axis])));
  list.push_back(with_note(
      blank_tolerance(
          number("height_above_base", "eye above its bracket's foot", result.height_above_base)),
      fmt::format("foot at {} {:.1f}, {:.1f}, {:.1f}", frame, support.base.x(), support.base.y(),
                  support.base.z())));
  list.push_back(with_note(
      number("to_hand_joint", "eye to the joint towards the hand wheel", result.to_hand_cross),
      "along the shaft"));
  list.push_back(number("to_road_joint", "eye to the joint towards the box", result.to_road_cross));
  list.push_back(number("eye_bore", "eye bore", support.bore, Unit::millimetre, 2));
  if (result.sleeve_length > 0.0) {
    const auto cut = [](CutDimension made) {
      return plus_minus(made, general_tolerance(*made.value));
    };
    list.push_back(with_note(
        number("sleeve_bore", "spacer sleeve, bore", result.sleeve_bore, Unit::millimetre, 2),
        "slides on the shaft by hand, no shake"));
    list.push_back(with_note(number("sleeve_outside_diameter", "spacer sleeve, outside diameter",
                                    result.sleeve_outside, Unit::millimetre, 2),
                             "slides in the eye by hand, no shake"));
    list.push_back(cut(number("sleeve_length", "spacer sleeve, length", result.sleeve_length)));
    const double wall = 0.5 * (result.sleeve_outside - result.sleeve_bore);
    if (wall < kThinSleeve)
      item.cautions.push_back(
          fmt::format("The sleeve's wall of {:.2f} mm is too thin to turn and to last (common "
                      "practice: {:g} at "
                      "least): choose an eye of another bore.",
                      wall, kThinSleeve));
  } else {
    item.notes.emplace_back("No sleeve: the shaft fills the eye.");
  }
  if (support.kind == SupportKind::rod_end)
    item.notes.emplace_back(
        "Large retaining washers so that a failed eye cannot let go; lock nut.");
  item.notes.emplace_back("Stiffness of bracket and rail is not checked.");
  return item;
}

}  // namespace

std::vector<CutItem> shaft_items(const ShaftLineStation& station, const ShaftCheck& check) {
  std::vector<CutItem> items;
  for (const ShaftLengthResult& length : check.lengths) {
    const auto index = static_cast<std::size_t>(length.shaft);
    if (length.shaft >= 0 && index < station.shafts.size() && index + 1 < station.joints.size())
      items.push_back(shaft_item(station, check, length));
  }
  return items;
}

std::vector<CutItem> support_items(const ShaftLineStation& station, const ShaftCheck& check) {
  std::vector<CutItem> items;
  for (const SupportResult& result : check.supports) {
    const auto index = static_cast<std::size_t>(result.support);
    if (index >= station.supports.size()) continue;
    const ShaftSupport& support = station.supports[index];
    if (support.shaft >= 0 && static_cast<std::size_t>(support.shaft) < station.shafts.size())
      items.push_back(support_item(support, result));
  }
  return items;
}

}  // namespace tackbench
