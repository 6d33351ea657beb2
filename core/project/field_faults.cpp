#include "core/project/field_faults.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "core/project/number_text.h"

namespace tackbench {

namespace {

std::string range_words(const NumberField& field) {
  return number_text(field.least) + " to " + number_text(field.most);
}

bool in_range(const NumberField& field, double shown) {
  return std::isfinite(shown) && shown >= field.least && shown <= field.most;
}

std::string_view article(std::string_view words) {
  return std::string_view("aeiou").find(words.front()) == std::string_view::npos ? "a" : "an";
}

bool is_hex_digit(char c) {
  return (c >= '0' && c <= '9') || (c >= 'a' && c <= 'f') || (c >= 'A' && c <= 'F');
}

}  // namespace

std::string wanted_number(const NumberField& field) {
  return "give " + range_words(field);
}

std::string wanted_whole(const NumberField& field) {
  return "give a whole number from " + range_words(field);
}

std::string wanted_vector(const NumberField& field) {
  return "give three numbers [x, y, z], each " + range_words(field);
}

std::string wanted_direction() {
  return "give three numbers [x, y, z] that are not all zero";
}

std::string wanted_choice(const FieldLabel& field, ChoiceWords words) {
  std::string text = "give ";
  for (std::size_t i = 0; i < words.size(); ++i) {
    if (i > 0) text += i + 1 == words.size() ? " or " : ", ";
    text += words[i];
  }
  if (!field.note.empty()) text += fmt::format(" ({})", field.note);
  return text;
}

std::string wanted_text(const TextField& field) {
  switch (field.kind) {
    case TextKind::free:
      return "give text in quotes";
    case TextKind::name:
      return "give a name in quotes, without square brackets";
    case TextKind::relative_path:
      return "give a path seen from the project's own folder";
    case TextKind::sha256:
      return "give 64 hex digits";
  }
  return "";
}

std::string wanted_flag() {
  return "give true or false";
}

Problem not_a(const FieldLabel& field, std::string place, std::string_view found,
              std::string wanted) {
  return {"", std::move(place),
          fmt::format("{} is not {} {}", found, article(field.words), field.words),
          std::move(wanted)};
}

Problem missing(const FieldLabel& field, std::string place, std::string wanted) {
  return {"", std::move(place), fmt::format("{} is missing", field.words), std::move(wanted)};
}

std::optional<Problem> number_fault(const NumberField& field, const std::string& place,
                                    double shown) {
  if (in_range(field, shown)) return std::nullopt;
  return not_a(field, place, number_text(shown), wanted_number(field));
}

std::optional<Problem> whole_fault(const NumberField& field, const std::string& place,
                                   double shown) {
  if (in_range(field, shown) && shown == std::floor(shown)) return std::nullopt;
  return not_a(field, place, number_text(shown), wanted_whole(field));
}

std::optional<Problem> vector_fault(const NumberField& field, const std::string& place,
                                    const Vec3& shown) {
  if (std::all_of(shown.begin(), shown.end(), [&](double x) { return in_range(field, x); })) {
    return std::nullopt;
  }
  return not_a(field, place, vector_text(shown), wanted_vector(field));
}

std::optional<Problem> direction_fault(const FieldLabel& field, const std::string& place,
                                       const Vec3& given) {
  constexpr double kShortest = 1e-6;
  constexpr double kLongest = 1e9;
  const double length = given.norm();
  if (std::isfinite(length) && length >= kShortest && length <= kLongest) return std::nullopt;
  return not_a(field, place, vector_text(given), wanted_direction());
}

std::optional<Problem> text_fault(const TextField& field, const std::string& place,
                                  std::string_view given) {
  bool good = is_utf8(given);
  switch (field.kind) {
    case TextKind::free:
      break;
    case TextKind::name:
      good = good && !given.empty() && given.find_first_of("[]") == std::string_view::npos;
      break;
    case TextKind::relative_path:
      good = good && !given.starts_with('/') && !given.starts_with('\\') &&
             given.find(':') == std::string_view::npos;
      break;
    case TextKind::sha256:
      good = (given.empty() || given.size() == 64) &&
             std::all_of(given.begin(), given.end(), is_hex_digit);
      break;
  }
  if (good) return std::nullopt;
  const std::string found =
      is_utf8(given) ? fmt::format("\"{}\"", given) : "text that is not UTF-8";
  return not_a(field, place, found, wanted_text(field));
}

Vec3 unit_direction(const Vec3& given) {
  const double length = given.norm();
  return std::abs(length - 1.0) < 1e-12 ? given : Vec3(given / length);
}

std::string vector_text(const Vec3& value) {
  return "[" + number_text(value.x()) + ", " + number_text(value.y()) + ", " +
         number_text(value.z()) + "]";
}

Vec3 shown_vector(const NumberField& field, const Vec3& inside) {
  return inside.unaryExpr([&](double x) { return shown_from_inside(field.unit, x); });
}

Vec3 inside_vector(const NumberField& field, const Vec3& shown) {
  return shown.unaryExpr([&](double x) { return inside_from_shown(field.unit, x); });
}

bool is_utf8(std::string_view text) {
  std::size_t i = 0;
  while (i < text.size()) {
    const auto byte = [&](std::size_t k) { return static_cast<unsigned char>(text[k]); };
    const unsigned char first = byte(i);
    if (first < 0x80) {
      ++i;
      continue;
    }
    const std::size_t more = first >= 0xF0 ? 3 : first >= 0xE0 ? 2 : 1;
    if (first < 0xC2 || first > 0xF4 || i + more >= text.size()) return false;
    for (std::size_t k = 1; k <= more; ++k) {
      if ((byte(i + k) & 0xC0) != 0x80) return false;
    }
    const unsigned char second = byte(i + 1);
    if ((first == 0xE0 && second < 0xA0) || (first == 0xED && second > 0x9F) ||
        (first == 0xF0 && second < 0x90) || (first == 0xF4 && second > 0x8F)) {
      return false;
    }
    i += more + 1;
  }
  return true;
}

}  // namespace tackbench
