// Bad results travel as values with a named reason.
#pragma once

#include <string>
#include <utility>
#include <variant>
#include <vector>

namespace tackbench {

// One fault a person can mend: where it is, what was found, what is wanted.
struct Problem {
  std::string file;    // as the user named it; empty when no file is concerned
  std::string place;   // member path such as "drag_link.tube.wall_mm"; line:column for bad syntax
  std::string found;   // "-3 is not a wall thickness"
  std::string wanted;  // "give 1 to 20"

  bool operator==(const Problem&) const = default;
};

using Problems = std::vector<Problem>;

// "file: place: found; wanted" on one line.
std::string one_line(const Problem& problem);

// A value, or every fault that kept it from being made (at least one).
template <class Value>
class [[nodiscard]] Result {
 public:
  Result(Value value) : held_(std::move(value)) {}                  // NOLINT: meant to convert
  Result(Problems problems) : held_(std::move(problems)) {}         // NOLINT: meant to convert
  Result(Problem problem) : held_(Problems{std::move(problem)}) {}  // NOLINT: meant to convert

  bool ok() const { return std::holds_alternative<Value>(held_); }
  explicit operator bool() const { return ok(); }
  const Value& value() const& { return std::get<Value>(held_); }
  Value& value() & { return std::get<Value>(held_); }
  Value&& value() && { return std::get<Value>(std::move(held_)); }
  const Value* operator->() const { return &value(); }
  const Value& operator*() const& { return value(); }
  const Problems& problems() const { return std::get<Problems>(held_); }

 private:
  std::variant<Value, Problems> held_;
};

// Done, or why not.
using Done = std::monostate;

}  // namespace tackbench
