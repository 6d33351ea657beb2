// Small records that several stations share. Millimetres and radians; the file shows degrees.
#pragma once

#include <optional>
#include <string>
#include <utility>
#include <vector>

#include "core/basics/frames.h"

namespace tackbench {

enum class Side { left, right };
constexpr Side other(Side side) {
  return side == Side::left ? Side::right : Side::left;
}
// +1 on the left (Y positive), -1 on the right.
constexpr double side_sign(Side side) {
  return side == Side::left ? 1.0 : -1.0;
}

// The body that a point or shape moves with.
enum class RidesOn { chassis, cab, axle, left_knuckle, right_knuckle };

enum class ThreadHand { right, left };

// Members of a file object that this version does not know, kept in file order as JSON text so
// that they are written back.
struct UnknownMember {
  std::string key;
  std::string json;

  bool operator==(const UnknownMember&) const = default;
};
using UnknownMembers = std::vector<UnknownMember>;

// Metric thread, ISO 724 proportions.
struct Thread {
  double diameter = 20.0;  // major diameter, mm
  double pitch = 1.5;      // mm
  ThreadHand hand = ThreadHand::right;
  UnknownMembers unknown = {};

  bool operator==(const Thread&) const = default;
};

// A file outside the project: relative path and SHA-256 (64 hex digits) of its content.
struct FileReference {
  std::string path;
  std::string sha256;
  UnknownMembers unknown = {};

  bool operator==(const FileReference&) const = default;
};

}  // namespace tackbench
