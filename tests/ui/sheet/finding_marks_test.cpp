// A finding on the sheet says what the checks say now.
#include "core/findings/finding_words.h"
#include "core/project-file/project_file.h"
#include "tests/ui/sheet/open_sheet.h"
#include "ui/look/palette.h"
#include "ui/sheet/finding_places.h"

namespace tackbench::ui {
namespace {

const PlacedTag* tag_of(const OpenSheet& sheet, const std::string& sentence) {
  const QString words = QString::fromStdString(in_plain_words(sheet.session.project(), sentence));
  for (const PlacedTag& placed : sheet.card.placed_tags())
    if (placed.tag.under == words) return &placed;
  return nullptr;
}

// Pixels of that colour in a square about the place.
int ring_pixels(OpenSheet& sheet, const QPoint& middle, const QColor& colour) {
  const QImage picture = sheet.card.grab().toImage();
  int count = 0;
  for (int y = middle.y() - 17; y <= middle.y() + 17; ++y)
    for (int x = middle.x() - 17; x <= middle.x() + 17; ++x) {
      if (!picture.valid(x, y)) continue;
      const QColor here = picture.pixelColor(x, y);
      if (std::abs(here.red() - colour.red()) < 24 &&
          std::abs(here.green() - colour.green()) < 24 &&
          std::abs(here.blue() - colour.blue()) < 24)
        ++count;
    }
  return count;
}

TEST(FindingMarks, FollowACuredFinding) {
  use_theme(Theme::day);
  const Result<Project> sorted = read_project(sample_file("tender-sorted"));
  ASSERT_TRUE(sorted.ok());
  // Which findings of the first truck are cured in the other, by the checks themselves.
  OpenSheet other("tender-sorted");
  const std::vector<Finding> cured = other.session.judged().findings;
  OpenSheet sheet;
  int followed = 0;
  const std::vector<Finding> at_first = sheet.session.judged().findings;
  const Project first = sheet.session.project();
  for (const Finding& finding : at_first) {
    if (finding.verdict != Verdict::past) continue;
    const Finding* now = finding_named(cured, finding.name);
    if (!now || now->verdict != Verdict::within) continue;
    const auto places = finding_places(*sorted, *now);
    if (places.empty()) continue;
    ++followed;
    sheet.card.show_finding(finding);
    sheet.settle();
    const PlacedTag* before = tag_of(sheet, finding.sentence);
    ASSERT_NE(before, nullptr) << finding.name;
    EXPECT_EQ(before->tag.edge, palette().past);
    sheet.session.edit("Sort it out", *sorted);
    sheet.settle();
    EXPECT_EQ(tag_of(sheet, finding.sentence), nullptr) << finding.name << " has gone stale";
    const PlacedTag* after = tag_of(sheet, now->sentence);
    ASSERT_NE(after, nullptr) << finding.name;
    EXPECT_EQ(after->tag.edge, palette().within);
    const QPoint at = sheet.at(places.front(), SheetView::plan);
    if (sheet.card.paper().contains(at)) {
      EXPECT_GT(ring_pixels(sheet, at, palette().within), 20) << finding.name;
    }
    sheet.session.undo();
    sheet.settle();
    EXPECT_NE(tag_of(sheet, finding.sentence), nullptr) << "back after undo";
  }
  EXPECT_GT(followed, 0);
  EXPECT_EQ(project_text(sheet.session.project()), project_text(first));
}

TEST(FindingMarks, AreGoneWithTheirFinding) {
  OpenSheet sheet;
  const Finding* finding = nullptr;
  for (const Finding& each : sheet.session.judged().findings)
    if (!finding && each.name.starts_with("pedal.")) finding = &each;
  ASSERT_NE(finding, nullptr);
  const std::string sentence = finding->sentence;
  sheet.card.show_finding(*finding);
  sheet.settle();
  ASSERT_NE(tag_of(sheet, sentence), nullptr);
  ASSERT_TRUE(sheet.session.set_field("pedals", "none").empty());
  sheet.settle();
  EXPECT_EQ(tag_of(sheet, sentence), nullptr);
}

}  // namespace
}  // namespace tackbench::ui
