// What every builder of findings shares: numbers and steps in the catalogue's words, a judged
// finding in one call.
#pragma once

#include <initializer_list>
#include <string>
#include <string_view>
#include <vector>

#include "core/basics/shown_number.h"
#include "core/findings/finding.h"
#include "core/mechanism/mechanism.h"

namespace tackbench {

// A number with the catalogue's words for its name ("quantity.<name>"). Inside units.
Quantity quantity(std::string_view name, double value, Unit unit);
// One step of a trace with the catalogue's words for it ("step.<key>").
TraceStep step(std::string_view key, std::string formula, std::vector<Quantity> results);
// The three parts of a point or vector as numbers: "<name>_x" ... mm.
std::vector<Quantity> point_numbers(const std::string& name, const Vec3& at_mm);
// The same for a unit vector, plain numbers.
std::vector<Quantity> direction_numbers(const std::string& name, const Vec3& along);
// Both lists, one after the other.
std::vector<Quantity> joined(std::vector<Quantity> first, const std::vector<Quantity>& more);

// A project's numbers as its people read them.
class ShownFor {
 public:
  explicit ShownFor(const Project& project);

  std::string text(double inside, Unit unit) const { return shown(inside, unit, lengths_); }
  std::string mm(double length) const { return text(length, Unit::millimetre); }
  std::string degrees(double angle) const { return text(angle, Unit::degree); }
  std::string turns(double angle_in_turns) const {
    return text(angle_in_turns * kRadiansPerTurn, Unit::turn);
  }
  ShownUnit lengths() const { return lengths_; }

 private:
  ShownUnit lengths_;
};

// A finding whose first number is judged by the limit; why it is not judged is filled in. The
// builder adds sentence, trace and the rest.
Finding judged(std::string name, Station station, std::vector<Quantity> numbers, Limit limit,
               ShownUnit lengths);
// Takes the verdict back for that reason, beside a reason that it may have already; a finding that
// is past stays past.
void leave_open(Finding& finding, const std::string& why);
// A finding that waits for something.
Finding not_yet(std::string name, Station station, std::string why);

// "upper shaft" -> "upper_shaft"; an empty name gives its place in the list, counted from 1.
std::string name_part(const std::string& name, std::size_t index);
// The name for people: as given, or "joint 2" when there is none.
std::string spoken(const std::string& name, std::string_view kind, std::size_t index);
// "upper, middle and lower"
std::string listed(const std::vector<std::string>& items);
// "upper, middle or lower"
std::string listed_or(const std::vector<std::string>& items);
// "left" or "right"
std::string side_word(Side side);
// The drag link's end on the pitman arm, or on the last relay: "arm end", "relay end".
std::string hand_end_word(const Mechanism& mechanism);

Controls at_hand_wheel(double hand_wheel);
Controls at_cab_shake(const Vec3& shake_mm);

}  // namespace tackbench
