#include "core/project-file/near_name.h"

#include <algorithm>
#include <array>
#include <utility>

namespace tackbench {

namespace {

// Letters added, left out, changed or swapped with a neighbour to get from one to the other.
std::size_t slips(std::string_view one, std::string_view other) {
  const std::size_t width = other.size() + 1;
  std::vector<std::size_t> table((one.size() + 1) * width);
  const auto at = [&](std::size_t i, std::size_t j) -> std::size_t& {
    return table[i * width + j];
  };
  for (std::size_t i = 0; i <= one.size(); ++i) at(i, 0) = i;
  for (std::size_t j = 0; j <= other.size(); ++j) at(0, j) = j;
  for (std::size_t i = 1; i <= one.size(); ++i) {
    for (std::size_t j = 1; j <= other.size(); ++j) {
      const std::size_t changed = one[i - 1] == other[j - 1] ? 0 : 1;
      at(i, j) = std::min({at(i - 1, j) + 1, at(i, j - 1) + 1, at(i - 1, j - 1) + changed});
      if (i > 1 && j > 1 && one[i - 1] == other[j - 2] && one[i - 2] == other[j - 1]) {
        at(i, j) = std::min(at(i, j), at(i - 2, j - 2) + 1);
      }
    }
  }
  return at(one.size(), other.size());
}

// The name without the unit at its end.
std::string_view stem(std::string_view name) {
  constexpr std::array<std::string_view, 14> kUnits = {"_mm", "_cm",  "_m",   "_in", "_inch",
                                                       "_ft", "_deg", "_rad", "_n",  "_kn",
                                                       "_kg", "_lb",  "_mpa", "_psi"};
  for (const std::string_view unit : kUnits) {
    if (name.size() > unit.size() && name.ends_with(unit)) {
      return name.substr(0, name.size() - unit.size());
    }
  }
  return name;
}

std::vector<std::string_view> parts_of(std::string_view name) {
  std::vector<std::string_view> parts;
  while (true) {
    const std::size_t dot = std::min(name.find('.'), name.size());
    parts.push_back(name.substr(0, dot));
    if (dot == name.size()) return parts;
    name.remove_prefix(dot + 1);
  }
}

constexpr std::size_t kLongestName = 64;  // nobody mistypes a longer one for ours

}  // namespace

std::optional<std::string_view> near_name(std::string_view given,
                                          const std::vector<std::string_view>& candidates) {
  constexpr std::size_t kLongestShortName = 5;
  if (given.size() > kLongestName) return std::nullopt;
  const std::size_t allowed = given.size() <= kLongestShortName ? 1 : 2;
  std::optional<std::string_view> nearest;
  std::size_t least = allowed + 1;
  for (const std::string_view candidate : candidates) {
    const std::size_t count = stem(given) == stem(candidate) ? 1 : slips(given, candidate);
    if (count >= least) continue;
    least = count;
    nearest = candidate;
  }
  return nearest;
}

std::vector<std::string_view> nearest_names(std::string_view given,
                                            const std::vector<std::string_view>& candidates,
                                            std::size_t how_many) {
  const std::vector<std::string_view> parts = parts_of(given.substr(0, kLongestName));
  struct Nearness {
    std::ptrdiff_t parts_apart = 0;  // none in common counts 0, each in common one less
    std::size_t slips = 0;
    std::string_view name;
  };
  std::vector<Nearness> all;
  for (const std::string_view candidate : candidates) {
    const std::vector<std::string_view> others = parts_of(candidate);
    const auto common = std::count_if(parts.begin(), parts.end(), [&](std::string_view part) {
      return std::find(others.begin(), others.end(), part) != others.end();
    });
    all.push_back({-common, slips(given.substr(0, kLongestName), candidate), candidate});
  }
  std::stable_sort(all.begin(), all.end(), [](const Nearness& one, const Nearness& other) {
    return std::pair(one.parts_apart, one.slips) < std::pair(other.parts_apart, other.slips);
  });
  std::vector<std::string_view> nearest;
  for (std::size_t i = 0; i < std::min(how_many, all.size()); ++i) nearest.push_back(all[i].name);
  return nearest;
}

}  // namespace tackbench
