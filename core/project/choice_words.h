// The words that stand for choices in files, commands and on screens, in the order of the enums.
#pragma once

#include <array>
#include <span>
#include <string_view>

#include "core/project/project.h"

namespace tackbench {

using ChoiceWords = std::span<const std::string_view>;

namespace choice_words {
using std::string_view;
inline constexpr std::array<string_view, 2> kSide{"left", "right"};
inline constexpr std::array<string_view, 5> kRidesOn{"chassis", "cab", "axle", "left_knuckle",
                                                     "right_knuckle"};
inline constexpr std::array<string_view, 2> kThreadHand{"right", "left"};
inline constexpr std::array<string_view, 3> kSection{"round", "spline", "double_d"};
inline constexpr std::array<string_view, 2> kColumnBearing{"bush", "ball"};
inline constexpr std::array<string_view, 4> kJoint{"universal", "double_joint", "double_centred",
                                                   "coupling_disc"};
inline constexpr std::array<string_view, 4> kSlip{"none", "spline", "double_d", "tube"};
inline constexpr std::array<string_view, 3> kSupport{"rod_end", "self_aligning", "bearing_block"};
inline constexpr std::array<string_view, 2> kTurnSense{"clockwise", "anticlockwise"};
inline constexpr std::array<string_view, 2> kLinkEnd{"ball_stud", "rod_end"};
inline constexpr std::array<string_view, 3> kSuspension{"leaf", "radius_arms", "straight"};
inline constexpr std::array<string_view, 3> kPedalUse{"brake", "clutch", "accelerator"};
inline constexpr std::array<string_view, 5> kShape{"box", "tube", "cylinder", "plate", "mesh"};
inline constexpr std::array<string_view, 3> kShownUnit{"millimetre", "inch_decimal",
                                                       "inch_fraction"};
inline constexpr std::array<string_view, 2> kProjection{"first_angle", "third_angle"};
inline constexpr std::array<string_view, 3> kSheetView{"side", "front", "plan"};
inline constexpr std::array<string_view, 6> kStanding{
    "read", "computed", "memory", "common_practice", "maker", "builder"};
}  // namespace choice_words

constexpr ChoiceWords words_of(Side) {
  return choice_words::kSide;
}
constexpr ChoiceWords words_of(RidesOn) {
  return choice_words::kRidesOn;
}
constexpr ChoiceWords words_of(ThreadHand) {
  return choice_words::kThreadHand;
}
constexpr ChoiceWords words_of(SectionKind) {
  return choice_words::kSection;
}
constexpr ChoiceWords words_of(ColumnBearingKind) {
  return choice_words::kColumnBearing;
}
constexpr ChoiceWords words_of(JointKind) {
  return choice_words::kJoint;
}
constexpr ChoiceWords words_of(SlipKind) {
  return choice_words::kSlip;
}
constexpr ChoiceWords words_of(SupportKind) {
  return choice_words::kSupport;
}
constexpr ChoiceWords words_of(TurnSense) {
  return choice_words::kTurnSense;
}
constexpr ChoiceWords words_of(LinkEndKind) {
  return choice_words::kLinkEnd;
}
constexpr ChoiceWords words_of(SuspensionKind) {
  return choice_words::kSuspension;
}
constexpr ChoiceWords words_of(PedalUse) {
  return choice_words::kPedalUse;
}
constexpr ChoiceWords words_of(ShapeKind) {
  return choice_words::kShape;
}
constexpr ChoiceWords words_of(ShownUnit) {
  return choice_words::kShownUnit;
}
constexpr ChoiceWords words_of(Projection) {
  return choice_words::kProjection;
}
constexpr ChoiceWords words_of(SheetView) {
  return choice_words::kSheetView;
}
constexpr ChoiceWords words_of(Standing) {
  return choice_words::kStanding;
}

// The word of one choice: word(Side::left) is "left".
template <class Choice>
constexpr std::string_view word(Choice choice) {
  return words_of(choice)[static_cast<std::size_t>(choice)];
}

}  // namespace tackbench
