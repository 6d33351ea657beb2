#include "core/basics/entered_number.h"

#include <fmt/core.h>

#include <algorithm>
#include <array>
#include <charconv>
#include <cmath>
#include <optional>
#include <string>
#include <utility>

namespace tackbench {

namespace {

// More than any build has; keeps later arithmetic finite.
constexpr double kGreatest = 1e9;

struct UnitWord {
  std::string_view word;
  double inside;  // of one of it
};

// Words of the units of one kind, longest first where one begins another.
std::vector<UnitWord> unit_words_of(Unit unit) {
  constexpr double kDegree = kRadiansPerDegree;
  switch (unit) {
    case Unit::millimetre:
      return {{"millimetres", 1.0},
              {"mm", 1.0},
              {"cm", 10.0},
              {"m", 1000.0},
              {"inches", kMillimetresPerInch},
              {"inch", kMillimetresPerInch},
              {"in", kMillimetresPerInch},
              {"\"", kMillimetresPerInch},
              {"\u2033", kMillimetresPerInch},
              {"feet", 12.0 * kMillimetresPerInch},
              {"foot", 12.0 * kMillimetresPerInch},
              {"ft", 12.0 * kMillimetresPerInch},
              {"'", 12.0 * kMillimetresPerInch},
              {"\u2032", 12.0 * kMillimetresPerInch}};
    case Unit::degree:
    case Unit::turn:
      return {{"degrees", kDegree},     {"degree", kDegree}, {"deg", kDegree},
              {"\u00b0", kDegree},      {"rad", 1.0},        {"turns", kRadiansPerTurn},
              {"turn", kRadiansPerTurn}};
    case Unit::percent:
      return {{"percent", 0.01}, {"%", 0.01}};
    case Unit::newton:
      return {{"N", 1.0}, {"kN", 1000.0}};
    case Unit::newton_metre:
      return {{"Nm", 1000.0}, {"N m", 1000.0}};
    case Unit::kilogram:
      return {{"kg", 1.0}, {"t", 1000.0}};
    case Unit::megapascal:
      return {{"MPa", 1.0}, {"N/mm2", 1.0}};
    case Unit::newton_per_mm:
      return {{"N/mm", 1.0}};
    case Unit::number:
    case Unit::count:
    case Unit::degree_per_25_mm:
    case Unit::degree_per_mm:
      return {};
  }
  return {};
}

std::string units_wanted(Unit unit) {
  switch (unit) {
    case Unit::millimetre:
      return "give mm, cm, m, in or ft";
    case Unit::degree:
    case Unit::turn:
      return "give deg, rad or turns";
    case Unit::percent:
      return "give % or nothing";
    case Unit::newton:
      return "give N or kN";
    case Unit::newton_metre:
      return "give Nm";
    case Unit::kilogram:
      return "give kg or t";
    case Unit::megapascal:
      return "give MPa";
    case Unit::newton_per_mm:
      return "give N/mm";
    default:
      return "give the number alone";
  }
}

// One number of a sum.
struct Term {
  double value = 0.0;            // as typed
  std::optional<double> inside;  // of its unit, when it has one
};

bool is_digit(char c) {
  return c >= '0' && c <= '9';
}

class Reader {
 public:
  Reader(std::string_view text, Unit unit) : rest_(text), unit_(unit) {}

  Result<std::vector<Term>> terms() {
    skip_blanks();
    skip("~");
    skip_blanks();
    if (rest_.empty()) return fault("nothing was given", "give a number");
    std::vector<Term> terms;
    double sign = take_sign().value_or(1.0);
    while (true) {
      Result<Term> term = this->term();
      if (!term) return term.problems();
      terms.push_back(term.value());
      terms.back().value *= sign;
      skip_blanks();
      if (rest_.empty()) return terms;
      if (const auto next = take_sign()) {
        sign = *next;
      } else if (!terms.back().inside || !is_digit(rest_.front())) {
        return fault(fmt::format("\"{}\" cannot be read", rest_), "give a number or a sum");
      }  // "1 ft 2 in": the same sign goes on
    }
  }

 private:
  static Problem fault(std::string found, std::string wanted) {
    return {"", "", std::move(found), std::move(wanted)};
  }

  bool skip(std::string_view word) {
    if (!rest_.starts_with(word)) return false;
    rest_.remove_prefix(word.size());
    return true;
  }
  void skip_blanks() {
    while (skip(" ") || skip("\t") || skip("\u00a0") || skip("\u202f")) {
    }
  }

  std::optional<double> take_sign() {
    skip_blanks();
    std::optional<double> sign;
    if (skip("+")) sign = 1.0;
    if (!sign && (skip("-") || skip("\u2212"))) sign = -1.0;
    if (sign) skip_blanks();
    return sign;
  }

  std::optional<double> take_whole() {
    std::size_t length = 0;
    while (length < rest_.size() && is_digit(rest_[length])) ++length;
    if (length == 0) return std::nullopt;
    double value = 0.0;
    std::from_chars(rest_.data(), rest_.data() + length, value);
    rest_.remove_prefix(length);
    return value;
  }

