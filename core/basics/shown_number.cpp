#include "core/basics/shown_number.h"

#include <fmt/core.h>

#include <cmath>
#include <cstdint>
#include <numeric>

namespace tackbench {

namespace {

constexpr double kWholeFrom = 5000.0;      // mm; tenths of a turning circle mean nothing
constexpr double kGreatestFraction = 1e9;  // inches; beyond it sixteenths mean nothing

std::string without_minus_zero(std::string digits) {
  if (digits.starts_with('-') && digits.find_first_not_of("-0.") == std::string::npos)
    digits.erase(0, 1);
  return digits;
}

std::string fixed(double value, int decimals) {
  return without_minus_zero(fmt::format("{:.{}f}", value, decimals));
}

std::string inch_fraction(double inches) {
  if (std::abs(inches) > kGreatestFraction) return fixed(inches, 0);
  const auto sixteenths = static_cast<std::int64_t>(std::llround(std::abs(inches) * 16.0));
  const bool exact = std::abs(std::abs(inches) * 16.0 - static_cast<double>(sixteenths)) < 1e-6;
  const std::int64_t whole = sixteenths / 16;
  const std::int64_t part = sixteenths % 16;
  std::string digits = std::to_string(whole);
  if (part != 0) {
    const std::int64_t shared = std::gcd(part, std::int64_t{16});
    const std::string fraction = fmt::format("{}/{}", part / shared, 16 / shared);
    digits = whole == 0 ? fraction : fmt::format("{}-{}", digits, fraction);
  }
  const char* sign = inches < 0.0 && sixteenths != 0 ? "-" : "";
  return fmt::format("{}{}{}", exact ? "" : "~", sign, digits);
}

std::string length_digits(double mm, ShownUnit unit) {
  switch (unit) {
    case ShownUnit::millimetre:
      return fixed(mm, std::abs(mm) < kWholeFrom ? 1 : 0);
    case ShownUnit::inch_decimal:
      return fixed(mm / kMillimetresPerInch, 3);
    case ShownUnit::inch_fraction:
      return inch_fraction(mm / kMillimetresPerInch);
  }
  return {};
}

int decimals(Unit unit) {
  switch (unit) {
    case Unit::count:
    case Unit::newton:
      return 0;
    case Unit::number:
    case Unit::turn:
    case Unit::degree_per_25_mm:
    case Unit::degree_per_mm:
      return 2;
    case Unit::millimetre:
    case Unit::degree:
    case Unit::percent:
    case Unit::newton_metre:
    case Unit::newton_per_mm:
    case Unit::kilogram:
    case Unit::megapascal:
      return 1;
  }
  return 1;
}

std::string with_unit(const std::string& digits, const std::string& unit) {
  return unit.empty() ? digits : digits + " " + unit;
}

}  // namespace

std::string shown_length(double mm, ShownUnit unit) {
  return shown(mm, Unit::millimetre, unit);
}

std::string shown_bare(double inside, Unit unit, ShownUnit lengths) {
  if (!std::isfinite(inside)) return "not known";
  if (unit == Unit::millimetre) return length_digits(inside, lengths);
  return fixed(shown_from_inside(unit, inside), decimals(unit));
}

std::string shown(double inside, Unit unit, ShownUnit lengths) {
  const std::string digits = shown_bare(inside, unit, lengths);
  return std::isfinite(inside) ? with_unit(digits, unit_words(unit, lengths)) : digits;
}

std::string shown_exactly(double inside, Unit unit) {
  if (!std::isfinite(inside)) return "not known";
  const double value = shown_from_inside(unit, inside);
  const double settled = std::abs(value) < 5e-10 ? 0.0 : value;
  return with_unit(fmt::format("{:.6g}", settled), unit_words(unit));
}

std::string unit_words(Unit unit, ShownUnit lengths) {
  switch (unit) {
    case Unit::millimetre:
      return lengths == ShownUnit::millimetre ? "mm" : "in";
    case Unit::degree:
      return "degrees";
    case Unit::degree_per_25_mm:
      return "degrees per 25 mm";
    case Unit::degree_per_mm:
      return "degrees per mm";
    default:
      return symbol(unit);
  }
}

}  // namespace tackbench
