// gaps FILE: how near moving parts come to each other and to what stands, at one setting of the
// controls.
#include "app/command-line/asked_controls.h"
#include "app/command-line/opening.h"
#include "app/command-line/page.h"
#include "core/basics/shown_number.h"
#include "core/clearance/gaps.h"
#include "core/mechanism/solve.h"

namespace tackbench::command_line {

namespace {

const char* const kOnePosition =
    "These are the gaps in this one position. Other positions of wheel, axle and pedals may be "
    "nearer; nothing is judged by them. Tyres stand without growth.";
const char* const kAssumed =
    "~: a size there is not in the file (levers, balls, yokes); it is taken as such parts commonly "
    "are.";

const char* outcome_name_of(GapOutcome outcome) {
  switch (outcome) {
    case GapOutcome::measured:
      return "measured";
    case GapOutcome::deeper_than:
      return "deeper_than";
    case GapOutcome::not_narrowed:
      return "not_narrowed";
    case GapOutcome::nothing_there:
      break;
  }
  return "nothing_there";
}

Json gaps_json(const Mechanism& mechanism, const Controls& controls, const Pose& pose,
               const TruckSolids& solids, const std::vector<PairGap>& list) {
  Json json;
  json["outcome"] = outcome_name(pose.outcome);
  json["outcome_words"] = outcome_words(mechanism, pose);
  json["controls"] = controls_json(mechanism, controls);
  Json pairs = Json::array();
  for (const PairGap& pair : list) {
    pairs.push_back({{"first", solids.parts[pair.first].name},
                     {"second", solids.parts[pair.second].name},
                     {"both_move", pair.both_move},
                     {"gap_mm", json_number(pair.gap.high_mm)},
                     {"gap_low_mm", json_number(pair.gap.low_mm)},
                     {"gap_high_mm", json_number(pair.gap.high_mm)},
                     {"measured", outcome_name_of(pair.gap.outcome)},
                     {"size_assumed", pair.assumed},
                     {"on_first_mm", json_point(pair.gap.on_first)},
                     {"on_second_mm", json_point(pair.gap.on_second)}});
  }
  json["gaps"] = pairs;
  json["left_out"] = solids.left_out;
  json["note"] = kOnePosition;
  return json;
}

std::string gap_text(const PairGap& pair, ShownUnit lengths) {
  const std::string about = pair.assumed ? "~" : "";
  const double gap = pair.gap.high_mm;
  // How deep is known down to the roundings only; plain solids have none.
  constexpr double kWorthSaying = 0.05;
  if (pair.gap.outcome == GapOutcome::deeper_than) {
    if (-gap < kWorthSaying) return "overlaps";
    return "overlaps by more than " + shown(-gap, Unit::millimetre, lengths);
  }
  if (gap < 0.0) return "overlaps by " + about + shown(-gap, Unit::millimetre, lengths);
  return about + shown(gap, Unit::millimetre, lengths);
}

std::string gaps_text(const Mechanism& mechanism, const Pose& pose, const TruckSolids& solids,
                      const std::vector<PairGap>& list) {
  const auto& sheet = mechanism.project.sheet;
  const ShownUnit lengths = sheet ? sheet->unit : ShownUnit::millimetre;
  std::string text =
      mechanism.project.name + "\n" + wrapped_text(outcome_words(mechanism, pose), 0, 0) + "\n\n";
  std::vector<std::vector<std::string>> rows{{"moving", "against", "gap in this position"}};
  bool assumed = false;
  for (const PairGap& pair : list) {
    rows.push_back(
        {solids.parts[pair.first].name, solids.parts[pair.second].name, gap_text(pair, lengths)});
    assumed |= pair.assumed;
  }
  text += list.empty() ? std::string("no pair is so near in this position\n") : table_text(rows);
  text += '\n' + wrapped_text(kOnePosition, 0, 0) + '\n';
  if (assumed) text += wrapped_text(kAssumed, 0, 3) + '\n';
  for (const std::string& why : solids.left_out)
    text += wrapped_text("Not in it: " + why, 0, 2) + '\n';
  return text;
}

}  // namespace

int gaps_command(const Opening& opening, const PoseSettings& settings, double within_mm) {
  const Result<Mechanism> mechanism = open_mechanism(opening);
  if (!mechanism) return refuse(mechanism.problems(), opening.json);
  const Result<Controls> controls = asked_controls(*mechanism, settings);
  if (!controls) return refuse(controls.problems(), opening.json);
  const Pose pose = solved_pose(*mechanism, *controls);
  const auto solids = truck_solids(*mechanism);
  GapsAsked asked;
  asked.within_mm = within_mm;
  const std::vector<PairGap> list = gaps(*solids, *mechanism, pose, asked);
  print(opening.json ? gaps_json(*mechanism, *controls, pose, *solids, list).dump(2) + "\n"
                     : gaps_text(*mechanism, pose, *solids, list));
  return kDone;
}

}  // namespace tackbench::command_line
