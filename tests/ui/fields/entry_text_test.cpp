#include "ui/fields/entry_text.h"

#include <gtest/gtest.h>

namespace tackbench::ui {
namespace {

FieldEntry length(double least = 0.0, double most = 5000.0) {
  FieldEntry entry;
  entry.kind = EntryKind::number;
  entry.words = QStringLiteral("given length");
  entry.path = "drag_link.given_length_mm";
  entry.unit = Unit::millimetre;
  entry.least = least;
  entry.most = most;
  return entry;
}

std::string taken(const FieldEntry& entry, const char* typed,
                  ShownUnit lengths = ShownUnit::millimetre) {
  const Result<std::string> text = member_text(entry, QString::fromUtf8(typed), lengths);
  return text ? *text : "refused: " + text.problems().front().found;
}

TEST(EntryText, TakesUnitsAndSums) {
  EXPECT_EQ(taken(length(), "314.5"), "314.5");
  EXPECT_EQ(taken(length(), "1.2 m"), "1200");
  EXPECT_EQ(taken(length(), "812 - 40"), "772");
  // 12-3/8 in of 25.4 mm each (ISO 80000-3).
  EXPECT_EQ(taken(length(), "12-3/8 in"), "314.325");
  EXPECT_EQ(taken(length(), "12-3/8", ShownUnit::inch_fraction), "314.325");
}

TEST(EntryText, SaysWhyNot) {
  EXPECT_TRUE(taken(length(), "abc").starts_with("refused"));
  EXPECT_TRUE(taken(length(), "").starts_with("refused"));
  const auto far = member_text(length(), QStringLiteral("6000"), ShownUnit::millimetre);
  ASSERT_FALSE(far.ok());
  EXPECT_NE(far.problems().front().wanted.find("0 to 5000 mm"), std::string::npos);
  // The range is told in the unit that is shown: 5000 mm are 196.85 in.
  const auto far_inches = member_text(length(), QStringLiteral("300"), ShownUnit::inch_fraction);
  ASSERT_FALSE(far_inches.ok());
  EXPECT_NE(far_inches.problems().front().wanted.find("196.85 in"), std::string::npos);
}

TEST(EntryText, ClearsWhatMayBeAbsent) {
  FieldEntry entry = length();
  entry.optional = true;
  EXPECT_EQ(taken(entry, ""), "none");
  EXPECT_EQ(shown_entry(entry, "none", ShownUnit::millimetre), QString());
}

TEST(EntryText, WholeNumbersStayWhole) {
  FieldEntry entry = length(6, 120);
  entry.kind = EntryKind::whole;
  entry.unit = Unit::count;
  EXPECT_EQ(taken(entry, "36"), "36");
  EXPECT_TRUE(taken(entry, "36.5").starts_with("refused"));
}

TEST(EntryText, ExactTextGivesTheValueBack) {
  for (const ShownUnit lengths :
       {ShownUnit::millimetre, ShownUnit::inch_decimal, ShownUnit::inch_fraction}) {
    for (const char* member : {"803.64", "314.325", "0.1", "4999.9"}) {
      const QString exact = exact_entry(length(), member, lengths);
      const auto back = member_text(length(), exact, lengths);
      ASSERT_TRUE(back.ok()) << exact.toStdString();
      EXPECT_NEAR(std::stod(*back), std::stod(member), 1e-9) << exact.toStdString();
    }
  }
  EXPECT_EQ(exact_entry(length(), "314.325", ShownUnit::inch_fraction), QStringLiteral("12-3/8"));
}

// A fault names other members by their words.
TEST(EntryText, FaultsSayNoRawNames) {
  const Problems problems{
      {"", "driver.roof_height_mm", "the roof is not above the floor",
       "give more than floor_height_mm"},
      {"", "measurements.distances[0].from", "\"A.b\" is no point",
       "give a datum's name or a point's member path, such as steering_box.input_end_mm"}};
  const QString words = fault_words(problems);
  EXPECT_EQ(words,
            "the roof is not above the floor; give more than \"floor height\"\n"
            "\"A.b\" is no point; give a datum's name or a point's member path, such as "
            "\"steering box, input end\"");
}

}  // namespace
}  // namespace tackbench::ui
