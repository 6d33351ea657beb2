#include "core/basics/entered_number.h"

#include <gtest/gtest.h>

#include <cmath>
#include <random>

namespace tackbench {
namespace {

struct Typed {
  const char* text;
  double inside;
  Unit unit = Unit::millimetre;
  ShownUnit lengths = ShownUnit::millimetre;
};

class Entered : public testing::TestWithParam<Typed> {};

TEST_P(Entered, IsRead) {
  const Typed& typed = GetParam();
  const Result<double> read = entered_number(typed.text, typed.unit, typed.lengths);
  ASSERT_TRUE(read.ok()) << typed.text << ": " << one_line(read.problems().front());
  EXPECT_NEAR(*read, typed.inside, 1e-9 * (1.0 + std::abs(typed.inside))) << typed.text;
}

// An inch is 25.4 mm exactly and a foot twelve of them: ISO 80000-3 and NIST SP 811, table B.9.
INSTANTIATE_TEST_SUITE_P(
    Lengths, Entered,
    testing::Values(Typed{"314.5", 314.5}, Typed{" 314.5 ", 314.5}, Typed{"-3", -3.0},
                    Typed{"+3", 3.0}, Typed{"\u22123", -3.0}, Typed{".5", 0.5}, Typed{"5.", 5.0},
                    Typed{"314,5", 314.5}, Typed{"314,55", 314.55}, Typed{"12-3/8 in", 314.325},
                    Typed{"12 3/8 in", 314.325}, Typed{"12-3/8in", 314.325},
                    Typed{"~12-3/8 in", 314.325}, Typed{"12-3/8\"", 314.325},
                    Typed{"3/8 in", 9.525}, Typed{"-3/8 in", -9.525}, Typed{"1.2 m", 1200.0},
                    Typed{"1.2m", 1200.0}, Typed{"4 cm", 40.0}, Typed{"1 ft", 304.8},
                    Typed{"1' 2-3/8\"", 365.125}, Typed{"1 ft 2 in", 355.6},
                    Typed{"-1 ft 2 in", -355.6}, Typed{"812 - 40", 772.0}, Typed{"812-40", 772.0},
                    Typed{"812 + 40 - 2", 850.0}, Typed{"812 - 40 mm", 772.0},
                    Typed{"2 - 1/2 in", 38.1}, Typed{"1 m - 1 in", 974.6},
                    Typed{"10 inches", 254.0}));

INSTANTIATE_TEST_SUITE_P(
    InchesShown, Entered,
    testing::Values(Typed{"12-3/8", 314.325, Unit::millimetre, ShownUnit::inch_fraction},
                    Typed{"12.375", 314.325, Unit::millimetre, ShownUnit::inch_decimal},
                    Typed{"30 mm", 30.0, Unit::millimetre, ShownUnit::inch_decimal},
                    Typed{"3 - 1/2", 63.5, Unit::millimetre, ShownUnit::inch_fraction}));

INSTANTIATE_TEST_SUITE_P(
    OtherKinds, Entered,
    testing::Values(Typed{"180", kPi, Unit::degree}, Typed{"90 deg", kPi / 2, Unit::degree},
                    Typed{"90\u00b0", kPi / 2, Unit::degree}, Typed{"1 rad", 1.0, Unit::degree},
                    Typed{"0.5", kPi, Unit::turn}, Typed{"90 deg", kPi / 2, Unit::turn},
                    Typed{"7 %", 0.07, Unit::percent}, Typed{"7", 0.07, Unit::percent},
                    Typed{"1.5 kN", 1500.0, Unit::newton},
                    Typed{"3 Nm", 3000.0, Unit::newton_metre}, Typed{"2 t", 2000.0, Unit::kilogram},
                    Typed{"18", 18.0, Unit::number}, Typed{"36", 36.0, Unit::count},
                    Typed{"5 N/mm", 5.0, Unit::newton_per_mm}));

struct Refused {
  const char* text;
  const char* found;  // part of what it says
  Unit unit = Unit::millimetre;
};

class EnteredWrongly : public testing::TestWithParam<Refused> {};

TEST_P(EnteredWrongly, SaysWhy) {
  const Refused& refused = GetParam();
  const Result<double> read = entered_number(refused.text, refused.unit);
  ASSERT_FALSE(read.ok()) << refused.text << " was read as " << *read;
  const Problem& problem = read.problems().front();
  EXPECT_NE(problem.found.find(refused.found), std::string::npos) << problem.found;
  EXPECT_FALSE(problem.wanted.empty());
}

INSTANTIATE_TEST_SUITE_P(
    Reasons, EnteredWrongly,
    testing::Values(Refused{"", "nothing was given"}, Refused{"  ", "nothing was given"},
                    Refused{"abc", "not a number"}, Refused{"12 kg", "\"kg\" is no unit"},
                    Refused{"12 furlongs", "\"furlongs\" is no unit"}, Refused{"1,200", "two ways"},
                    Refused{"1.200,5", "two ways"}, Refused{"1.2.3", "2 points"},
                    Refused{"3/0 in", "has no value"}, Refused{"12-9/8 in", "not a part of one"},
                    Refused{"12 -", "not a number"}, Refused{"12 34", "cannot be read"},
                    Refused{"1 m - 40", "some have none"},
                    Refused{"9999999999999", "greater than any build"},
                    Refused{"2.5", "not a whole number", Unit::count},
                    Refused{"3 mm", "\"mm\" is no unit", Unit::number},
                    Refused{"5 in", "\"in\" is no unit", Unit::degree}, Refused{"nan", "nan"},
                    Refused{"inf", "inf"}, Refused{"1e5", "\"e5\" is no unit"}));

// What a screen shows is read back as it was shown, to the last digit or sixteenth shown.
TEST(EnteredNumber, ReadsWhatScreensShow) {
  std::mt19937 random(3);
  std::uniform_real_distribution<double> place(-4000.0, 4000.0);
  for (int i = 0; i < 2000; ++i) {
    const double mm = place(random);
    for (const auto& [unit, within] : {std::pair{ShownUnit::millimetre, 0.05 + 1e-9},
                                       {ShownUnit::inch_decimal, 0.0127 + 1e-9},
                                       {ShownUnit::inch_fraction, 25.4 / 32.0 + 1e-9}}) {
      const std::string text = shown_length(mm, unit);
      const Result<double> read = entered_number(text, Unit::millimetre, unit);
      ASSERT_TRUE(read.ok()) << text;
      EXPECT_NEAR(*read, mm, within) << text;
    }
  }
}

// Whatever is typed, the answer is a finite number or a reason.
TEST(EnteredNumber, NeverFailsOtherwise) {
  std::mt19937 random(5);
  const std::string_view letters = "0123456789./,-+ '\"~mincftdeg%\t\xC2\xB0\xE2\x88\x92";
  std::uniform_int_distribution<std::size_t> which(0, letters.size() - 1);
  std::uniform_int_distribution<int> how_many(0, 14);
  int read_well = 0;
  for (int i = 0; i < 50000; ++i) {
    std::string text;
    for (int n = how_many(random); n > 0; --n) text += letters[which(random)];
    const Result<double> read = entered_number(text, Unit::millimetre);
    if (read) {
      ++read_well;
      EXPECT_TRUE(std::isfinite(*read)) << text;
    } else {
      EXPECT_FALSE(read.problems().front().found.empty()) << text;
    }
  }
  EXPECT_GT(read_well, 100);
}

}  // namespace
}  // namespace tackbench
