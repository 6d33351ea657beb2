#include "core/findings/finding_words.h"

#include <algorithm>
#include <array>
#include <optional>

#include "core/basics/wording.h"
#include "core/findings/limits.h"
#include "core/project/field_path.h"

namespace tackbench {

namespace {

constexpr std::array kUnits{"_mm", "_deg", "_n", "_kg"};
constexpr std::array kRoots{"cab",       "column",       "shaft_line", "steering_box",
                            "drag_link", "front_axle",   "pedals",     "driver",
                            "shapes",    "measurements", "limits",     "sheet"};

std::vector<std::string_view> parts_of(std::string_view name) {
  std::vector<std::string_view> parts;
  for (;;) {
    const std::size_t dot = name.find('.');
    parts.push_back(name.substr(0, dot));
    if (dot == std::string_view::npos) return parts;
    name.remove_prefix(dot + 1);
  }
}

std::string spaced(std::string_view text) {
  std::string words(text);
  std::replace(words.begin(), words.end(), '_', ' ');
  return words;
}

// What stands for the kind's *; empty text for a kind without one, nothing when it is another kind.
std::optional<std::string> item_of(std::string_view name, std::string_view kind) {
  const std::vector<std::string_view> parts = parts_of(name);
  const std::vector<std::string_view> wanted = parts_of(kind);
  const bool open = wanted.back() == "*";
  if (parts.size() < wanted.size() || (!open && parts.size() > wanted.size())) return std::nullopt;
  std::string item;
  for (std::size_t i = 0; i < wanted.size(); ++i) {
    if (wanted[i] != "*") {
      if (wanted[i] != parts[i]) return std::nullopt;
      continue;
    }
    item = parts[i] == "*" ? "..." : spaced(parts[i]);
    if (i + 1 == wanted.size())
      for (std::size_t k = i + 1; k < parts.size(); ++k) item += ", " + spaced(parts[k]);
  }
  return item;
}

// "swing_limit_deg" as "swing limit"; nothing for what is no member with a unit.
std::optional<std::string> bare_member(std::string_view token) {
  for (const std::string_view unit : kUnits)
    if (token.size() > unit.size() && token.ends_with(unit))
      return spaced(token.substr(0, token.size() - unit.size()));
  return std::nullopt;
}

// A path that this project has not got yet: "drag_link.tube.wall_mm" as "drag link, tube, wall".
std::optional<std::string> absent_member(std::string_view path) {
  std::string words;
  for (std::string_view part : parts_of(path)) {
    part = part.substr(0, part.find('['));
    if (words.empty() && std::find(kRoots.begin(), kRoots.end(), part) == kRoots.end())
      return std::nullopt;
    words += (words.empty() ? "" : ", ") + bare_member(part).value_or(spaced(part));
  }
  return words;
}

std::optional<std::string> limit_title(std::string_view name) {
  for (const ShippedLimit& each : shipped_limits())
    if (each.limit.name == name) return each.about.substr(0, each.about.find(':'));
  return std::nullopt;
}

std::optional<std::string> words_for(const Project& project, std::string_view token) {
  if (token.find('.') == std::string_view::npos) return bare_member(token);
  if (const Result<std::string> words = field_words(project, token); words.ok()) return *words;
  if (const FindingWords words = finding_words(token); !words.title.empty()) return words.title;
  if (auto words = limit_title(token)) return words;
  return absent_member(token);
}

bool is_name_letter(char c) {
  return (c >= 'a' && c <= 'z') || (c >= '0' && c <= '9') || c == '_' || c == '.' || c == '[' ||
         c == ']';
}

}  // namespace

const std::vector<std::string_view>& finding_kinds() {
  static const std::vector<std::string_view> kinds{
      "steering.direction",
      "shaft.wander",
      "shaft.over_held",
      "shaft.support.*.play",
      "shaft.support.*.off_line",
      "shaft.support.*.swing",
      "shaft.support.*.load",
      "shaft.joint.*.angle",
      "shaft.ripple",
      "shaft.couple",
      "shaft.push_back",
      "shaft.shake_fit",
      "shaft.*.clocking",
      "shaft.*.length",
      "shaft.*.engagement",
      "shaft.*.slip_left",
      "shaft.*.insertion",
      "shaft.*.grip",
      "shaft.*.off_axis",
      "link.centring",
      "link.length",
      "link.thread_engagement.*",
      "link.tube_bore.*",
      "link.tube_wall.*",
      "link.swing.*",
      "link.effective_angle",
      "lock.turns_total",
      "lock.turns_difference",
      "lock.ratio",
      "lock.ball_stud.*",
      "lock.outer_joint",
      "lock.*.end",
      "lock.*.box_margin",
      "lock.*.ball_margin",
      "lock.*.joint_margin",
      "lock.*.toggle_margin",
      "lock.*.assist_margin",
      "lock.*.margin",
      "lock.*.stop_bolt",
      "lock.*.stop_square",
      "lock.*.stop_on_pad",
      "lock.*.steer",
      "lock.*.ackermann",
      "lock.*.circle",
      "bump.rate",
      "bump.travel",
      "bump.roll",
      "bump.wind_up",
      "bump.kickback",
      "pedal.*.full_stroke",
      "pedal.*.release_stroke",
      "pedal.*.over_run",
      "pedal.*.ratio",
      "pedal.*.free_play",
      "pedal.*.rod_swing",
      "pedal.*.floor_gap",
      "stretch.*",
      "file.*",
      "missing.*",
  };
  return kinds;
}

FindingWords finding_words(std::string_view name) {
  for (const std::string_view kind : finding_kinds()) {
    const std::optional<std::string> item = item_of(name, kind);
    if (!item) continue;
    const std::string key(kind);
    return {say("title." + key, {{"item", *item}}), say("meaning." + key)};
  }
  return {};
}

std::string member_words(const Project& project, std::string_view path) {
  if (const Result<std::string> words = field_words(project, path); words.ok()) return *words;
  return absent_member(path).value_or(spaced(path));
}

std::string in_plain_words(const Project& project, std::string_view text) {
  std::string plain;
  for (std::size_t at = 0; at < text.size();) {
    if (!is_name_letter(text[at])) {
      plain += text[at++];
      continue;
    }
    std::size_t end = at;
    while (end < text.size() && is_name_letter(text[end])) ++end;
    std::string_view token = text.substr(at, end - at);
    at = end;
    std::size_t dots = 0;  // a full stop behind it is the sentence's
    while (!token.empty() && token.back() == '.') {
      token.remove_suffix(1);
      ++dots;
    }
    const std::optional<std::string> words = words_for(project, token);
    plain += words ? '"' + *words + '"' : std::string(token);
    plain.append(dots, '.');
  }
  return plain;
}

}  // namespace tackbench
