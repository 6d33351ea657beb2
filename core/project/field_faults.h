// Faults of one field in words, alike whether the value came from a file or from a command.
#pragma once

#include <optional>
#include <string>
#include <string_view>

#include "core/basics/frames.h"
#include "core/basics/result.h"
#include "core/project/choice_words.h"
#include "core/project/field_labels.h"

namespace tackbench {

// What to give instead: "give 1 to 20", "give left or right", "give text".
std::string wanted_number(const NumberField& field);
std::string wanted_whole(const NumberField& field);
std::string wanted_vector(const NumberField& field);
std::string wanted_direction();
// Names the choices and adds the field's note, where it has one.
std::string wanted_choice(const FieldLabel& field, ChoiceWords words);
std::string wanted_text(const TextField& field);
std::string wanted_flag();

// "-3 is not a wall thickness". `found` is the offending text.
Problem not_a(const FieldLabel& field, std::string place, std::string_view found,
              std::string wanted);
// "wall thickness is missing".
Problem missing(const FieldLabel& field, std::string place, std::string wanted);

// Values in shown units. Empty when there is no fault.
std::optional<Problem> number_fault(const NumberField& field, const std::string& place,
                                    double shown);
std::optional<Problem> whole_fault(const NumberField& field, const std::string& place,
                                   double shown);
std::optional<Problem> vector_fault(const NumberField& field, const std::string& place,
                                    const Vec3& shown);
std::optional<Problem> direction_fault(const FieldLabel& field, const std::string& place,
                                       const Vec3& given);
std::optional<Problem> text_fault(const TextField& field, const std::string& place,
                                  std::string_view given);

// Given direction made unit. One that is unit already to 1e-12 stays as it is, so that reading
// and writing again changes no digit.
Vec3 unit_direction(const Vec3& given);

// "[1, 2, 3]" by number_text.
std::string vector_text(const Vec3& value);

Vec3 shown_vector(const NumberField& field, const Vec3& inside);
Vec3 inside_vector(const NumberField& field, const Vec3& shown);

// Whether the text is well-formed UTF-8 (no overlong forms, surrogates or points past 10FFFF).
bool is_utf8(std::string_view text);

}  // namespace tackbench
