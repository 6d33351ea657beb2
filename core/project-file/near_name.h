// Misspelt member names: a name that the reader does not know may be a slip of one that it does.
#pragma once

#include <cstddef>
#include <optional>
#include <string_view>
#include <vector>

namespace tackbench {

// The candidate that `given` most likely stands for: at most two letters added, left out, changed
// or swapped with a neighbour (one in names of up to five letters), or the same name with another
// unit at its end ("track_in" for "track_mm"). Empty when none is that near.
// Source: optimal string alignment distance (Damerau 1964, from memory).
std::optional<std::string_view> near_name(std::string_view given,
                                          const std::vector<std::string_view>& candidates);

// At most `how_many` of the candidates, nearest first: by most parts between dots in common
// ("lock.left" and "lock.left.end" share two), then by fewest slips, then in their own order.
std::vector<std::string_view> nearest_names(std::string_view given,
                                            const std::vector<std::string_view>& candidates,
                                            std::size_t how_many);

}  // namespace tackbench
