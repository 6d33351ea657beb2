#include "app/command-line/asked_controls.h"

#include "core/project/choice_words.h"

namespace tackbench::command_line {

std::string pedal_use(PedalUse use) {
  return std::string(words_of(use)[static_cast<std::size_t>(use)]);
}

Result<Controls> asked_controls(const Mechanism& mechanism, const PoseSettings& settings) {
  Controls controls = settings.controls;
  for (const PedalPress& press : settings.presses) {
    bool found = false;
    std::string known;
    for (std::size_t i = 0; i < mechanism.pedals.size(); ++i) {
      const Pedal& pedal = mechanism.pedals[i].pedal;
      known += (known.empty() ? "" : ", ") + pedal.name;
      if (pedal.name != press.name && pedal_use(pedal.use) != press.name) continue;
      controls.pedals[i] = press.fraction;
      found = true;
    }
    if (!found) {
      return Problem{"--pedal", press.name, "the project has no such pedal",
                     known.empty() ? "it has no pedals" : "give one of: " + known};
    }
  }
  return controls;
}

Json controls_json(const Mechanism& mechanism, const Controls& controls) {
  Json json;
  json["hand_wheel_deg"] = json_degrees(controls.hand_wheel);
  json["bump_left_mm"] = json_number(controls.bump_left);
  json["bump_right_mm"] = json_number(controls.bump_right);
  json["wind_up_deg"] = json_degrees(controls.wind_up);
  json["cab_shake_mm"] = json_point(controls.cab_shake);
  Json pedals = Json::object();
  for (std::size_t i = 0; i < mechanism.pedals.size(); ++i) {
    pedals[mechanism.pedals[i].pedal.name] = json_number(controls.pedals[i]);
  }
  json["pedals"] = pedals;
  return json;
}

}  // namespace tackbench::command_line
