#include "core/findings/build_finding.h"

#include <cmath>

#include "core/basics/wording.h"
#include "core/findings/limits.h"

namespace tackbench {

namespace {

std::vector<Quantity> parts_of(const std::string& name, const Vec3& vector, Unit unit) {
  const std::string words = say("quantity." + name);
  std::vector<Quantity> numbers;
  const char* parts[] = {"x", "y", "z"};
  numbers.reserve(3);
  for (int i = 0; i < 3; ++i)
    numbers.push_back({name + "_" + parts[i], vector[i], unit, words + ", " + parts[i]});
  return numbers;
}

std::string listed_with(const std::vector<std::string>& items, const std::string& last) {
  std::string text;
  for (std::size_t i = 0; i < items.size(); ++i) {
    if (i > 0) text += i + 1 == items.size() ? last : say("list.between");
    text += items[i];
  }
  return text;
}

}  // namespace

Quantity quantity(std::string_view name, double value, Unit unit) {
  return {std::string(name), value, unit, say("quantity." + std::string(name))};
}

TraceStep step(std::string_view key, std::string formula, std::vector<Quantity> results) {
  return {say("step." + std::string(key)), std::move(formula), std::move(results)};
}

std::vector<Quantity> point_numbers(const std::string& name, const Vec3& at_mm) {
  return parts_of(name, at_mm, Unit::millimetre);
}

std::vector<Quantity> direction_numbers(const std::string& name, const Vec3& along) {
  return parts_of(name, along, Unit::number);
}

std::vector<Quantity> joined(std::vector<Quantity> first, const std::vector<Quantity>& more) {
  first.insert(first.end(), more.begin(), more.end());
  return first;
}

ShownFor::ShownFor(const Project& project)
    : lengths_(project.sheet ? project.sheet->unit : ShownUnit::millimetre) {}

Finding judged(std::string name, Station station, std::vector<Quantity> numbers, Limit limit,
               ShownUnit lengths) {
  Finding finding;
  finding.name = std::move(name);
  finding.station = station;
  finding.numbers = std::move(numbers);
  const double value = finding.numbers.front().value;
  finding.verdict = judge(value, limit);
  if (finding.verdict == Verdict::not_judged)
    finding.why_not_judged =
        std::isfinite(value) ? no_limit_words(limit) : say("not_judged.no_number");
  limit.words = limit_words(limit, lengths);
  finding.limit = std::move(limit);
  return finding;
}

void leave_open(Finding& finding, const std::string& why) {
  if (finding.verdict == Verdict::past) return;
  finding.verdict = Verdict::not_judged;
  if (!finding.why_not_judged.empty()) finding.why_not_judged += "; ";
  finding.why_not_judged += why;
}

Finding not_yet(std::string name, Station station, std::string why) {
  Finding finding;
  finding.name = std::move(name);
  finding.station = station;
  finding.sentence = capitalised(why) + ".";
  finding.why_not_judged = std::move(why);
  return finding;
}

std::string name_part(const std::string& name, std::size_t index) {
  std::string part;
  for (const char letter : name) {
    const bool capital = letter >= 'A' && letter <= 'Z';
    const bool plain = (letter >= 'a' && letter <= 'z') || (letter >= '0' && letter <= '9');
    if (capital)
      part += static_cast<char>(letter - 'A' + 'a');
    else if (plain)
      part += letter;
    else if (!part.empty() && part.back() != '_')
      part += '_';
  }
  while (!part.empty() && part.back() == '_') part.pop_back();
  return part.empty() ? std::to_string(index + 1) : part;
}

std::string spoken(const std::string& name, std::string_view kind, std::size_t index) {
  return name.empty() ? std::string(kind) + " " + std::to_string(index + 1) : name;
}

std::string listed(const std::vector<std::string>& items) {
  return listed_with(items, say("list.last"));
}

std::string listed_or(const std::vector<std::string>& items) {
  return listed_with(items, say("list.last_or"));
}

std::string side_word(Side side) {
  return side == Side::left ? say("word.left") : say("word.right");
}

Controls at_hand_wheel(double hand_wheel) {
  Controls controls;
  controls.hand_wheel = hand_wheel;
  return controls;
}

std::string hand_end_word(const Mechanism& mechanism) {
  const auto& box = mechanism.project.steering_box;
  return say(box && !box->relays.empty() ? "word.relay_end" : "word.arm_end");
}

Controls at_cab_shake(const Vec3& shake_mm) {
  Controls controls;
  controls.cab_shake = shake_mm;
  return controls;
}

}  // namespace tackbench
