#include "ui/graphs/graph_choice.h"

#include <QCoreApplication>
#include <algorithm>
#include <cmath>

namespace tackbench::ui {

namespace {

constexpr int kPlaces = 81;

struct Texts {
  Q_DECLARE_TR_FUNCTIONS(Graphs)
};

const PedalLinkage* pedal_of(const GraphChoice& choice, const Mechanism& mechanism) {
  const auto index = static_cast<std::size_t>(choice.pedal);
  return index < mechanism.pedals.size() ? &mechanism.pedals[index] : nullptr;
}

}  // namespace

std::vector<Meaning> graph_meanings() {
  return {
      {Texts::tr(QT_TRANSLATE_NOOP("Graphs", "Wheel angles over the hand wheel")),
       Texts::tr(QT_TRANSLATE_NOOP(
           "Graphs",
           "Steer of both wheels as the hand wheel turns from lock to lock, the axle at ride "
           "height. The dotted line is where the outer wheel would roll without scrubbing, by "
           "Ackermann. An uneven pair of locks shows at the ends."))},
      {Texts::tr(QT_TRANSLATE_NOOP("Graphs", "Bump steer")),
       Texts::tr(
           QT_TRANSLATE_NOOP("Graphs",
                             "Steer that nobody asked for as both wheels go from droop to bump "
                             "with the hand wheel held straight. A level line is best."))},
      {Texts::tr(QT_TRANSLATE_NOOP("Graphs", "Roll steer")),
       Texts::tr(
           QT_TRANSLATE_NOOP("Graphs",
                             "Steer that nobody asked for as the axle rolls, left wheel up, with "
                             "the hand wheel held straight. A level line is best."))},
      {Texts::tr(QT_TRANSLATE_NOOP("Graphs", "Shaft ratio over a turn")),
       Texts::tr(
           QT_TRANSLATE_NOOP("Graphs",
                             "Speed of the box input over that of the hand wheel through one "
                             "turn, the cab in its drawn place. 1.00 all along is smooth; waves "
                             "are the ripple of bent joints."))},
      {Texts::tr(QT_TRANSLATE_NOOP("Graphs", "Effective angles over the hand wheel")),
       Texts::tr(
           QT_TRANSLATE_NOOP("Graphs",
                             "Angle between each link and the lever that it pushes, from lock to "
                             "lock at ride height. 90 degrees is best, 0 is toggle."))},
      {Texts::tr(QT_TRANSLATE_NOOP("Graphs", "Pedal ratio: %1")),
       Texts::tr(
           QT_TRANSLATE_NOOP("Graphs",
                             "Pad travel over rod travel from rest to the pedal's stop: how many "
                             "times the foot's force reaches the rod."))},
  };
}

QString graph_meaning(GraphKind kind) {
  const std::vector<Meaning> all = graph_meanings();
  switch (kind) {
    case GraphKind::wheel_angles:
      return all[0].meaning;
    case GraphKind::bump_steer:
      return all[1].meaning;
    case GraphKind::roll_steer:
      return all[2].meaning;
    case GraphKind::shaft_ratio:
      return all[3].meaning;
    case GraphKind::effective_angles:
      return all[4].meaning;
    case GraphKind::pedal_ratio:
      break;
  }
  return all[5].meaning;
}

std::vector<GraphChoice> graph_choices(const Mechanism& mechanism) {
  std::vector<GraphChoice> choices{{GraphKind::wheel_angles},
                                   {GraphKind::bump_steer},
                                   {GraphKind::roll_steer},
                                   {GraphKind::shaft_ratio},
                                   {GraphKind::effective_angles}};
  for (std::size_t i = 0; i < mechanism.pedals.size(); ++i)
    if (mechanism.pedals[i].has_rod)
      choices.push_back({GraphKind::pedal_ratio, static_cast<int>(i)});
  return choices;
}

GraphWords graph_words(const GraphChoice& choice, const Mechanism& mechanism) {
  const GraphAxis hand_wheel{Texts::tr(QT_TRANSLATE_NOOP("Graphs", "hand wheel, left positive")),
                             Unit::turn};
  const GraphAxis change{Texts::tr(QT_TRANSLATE_NOOP("Graphs", "steer by itself, left positive")),
                         Unit::degree};
  const QString ride_height = Texts::tr(QT_TRANSLATE_NOOP("Graphs", "curves at ride height"));
  const QString straight = Texts::tr(QT_TRANSLATE_NOOP("Graphs", "hand wheel held straight"));
  switch (choice.kind) {
    case GraphKind::wheel_angles:
      return {Texts::tr(QT_TRANSLATE_NOOP("Graphs", "Wheel angles over the hand wheel")),
              hand_wheel,
              {Texts::tr(QT_TRANSLATE_NOOP("Graphs", "steer, left positive")), Unit::degree},
              ride_height};
    case GraphKind::bump_steer:
      return {Texts::tr(QT_TRANSLATE_NOOP("Graphs", "Bump steer")),
              {Texts::tr(QT_TRANSLATE_NOOP("Graphs", "bump of both wheels")), Unit::millimetre},
              change,
              straight};
    case GraphKind::roll_steer:
      return {Texts::tr(QT_TRANSLATE_NOOP("Graphs", "Roll steer")),
              {Texts::tr(QT_TRANSLATE_NOOP("Graphs", "roll, left wheel up")), Unit::degree},
              change,
              straight};
    case GraphKind::shaft_ratio:
      return {Texts::tr(QT_TRANSLATE_NOOP("Graphs", "Shaft ratio over a turn")),
              {Texts::tr(QT_TRANSLATE_NOOP("Graphs", "hand wheel, left positive")), Unit::degree},
              {Texts::tr(QT_TRANSLATE_NOOP("Graphs", "box input per hand wheel")), Unit::number},
              Texts::tr(QT_TRANSLATE_NOOP("Graphs", "cab in its drawn place"))};
    case GraphKind::pedal_ratio: {
      const PedalLinkage* linkage = pedal_of(choice, mechanism);
      const QString name =
          linkage != nullptr ? QString::fromStdString(linkage->pedal.name) : QString();
      return {Texts::tr(QT_TRANSLATE_NOOP("Graphs", "Pedal ratio: %1")).arg(name),
              {Texts::tr(QT_TRANSLATE_NOOP("Graphs", "pedal from rest")), Unit::degree},
              {Texts::tr(QT_TRANSLATE_NOOP("Graphs", "pad travel per rod travel")), Unit::number},
              {}};
    }
    case GraphKind::effective_angles:
      return {Texts::tr(QT_TRANSLATE_NOOP("Graphs", "Effective angles over the hand wheel")),
              hand_wheel,
              {Texts::tr(QT_TRANSLATE_NOOP("Graphs", "link to lever, 90 is best")), Unit::degree},
              ride_height};
  }
  return {};
}

std::vector<Curve> graph_curves(const GraphChoice& choice, const Mechanism& mechanism,
                                const ControlReach& reach) {
  switch (choice.kind) {
    case GraphKind::wheel_angles:
      return wheel_angle_curves(mechanism, reach, kPlaces);
    case GraphKind::bump_steer:
      return bump_steer_curves(mechanism, reach, kPlaces);
    case GraphKind::roll_steer:
      return roll_steer_curves(mechanism, reach, kPlaces);
    case GraphKind::shaft_ratio:
      return shaft_ratio_curves(mechanism, kPlaces);
    case GraphKind::pedal_ratio:
      return pedal_ratio_curves(mechanism, choice.pedal, kPlaces);
    case GraphKind::effective_angles:
      return effective_angle_curves(mechanism, reach, kPlaces);
  }
  return {};
}

double place_of(const GraphChoice& choice, const Mechanism& mechanism, const Controls& controls) {
  switch (choice.kind) {
    case GraphKind::wheel_angles:
    case GraphKind::effective_angles:
      return controls.hand_wheel;
    case GraphKind::shaft_ratio:  // every turn is the same
      return std::remainder(controls.hand_wheel, kRadiansPerTurn);
    case GraphKind::bump_steer:
      return 0.5 * (controls.bump_left + controls.bump_right);
    case GraphKind::roll_steer: {
      if (!mechanism.suspension) return 0.0;
      const double rise = 0.5 * (controls.bump_left - controls.bump_right);
      return std::asin(std::clamp(rise / mechanism.suspension->half_track, -1.0, 1.0));
    }
    case GraphKind::pedal_ratio: {
      const PedalLinkage* linkage = pedal_of(choice, mechanism);
      if (linkage == nullptr) return 0.0;
      return controls.pedals[static_cast<std::size_t>(choice.pedal)] * linkage->pedal.full_travel;
    }
  }
  return 0.0;
}

Controls set_to_place(const GraphChoice& choice, const Mechanism& mechanism,
                      const ControlReach& reach, Controls controls, double place) {
  switch (choice.kind) {
    case GraphKind::wheel_angles:
    case GraphKind::effective_angles:
    case GraphKind::shaft_ratio:
      controls.hand_wheel = place;
      break;
    case GraphKind::bump_steer:
      controls.axle_pose.reset();
      controls.bump_left = controls.bump_right = place;
      break;
    case GraphKind::roll_steer:
      controls = rolled(mechanism, controls, place);
      break;
    case GraphKind::pedal_ratio: {
      const PedalLinkage* linkage = pedal_of(choice, mechanism);
      if (linkage != nullptr && linkage->pedal.full_travel > 0.0)
        controls.pedals[static_cast<std::size_t>(choice.pedal)] =
            place / linkage->pedal.full_travel;
      break;
    }
  }
  return held_within(reach, controls);
}

double axis_number(double inside, Unit unit, ShownUnit lengths) {
  const double shown = shown_from_inside(unit, inside);
  return unit == Unit::millimetre && lengths != ShownUnit::millimetre ? shown / kMillimetresPerInch
                                                                      : shown;
}

double inside_number(double shown, Unit unit, ShownUnit lengths) {
  return inside_from_shown(unit, unit == Unit::millimetre && lengths != ShownUnit::millimetre
                                     ? shown * kMillimetresPerInch
                                     : shown);
}

QString axis_title(const GraphAxis& axis, ShownUnit lengths) {
  const QString unit = axis.unit == Unit::turn
                           ? Texts::tr(QT_TRANSLATE_NOOP("Graphs", "turns"))
                           : QString::fromStdString(unit_words(axis.unit, lengths));
  return unit.isEmpty() ? axis.words : axis.words + " (" + unit + ")";
}

}  // namespace tackbench::ui
