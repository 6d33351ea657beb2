#include "core/project-file/format_upgrades.h"

#include <array>
#include <nlohmann/json.hpp>

#include "core/project-file/project_file.h"

namespace tackbench {

namespace {

using Json = nlohmann::ordered_json;
using UpgradeStep = void (*)(Json& tree);

Json* object_member(Json& object, const char* key) {
  if (!object.is_object()) return nullptr;
  const auto found = object.find(key);
  return found != object.end() && found->is_object() ? &*found : nullptr;
}

// Keeps an entry of the new name, if somebody wrote both.
void rename_member(Json& object, const char* old_key, const char* new_key) {
  const auto found = object.find(old_key);
  if (found == object.end() || object.contains(new_key)) return;
  Json value = std::move(*found);
  object.erase(found);
  object[new_key] = std::move(value);
}

// Format 0 had one travel for both ways of the box and called a link's real length its length.
void upgrade_0_to_1(Json& tree) {
  if (Json* link = object_member(tree, "drag_link")) {
    rename_member(*link, "length_mm", "given_length_mm");
  }
  if (Json* box = object_member(tree, "steering_box"); box && box->contains("travel_deg")) {
    const Json travel = (*box)["travel_deg"];
    box->erase("travel_deg");
    for (const char* key : {"travel_left_deg", "travel_right_deg"}) {
      if (!box->contains(key)) (*box)[key] = travel;
    }
  }
}

constexpr std::array<UpgradeStep, kFormatVersion> kSteps{upgrade_0_to_1};

}  // namespace

void upgrade_tree(Json& tree, int from_version) {
  for (auto step = static_cast<std::size_t>(from_version); step < kSteps.size(); ++step) {
    kSteps[step](tree);
  }
}

}  // namespace tackbench
