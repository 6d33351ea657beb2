// Units at the edges. Inside the core every length is in millimetres, every angle in radians,
// every force in newtons; these helpers convert at file, screen and paper only.
#pragma once

#include <numbers>

namespace tackbench {

inline constexpr double kPi = std::numbers::pi;
inline constexpr double kRadiansPerDegree = kPi / 180.0;
inline constexpr double kRadiansPerTurn = 2.0 * kPi;
inline constexpr double kMillimetresPerInch = 25.4;  // exact, ISO 80000-3

constexpr double radians_from_degrees(double degrees) {
  return degrees * kRadiansPerDegree;
}
constexpr double degrees_from_radians(double radians) {
  return radians / kRadiansPerDegree;
}
constexpr double turns_from_radians(double radians) {
  return radians / kRadiansPerTurn;
}

// What a stored or shown number counts. `degree` numbers are radians inside the core.
enum class Unit {
  number,            // plain ratio or factor
  millimetre,        //
  degree,            // radians inside
  turn,              // radians inside, shown as turns of the hand wheel
  percent,           // fraction inside (0.07), shown as 7
  newton,            //
  newton_metre,      // newton millimetres inside
  kilogram,          //
  count,             // whole number
  degree_per_25_mm,  // radians per 25 mm inside (bump steer)
  degree_per_mm,     // radians per mm inside
  megapascal,        //
  newton_per_mm,     // spring rate
};

// The number as a file, screen or paper shows it, from the number the core holds.
double shown_from_inside(Unit unit, double inside);
double inside_from_shown(Unit unit, double shown);

// Suffix of a member name in files and JSON output: "_mm", "_deg", "_n", "" for plain numbers.
const char* member_suffix(Unit unit);
// Symbol behind a number for people: "mm", "deg", "%", "".
const char* symbol(Unit unit);

}  // namespace tackbench
