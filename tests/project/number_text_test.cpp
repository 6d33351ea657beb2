#include "core/project/number_text.h"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <cmath>
#include <limits>

#include "core/basics/units.h"
#include "core/project/field_faults.h"

namespace tackbench {
namespace {

TEST(NumberText, IsShort) {
  EXPECT_EQ(number_text(0.1), "0.1");
  EXPECT_EQ(number_text(0.1 + 0.2), "0.3");
  EXPECT_EQ(number_text(-0.0), "0");
  EXPECT_EQ(number_text(1500.0), "1500");
  EXPECT_EQ(number_text(-1.0 / 3.0), "-0.33333333333333");
}

// Degrees go to radians and back without drift: the text stays the same, however often.
RC_GTEST_PROP(NumberText, SurvivesTheWayThroughRadians, ()) {
  const double shown = *rc::gen::inRange(-360000000, 360000000) * 1e-6;
  std::string text = number_text(shown);
  for (int again = 0; again < 5; ++again) {
    const auto read = number_from_text(text);
    RC_ASSERT(read.has_value());
    const double inside = inside_from_shown(Unit::degree, *read);
    const std::string written = number_text(shown_from_inside(Unit::degree, inside));
    RC_ASSERT(written == text);
    text = written;
  }
}

TEST(NumberFromText, TakesNumbersOnly) {
  EXPECT_EQ(number_from_text("812"), 812.0);
  EXPECT_EQ(number_from_text("-3.5e2"), -350.0);
  for (const char* text : {"", " 1", "1 ", "1,5", "0x10", "nan", "inf", "-inf", "infinity", "1e999",
                           "--1", "1mm", "."}) {
    EXPECT_EQ(number_from_text(text), std::nullopt) << text;
  }
}

// Well-formed byte sequences: The Unicode Standard, table 3-7 (from memory).
TEST(Utf8, TellsWellFormedText) {
  for (const char* good : {"", "plain", "\xC3\xA4", "\xE2\x82\xAC", "\xF0\x9F\x94\xA7"}) {
    EXPECT_TRUE(is_utf8(good)) << good;
  }
  for (const char* bad : {"\x80", "\xC0\xAF", "\xC3", "\xE2\x82", "\xED\xA0\x80", "\xE0\x80\x80",
                          "\xF4\x90\x80\x80", "\xF0\x80\x80\x80", "\xFF", "a\xC3(b"}) {
    EXPECT_FALSE(is_utf8(bad));
  }
}

}  // namespace
}  // namespace tackbench
