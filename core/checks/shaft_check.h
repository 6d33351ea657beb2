// Shaft check: angles, ripple, clocking, lengths, engagement, insertion and secondary couples of
// the shaft line, as drawn and over the cab's shake. Numbers only; verdicts are the findings' work.
//
// "Over the shake" = the drawn place and the corners and the edge and face middles of the box that
// ShaftLine::shake spans (26, fewer when it shakes in fewer directions).
#pragma once

#include <optional>
#include <vector>

#include "core/checks/shaft_clocking.h"
#include "core/checks/shaft_couples.h"
#include "core/checks/shaft_ripple.h"
#include "core/mechanism/shaft_line.h"

namespace tackbench {

// One joint of the project. A double joint that is not centred counts the sum of its two crosses.
struct JointAngleResult {
  int joint = 0;
  double as_drawn = 0.0;               // rad
  double worst = 0.0;                  // over the shake, rad
  Vec3 worst_shake_mm = Vec3::Zero();  // cab shake there
  std::optional<double> limit;         // from the maker, rad
  bool held = true;                    // false: free to wander, angles are the drawn ones
};

// A shaft between two joints, or the end of the column or box in its yoke.
struct ShaftLengthResult {
  int shaft = 0;
  double centre_to_centre = 0.0;  // of the crosses next to it, mm
  double cut_length = 0.0;   // less both yoke depths: of the bar or tube, or, for a slip shaft,
                             // of both halves put together as drawn, mm
  double both_pieces = 0.0;  // slip: sum of the halves' lengths = cut length + engagement, mm
  double grips = 0.0;        // length inside both yokes' bores, mm; cut_length must exceed it
};

// Slip of one shaft over the shake. Positive change = longer.
struct SlipResult {
  int shaft = 0;
  SlipKind kind = SlipKind::none;
  double diameter = 0.0;         // that the engagement is judged by, mm
  double longest_change = 0.0;   // mm, 0 or more
  double shortest_change = 0.0;  // mm, 0 or less
  Vec3 longest_shake_mm = Vec3::Zero();
  Vec3 shortest_shake_mm = Vec3::Zero();
  std::optional<double> engagement;        // as drawn, mm
  std::optional<double> least_engagement;  // over the shake, mm
  double wanted_engagement = 0.0;          // the project's, else 1.5 diameters
  bool wanted_is_common_practice = false;  // 1.5 diameters
  std::optional<double> least_slide_in;    // how far it can still close at worst, mm
};

// End of the column or of the box input in the yoke of the joint next to it.
struct EndInYoke {
  bool at_box = false;
  int joint = 0;
  double distance = 0.0;  // end face to the cross's centre along the shaft, mm
  double clear = 0.0;     // distance less the yoke's depth, mm; negative: it enters the cross
  double gripped = 0.0;   // length inside the yoke's bore, mm, 0 to the grip length
  double grip_length = 0.0;
  double off_axis = 0.0;  // how far the joint's centre is drawn beside the shaft's axis, mm
};

// Tilt of a shaft in its support against the drawn line, over the shake.
struct SupportResult {
  int support = 0;
  double worst_tilt = 0.0;  // rad
  Vec3 worst_shake_mm = Vec3::Zero();
  std::optional<double> swing_limit;  // rad
  double off_line = 0.0;              // eye drawn beside the shaft's line, mm
  double height_above_base = 0.0;     // eye from its bracket's foot, mm
  double sleeve_bore = 0.0;           // spacer sleeve when the shaft is smaller than the eye,
  double sleeve_outside = 0.0;        // mm; all 0 when none is wanted
  double sleeve_length = 0.0;
  double to_hand_cross = 0.0;  // eye to the crosses of its shaft along the line, mm
  double to_road_cross = 0.0;
};

// Where the line cannot follow when the cab shakes.
struct ShakeMisfit {
  int places = 0;      // that do not close
  int folds = 0;       // of them, where a joint would have to bend to a right angle or more
  double worst = 0.0;  // mm that is missing
  Vec3 worst_shake_mm = Vec3::Zero();
};

struct ShaftCheck {
  std::vector<JointAngleResult> joints;
  LineRipple ripple;
  ClockingResult clocking;
  std::vector<ShaftLengthResult> lengths;
  std::vector<SlipResult> slips;
  std::vector<EndInYoke> ends;  // column's, then box's; empty without joints
  std::vector<SupportResult> supports;
  ShakeMisfit misfit;
  CouplesResult couples;
  double box_turn_by_shake = 0.0;  // greatest turn of the box input over the shake with the
                                   // hand wheel held straight, rad
};

// Empty without joints.
std::vector<EndInYoke> ends_in_yokes(const ShaftLine& line);

// `torque`: assumed in the column, N mm; without it couples and loads come for 1 N mm.
ShaftCheck shaft_check(const ShaftLine& line, std::optional<double> torque = std::nullopt);

}  // namespace tackbench
