#include "core/drawing/svg.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <regex>

namespace tackbench {
namespace {

using ::testing::HasSubstr;
using ::testing::Not;

std::size_t count_of(const std::string& text, const std::string& piece) {
  std::size_t count = 0;
  for (auto at = text.find(piece); at != std::string::npos; at = text.find(piece, at + 1)) ++count;
  return count;
}

TEST(Svg, IsTruePaperSize) {
  const Sheet sheet;
  EXPECT_THAT(svg(sheet), HasSubstr("width=\"420mm\" height=\"297mm\" viewBox=\"0 0 420 297\""));
}

// XML 1.0: & < > have to be escaped, control characters are not allowed at all.
TEST(Svg, EscapesWhatXmlForbids) {
  Sheet sheet;
  sheet.texts.push_back({{10, 10}, "a<b & \"c\"\x02", 2.5, TextAnchor::start, false, 0.0});
  const std::string text = svg(sheet);
  EXPECT_THAT(text, HasSubstr("a&lt;b &amp; &quot;c&quot; </text>"));
  EXPECT_THAT(text, Not(HasSubstr("\x02")));
}

// ISO 129-1: arrows inside where there is room, outside pointing inward where there is none.
TEST(Svg, ArrowsGoOutsideAShortDimension) {
  const auto first_tip_and_tail = [](double length) {
    Sheet sheet;
    sheet.dimensions.push_back({{100, 50}, {100 + length, 50}, 70, "5"});
    const std::string text = svg(sheet);
    EXPECT_EQ(count_of(text, "<polygon class=\"arrow\""), 2U);
    std::smatch match;
    EXPECT_TRUE(std::regex_search(
        text, match, std::regex("class=\"arrow\" points=\"([0-9.]+),[0-9.]+ ([0-9.]+)")));
    return std::pair(std::stod(match[1]), std::stod(match[2]));
  };
  const auto [long_tip, long_tail] = first_tip_and_tail(40);
  EXPECT_DOUBLE_EQ(long_tip, 100.0);
  EXPECT_GT(long_tail, long_tip);
  const auto [short_tip, short_tail] = first_tip_and_tail(4);
  EXPECT_DOUBLE_EQ(short_tip, 100.0);
  EXPECT_LT(short_tail, short_tip);
}

// ISO 128: 0.7 wide for outlines, 0.35 for all else.
TEST(Svg, TwoLineWidths) {
  const std::string text = svg(Sheet{});
  EXPECT_THAT(text, HasSubstr(".outline{fill:none;stroke:#20282c;stroke-width:0.7;"));
  EXPECT_THAT(text, HasSubstr(".thin{fill:none;stroke:#20282c;stroke-width:0.35}"));
}

// A quarter turn anticlockwise from +x ends straight up, which on paper is smaller y.
TEST(Svg, ArcsRunAnticlockwise) {
  Sheet sheet;
  SheetArc arc;
  arc.centre = {50, 50};
  arc.radius = 10;
  sheet.arcs.push_back(arc);
  EXPECT_THAT(svg(sheet), HasSubstr("d=\"M 60.000 50.000 A 10.000 10.000 0 0 0 50.000 40.000\""));
}

}  // namespace
}  // namespace tackbench