  // "3/8" when it stands here whole; nothing is taken otherwise.
  std::optional<std::pair<double, double>> take_fraction() {
    const std::string_view before = rest_;
    const auto above = take_whole();
    skip_blanks();
    if (above && skip("/")) {
      skip_blanks();
      if (const auto below = take_whole()) return std::pair{*above, *below};
    }
    rest_ = before;
    return std::nullopt;
  }

  Result<double> fraction_value(const std::pair<double, double>& fraction) {
    if (fraction.second == 0.0)
      return fault(fmt::format("{:.0f}/0 has no value", fraction.first), "give a fraction");
    return fraction.first / fraction.second;
  }

  Result<double> number() {
    if (const auto fraction = take_fraction()) return fraction_value(*fraction);
    const std::string_view start = rest_;
    Result<double> value = decimal();
    if (!value) return value;
    const bool whole = std::all_of(start.begin(), start.end() - rest_.size(), is_digit);
    if (!whole) return value;
    // A whole number may have a fraction behind it.
    const std::string_view before = rest_;
    const bool parted = skip("-") || skip(" ");
    if (const auto fraction = parted ? take_fraction() : std::nullopt) {
      if (fraction->first >= fraction->second)
        return fault(
            fmt::format("{:.0f}/{:.0f} is not a part of one", fraction->first, fraction->second),
            "give a fraction smaller than one behind a whole number");
      Result<double> part = fraction_value(*fraction);
      if (!part) return part;
      return value.value() + part.value();
    }
    rest_ = before;
    return value;
  }

  Result<double> decimal() {
    std::string digits;
    std::size_t length = 0;
    std::size_t commas = 0;
    std::size_t points = 0;
    std::size_t behind_comma = 0;
    for (; length < rest_.size(); ++length) {
      const char c = rest_[length];
      if (c == ',') ++commas;
      if (c == '.') ++points;
      if (!is_digit(c) && c != ',' && c != '.') break;
      if (is_digit(c) && commas > 0) ++behind_comma;
      digits += c == ',' ? '.' : c;
    }
    const std::string_view typed = rest_.substr(0, length);
    if (std::none_of(typed.begin(), typed.end(), is_digit))
      return fault(fmt::format("\"{}\" is not a number", rest_), "give a number such as 314.5");
    if (commas > 0 && (commas + points > 1 || behind_comma == 3))
      return fault(fmt::format("\"{}\" can be read in two ways", typed),
                   "write it with a point for decimals and no mark between thousands");
    if (points > 1)
      return fault(fmt::format("\"{}\" has {} points", typed, points), "give one point");
    double value = 0.0;
    std::from_chars(digits.data(), digits.data() + digits.size(), value);
    rest_.remove_prefix(length);
    return value;
  }

  Result<Term> term() {
    const Result<double> value = number();
    if (!value) return value.problems();
    Term term{value.value(), std::nullopt};
    const std::string_view before = rest_;
    skip_blanks();
    const UnitWord* longest = nullptr;
    const std::vector<UnitWord> words = unit_words_of(unit_);
    for (const UnitWord& word : words)
      if (rest_.starts_with(word.word) && (!longest || word.word.size() > longest->word.size()))
        longest = &word;
    if (longest) {
      rest_.remove_prefix(longest->word.size());
      term.inside = longest->inside;
    }
    if (!rest_.empty() && std::isalpha(static_cast<unsigned char>(rest_.front())) != 0) {
      const std::size_t end = before.find_first_of(" +-", before.find_first_not_of(' '));
      const std::string_view word = before.substr(0, end);
      return fault(fmt::format("\"{}\" is no unit that fits here",
                               word.substr(std::min(word.find_first_not_of(' '), word.size()))),
                   units_wanted(unit_));
    }
    return term;
  }

  std::string_view rest_;
  Unit unit_;
};

double own_unit(Unit unit, ShownUnit lengths) {
  if (unit == Unit::millimetre) return lengths == ShownUnit::millimetre ? 1.0 : kMillimetresPerInch;
  return inside_from_shown(unit, 1.0);
}

}  // namespace

Result<double> entered_number(std::string_view text, Unit unit, ShownUnit lengths) {
  Result<std::vector<Term>> read = Reader(text, unit).terms();
  if (!read) return read.problems();
  std::vector<Term>& terms = read.value();
  const auto with_unit = std::count_if(terms.begin(), terms.end(),
                                       [](const Term& term) { return term.inside.has_value(); });
  const bool last_for_all = with_unit == 1 && terms.back().inside;
  if (with_unit > 0 && !last_for_all && with_unit != std::ssize(terms))
    return Problem{"", "", "some of the numbers have a unit and some have none",
                   "give a unit with each, or with the last alone"};
  double sum = 0.0;
  for (const Term& term : terms) {
    const double one =
        last_for_all ? *terms.back().inside : term.inside.value_or(own_unit(unit, lengths));
    sum += term.value * one;
  }
  if (!std::isfinite(sum) || std::abs(sum) > kGreatest)
    return Problem{"", "", "the number is greater than any build has", "give a smaller one"};
  if (unit == Unit::count && sum != std::round(sum))
    return Problem{"", "", fmt::format("{:g} is not a whole number", sum), "give a whole number"};
  return sum;
}

}  // namespace tackbench
